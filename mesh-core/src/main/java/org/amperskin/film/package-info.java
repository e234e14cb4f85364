/**
 * The printed film: whether it will print and develop where it lies.
 *
 * <p>May import: {@code region}. Read {@link org.amperskin.film.FilmCheck} first; {@link
 * org.amperskin.film.Light}, {@link org.amperskin.film.FilmStock} and {@link
 * org.amperskin.film.Resist} hold the numbers with their sources.
 *
 * <pre>{@code
 * FilmCheck check = FilmCheck.of(region, 0, Light.USUAL, FilmStock.of(2, 2.0), Resist.USUAL);
 * check.lines().vanishingShare();
 * check.exposure().verdict();
 * }</pre>
 */
package org.amperskin.film;
