/**
 * Print files in and split meshes out: the front door, which knows every format.
 *
 * <p>May import: {@code mesh}, {@code io.common} and the formats, {@code io.stl} and {@code
 * io.obj}, which never see each other. Read {@link org.amperskin.io.PrintFile} first.
 *
 * <pre>{@code
 * PrintFile file = PrintFile.read(Path.of("visor.stl"), 1.0, Progress.SILENT);
 * }</pre>
 */
package org.amperskin.io;
