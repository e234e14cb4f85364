/**
 * Wavefront OBJ files.
 *
 * <p>May import: {@code mesh} and {@code io.common}. Read {@link org.amperskin.io.obj.ObjFile}
 * first.
 *
 * <pre>{@code
 * ObjFile.Content content = ObjFile.read(stream);
 * }</pre>
 */
package org.amperskin.io.obj;
