/**
 * Pictures of the part without a display.
 *
 * <p>May import: {@code region}.
 */
package org.amperskin.picture;
