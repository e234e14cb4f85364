/**
 * Print files in and split meshes out; each format is a sibling package that never sees the others.
 *
 * <p>May import: {@code mesh}, and its own {@code io.common}, {@code io.stl}, {@code io.obj},
 * {@code io.ply}, {@code io.threemf}.
 *
 * <p>Read {@link org.amperskin.io.PrintFile} first, then {@link org.amperskin.io.PrintFileWriter}.
 *
 * <pre>{@code
 * PrintFile file = PrintFile.read(Path.of("visor.stl"), 1, Progress.SILENT);
 * PrintFileWriter.write(file.mesh(), Path.of("visor.obj"), "read as STL, written as OBJ");
 * }</pre>
 */
package org.amperskin.io;
