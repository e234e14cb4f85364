package org.amperskin.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.io.PrintFile;
import org.amperskin.testmeshes.Shapes;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;

/**
 * Integral of mean curvature against closed forms: cube of side s 3 pi s, cylinder of radius r and
 * height h pi h + pi^2 r, sphere 4 pi r, torus 2 pi^2 R (Steiner's formula; Santalo, Integral
 * Geometry and Geometric Probability, from memory).
 */
class MeanCurvatureTest {
  private static Optional<MeanCurvature> of(SurfaceMesh mesh) {
    return MeanCurvature.of(MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT));
  }

  private static Optional<MeanCurvature> file(String name) throws Exception {
    return of(PrintFile.read(TestMeshes.folder().resolve(name), 1, Progress.SILENT).mesh());
  }

  @Test
  void cube() throws Exception {
    MeanCurvature cube = file("examples/cube20.stl").orElseThrow();
    assertThat(cube.integralMm()).isCloseTo(3 * Math.PI * 20, within(1e-9));
    assertThat(cube.hollowMm()).isZero();
    assertThat(cube.convex()).isTrue();
  }

  /** Faces that look inward are turned: the body, not the file, is measured. */
  @Test
  void aCubeStoredInsideOutIsTheSame() throws Exception {
    MeanCurvature cube = file("small/v10_inverted.stl").orElseThrow();
    assertThat(cube.integralMm()).isCloseTo(3 * Math.PI * 10, within(1e-9));
    assertThat(cube.convex()).isTrue();
  }

  @Test
  void openSurfacesAndSeveralBodiesHaveNone() throws Exception {
    assertThat(file("small/v11_open_box.stl")).isEmpty();
    assertThat(file("small/v07_cavity.stl")).isEmpty();
    SurfaceMesh two = Shapes.together(Shapes.box(0, 0, 0, 1, 1, 1), Shapes.box(5, 5, 5, 6, 6, 6));
    assertThat(of(two)).isEmpty();
  }

  @Test
  void cylinder() {
    MeanCurvature cylinder = of(Shapes.turnedSolid(720, 5, 0, 5, 30)).orElseThrow();
    assertThat(cylinder.integralMm()).isCloseTo(Math.PI * 30 + Math.PI * Math.PI * 5, within(0.01));
    assertThat(cylinder.convex()).isTrue();
  }

  @Test
  void sphere() {
    MeanCurvature sphere = of(Shapes.sphere(new Vec3(1, 2, 3), 8, 5)).orElseThrow();
    assertThat(sphere.integralMm()).isCloseTo(4 * Math.PI * 8, within(4 * Math.PI * 8 * 2e-3));
    assertThat(sphere.convex()).isTrue();
  }

  /** The inner half of a torus is saddle: the integral is right, and it is not convex. */
  @Test
  void torus() {
    MeanCurvature torus = of(Shapes.torus(10, 3, 360, 180)).orElseThrow();
    double exact = 2 * Math.PI * Math.PI * 10;
    assertThat(torus.integralMm()).isCloseTo(exact, within(exact * 2e-3));
    assertThat(torus.convex()).isFalse();
  }

  /** Two cubes' worth of a step: the hollow edge is one side long and a right angle. */
  @Test
  void aStepHasAHollow() {
    MeanCurvature step = of(Shapes.turnedSolid(720, 10, 0, 10, 10, 5, 10, 5, 20)).orElseThrow();
    // the hollow circle of radius 5: half of length times angle
    assertThat(step.hollowMm()).isCloseTo(0.5 * 2 * Math.PI * 5 * Math.PI / 2, within(0.01));
    assertThat(step.convex()).isFalse();
  }
}
