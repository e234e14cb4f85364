/**
 * Print files in and split meshes out; each format is a sibling package that never sees the others.
 *
 * <p>May import: {@code mesh}.
 */
package org.amperskin.io;
