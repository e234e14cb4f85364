package org.amperskin.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The stored demo files are what the generator makes, and what they claim to be. */
class DemoPartsTest {
  /**
   * The parts with their designed numbers and their frozen ones; area and volume were summed once
   * by another program in another language, from the stored files.
   */
  enum Part {
    VISOR(
        "visor.stl",
        DemoParts.VISOR_THICKNESS_MM,
        3,
        34_144,
        44544.99012901667,
        50976.52283241905,
        1003.68),
    SHOULDER(
        "shoulder-plate.obj",
        DemoParts.SHOULDER_THICKNESS_MM,
        3,
        32_736,
        50113.099808330095,
        72716.47471698593,
        603.21);

    final String file;
    final double thicknessMm;
    final int holes;
    final int triangles;
    final double areaMm2;
    final double volumeMm3;
    final double edgeMm;

    Part(
        String file,
        double thicknessMm,
        int holes,
        int triangles,
        double areaMm2,
        double volumeMm3,
        double edgeMm) {
      this.file = file;
      this.thicknessMm = thicknessMm;
      this.holes = holes;
      this.triangles = triangles;
      this.areaMm2 = areaMm2;
      this.volumeMm3 = volumeMm3;
      this.edgeMm = edgeMm;
    }

    TriangleSoup stored() throws Exception {
      byte[] bytes = Files.readAllBytes(folder().resolve(file));
      return file.endsWith(".stl") ? readStl(bytes) : readObj(bytes);
    }

    TriangleSoup made(int fineness) {
      SurfaceMesh mesh = this == VISOR ? DemoParts.visor(fineness) : DemoParts.shoulder(fineness);
      double[] corners = new double[9 * mesh.faceCount()];
      for (int c = 0; c < 3 * mesh.faceCount(); c++) {
        System.arraycopy(mesh.positions(), 3 * mesh.corners()[c], corners, 3 * c, 3);
      }
      return TriangleSoup.of(corners);
    }

    MidSurface surface() {
      return this == VISOR ? new VisorSurface() : new ShoulderSurface();
    }

    Patch patch(int fineness) {
      return this == VISOR ? DemoPatches.visor(fineness) : DemoPatches.shoulder(fineness);
    }
  }

  private static Path folder() {
    return TestMeshes.folder().resolve("demo");
  }

  @Test
  void generatorMakesTheStoredBytes(@TempDir Path again) throws Exception {
    DemoParts.main(new String[] {again.toString()});
    List<String> made;
    try (Stream<Path> files = Files.list(again)) {
      made = files.map(p -> p.getFileName().toString()).sorted().toList();
    }
    assertThat(made)
        .containsExactly(
            "shoulder-chevrons.svg",
            "shoulder-lattice.svg",
            "shoulder-plate.obj",
            "visor-chevrons.svg",
            "visor-lattice.svg",
            "visor.stl");
    for (String name : made) {
      assertThat(Files.mismatch(again.resolve(name), folder().resolve(name)))
          .as("first byte that differs in test-meshes/demo/" + name)
          .isEqualTo(-1);
    }
  }

  @ParameterizedTest
  @EnumSource
  void isClosedAndOutwardWithTheDesignedHoles(Part part) throws Exception {
    TriangleSoup soup = part.stored();
    assertThat(soup.faceCount()).isEqualTo(part.triangles);
    assertThat(soup.sidesWithoutOneOppositeTwin()).isZero();
    assertThat(soup.bodies()).isEqualTo(1);
    assertThat(soup.verticesWithMoreThanOneFan()).isZero();
    assertThat(soup.repeatedFaces()).isZero();
    assertThat(soup.smallestFaceMm2()).isGreaterThan(0.005);
    // Euler-Poincare: a closed surface with g handles has V - E + F = 2 - 2 g.
    assertThat(soup.eulerCharacteristic()).isEqualTo(2 - 2 * part.holes);
    assertThat(soup.volumeMm3()).isPositive();
  }

  @ParameterizedTest
  @EnumSource
  void facesDoNotCutEachOther(Part part) throws Exception {
    assertThat(part.stored().crossings()).isEmpty();
  }

  @Test
  void crossingSearchSeesACrossing() {
    double[] corners = {
      0, 0, 0, 10, 0, 0, 0, 10, 0, //
      2, 2, -1, 2, 2, 1, 9, 9, 1
    };
    assertThat(TriangleSoup.of(corners).crossings()).hasSize(1);
  }

  @ParameterizedTest
  @EnumSource
  void areaAndVolumeStay(Part part) throws Exception {
    TriangleSoup soup = part.stored();
    assertThat(soup.areaMm2()).isCloseTo(part.areaMm2, within(1e-9 * part.areaMm2));
    assertThat(soup.volumeMm3()).isCloseTo(part.volumeMm3, within(1e-9 * part.volumeMm3));
  }

  /**
   * Area and volume of the body of all points near a surface follow from the surface's area, edge
   * length and Euler characteristic alone (H. Weyl, "On the Volume of Tubes", American Journal of
   * Mathematics 61, 1939, cited from memory; half tubes along the edges, Gauss-Bonnet for the
   * curvature terms).
   */
  @ParameterizedTest
  @EnumSource
  void areaAndVolumeFollowFromTheMiddleSurface(Part part) throws Exception {
    double[] coarse = middleAreaAndEdge(part, 1);
    double[] fine = middleAreaAndEdge(part, 2);
    double[] finer = middleAreaAndEdge(part, 4);
    for (int k = 0; k < 2; k++) {
      // Second-order convergence: each doubling quarters the error.
      assertThat((fine[k] - coarse[k]) / (finer[k] - fine[k])).isBetween(3.0, 5.0);
    }
    double area = finer[0] + (finer[0] - fine[0]) / 3;
    double edge = finer[1] + (finer[1] - fine[1]) / 3;
    double r = part.thicknessMm / 2;
    int chi = 1 - part.holes;
    double bodyArea = 2 * area + Math.PI * r * edge + 4 * Math.PI * r * r * chi;
    double bodyVolume =
        2 * r * area + Math.PI / 2 * r * r * edge + 4 * Math.PI / 3 * r * r * r * chi;
    TriangleSoup soup = part.stored();
    TriangleSoup finerSoup = part.made(2);
    double[] off = {soup.areaMm2() / bodyArea - 1, soup.volumeMm3() / bodyVolume - 1};
    double[] finerOff = {
      finerSoup.areaMm2() / bodyArea - 1, finerSoup.volumeMm3() / bodyVolume - 1
    };
    assertThat(off[0]).as("area, relative").isCloseTo(0, within(0.005));
    assertThat(off[1]).as("volume, relative").isCloseTo(0, within(0.01));
    // What is left is the facets' doing: with twice as many in each direction it is a quarter.
    assertThat(off[0] / finerOff[0]).as("area %s %s", off[0], finerOff[0]).isBetween(3.0, 5.0);
    assertThat(off[1] / finerOff[1]).as("volume %s %s", off[1], finerOff[1]).isBetween(3.0, 5.0);
    assertThat(edge).isCloseTo(part.edgeMm, within(0.01));
  }

  @ParameterizedTest
  @EnumSource
  void isAsThickAsDesigned(Part part) throws Exception {
    double[] thickness = part.stored().thicknessesMm(61);
    assertThat(thickness.length).isGreaterThan(300);
    // A shot from a round edge goes through its middle and on into the plate, so may be longer;
    // the facets take a few hundredths at most.
    int near = 0;
    for (double t : thickness) {
      assertThat(t).isGreaterThan(0.95 * part.thicknessMm);
      near += t < 1.03 * part.thicknessMm ? 1 : 0;
    }
    assertThat((double) near / thickness.length).isGreaterThan(0.8);
  }

  @Test
  void facesLookTowardMinusY() throws Exception {
    for (Part part : Part.values()) {
      TriangleSoup soup = part.stored();
      double[] low = soup.corner(false);
      double[] high = soup.corner(true);
      assertThat(soup.frontFaceLooksTowardMinusY()).isTrue();
      assertThat(high[0] + low[0]).as("mirror-like about x = 0 (mm)").isCloseTo(0, within(0.01));
      assertThat(high[1]).isBetween(20.0, 40.0);
    }
  }

  @Test
  void manifestTellsTheSameNumbers() {
    for (Part part : Part.values()) {
      TestMeshes.Entry told = TestMeshes.named("demo/" + part.file);
      assertThat(told.triangles()).hasValue(part.triangles);
      assertThat(told.areaMm2()).hasValue(part.areaMm2);
      assertThat(told.volumeMm3()).hasValue(part.volumeMm3);
    }
  }

  @Test
  void artworkIsAtTrueSizeWithAFewThousandEdgesAtMost() throws Exception {
    Map<String, double[]> wanted =
        Map.of(
            "visor-chevrons.svg", new double[] {200, 105, 0.4154995},
            "visor-lattice.svg", new double[] {200, 105, 0.2990211},
            "shoulder-chevrons.svg", new double[] {170, 150, 0.3244218},
            "shoulder-lattice.svg", new double[] {170, 150, 0.2986087});
    for (Map.Entry<String, double[]> one : wanted.entrySet()) {
      ArtworkAreas art =
          ArtworkAreas.read(
              new ByteArrayInputStream(Files.readAllBytes(folder().resolve(one.getKey()))));
      double[] want = one.getValue();
      assertThat(art.widthMm()).isEqualTo(want[0]);
      assertThat(art.heightMm()).isEqualTo(want[1]);
      assertThat(art.edges()).isBetween(100, 3000);
      assertThat(art.clearFraction()).as(one.getKey()).isCloseTo(want[2], within(1e-6));
    }
  }

  private static double[] middleAreaAndEdge(Part part, int fineness) {
    Patch patch = part.patch(fineness);
    MidSurface surface = part.surface();
    double[][] points = new double[patch.pointCount()][];
    for (int p = 0; p < points.length; p++) {
      double[] uv = patch.pointAt(p);
      points[p] = surface.at(uv[0], uv[1]);
    }
    double area = 0;
    for (int[] c : patch.cells()) {
      double[] d = difference(points[c[2]], points[c[0]]);
      double[] e = difference(points[c[3]], points[c[1]]);
      area += MidSurface.length(MidSurface.cross(d, e)) / 2;
    }
    double edge = 0;
    for (int[] loop : patch.loops()) {
      for (int i = 0; i < loop.length; i++) {
        edge += MidSurface.length(difference(points[loop[(i + 1) % loop.length]], points[loop[i]]));
      }
    }
    return new double[] {area, edge};
  }

  private static double[] difference(double[] a, double[] b) {
    return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
  }

  private static TriangleSoup readStl(byte[] bytes) {
    ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    int faces = in.getInt(80);
    assertThat(bytes.length).isEqualTo(84 + 50 * faces);
    double[] corners = new double[9 * faces];
    for (int f = 0; f < faces; f++) {
      for (int k = 0; k < 9; k++) {
        corners[9 * f + k] = in.getFloat(84 + 50 * f + 12 + 4 * k);
      }
    }
    return TriangleSoup.of(corners);
  }

  private static TriangleSoup readObj(byte[] bytes) {
    List<double[]> vertices = new ArrayList<>();
    List<Double> corners = new ArrayList<>();
    for (String line : new String(bytes, StandardCharsets.UTF_8).split("\n")) {
      String[] words = line.split(" ");
      if (words[0].equals("v")) {
        vertices.add(
            new double[] {
              Double.parseDouble(words[1]),
              Double.parseDouble(words[2]),
              Double.parseDouble(words[3])
            });
      } else if (words[0].equals("f")) {
        for (int k = 1; k <= 3; k++) {
          for (double x : vertices.get(Integer.parseInt(words[k]) - 1)) {
            corners.add(x);
          }
        }
      }
    }
    return TriangleSoup.of(corners.stream().mapToDouble(Double::doubleValue).toArray());
  }
}
