/**
 * 3MF packages: a ZIP archive of model parts, placed by a build.
 *
 * <p>May import: {@code mesh} and {@code io.common}. Read {@link
 * org.amperskin.io.threemf.ThreeMfFile} first; then, in the order of a file's way: {@code
 * ModelPackage} opens the archive, {@code ModelReader} reads a part, {@code Assembly} places the
 * objects.
 *
 * <pre>{@code
 * ThreeMfFile.Content content = ThreeMfFile.read(path, Progress.SILENT);
 * }</pre>
 */
package org.amperskin.io.threemf;
