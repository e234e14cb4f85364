/**
 * The triangle surface and what is wrong with it.
 *
 * <p>May import: {@code geom}.
 */
package org.amperskin.mesh;
