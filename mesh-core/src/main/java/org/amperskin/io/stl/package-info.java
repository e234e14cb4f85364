/**
 * Stereolithography files, binary and ASCII, told apart by content.
 *
 * <p>May import: {@code mesh} and {@code io}'s shared parts.
 */
package org.amperskin.io.stl;
