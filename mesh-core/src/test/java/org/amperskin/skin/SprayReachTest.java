package org.amperskin.skin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.concurrent.ForkJoinPool;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SprayReachTest {
  private static Skin skin(SurfaceMesh mesh) {
    return Skin.of(
        MeshDiagnosis.of(mesh, MeshDiagnosis.Search.ALL, Progress.SILENT), Progress.SILENT);
  }

  private static SprayReach spray(Skin skin) {
    return SprayReach.of(skin, Progress.SILENT);
  }

  @Test
  void convexPartIsPaintedAllOver() {
    Skin ball = skin(Shapes.sphere(new Vec3(5, -3, 2), 20, 4));
    SprayReach s = spray(ball);
    assertThat(s.areaMm2()).isCloseTo(ball.areaMm2(), within(1e-6));
    for (int f = 0; f < ball.mesh().faceCount(); f++) {
      assertThat(s.share(f)).as("face %d", f).isGreaterThan(0.98);
    }
    Skin cube = skin(Shapes.box(0, 0, 0, 10, 20, 30));
    assertThat(spray(cube).areaMm2()).isEqualTo(cube.areaMm2());
  }

  @Test
  void hollowPartWithADrainHoleIsWetInsideButNotPainted() {
    // 250 mm across, one round hole of 2 mm.
    Skin skin = skin(Shapes.drainedBall(125, 120, 1, 5));
    SprayReach s = spray(skin);
    double inside = 0;
    double outside = 0;
    double paintedInside = 0;
    double paintedOutside = 0;
    SurfaceMesh m = skin.mesh();
    for (int f = 0; f < m.faceCount(); f++) {
      int v = m.corner(f, 0);
      boolean outer = Math.hypot(Math.hypot(m.x(v), m.y(v)), m.z(v)) > 122;
      double area = m.faceAreaMm2(f);
      inside += outer ? 0 : area;
      outside += outer ? area : 0;
      paintedInside += !outer && s.painted(f) ? area : 0;
      paintedOutside += outer && s.painted(f) ? area : 0;
    }
    assertThat(inside).isGreaterThan(0.9 * 4 * Math.PI * 120 * 120);
    assertThat(paintedInside).isLessThan(1e-3 * inside);
    assertThat(paintedOutside).isGreaterThan(0.999 * outside);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1, 2})
  void floorOfARoundWellSeesItsViewFactor(double depthOverRadius) {
    // From the middle of the floor of a round well of radius R and depth H the opening has the view
    // factor R^2 / (R^2 + H^2): J. R. Howell, A Catalog of Radiation Heat Transfer Configuration
    // Factors (from memory; it is the cosine-weighted solid angle of a disk).
    double r = 20;
    double h = r * depthOverRadius;
    SurfaceMesh well = Shapes.well(r, h, 64);
    Skin skin = skin(well);
    SprayReach s = spray(skin);
    double expected = r * r / (r * r + h * h);
    double sum = 0;
    int n = 0;
    for (int f = 0; f < skin.mesh().faceCount(); f++) {
      SurfaceMesh m = skin.mesh();
      boolean floor = true;
      double far = 0;
      for (int k = 0; k < 3; k++) {
        int v = m.corner(f, k);
        floor &= Math.abs(m.z(v) + h) < 1e-9;
        far = Math.max(far, Math.hypot(m.x(v), m.y(v)));
      }
      if (floor && far < r / 4) {
        sum += s.share(f);
        n++;
      }
    }
    assertThat(n).isGreaterThan(10);
    assertThat(sum / n).isCloseTo(expected, within(0.06));
  }

  @Test
  void narrowGapBetweenPlatesStaysBare() {
    SurfaceMesh plates =
        Shapes.together(Shapes.box(0, 0, 0, 100, 100, 5), Shapes.box(0, 0, 7, 100, 100, 12));
    Skin skin = skin(plates);
    SprayReach s = spray(skin);
    double gap = 2 * 100 * 100;
    assertThat(s.areaMm2()).isLessThanOrEqualTo(skin.areaMm2() - gap + s.errorMm2());
    assertThat(s.areaMm2()).isGreaterThanOrEqualTo(skin.areaMm2() - gap - 1e-6);
  }

  @Test
  void sameBytesOnOneAndTwoThreads() throws Exception {
    Skin skin = skin(Shapes.drainedBall(30, 25, 3, 4));
    assertThat(onThreads(2, skin)).isEqualTo(onThreads(1, skin));
  }

  private static double[] onThreads(int threads, Skin skin) throws Exception {
    ForkJoinPool pool = new ForkJoinPool(threads);
    try {
      return pool.submit(
              () -> {
                SprayReach s = spray(skin);
                double[] shares = new double[skin.mesh().faceCount()];
                for (int f = 0; f < shares.length; f++) {
                  shares[f] = s.share(f);
                }
                return shares;
              })
          .get();
    } finally {
      pool.shutdown();
    }
  }
}
