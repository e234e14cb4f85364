package org.amperskin.demo;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Makes the demo parts and their artwork: a visor and a shoulder plate of the Lantern Lane Theatre
 * Workshop, which is invented, as are the parts.
 *
 * <p>Guaranteed: the same bytes on every run and machine (strict arithmetic, coordinates rounded to
 * a micrometre). Run it from the top folder with
 *
 * <pre>
 * mvn -q -B -pl mesh-core test-compile
 * java -cp mesh-core/target/classes:mesh-core/target/test-classes \
 *     org.amperskin.demo.DemoParts test-meshes/demo
 * </pre>
 */
public final class DemoParts {
  /** Thickness of the visor (mm). */
  static final double VISOR_THICKNESS_MM = 2.4;

  /** Thickness of the shoulder plate (mm). */
  static final double SHOULDER_THICKNESS_MM = 3.0;

  private static final String MAKER = "Lantern Lane Theatre Workshop (invented)";

  private DemoParts() {}

  /**
   * Writes all files.
   *
   * @param args the folder
   * @throws IOException if a file cannot be written
   */
  public static void main(String[] args) throws IOException {
    if (args.length != 1) {
      throw new IllegalArgumentException("one folder to write to, got " + args.length + " words");
    }
    Path folder = Path.of(args[0]);
    Files.createDirectories(folder);
    for (Map.Entry<String, byte[]> file : files().entrySet()) {
      Files.write(folder.resolve(file.getKey()), file.getValue());
    }
  }

  /** Name and content of each file. */
  static Map<String, byte[]> files() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("visor.stl", stl(visor(1), MAKER + " - visor, mm"));
    files.put("shoulder-plate.obj", obj(shoulder(1), MAKER + " - shoulder plate, mm"));
    files.put("visor-chevrons.svg", utf8(DemoArtwork.visorChevrons().svg()));
    files.put("visor-lattice.svg", utf8(DemoArtwork.visorLattice().svg()));
    files.put("shoulder-chevrons.svg", utf8(DemoArtwork.shoulderChevrons().svg()));
    files.put("shoulder-lattice.svg", utf8(DemoArtwork.shoulderLattice().svg()));
    return files;
  }

  /** The visor; fineness 1 is the stored one. */
  static SurfaceMesh visor(int fineness) {
    return Shell.of(
        new VisorSurface(),
        DemoPatches.visor(fineness),
        VISOR_THICKNESS_MM,
        6 * fineness,
        List.of("slit", "rim", "straps", "straps"));
  }

  /** The shoulder plate; fineness 1 is the stored one. */
  static SurfaceMesh shoulder(int fineness) {
    return Shell.of(
        new ShoulderSurface(),
        DemoPatches.shoulder(fineness),
        SHOULDER_THICKNESS_MM,
        6 * fineness,
        List.of("slots", "slots", "slots", "rim"));
  }

  private static byte[] stl(SurfaceMesh mesh, String header) {
    ByteBuffer out = ByteBuffer.allocate(84 + 50 * mesh.faceCount()).order(ByteOrder.LITTLE_ENDIAN);
    out.put(utf8(header)).position(80);
    out.putInt(mesh.faceCount());
    for (int f = 0; f < mesh.faceCount(); f++) {
      double[][] p = new double[3][];
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(f, k);
        p[k] = new double[] {mesh.x(v), mesh.y(v), mesh.z(v)};
      }
      double[] zero = new double[3];
      double[] normal =
          MidSurface.unit(
              MidSurface.cross(
                  MidSurface.step(p[1], -1, p[0], 0, zero),
                  MidSurface.step(p[2], -1, p[0], 0, zero)));
      putFloats(out, normal);
      for (double[] corner : p) {
        putFloats(out, corner);
      }
      out.putShort((short) 0);
    }
    return out.array();
  }

  private static void putFloats(ByteBuffer out, double[] values) {
    for (double value : values) {
      out.putFloat((float) value + 0f); // + 0f: no negative zero
    }
  }

  private static byte[] obj(SurfaceMesh mesh, String comment) {
    StringBuilder out = new StringBuilder("# " + comment + "\n");
    for (int v = 0; v < mesh.vertexCount(); v++) {
      out.append("v ")
          .append(FilmDrawing.number(mesh.x(v)))
          .append(' ')
          .append(FilmDrawing.number(mesh.y(v)))
          .append(' ')
          .append(FilmDrawing.number(mesh.z(v)))
          .append('\n');
    }
    int group = -1;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (mesh.group(f) != group) {
        group = mesh.group(f);
        out.append("g ").append(mesh.groupNames().get(group)).append('\n');
      }
      out.append("f ")
          .append(mesh.corner(f, 0) + 1)
          .append(' ')
          .append(mesh.corner(f, 1) + 1)
          .append(' ')
          .append(mesh.corner(f, 2) + 1)
          .append('\n');
    }
    return utf8(out.toString());
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
