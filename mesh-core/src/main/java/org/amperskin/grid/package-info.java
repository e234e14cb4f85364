/**
 * The solution grid: which places the bath can reach. The room is kept for the skin's reach and the
 * tank stage; nothing stands in it yet.
 *
 * <p>May import: {@code geom}.
 */
package org.amperskin.grid;
