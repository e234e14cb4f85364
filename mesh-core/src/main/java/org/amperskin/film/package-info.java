/**
 * Films in the plane: what is printed on which sheet, and what a blade cuts instead. A film comes
 * in as a {@link org.amperskin.film.FilmLayout}, whatever way it lies on the part, and leaves as
 * pages of filled figures and words, or as closed outlines.
 *
 * <p>May import: {@code region}; JTS for polygons, PDFBox for the widths of letters.
 *
 * <p>Read {@link org.amperskin.film.FilmLayout} first, then {@link org.amperskin.film.FilmSheets}
 * (mirror, tiles, layers; {@code PageFrame} knows where everything stands) and {@link
 * org.amperskin.film.Stencil}. The formats are written in {@code report}.
 *
 * <pre>{@code
 * FilmLayout layout = LaidLayout.of(region.laid().get(0));
 * FilmSheets sheets = FilmSheets.of(layout, SheetOptions.USUAL, words);
 * Stencil stencil = Stencil.of(layout, StencilOptions.USUAL);
 * }</pre>
 */
package org.amperskin.film;
