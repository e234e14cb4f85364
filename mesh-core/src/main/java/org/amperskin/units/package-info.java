/**
 * Quantities with their units, and the only conversion factors of the project.
 *
 * <p>What people type is read by {@link org.amperskin.units.Quantity}, which knows the {@link
 * org.amperskin.units.Dimension} that is wanted and refuses the rest with a hint. Code that
 * computes passes small records ({@link org.amperskin.units.Area}, {@link
 * org.amperskin.units.Charge}) so that a square inch never meets a square decimetre unawares. Read
 * {@code Quantity} first.
 *
 * <pre>{@code
 * Quantity density = Quantity.parse("25 A/ft2", Dimension.CURRENT_DENSITY); // 269.1 A/m2
 * density.show(); // "2.69 A/dm2"
 * }</pre>
 *
 * <p>May import: nothing of ours.
 */
package org.amperskin.units;
