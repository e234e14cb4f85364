package org.amperskin.skin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.LongStream;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Patches;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SkinTest {
  private static final SurfaceMesh CUBE = Shapes.box(0, 0, 0, 10, 10, 10);

  private static Skin of(SurfaceMesh mesh) {
    return Skin.of(
        MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT), Progress.SILENT);
  }

  private static double wetted(SurfaceMesh... parts) {
    Skin skin = of(Shapes.together(parts));
    assertThat(skin.errorMm2()).isLessThanOrEqualTo(1e-3 * skin.areaMm2());
    return skin.wettedAreaMm2().orElseThrow();
  }

  @Test
  void cubeInCubeIsNotWettedInside() {
    SurfaceMesh inner = Shapes.box(3, 3, 3, 7, 7, 7);
    assertThat(wetted(CUBE, Shapes.turned(inner))).isCloseTo(600, within(1e-9));
    assertThat(wetted(CUBE, inner)).isCloseTo(600, within(1e-9));
    Skin skin = of(Shapes.together(CUBE, Shapes.turned(inner)));
    assertThat(skin.parts()).hasSize(1);
    assertThat(skin.parts().get(0).message()).contains("12 faces inside body 1");
  }

  @Test
  void overlappingFlushBoxesCountTheirUnion() {
    assertThat(wetted(CUBE, Shapes.box(5, 0, 0, 15, 10, 10))).isCloseTo(800, within(1e-9));
  }

  @Test
  void piecesOfOneFaceAreToldAsOneFace() {
    // Two end faces of two triangles each lie inside, four flush sides of two triangles are
    // doubled.
    Skin skin = of(Shapes.together(CUBE, Shapes.box(5, 0, 0, 15, 10, 10)));
    assertThat(skin.parts().stream().map(SkinPart::message))
        .containsExactly(
            "2 faces inside body 1: no liquid there, 100.000 mm2",
            "2 faces inside body 2: no liquid there, 100.000 mm2",
            "8 faces on other faces, counted once, 200.000 mm2");
  }

  @Test
  void touchingBoxesLoseTheWallBetweenThem() {
    assertThat(wetted(CUBE, Shapes.box(10, 0, 0, 20, 10, 10))).isCloseTo(1000, within(1e-9));
    assertThat(wetted(CUBE, Shapes.box(10, 2, 3, 20, 8, 9)))
        .isCloseTo(600 - 36 + 4 * 60 + 36, within(1e-9));
  }

  @Test
  void weldedTouchingBoxesLoseTheWallBetweenThem() {
    // The same two boxes on common vertices: the wall is one face stored twice.
    double[] p = {
      0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0, 0, 0, 10, 10, 0, 10, 10, 10, 10, 0, 10, 10, 20, 0, 0,
      20, 10, 0, 20, 0, 10, 20, 10, 10
    };
    int[] left = CUBE.corners();
    int[] map = {1, 8, 9, 2, 5, 10, 11, 6};
    int[] c = Arrays.copyOf(left, 72);
    for (int i = 0; i < 36; i++) {
      c[36 + i] = map[left[i]];
    }
    Skin skin = of(SurfaceMesh.of(p, c));
    assertThat(skin.areaMm2()).isCloseTo(1000, within(1e-9));
  }

  @Test
  void doubledFacetsCountOnce() {
    int[] c = Arrays.copyOf(CUBE.corners(), 42);
    System.arraycopy(CUBE.corners(), 0, c, 36, 6);
    assertThat(wetted(SurfaceMesh.of(CUBE.positions(), c))).isCloseTo(600, within(1e-9));
  }

  @Test
  void insideOutAndPartlyFlippedCubesAreWettedOutside() {
    assertThat(wetted(Shapes.turned(CUBE))).isCloseTo(600, within(1e-9));
    int[] c = CUBE.corners().clone();
    for (int f : new int[] {1, 4, 7}) {
      int k = c[3 * f + 1];
      c[3 * f + 1] = c[3 * f + 2];
      c[3 * f + 2] = k;
    }
    Skin skin = of(SurfaceMesh.of(CUBE.positions(), c));
    assertThat(skin.areaMm2()).isCloseTo(600, within(1e-9));
    MeshDiagnosis again = MeshDiagnosis.of(skin.mesh(), MeshDiagnosis.Search.ALL, Progress.SILENT);
    assertThat(again.volumeMm3().orElseThrow()).isCloseTo(1000, within(1e-9));
  }

  @Test
  void missingFacetIsClosedAndTold() {
    SurfaceMesh open = SurfaceMesh.of(CUBE.positions(), Arrays.copyOf(CUBE.corners(), 33));
    Skin skin = of(open);
    assertThat(skin.wettedAreaMm2().orElseThrow()).isCloseTo(600, within(1e-9));
    assertThat(skin.assumedMm2()).isCloseTo(50, within(1e-9));
    assertThat(skin.parts()).anyMatch(p -> p.kind() == SkinPart.Kind.ASSUMED);
  }

  @Test
  void openBoxIsClosedByAnAssumedSide() {
    SurfaceMesh open = SurfaceMesh.of(CUBE.positions(), Arrays.copyOf(CUBE.corners(), 30));
    Skin skin = of(open);
    assertThat(skin.wettedAreaMm2().orElseThrow()).isCloseTo(600, within(1e-9));
    assertThat(skin.assumedMm2()).isCloseTo(100, within(1e-9));
  }

  @Test
  void sheetIsWetOnBothSides() {
    SurfaceMesh sheet = Shapes.sheet(new Vec3(0, 0, 0), new Vec3(10, 0, 0), new Vec3(0, 10, 0), 3);
    Skin skin = of(sheet);
    assertThat(skin.wettedAreaMm2().orElseThrow()).isCloseTo(200, within(1e-9));
    assertThat(skin.parts()).anyMatch(p -> p.kind() == SkinPart.Kind.SHEET);
  }

  @Test
  void ventedVoidIsWetAndClosedVoidIsNot() {
    // Six slabs of 2 mm around a void of 16 mm: 2400 mm2 outside, nothing of the inside.
    Skin closed = of(hollowOfSlabs(0));
    assertThat(closed.areaMm2()).isCloseTo(2400, within(1e-9));
    assertThat(closed.areaMm2()).isCloseTo(BoxUnion.reachedArea(slabs(0)), within(1e-9));
    assertThat(closed.parts()).anyMatch(p -> p.kind() == SkinPart.Kind.ENCLOSED);
    Skin vented = of(hollowOfSlabs(2));
    assertThat(vented.areaMm2()).isCloseTo(BoxUnion.reachedArea(slabs(2)), within(1e-9));
    assertThat(vented.areaMm2()).isGreaterThan(2400 + 1000);
    assertThat(vented.parts()).noneMatch(p -> p.kind() == SkinPart.Kind.ENCLOSED);
  }

  /** Six overlapping slabs around a void; the top one ends {@code gap} before the side wall. */
  private static double[][] slabs(double gap) {
    return new double[][] {
      {0, 0, 0, 20, 20, 2},
      {0, 0, 18, 20 - gap - (gap > 0 ? 2 : 0), 20, 20},
      {0, 0, 0, 20, 2, 20},
      {0, 18, 0, 20, 20, 20},
      {0, 0, 0, 2, 20, 20},
      {18, 0, 0, 20, 20, 20}
    };
  }

  private static SurfaceMesh hollowOfSlabs(double gap) {
    return Shapes.together(
        Arrays.stream(slabs(gap))
            .map(b -> Shapes.box(b[0], b[1], b[2], b[3], b[4], b[5]))
            .toArray(SurfaceMesh[]::new));
  }

  @Test
  void turnedBoxesKeepTheirUnion() {
    // A rigid turn moves every face off the axes: coplanar sides then hold only to rounding.
    SurfaceMesh both = Shapes.together(CUBE, Shapes.box(4, 1, 2, 15, 11, 9));
    double flat = of(both).areaMm2();
    double[] p = both.positions().clone();
    double c = Math.cos(0.3);
    double s = Math.sin(0.3);
    for (int i = 0; i < p.length; i += 3) {
      double x = c * p[i] - s * p[i + 1];
      double y = s * p[i] + c * p[i + 1];
      p[i] = x;
      p[i + 1] = c * y - s * p[i + 2];
      p[i + 2] = s * y + c * p[i + 2];
    }
    assertThat(of(SurfaceMesh.of(p, both.corners())).areaMm2()).isCloseTo(flat, within(1e-6));
  }

  @Test
  void hollowPartWithADrainHoleIsWetInside() {
    // A ball of 125 mm radius, hollow, with a round tube of 1 mm radius through its wall.
    SurfaceMesh hollow = Shapes.drainedBall(125, 120, 1, 5);
    Skin skin = of(hollow);
    assertThat(skin.areaMm2()).isCloseTo(facesArea(hollow), within(1e-6));
  }

  private static double facesArea(SurfaceMesh mesh) {
    double area = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      area += mesh.faceAreaMm2(f);
    }
    return area;
  }

  @Test
  void overlappingSpheresLoseTheirCaps() {
    double r = 10;
    double d = 7;
    // Each sphere loses a cap of height r - d/2 (Archimedes).
    double truth = 2 * (4 * Math.PI * r * r - 2 * Math.PI * r * (r - d / 2));
    SurfaceMesh one = Shapes.sphere(new Vec3(0, 0, 0), r, 5);
    SurfaceMesh two = Shapes.sphere(new Vec3(d * 0.6, d * 0.8, 0), r, 5);
    double area = wetted(one, two);
    // Facets take 1 - (surface of the polyhedron over the sphere) of both.
    double facets = of(one).areaMm2() / (4 * Math.PI * r * r);
    assertThat(area / (truth * facets)).isCloseTo(1, within(3e-4));
  }

  @Test
  void torusHalfSunkInABoxKeepsHalfItsSurface() {
    // Pappus: a torus has area 4 pi^2 R r. The box covers x > 0 and loses the two disks of radius r
    // where the tube passes through its side.
    double big = 20;
    double small = 6;
    double box = 2 * (40 * 60 + 60 * 20 + 40 * 20);
    double truth = box + 2 * Math.PI * Math.PI * big * small - 2 * Math.PI * small * small;
    double[] errors = new double[2];
    for (int i = 0; i < 2; i++) {
      SurfaceMesh torus = Shapes.torus(big, small, 60 << i, 24 << i);
      Skin skin = of(Shapes.together(torus, Shapes.box(0, -30, -10, 40, 30, 10)));
      errors[i] = Math.abs(skin.wettedAreaMm2().orElseThrow() - truth) / truth;
    }
    assertThat(errors[0]).isLessThan(3e-3);
    assertThat(errors[0] / errors[1]).isBetween(3.0, 5.0);
  }

  @Test
  void crackedMeshIsStitched() {
    // The top of the cube is meshed finer than its sides: corners end on the middle of edges.
    SurfaceMesh sides = SurfaceMesh.of(CUBE.positions(), cornersWithoutTop());
    SurfaceMesh top = Shapes.sheet(new Vec3(0, 0, 10), new Vec3(10, 0, 0), new Vec3(0, 10, 0), 4);
    Skin skin = of(Shapes.together(sides, top));
    assertThat(skin.wettedAreaMm2().orElseThrow()).isCloseTo(600, within(1e-9));
    assertThat(skin.assumedMm2()).isZero();
  }

  @Test
  void crackThatDoesNotPairGivesNoWettedArea() {
    // Two fine tops on the same coarse sides: which of them belongs there is a guess.
    SurfaceMesh sides = SurfaceMesh.of(CUBE.positions(), cornersWithoutTop());
    Vec3 x = new Vec3(10, 0, 0);
    Vec3 y = new Vec3(0, 10, 0);
    SurfaceMesh top = Shapes.sheet(new Vec3(0, 0, 10), x, y, 4);
    Skin skin = of(Shapes.together(sides, top, Shapes.sheet(new Vec3(0, 0, 10), x, y, 3)));
    assertThat(skin.wettedAreaMm2()).isEmpty();
    assertThat(skin.doubts().get(0)).contains("T-junctions");
  }

  private static int[] cornersWithoutTop() {
    int[] c = CUBE.corners();
    int[] kept = new int[30];
    System.arraycopy(c, 0, kept, 0, 6);
    System.arraycopy(c, 12, kept, 6, 24);
    return kept;
  }

  @Test
  void openBodiesAreSheetsOnRequest() {
    SurfaceMesh open = SurfaceMesh.of(CUBE.positions(), Arrays.copyOf(CUBE.corners(), 30));
    MeshDiagnosis d = MeshDiagnosis.of(open, MeshDiagnosis.Search.ALL, Progress.SILENT);
    Skin skin = Skin.of(d, Skin.OpenBodies.SHEETS, Progress.SILENT);
    assertThat(skin.areaMm2()).isCloseTo(1000, within(1e-9));
    assertThat(skin.assumedMm2()).isZero();
  }

  static LongStream seeds() {
    return LongStream.rangeClosed(1, 100);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void randomBoxesAgreeWithAnExactSweep(long seed) {
    Random random = new Random(seed);
    int n = 6 + random.nextInt(20);
    double[][] b = new double[n][6];
    SurfaceMesh[] boxes = new SurfaceMesh[n];
    boolean whole = seed % 2 == 0;
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < 3; k++) {
        double at = random.nextDouble() * 20;
        double size = 2 + random.nextDouble() * 10;
        b[i][k] = whole ? Math.rint(at) : at;
        b[i][k + 3] = b[i][k] + (whole ? Math.rint(size) : size);
      }
      boxes[i] = Shapes.box(b[i][0], b[i][1], b[i][2], b[i][3], b[i][4], b[i][5]);
    }
    Skin skin = of(Shapes.together(boxes));
    double truth = BoxUnion.reachedArea(b);
    assertThat(Math.abs(skin.areaMm2() - truth))
        .as("seed %d, %d boxes, area %s, truth %s", seed, n, skin.areaMm2(), truth)
        .isLessThanOrEqualTo(skin.errorMm2() + 1e-9 * truth);
    assertThat(skin.errorMm2()).isLessThanOrEqualTo(1e-3 * truth);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void randomCrackedBoxesAgreeWithAnExactSweep(long seed) {
    Random random = new Random(seed);
    int n = 2 + random.nextInt(6);
    double[][] b = new double[n][6];
    Patches all = new Patches();
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < 3; k++) {
        double at = random.nextDouble() * 12;
        double size = 2 + random.nextDouble() * 10;
        b[i][k] = at;
        b[i][k + 3] = at + size;
      }
      double[] c = b[i];
      Vec3 o = new Vec3(c[0], c[1], c[2]);
      Patches box =
          new Patches()
              .box(
                  c[3] - c[0],
                  c[4] - c[1],
                  c[5] - c[2],
                  s -> new int[] {1 + random.nextInt(4), 1 + random.nextInt(4)})
              .moved(p -> p.plus(o));
      for (int t = 0; t < box.count(); t++) {
        all.triangle(box.corner(t, 0), box.corner(t, 1), box.corner(t, 2));
      }
    }
    Skin skin = of(all.mesh());
    double truth = BoxUnion.reachedArea(b);
    assertThat(skin.doubts()).as("seed %d, %d boxes", seed, n).isEmpty();
    assertThat(Math.abs(skin.areaMm2() - truth))
        .as("seed %d, %d boxes, area %s, truth %s", seed, n, skin.areaMm2(), truth)
        .isLessThanOrEqualTo(skin.errorMm2() + 1e-5 * truth);
  }

  /** Boxes on whole coordinates: walls pass through one another's mesh edges and diagonals. */
  @ParameterizedTest
  @MethodSource("seeds")
  void flushBoxesAgreeWithAnExactSweep(long seed) {
    Random random = new Random(1000 + seed);
    int n = 2 + random.nextInt(3);
    double[][] b = new double[n][6];
    Patches welded = new Patches();
    SurfaceMesh[] apart = new SurfaceMesh[n];
    for (int i = 0; i < n; i++) {
      int cells = 1 + random.nextInt(4);
      for (int k = 0; k < 3; k++) {
        b[i][k] = random.nextInt(8);
        b[i][k + 3] = b[i][k] + 1 + random.nextInt(8);
      }
      double[] c = b[i];
      Vec3 o = new Vec3(c[0], c[1], c[2]);
      Patches box =
          new Patches()
              .box(c[3] - c[0], c[4] - c[1], c[5] - c[2], s -> new int[] {cells, cells})
              .moved(p -> p.plus(o));
      for (int t = 0; t < box.count(); t++) {
        welded.triangle(box.corner(t, 0), box.corner(t, 1), box.corner(t, 2));
      }
      apart[i] = box.mesh();
    }
    double truth = BoxUnion.reachedArea(b);
    for (SurfaceMesh mesh : List.of(Shapes.together(apart), welded.mesh())) {
      Skin skin = of(mesh);
      assertThat(Math.abs(skin.areaMm2() - truth))
          .as("seed %d, %d boxes, area %s, truth %s", seed, n, skin.areaMm2(), truth)
          .isLessThanOrEqualTo(skin.errorMm2() + 1e-9 * truth);
      assertThat(skin.doubts()).as("seed %d", seed).isEmpty();
    }
  }

  @Test
  void sameBytesOnOneAndTwoThreads() throws Exception {
    SurfaceMesh m =
        Shapes.together(
            Shapes.sphere(new Vec3(0, 0, 0), 20, 4), Shapes.sphere(new Vec3(9, 4, 10), 15, 4));
    double[] one = onThreads(1, m);
    assertThat(onThreads(2, m)).isEqualTo(one);
    assertThat(one.length).isGreaterThan(100);
  }

  private static double[] onThreads(int threads, SurfaceMesh m) throws Exception {
    ForkJoinPool pool = new ForkJoinPool(threads);
    try {
      return pool.submit(() -> of(m).mesh().positions()).get();
    } finally {
      pool.shutdown();
    }
  }
}
