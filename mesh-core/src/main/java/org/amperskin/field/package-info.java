/**
 * A number per face or vertex: paint stage and tank stage. The room is kept; nothing stands in it
 * yet.
 *
 * <p>May import: {@code region}, {@code plating}, {@code grid}.
 */
package org.amperskin.field;
