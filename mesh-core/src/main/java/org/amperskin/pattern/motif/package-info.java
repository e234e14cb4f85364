/**
 * Patterns drawn by rule: bands, chevrons, hexagons, waves, woven bands, rosettes, dots, lettering.
 * All sizes are millimetres on the film, all angles degrees. Knows no mesh.
 *
 * <p>May import: {@code pattern}.
 *
 * <p>Read {@link org.amperskin.pattern.motif.Motif} first, then {@link
 * org.amperskin.pattern.motif.MotifDesign}, which turns, inverts and cuts a motif to a sheet.
 *
 * <pre>{@code
 * MotifDesign design = new MotifDesign(new Bands(4, 1), 30, false);
 * Artwork artwork = design.sheet(120, 80);
 * }</pre>
 */
package org.amperskin.pattern.motif;
