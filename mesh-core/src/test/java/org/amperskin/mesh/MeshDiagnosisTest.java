package org.amperskin.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshProblem.Kind;
import org.amperskin.skin.Skin;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MeshDiagnosisTest {
  private static MeshDiagnosis of(SurfaceMesh mesh) {
    return MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT);
  }

  private static MeshProblem problem(MeshDiagnosis d, Kind kind) {
    return d.problems().stream().filter(p -> p.kind() == kind).findFirst().orElseThrow();
  }

  @Test
  void cleanCubeHasNoProblem() {
    MeshDiagnosis d = of(Shapes.box(0, 0, 0, 10, 10, 10));
    assertThat(d.areaMm2()).isEqualTo(600);
    assertThat(d.volumeMm3().orElseThrow()).isCloseTo(1000, within(1e-9));
    assertThat(d.closed()).isTrue();
    assertThat(d.bodies()).hasSize(1);
    assertThat(d.problems()).isEmpty();
    assertThat(Skin.of(d, Progress.SILENT).wettedAreaMm2()).hasValue(600);
  }

  @Test
  void voidInsideIsFoundAndNotWetted() {
    SurfaceMesh m =
        Shapes.together(
            Shapes.box(0, 0, 0, 10, 10, 10), Shapes.turned(Shapes.box(3, 3, 3, 7, 7, 7)));
    MeshDiagnosis d = of(m);
    assertThat(d.areaMm2()).isEqualTo(696);
    assertThat(d.volumeMm3().orElseThrow()).isCloseTo(936, within(1e-9));
    assertThat(problem(d, Kind.INNER_SHELL).areaMm2()).isCloseTo(96, within(1e-9));
    assertThat(Skin.of(d, Progress.SILENT).wettedAreaMm2()).hasValue(600);
  }

  @Test
  void solidInsideAVoidIsAsUnreachableAsTheVoid() {
    SurfaceMesh m =
        Shapes.together(
            Shapes.box(0, 0, 0, 20, 20, 20),
            Shapes.turned(Shapes.box(3, 3, 3, 17, 17, 17)),
            Shapes.box(5, 5, 5, 6, 6, 6));
    assertThat(problem(of(m), Kind.INNER_SHELL).count()).isEqualTo(2);
    assertThat(Skin.of(of(m), Progress.SILENT).wettedAreaMm2()).hasValue(2400);
  }

  @Test
  void crossingBoxesAreFoundWithTheirBodies() {
    SurfaceMesh m = Shapes.together(Shapes.box(0, 0, 0, 10, 10, 10), Shapes.box(5, 3, 3, 15, 7, 7));
    MeshDiagnosis d = of(m);
    assertThat(d.has(Kind.OVERLAP)).isTrue();
    assertThat(problem(d, Kind.OVERLAP).message()).contains("bodies 1 and 2");
    assertThat(d.crossings().count()).isEqualTo((int) problem(d, Kind.OVERLAP).count());
  }

  @Test
  void facesLyingOnEachOtherAreAnOverlap() {
    SurfaceMesh m =
        Shapes.together(Shapes.box(0, 0, 0, 10, 10, 10), Shapes.box(10, 2, 2, 20, 8, 8));
    assertThat(of(m).has(Kind.OVERLAP)).isTrue();
  }

  @Test
  void boxesThatTouchAlongALineOrApartAreNone() {
    SurfaceMesh edge =
        Shapes.together(Shapes.box(0, 0, 0, 10, 10, 10), Shapes.box(10, 10, 2, 20, 20, 8));
    SurfaceMesh apart =
        Shapes.together(Shapes.box(0, 0, 0, 10, 10, 10), Shapes.box(10.001, 0, 0, 20, 10, 10));
    assertThat(of(edge).has(Kind.OVERLAP)).isFalse();
    assertThat(of(apart).has(Kind.OVERLAP)).isFalse();
    assertThat(of(apart).bodies()).hasSize(2);
    assertThat(Skin.of(of(apart), Progress.SILENT).wettedAreaMm2()).isPresent();
  }

  @Test
  void insideOutCubeIsToldAndTurned() {
    MeshDiagnosis d = of(Shapes.turned(Shapes.box(0, 0, 0, 10, 10, 10)));
    assertThat(d.volumeMm3().orElseThrow()).isCloseTo(-1000, within(1e-9));
    assertThat(d.has(Kind.INSIDE_OUT)).isTrue();
    MeshDiagnosis turned = of(Skin.of(d, Progress.SILENT).mesh());
    assertThat(turned.volumeMm3().orElseThrow()).isCloseTo(1000, within(1e-9));
    assertThat(Skin.of(d, Progress.SILENT).wettedAreaMm2()).hasValue(600);
  }

  @Test
  void missingFaceOpensThreeEdgesAndTakesTheVolume() {
    SurfaceMesh cube = Shapes.box(0, 0, 0, 10, 10, 10);
    MeshDiagnosis d =
        of(SurfaceMesh.of(cube.positions(), java.util.Arrays.copyOf(cube.corners(), 33)));
    assertThat(problem(d, Kind.OPEN_EDGE).count()).isEqualTo(3);
    assertThat(d.closed()).isFalse();
    assertThat(d.volumeMm3()).isEmpty();
  }

  @Test
  void oneTurnedFaceIsFlippedAgainstItsThreeNeighbours() {
    int[] c = Shapes.box(0, 0, 0, 10, 10, 10).corners().clone();
    int k = c[4];
    c[4] = c[5];
    c[5] = k;
    MeshDiagnosis d = of(SurfaceMesh.of(Shapes.box(0, 0, 0, 10, 10, 10).positions(), c));
    assertThat(problem(d, Kind.FLIPPED).count()).isEqualTo(3);
    assertThat(d.volumeMm3()).isEmpty();
  }

  @Test
  void repeatedAndDegenerateFacesAreCountedAndLeftOut() {
    SurfaceMesh cube = Shapes.box(0, 0, 0, 10, 10, 10);
    int[] c = java.util.Arrays.copyOf(cube.corners(), 36 + 9);
    c[36] = c[1];
    c[37] = c[2];
    c[38] = c[0];
    c[39] = c[5];
    c[40] = c[4];
    c[41] = c[3];
    c[42] = 2;
    c[43] = 2;
    c[44] = 3;
    MeshDiagnosis d = of(SurfaceMesh.of(cube.positions(), c));
    assertThat(problem(d, Kind.DUPLICATE).count()).isEqualTo(2);
    assertThat(problem(d, Kind.DUPLICATE).areaMm2()).isCloseTo(100, within(1e-9));
    assertThat(problem(d, Kind.DEGENERATE).count()).isEqualTo(1);
    assertThat(d.areaMm2()).isCloseTo(700, within(1e-9));
    assertThat(d.closed()).isTrue();
    assertThat(Skin.of(d, Progress.SILENT).wettedAreaMm2().orElseThrow())
        .isCloseTo(600, within(1e-9));
  }

  @Test
  void edgeOfThreeFacesIsNonManifoldWithItsPlace() {
    double[] p = {0, 0, 0, 10, 0, 0, 0, 10, 0, 0, 0, 10, 0, -10, 0};
    MeshDiagnosis d = of(SurfaceMesh.of(p, new int[] {0, 1, 2, 0, 1, 3, 1, 0, 4}));
    MeshProblem crowded = problem(d, Kind.NON_MANIFOLD);
    assertThat(crowded.count()).isEqualTo(1);
    assertThat(crowded.where()).isEqualTo(new Vec3(5, 0, 0));
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14, 15, 16})
  void crossingsAgreeWithTryingAllPairsOfBoxes(long seed) {
    Random random = new Random(seed);
    double[][] b = new double[14][6];
    SurfaceMesh[] boxes = new SurfaceMesh[b.length];
    for (int i = 0; i < b.length; i++) {
      for (int k = 0; k < 3; k++) {
        b[i][k] = random.nextInt(60);
        b[i][k + 3] = b[i][k] + 1 + random.nextInt(9);
      }
      boxes[i] = Shapes.box(b[i][0], b[i][1], b[i][2], b[i][3], b[i][4], b[i][5]);
    }
    boolean meet = false;
    for (int i = 0; i < b.length; i++) {
      for (int j = 0; j < i; j++) {
        meet |= surfacesMeet(b[i], b[j]);
      }
    }
    assertThat(of(Shapes.together(boxes)).has(Kind.OVERLAP)).as("seed " + seed).isEqualTo(meet);
  }

  /**
   * Boxes whose surfaces share more than a line: they overlap in two axes and meet in the third.
   */
  private static boolean surfacesMeet(double[] a, double[] b) {
    int open = 0;
    int touching = 0;
    boolean aInB = true;
    boolean bInA = true;
    for (int k = 0; k < 3; k++) {
      double overlap = Math.min(a[k + 3], b[k + 3]) - Math.max(a[k], b[k]);
      open += overlap > 0 ? 1 : 0;
      touching += overlap == 0 ? 1 : 0;
      aInB &= a[k] > b[k] && a[k + 3] < b[k + 3];
      bInA &= b[k] > a[k] && b[k + 3] < a[k + 3];
    }
    return open == 3 && !aInB && !bInA || open == 2 && touching == 1;
  }

  @Test
  void measuresGrowWithScaleAndStayUnderMovesAndFaceOrder() {
    SurfaceMesh ball = Shapes.sphere(new Vec3(1, 2, 3), 7, 4);
    MeshDiagnosis a = of(ball);
    double[] p = ball.positions().clone();
    for (int i = 0; i < p.length; i += 3) {
      double x = p[i];
      p[i] = 2 * -p[i + 1] + 100;
      p[i + 1] = 2 * x - 5;
      p[i + 2] = 2 * p[i + 2] + 1;
    }
    int[] c = ball.corners().clone();
    for (int f = 0; f < c.length / 6; f++) {
      int g = c.length / 3 - 1 - f;
      for (int k = 0; k < 3; k++) {
        int t = c[3 * f + k];
        c[3 * f + k] = c[3 * g + k];
        c[3 * g + k] = t;
      }
    }
    MeshDiagnosis b = of(SurfaceMesh.of(p, c));
    assertThat(b.areaMm2() / a.areaMm2()).isCloseTo(4, within(1e-12));
    assertThat(b.volumeMm3().orElseThrow() / a.volumeMm3().orElseThrow())
        .isCloseTo(8, within(1e-12));
  }

  @Test
  void sameBytesOnOneAndTwoThreads() throws Exception {
    SurfaceMesh m =
        Shapes.together(
            Shapes.sphere(new Vec3(0, 0, 0), 20, 5), Shapes.sphere(new Vec3(9, 4, 10), 15, 5));
    assertThat(onThreads(1, m)).isEqualTo(onThreads(2, m)).contains("OVERLAP");
  }

  private static String onThreads(int threads, SurfaceMesh m) throws Exception {
    ForkJoinPool pool = new ForkJoinPool(threads);
    try {
      return pool.submit(() -> of(m).problems() + " " + of(m).areaMm2()).get();
    } finally {
      pool.shutdown();
    }
  }
}
