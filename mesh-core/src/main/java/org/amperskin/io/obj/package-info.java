/**
 * Wavefront OBJ files.
 *
 * <p>May import: {@code mesh} and {@code io}'s shared parts.
 */
package org.amperskin.io.obj;
