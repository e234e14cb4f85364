package org.amperskin.io;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import org.amperskin.io.obj.ObjWriter;
import org.amperskin.io.stl.StlWriter;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Writes a mesh in the format that the file's name asks for: binary STL for {@code .stl}, OBJ with
 * groups for {@code .obj}, in any case of the letters.
 *
 * <p>Guaranteed: the file is written as a whole or not at all. See {@link StlWriter} and {@link
 * ObjWriter} for what each format keeps.
 */
public final class PrintFileWriter {
  private PrintFileWriter() {}

  /** Refuses a name that no writer fits, so that a caller can ask before the work is done. */
  public static void checkName(Path target) {
    if (!ends(target, ".stl") && !ends(target, ".obj")) {
      throw new IllegalArgumentException(
          "cannot write \"" + target + "\": the name must end in .stl or .obj");
    }
  }

  /**
   * Writes or replaces a file.
   *
   * @param mesh at least one face (mm)
   * @param comment free text for the file's head
   */
  public static void write(SurfaceMesh mesh, Path target, String comment) throws IOException {
    checkName(target);
    if (ends(target, ".stl")) {
      StlWriter.write(mesh, target, comment);
    } else {
      ObjWriter.write(mesh, target, comment);
    }
  }

  private static boolean ends(Path target, String extension) {
    return target.toString().toLowerCase(Locale.ROOT).endsWith(extension);
  }
}
