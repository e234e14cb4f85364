package org.amperskin.skin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.LongStream;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class DisplacementTest {
  private static final SurfaceMesh CUBE = Shapes.box(0, 0, 0, 10, 10, 10);

  private static Skin skin(SurfaceMesh... parts) {
    return Skin.of(
        MeshDiagnosis.of(Shapes.together(parts), MeshDiagnosis.Search.ALL, Progress.SILENT),
        Progress.SILENT);
  }

  /** The volume, with an error of nothing. */
  private static double exact(SurfaceMesh... parts) {
    Displacement d = skin(parts).displacement();
    assertThat(d.errorMm3()).isZero();
    return d.volumeMm3().orElseThrow();
  }

  @Test
  void sharedVolumeCountsOnce() {
    assertThat(exact(CUBE, Shapes.box(5, 0, 0, 15, 10, 10))).isCloseTo(1500, within(1e-9));
    assertThat(exact(CUBE, Shapes.box(5, 5, 5, 15, 15, 15))).isCloseTo(1875, within(1e-9));
    assertThat(exact(CUBE, Shapes.box(10, 0, 0, 20, 10, 10))).isCloseTo(2000, within(1e-9));
    assertThat(exact(CUBE, Shapes.box(3, 3, 3, 7, 7, 7))).isCloseTo(1000, within(1e-9));
  }

  @Test
  void closedVoidIsDisplaced() {
    SurfaceMesh inner = Shapes.turned(Shapes.box(3, 3, 3, 7, 7, 7));
    assertThat(exact(CUBE, inner)).isCloseTo(1000, within(1e-9));
  }

  @Test
  void ventedVoidIsNotDisplaced() {
    SurfaceMesh hollow = Shapes.drainedBall(125, 120, 1, 5);
    double volume = exact(hollow);
    assertThat(volume).isCloseTo(Facts.volumeMm3(hollow), within(1e-9 * volume));
    // The shell less the bore; facets take their part of both balls.
    double shell = 4 * Math.PI / 3 * (Math.pow(125, 3) - Math.pow(120, 3)) - Math.PI * 5;
    assertThat(volume).isCloseTo(shell, within(0.02 * shell));
    // Were the inside dry, it would be eight times as much.
    assertThat(4 * Math.PI / 3 * Math.pow(125, 3)).isGreaterThan(8 * volume);
  }

  @Test
  void insideOutFlippedAndDoubledFacetsDisplaceTheSame() {
    assertThat(exact(Shapes.turned(CUBE))).isCloseTo(1000, within(1e-9));
    int[] doubled = Arrays.copyOf(CUBE.corners(), 42);
    System.arraycopy(CUBE.corners(), 0, doubled, 36, 6);
    assertThat(exact(SurfaceMesh.of(CUBE.positions(), doubled))).isCloseTo(1000, within(1e-9));
    int[] flipped = CUBE.corners().clone();
    for (int f : new int[] {1, 4, 7}) {
      int k = flipped[3 * f + 1];
      flipped[3 * f + 1] = flipped[3 * f + 2];
      flipped[3 * f + 2] = k;
    }
    assertThat(exact(SurfaceMesh.of(CUBE.positions(), flipped))).isCloseTo(1000, within(1e-9));
  }

  @Test
  void turnedBoxesDisplaceTheirUnion() {
    SurfaceMesh both = Shapes.together(CUBE, Shapes.box(4, 1, 2, 15, 11, 9));
    double union = 1000 + 11 * 10 * 7 - 6 * 9 * 7;
    double c = Math.cos(0.3);
    double s = Math.sin(0.3);
    double[] p = both.positions().clone();
    for (int i = 0; i < p.length; i += 3) {
      double x = c * p[i] - s * p[i + 1];
      double y = s * p[i] + c * p[i + 1];
      p[i] = x;
      p[i + 1] = c * y - s * p[i + 2];
      p[i + 2] = s * y + c * p[i + 2];
    }
    Displacement d = skin(SurfaceMesh.of(p, both.corners())).displacement();
    assertThat(d.volumeMm3().orElseThrow()).isCloseTo(union, within(d.errorMm3() + 1e-6));
    assertThat(d.errorMm3()).isLessThan(1e-3 * union);
  }

  @Test
  void voidWithoutProofWidensTheError() {
    // Six slabs around 16 x 16 x 16 mm: no single body holds the void, and no way in is found.
    double[][] slabs = {
      {0, 0, 0, 20, 20, 2},
      {0, 0, 18, 20, 20, 20},
      {0, 0, 0, 20, 2, 20},
      {0, 18, 0, 20, 20, 20},
      {0, 0, 0, 2, 20, 20},
      {18, 0, 0, 20, 20, 20}
    };
    Displacement d = skin(boxes(slabs)).displacement();
    assertThat(d.volumeMm3().orElseThrow()).isCloseTo(8000, within(1e-9));
    assertThat(BoxUnion.displacedVolume(slabs)).isCloseTo(8000, within(1e-9));
    assertThat(d.errorMm3()).isCloseTo(16 * 16 * 16, within(1e-6));
  }

  @Test
  void openSurfaceGivesNoVolumeAndSaysWhy() {
    SurfaceMesh open = SurfaceMesh.of(CUBE.positions(), Arrays.copyOf(CUBE.corners(), 33));
    Displacement d = skin(open).displacement();
    assertThat(d.volumeMm3()).isEmpty();
    assertThat(d.why()).contains("open");
    MeshDiagnosis unseen =
        MeshDiagnosis.of(CUBE, MeshDiagnosis.Search.NO_OVERLAPS, Progress.SILENT);
    Displacement not = Skin.of(unseen, Progress.SILENT).displacement();
    assertThat(not.volumeMm3()).isEmpty();
    assertThat(not.why()).contains("not looked for");
  }

  @Test
  void overlappingSpheresDisplaceTwoBallsLessTheirLens() {
    double r = 10;
    double d = 7;
    // The lens is two caps of height h = r - d/2, each pi h^2 (3 r - h) / 3 (Archimedes).
    double h = r - d / 2;
    double truth = 2 * (4 * Math.PI / 3 * r * r * r) - 2 * (Math.PI * h * h * (3 * r - h) / 3);
    double[] errors = new double[3];
    for (int i = 0; i < 3; i++) {
      SurfaceMesh one = Shapes.sphere(new Vec3(0, 0, 0), r, 3 + i);
      SurfaceMesh two = Shapes.sphere(new Vec3(d * 0.6, d * 0.8, 0), r, 3 + i);
      Displacement found = skin(one, two).displacement();
      assertThat(found.errorMm3()).isLessThan(1e-3 * truth);
      errors[i] = truth - found.volumeMm3().orElseThrow();
    }
    // Facets inside a ball: too little, by a quarter as much each time they are halved.
    assertThat(errors[2]).isPositive().isLessThan(2e-3 * truth);
    assertThat(errors[0] / errors[1]).isBetween(3.6, 4.4);
    assertThat(errors[1] / errors[2]).isBetween(3.6, 4.4);
  }

  static LongStream seeds() {
    return LongStream.rangeClosed(1, 100);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void randomBoxesAgreeWithAnExactSweep(long seed) {
    Random random = new Random(seed);
    int n = 4 + random.nextInt(20);
    double[][] b = new double[n][6];
    boolean whole = seed % 2 == 0;
    for (double[] box : b) {
      for (int k = 0; k < 3; k++) {
        double at = random.nextDouble() * 20;
        double size = 2 + random.nextDouble() * 10;
        box[k] = whole ? Math.rint(at) : at;
        box[k + 3] = box[k] + (whole ? Math.rint(size) : size);
      }
    }
    Skin skin = skin(boxes(b));
    Displacement d = skin.displacement();
    double truth = BoxUnion.displacedVolume(b);
    assertThat(Math.abs(d.volumeMm3().orElseThrow() - truth))
        .as("seed %d, %d boxes, %s, truth %s", seed, n, d, truth)
        .isLessThanOrEqualTo(d.errorMm3() + 1e-9 * truth);
    if (skin.parts().stream().noneMatch(p -> p.kind() == SkinPart.Kind.ENCLOSED)) {
      assertThat(d.errorMm3()).as("seed %d", seed).isLessThanOrEqualTo(1e-3 * truth);
    }
  }

  private static SurfaceMesh boxes(double[][] b) {
    return Shapes.together(
        Arrays.stream(b)
            .map(x -> Shapes.box(x[0], x[1], x[2], x[3], x[4], x[5]))
            .toArray(SurfaceMesh[]::new));
  }
}
