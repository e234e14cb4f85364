/**
 * The printed film's geometry: unrolling, gap, blur, dose. The room is kept; nothing stands in it
 * yet.
 *
 * <p>May import: {@code region}.
 */
package org.amperskin.film;
