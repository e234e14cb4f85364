package org.amperskin.io.threemf;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.MeshBuilder;
import org.amperskin.io.common.PrintFileException;

/**
 * Reads 3MF: what the build prints, in the file's own unit.
 *
 * <p>Definition: every item of the build, with its components, is placed by its transforms as often
 * as it occurs; objects that the build does not reach are left out. Each body is a group of faces
 * named after the object, and after its material or colour where it has one ("visor / red").
 *
 * <p>Guaranteed: mirrored objects keep their outward side; what is left out is told; a build
 * without a triangle, an encrypted part and a required extension that is not read are refused by
 * name. CRC and size of every part that is read are checked. Limits: 2 GiB a part and 4 GiB in all
 * unpacked, 200 to 1 past the first 4 MiB of a part, 20,000 entries, 50 million triangles and a
 * million copies of objects once every copy is counted; memory is at most what those allow: the
 * unpacked parts as numbers, then 28 bytes a vertex and 16 a triangle.
 *
 * <p>Not guaranteed: beam lattices and slices, which are told or refused; overlapping bodies, which
 * come as they are.
 *
 * <p>Source: 3MF Consortium, Core Specification 1.4, Production Extension 1.2 (names of parts,
 * {@code p:path}), Materials and Properties Extension 1.2 (names of colours). Cost: about 0.4 us a
 * triangle where vertices and triangles are written plainly, 2 us where they are not.
 */
public final class ThreeMfFile {
  private ThreeMfFile() {}

  /**
   * What was read.
   *
   * @param mesh the faces, in the file's unit
   * @param unit symbol of that unit: um, mm, cm, in, ft or m
   * @param storedVertices vertices of all placed meshes, before equal ones were welded
   * @param notes what was left out or assumed
   */
  public record Content(MeshBuilder mesh, String unit, long storedVertices, List<String> notes) {}

  /** Reads a file. */
  public static Content read(Path file, Progress progress) throws IOException, PrintFileException {
    return read(file, Limits.USUAL, progress);
  }

  static Content read(Path file, Limits limits, Progress progress)
      throws IOException, PrintFileException {
    try (ModelPackage parts = ModelPackage.open(file, limits, progress)) {
      ModelPart root = parts.root();
      return Assembly.of(parts, root, limits, progress);
    }
  }
}
