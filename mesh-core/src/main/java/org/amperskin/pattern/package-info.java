/**
 * Flat artwork in millimetres: outlines, and the readers that make them. Knows no mesh.
 *
 * <p>May import: {@code geom}.
 *
 * <p>Read {@link org.amperskin.pattern.Artwork} first, then {@link
 * org.amperskin.pattern.ArtworkFile}. An SVG goes this way: {@code SvgTree} (elements with lines),
 * {@code SvgPainter} (document order, groups, with {@code SvgClips}, {@code SvgPaints}, {@code
 * SvgText} and {@code SvgImages}), {@code SvgInk} (fill by {@code Flattener}, stroke by {@code
 * Pen}), {@code PaintStack} (layers of paint on white, and masks), {@code Arrangement} (which faces
 * end up dark), {@code RingSet}. A PNG or JPEG goes through {@code PictureReader} and {@code
 * PixelOutline}, or {@code SmoothOutline} if it is to be smoothed.
 *
 * <pre>{@code
 * Artwork artwork = ArtworkFile.read(Path.of("waves.svg"));
 * double openMm2 = artwork.widthMm() * artwork.heightMm() - artwork.opaqueAreaMm2();
 * artwork.notes().forEach(System.out::println);
 * }</pre>
 */
package org.amperskin.pattern;
