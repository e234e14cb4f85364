/**
 * PLY polygon files, as text and in both binary orders.
 *
 * <p>May import: {@code mesh} and {@code io.common}. Read {@link org.amperskin.io.ply.PlyFile}
 * first.
 *
 * <pre>{@code
 * PlyFile.Content content = PlyFile.read(stream, bytes);
 * }</pre>
 */
package org.amperskin.io.ply;
