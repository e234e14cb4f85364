/**
 * Flat artwork in millimetres: outlines, and the readers that make them. Knows no mesh.
 *
 * <p>May import: {@code geom}.
 */
package org.amperskin.pattern;
