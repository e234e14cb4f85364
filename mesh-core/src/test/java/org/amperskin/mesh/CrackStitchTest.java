package org.amperskin.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import java.util.function.UnaryOperator;
import java.util.stream.LongStream;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshProblem.Kind;
import org.amperskin.skin.Skin;
import org.amperskin.testmeshes.Patches;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CrackStitchTest {
  private static final double A = 50;
  private static final double B = 30;
  private static final double C = 20;
  private static final double AREA = 2 * (A * B + B * C + C * A);
  private static final double VOLUME = A * B * C;

  private static MeshDiagnosis of(SurfaceMesh mesh) {
    return MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT);
  }

  private static MeshDiagnosis raw(SurfaceMesh mesh) {
    return MeshDiagnosis.unstitched(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT);
  }

  private static MeshProblem stitched(MeshDiagnosis d) {
    return d.problems().stream()
        .filter(p -> p.kind() == Kind.STITCHED)
        .findFirst()
        .orElseThrow(() -> new AssertionError("nothing was stitched"));
  }

  private static double area(SurfaceMesh mesh) {
    double area = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      area += mesh.faceAreaMm2(f);
    }
    return area;
  }

  /** Four steps of a float at this coordinate. */
  private static double tolerance(double mm) {
    return 4 * Math.ulp((float) mm);
  }

  private static void assertBox(MeshDiagnosis d, double error) {
    assertThat(d.closed()).isTrue();
    assertThat(d.bodies()).hasSize(1);
    assertThat(d.volumeMm3().orElseThrow()).isCloseTo(VOLUME, within(error * A));
    assertThat(area(d.mesh())).isCloseTo(AREA, within(error));
    Skin skin = Skin.of(d, Progress.SILENT);
    assertThat(skin.wettedAreaMm2().orElseThrow()).isCloseTo(AREA, within(error));
    assertThat(skin.assumedMm2()).isZero();
    assertThat(skin.errorMm2()).isZero();
    assertThat(skin.sound()).isTrue();
  }

  private static SurfaceMesh boxWithFineTop(int n) {
    return new Patches().box(A, B, C, s -> s == 1 ? new int[] {n, n} : new int[] {1, 1}).mesh();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4, 7, 16, 33})
  void refinedSideOfABoxIsStitched(int n) {
    SurfaceMesh cracked = boxWithFineTop(n);
    assertThat(raw(cracked).closed()).isFalse();
    MeshDiagnosis d = of(cracked);
    assertBox(d, 1e-9);
    assertThat(stitched(d).count()).isEqualTo(4L * (n - 1));
    assertThat(stitched(d).message()).contains(4 * (n - 1) + " corners inside open edges");
    assertThat(d.problems()).hasSize(1);
    assertThat(d.mesh().faceCount()).isEqualTo(cracked.faceCount() + 4 * (n - 1));
  }

  @Test
  void closedMeshIsLeftAsItIs() {
    SurfaceMesh box = boxWithFineTop(1);
    assertThat(of(box).mesh()).isSameAs(box);
    // Two closed boxes less than the rounding apart have no open edge: they are not joined.
    SurfaceMesh two =
        Shapes.together(Shapes.box(0, 0, 0, 10, 10, 10), Shapes.box(10 + 1e-6, 0, 0, 20, 10, 10));
    assertThat(of(two).mesh()).isSameAs(two);
    assertThat(of(two).bodies()).hasSize(2);
  }

  @Test
  void edgesThatSplitEachOtherAreStitched() {
    // Along each edge of the box, two sides with no common factor of cells meet.
    int[][] n = {{2, 3}, {5, 7}, {3, 2}, {9, 4}, {8, 1}, {1, 11}};
    MeshDiagnosis d = of(new Patches().box(A, B, C, s -> n[s]).mesh());
    assertBox(d, 1e-9);
  }

  static LongStream seeds() {
    return LongStream.rangeClosed(1, 40);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void turnedAndRoundedBoxIsStitched(long seed) {
    Random random = new Random(seed);
    int[][] n = new int[6][];
    for (int s = 0; s < 6; s++) {
      n[s] = new int[] {1 + random.nextInt(9), 1 + random.nextInt(9)};
    }
    n[1][0] = n[3][1] + 1;
    UnaryOperator<Vec3> turn = turn(random, 40 * random.nextDouble());
    SurfaceMesh cracked =
        new Patches().box(A, B, C, s -> n[s]).moved(p -> Patches.rounded(turn.apply(p))).mesh();
    assertThat(raw(cracked).closed()).as("seed %d", seed).isFalse();
    MeshDiagnosis d = of(cracked);
    assertThat(d.cracks()).as("seed %d", seed).isZero();
    // Each of the sides, at most 50 mm long, is known to a few steps of a float at 100 mm.
    assertBox(d, 100 * tolerance(100));
    assertThat(stitched(d).areaMm2()).isLessThan(100 * tolerance(100));
    assertThat(Math.abs(area(d.mesh()) - area(cracked)))
        .isCloseTo(stitched(d).areaMm2(), within(1e-9));
    assertSameAgain(d);
  }

  private static UnaryOperator<Vec3> turn(Random random, double offset) {
    Vec3 u = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
    Vec3 w = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    Vec3 v = w.minus(u.times(w.dot(u))).unit();
    Vec3 t = u.cross(v);
    Vec3 o = new Vec3(offset, -offset / 2, offset / 3);
    return p -> o.plus(u.times(p.x())).plus(v.times(p.y())).plus(t.times(p.z()));
  }

  /** Nothing is left to stitch, and stitching again changes nothing. */
  private static void assertSameAgain(MeshDiagnosis d) {
    assertThat(of(d.mesh()).mesh()).isSameAs(d.mesh());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void sidesAStepOfAFloatApartAreJoined(long seed) {
    Random random = new Random(seed);
    Patches box = new Patches().box(A, B, C, s -> new int[] {1 + s % 3, 1 + s % 2});
    UnaryOperator<Vec3> turn = turn(random, 5);
    // Every side is written on its own: its corners come out a step up or down.
    Patches apart = new Patches();
    int side = 0;
    for (int i = 0; i < box.count(); i++) {
      Vec3[] p = new Vec3[3];
      for (int k = 0; k < 3; k++) {
        Vec3 q = turn.apply(box.corner(i, k));
        Random own = new Random(seed * 7919 + sideOf(box, i) * 31 + box.corner(i, k).hashCode());
        p[k] = new Vec3(step(q.x(), own), step(q.y(), own), step(q.z(), own));
      }
      apart.triangle(p[0], p[1], p[2]);
      side += sideOf(box, i);
    }
    assertThat(side).isPositive();
    SurfaceMesh cracked = apart.mesh();
    assertThat(raw(cracked).bodies()).as("seed %d", seed).hasSizeGreaterThan(1);
    MeshDiagnosis d = of(cracked);
    assertThat(d.cracks()).as("seed %d", seed).isZero();
    assertBox(d, 100 * tolerance(60));
    assertThat(stitched(d).message()).contains("beside another");
    assertSameAgain(d);
  }

  private static int sideOf(Patches box, int i) {
    Vec3 n =
        box.corner(i, 1)
            .minus(box.corner(i, 0))
            .cross(box.corner(i, 2).minus(box.corner(i, 0)))
            .unit();
    return (int) Math.round(n.x() + 2 * n.y() + 3 * n.z()) + 3;
  }

  private static double step(double mm, Random random) {
    float f = (float) mm;
    return switch (random.nextInt(3)) {
      case 0 -> Math.nextUp(f);
      case 1 -> Math.nextDown(f);
      default -> f;
    };
  }

  @Test
  void holesThroughAFinePlateAreStitched() {
    // A block with a square hole of 10 mm through it; only top and bottom are cut finely.
    Patches p = new Patches();
    Vec3 x = new Vec3(A, 0, 0);
    Vec3 y = new Vec3(0, B, 0);
    Vec3 z = new Vec3(0, 0, C);
    Vec3 o = new Vec3(0, 0, 0);
    Patches.Cells ring = (i, j) -> i < 10 || i >= 15 || j < 10 || j >= 20;
    p.sheet(z, x, y, 25, 30, ring);
    p.sheet(o, y, x, 30, 25, (i, j) -> ring.has(j, i));
    p.sheet(o, x, z, 1, 1).sheet(y, z, x, 1, 1).sheet(o, z, y, 1, 1).sheet(x, y, z, 1, 1);
    Vec3 q = new Vec3(20, 10, 0);
    Vec3 u = new Vec3(10, 0, 0);
    Vec3 v = new Vec3(0, 10, 0);
    p.sheet(q, z, u, 1, 1).sheet(q.plus(v), u, z, 1, 1);
    p.sheet(q, v, z, 1, 1).sheet(q.plus(u), z, v, 1, 1);
    MeshDiagnosis d = of(p.mesh());
    assertThat(d.closed()).isTrue();
    assertThat(d.volumeMm3().orElseThrow()).isCloseTo(VOLUME - 100 * C, within(1e-8));
    assertThat(Skin.of(d, Progress.SILENT).wettedAreaMm2().orElseThrow())
        .isCloseTo(AREA - 200 + 40 * C, within(1e-8));
  }

  @Test
  void missingCellsOfAFineSideAreHolesOfTheirOwn() {
    // One cell is missing at the rim and one in the middle: the rest pairs, these are capped.
    Patches p = new Patches();
    Vec3 x = new Vec3(A, 0, 0);
    Vec3 y = new Vec3(0, B, 0);
    Vec3 z = new Vec3(0, 0, C);
    Vec3 o = new Vec3(0, 0, 0);
    p.sheet(z, x, y, 10, 6, (i, j) -> !(i == 4 && j == 0) && !(i == 5 && j == 3));
    p.sheet(o, y, x, 1, 1).sheet(o, x, z, 1, 1).sheet(y, z, x, 1, 1);
    p.sheet(o, z, y, 1, 1).sheet(x, y, z, 1, 1);
    MeshDiagnosis d = of(p.mesh());
    assertThat(d.closed()).isFalse();
    assertThat(d.cracks()).isZero();
    Skin skin = Skin.of(d, Progress.SILENT);
    assertThat(skin.wettedAreaMm2().orElseThrow()).isCloseTo(AREA, within(1e-9));
    assertThat(skin.assumedMm2()).isCloseTo(2 * 25, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 5})
  void flatlyRefinedPatchOfASphereIsStitched(int fine) {
    SurfaceMesh sphere = Shapes.sphere(new Vec3(7, -3, 11), 25, 3);
    Patches p = new Patches();
    int refined = 0;
    for (int f = 0; f < sphere.faceCount(); f++) {
      Vec3[] c = new Vec3[3];
      for (int k = 0; k < 3; k++) {
        int v = sphere.corner(f, k);
        c[k] = Patches.rounded(new Vec3(sphere.x(v), sphere.y(v), sphere.z(v)));
      }
      boolean patch = f % 3 == 0 || c[0].z() > 20;
      refined += patch ? 1 : 0;
      cut(p, c, patch ? fine : 1);
    }
    assertThat(refined).isBetween(100, 400);
    SurfaceMesh cracked = p.moved(Patches::rounded).mesh();
    MeshDiagnosis whole = of(sphere);
    MeshDiagnosis d = of(cracked);
    assertThat(raw(cracked).closed()).isFalse();
    assertThat(d.closed()).isTrue();
    assertThat(d.bodies()).hasSize(1);
    assertThat(area(d.mesh())).isCloseTo(whole.areaMm2(), within(0.01));
    assertThat(d.volumeMm3().orElseThrow())
        .isCloseTo(whole.volumeMm3().orElseThrow(), within(0.05));
    assertThat(Skin.of(d, Progress.SILENT).wettedAreaMm2().orElseThrow())
        .isCloseTo(whole.areaMm2(), within(0.01));
    assertSameAgain(d);
  }

  /** Cuts a triangle into n x n, each corner worked out from the triangle's first. */
  private static void cut(Patches p, Vec3[] c, int n) {
    for (int j = 0; j < n; j++) {
      for (int i = 0; i + j < n; i++) {
        p.triangle(in(c, i, j, n), in(c, i + 1, j, n), in(c, i, j + 1, n));
        if (i + j + 1 < n) {
          p.triangle(in(c, i + 1, j, n), in(c, i + 1, j + 1, n), in(c, i, j + 1, n));
        }
      }
    }
  }

  private static Vec3 in(Vec3[] c, int i, int j, int n) {
    double u = (double) i / n;
    double v = (double) j / n;
    return i == n
        ? c[1]
        : j == n ? c[2] : c[0].plus(c[1].minus(c[0]).times(u)).plus(c[2].minus(c[0]).times(v));
  }

  @Test
  void realGapStaysOpenAndIsTold() {
    for (double gap : new double[] {0.05, 1e-3, 3 * tolerance(A)}) {
      MeshDiagnosis d = of(gapped(gap));
      assertThat(d.closed()).isFalse();
      assertThat(d.has(Kind.STITCHED)).isFalse();
      assertThat(d.has(Kind.OPEN_EDGE)).isTrue();
      assertThat(d.bodies()).hasSize(2);
    }
    assertThat(of(gapped(0.4 * tolerance(A))).closed()).isTrue();
  }

  private static SurfaceMesh gapped(double gap) {
    Vec3 lift = new Vec3(0, 0, gap);
    Vec3 x = new Vec3(A, 0, 0);
    Vec3 y = new Vec3(0, B, 0);
    Patches p = new Patches().sheet(new Vec3(0, 0, C).plus(lift), x, y, 4, 4);
    SurfaceMesh box = boxWithFineTop(1);
    int[] c = box.corners();
    for (int f = 0; f < box.faceCount(); f++) {
      if (f < 2 || f > 3) {
        Vec3[] q = new Vec3[3];
        for (int k = 0; k < 3; k++) {
          q[k] = new Vec3(box.x(c[3 * f + k]), box.y(c[3 * f + k]), box.z(c[3 * f + k]));
        }
        p.triangle(q[0], q[1], q[2]);
      }
    }
    return p.mesh();
  }

  @Test
  void threeLayersOnOneEdgeAreLeftAloneAndNotStoodBehind() {
    Vec3 x = new Vec3(A, 0, 0);
    Vec3 y = new Vec3(0, B, 0);
    Vec3 z = new Vec3(0, 0, C);
    Vec3 o = new Vec3(0, 0, 0);
    // Two fine sheets and a coarse one end on the same line: which two belong together?
    Patches p = new Patches().sheet(o, x, y, 1, 1).sheet(o, z, x, 2, 2);
    p.sheet(o, x, z.times(-1).plus(y), 3, 3);
    SurfaceMesh mesh = p.mesh();
    MeshDiagnosis d = of(mesh);
    assertThat(d.mesh()).isSameAs(mesh);
    assertThat(d.cracks()).isPositive();
    assertThat(Skin.of(d, Progress.SILENT).wettedAreaMm2()).isEmpty();
    assertThat(Skin.of(d, Progress.SILENT).doubts().get(0)).contains("T-junctions, 6 places");
  }

  @Test
  void layersOnEachOtherAreNotSewnIntoABag() {
    Vec3 x = new Vec3(A, 0, 0);
    Vec3 y = new Vec3(0, B, 0);
    Vec3 o = new Vec3(0, 0, 0);
    SurfaceMesh same = new Patches().sheet(o, x, y, 1, 1).sheet(o, x, y, 3, 3).mesh();
    assertThat(of(same).mesh()).isSameAs(same);
    SurfaceMesh facing = new Patches().sheet(o, x, y, 1, 1).sheet(o, y, x, 3, 3).mesh();
    assertThat(of(facing).mesh()).isSameAs(facing);
  }

  @Test
  void flippedFineSideIsStitchedAndToldAsFlipped() {
    Patches p = new Patches();
    Vec3 x = new Vec3(A, 0, 0);
    Vec3 y = new Vec3(0, B, 0);
    Vec3 z = new Vec3(0, 0, C);
    Vec3 o = new Vec3(0, 0, 0);
    p.sheet(z, y, x, 5, 5);
    p.sheet(o, y, x, 1, 1).sheet(o, x, z, 1, 1).sheet(y, z, x, 1, 1);
    p.sheet(o, z, y, 1, 1).sheet(x, y, z, 1, 1);
    MeshDiagnosis d = of(p.mesh());
    assertThat(d.closed()).isTrue();
    assertThat(d.has(Kind.FLIPPED)).isTrue();
    assertThat(Skin.of(d, Progress.SILENT).wettedAreaMm2().orElseThrow())
        .isCloseTo(AREA, within(1e-9));
  }

  @Test
  void repeatedCoarseFacesStayRepeats() {
    SurfaceMesh box = boxWithFineTop(6);
    int[] c = Arrays.copyOf(box.corners(), box.corners().length + 12);
    System.arraycopy(c, c.length - 24, c, c.length - 12, 12);
    MeshDiagnosis d = of(SurfaceMesh.of(box.positions(), c));
    assertThat(d.has(Kind.DUPLICATE)).isTrue();
    assertBoxSkin(d);
    assertThat(of(d.mesh()).closed()).isTrue();
  }

  private static void assertBoxSkin(MeshDiagnosis d) {
    assertThat(d.closed()).isTrue();
    assertThat(Skin.of(d, Progress.SILENT).wettedAreaMm2().orElseThrow())
        .isCloseTo(AREA, within(1e-9));
  }

  @Test
  void facesWithoutAreaThatFillACrackAreReplaced() {
    // Some programs close a crack by a triangle of no area: without it the edges are open.
    Patches p = new Patches().box(A, B, C, s -> s == 1 ? new int[] {2, 1} : new int[] {1, 1});
    p.triangle(new Vec3(0, 0, C), new Vec3(A, 0, C), new Vec3(A / 2, 0, C));
    p.triangle(new Vec3(A, B, C), new Vec3(0, B, C), new Vec3(A / 2, B, C));
    MeshDiagnosis d = of(p.mesh());
    assertThat(d.has(Kind.DEGENERATE)).isTrue();
    assertBoxSkin(d);
  }

  @Test
  void piecesKeepTheirFaceAndGroup() {
    SurfaceMesh box = boxWithFineTop(5);
    int[] groups = new int[box.faceCount()];
    for (int f = 0; f < groups.length; f++) {
      groups[f] = f < 2 ? 0 : f < 52 ? 1 : 2;
    }
    java.util.List<String> names = java.util.List.of("below", "above", "around");
    MeshDiagnosis d = of(SurfaceMesh.of(box.positions(), box.corners(), groups, names));
    double[] area = new double[3];
    double[] byFace = new double[box.faceCount()];
    for (int f = 0; f < d.mesh().faceCount(); f++) {
      area[d.mesh().group(f)] += d.mesh().faceAreaMm2(f);
      byFace[d.parent(f)] += d.mesh().faceAreaMm2(f);
      assertThat(d.mesh().group(f)).isEqualTo(groups[d.parent(f)]);
      assertThat(d.stitched(f)).isEqualTo(d.mesh().group(f) == 2 && onTop(box, d.parent(f)));
    }
    assertThat(area).containsExactly(new double[] {A * B, A * B, 2 * C * (A + B)}, within(1e-9));
    for (int f = 0; f < byFace.length; f++) {
      assertThat(byFace[f]).isCloseTo(box.faceAreaMm2(f), within(1e-9));
    }
  }

  /** True if an edge of the face lies in the top. */
  private static boolean onTop(SurfaceMesh mesh, int f) {
    int high = 0;
    for (int k = 0; k < 3; k++) {
      high += mesh.z(mesh.corner(f, k)) == C ? 1 : 0;
    }
    return high == 2;
  }

  /**
   * Triangles on a grid of four points a side: edges lie on edges everywhere. Whatever is stitched,
   * each face keeps its area and no more edge is open than was.
   */
  @ParameterizedTest
  @MethodSource("seeds")
  void tangledFacesDoNotBecomeWorse(long seed) {
    Random random = new Random(seed);
    int done = 0;
    for (int round = 0; round < 40; round++) {
      Patches p = new Patches();
      int flat = random.nextInt(3);
      for (int i = 0; i < 4 + random.nextInt(30); i++) {
        p.triangle(point(random, flat), point(random, flat), point(random, flat));
      }
      SurfaceMesh mesh = p.mesh();
      MeshDiagnosis before = raw(mesh);
      MeshDiagnosis after = of(mesh);
      double[] byFace = new double[mesh.faceCount()];
      for (int f = 0; f < after.mesh().faceCount(); f++) {
        byFace[after.parent(f)] += after.mesh().faceAreaMm2(f);
      }
      for (int f = 0; f < byFace.length; f++) {
        assertThat(byFace[f])
            .as("seed %d round %d face %d", seed, round, f)
            .isCloseTo(mesh.faceAreaMm2(f), within(1e-12));
      }
      assertThat(openLength(after))
          .as("seed %d round %d", seed, round)
          .isLessThanOrEqualTo(openLength(before) + 1e-9);
      if (after.mesh() != mesh) {
        done++;
        assertThat(openLength(after)).isLessThan(openLength(before));
        assertSameAgain(after);
      }
    }
    assertThat(done).as("seed %d", seed).isPositive();
  }

  private static Vec3 point(Random random, int flat) {
    return new Vec3(random.nextInt(4), random.nextInt(4), random.nextInt(flat + 1));
  }

  private static double openLength(MeshDiagnosis d) {
    SurfaceMesh m = d.mesh();
    double length = 0;
    for (int h = 0; h < 3 * m.faceCount(); h++) {
      if (d.mate(h) == MeshDiagnosis.OPEN) {
        int a = m.corners()[h];
        int b = m.corner(h / 3, (h % 3 + 1) % 3);
        length += new Vec3(m.x(a) - m.x(b), m.y(a) - m.y(b), m.z(a) - m.z(b)).length();
      }
    }
    return length;
  }

  @Test
  void sameMeshOnOneAndTwoThreads() throws Exception {
    int[][] n = {{20, 31}, {50, 47}, {33, 12}, {29, 14}, {18, 11}, {16, 11}};
    UnaryOperator<Vec3> turn = turn(new Random(5), 12);
    SurfaceMesh mesh =
        new Patches().box(A, B, C, s -> n[s]).moved(p -> Patches.rounded(turn.apply(p))).mesh();
    MeshDiagnosis one = onThreads(1, mesh);
    MeshDiagnosis two = onThreads(2, mesh);
    assertThat(one.closed()).isTrue();
    assertThat(two.mesh().corners()).isEqualTo(one.mesh().corners());
    assertThat(two.problems()).isEqualTo(one.problems());
  }

  private static MeshDiagnosis onThreads(int threads, SurfaceMesh mesh) throws Exception {
    ForkJoinPool pool = new ForkJoinPool(threads);
    try {
      return pool.submit(() -> of(mesh)).get();
    } finally {
      pool.shutdown();
    }
  }
}
