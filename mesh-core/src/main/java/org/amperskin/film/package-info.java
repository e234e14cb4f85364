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
 *
 * <p>Whether a film will print and develop where it lies is told by {@link
 * org.amperskin.film.FilmCheck}; {@link org.amperskin.film.Light}, {@link
 * org.amperskin.film.FilmStock} and {@link org.amperskin.film.Resist} hold the numbers with their
 * sources.
 *
 * <pre>{@code
 * FilmCheck check = FilmCheck.of(region, 0, Light.USUAL, FilmStock.of(2, 2.0), Resist.USUAL);
 * check.lines().vanishingShare();
 * check.exposure().verdict();
 * }</pre>
 */
package org.amperskin.film;
