/**
 * Stereolithography files, binary and ASCII.
 *
 * <p>May import: {@code mesh} and {@code io.common}. Read {@link org.amperskin.io.stl.BinaryStl}
 * first.
 *
 * <pre>{@code
 * StlSum sum = StlSum.of(channel); // area and box without a mesh
 * }</pre>
 */
package org.amperskin.io.stl;
