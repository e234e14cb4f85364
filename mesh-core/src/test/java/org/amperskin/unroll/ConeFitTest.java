package org.amperskin.unroll;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fitted cylinders and cones against the ones the points were taken from. */
class ConeFitTest {
  private static SurfaceMesh moved(SurfaceMesh mesh, long seed, boolean turnedOver) {
    Random random = new Random(seed);
    Vec3 a = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
    Vec3 b = a.cross(new Vec3(random.nextGaussian(), random.nextGaussian(), 1)).unit();
    Vec3 c = a.cross(b);
    Vec3 shift = new Vec3(random.nextDouble() * 100, -30, 12);
    double[] p = mesh.positions().clone();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 q = a.times(mesh.x(v)).plus(b.times(mesh.y(v))).plus(c.times(mesh.z(v))).plus(shift);
      p[3 * v] = q.x();
      p[3 * v + 1] = q.y();
      p[3 * v + 2] = q.z();
    }
    int[] corners = mesh.corners().clone();
    if (turnedOver) {
      for (int f = 0; f < corners.length; f += 3) {
        int k = corners[f];
        corners[f] = corners[f + 1];
        corners[f + 1] = k;
      }
    }
    return SurfaceMesh.of(p, corners);
  }

  private static ConeFit fit(SurfaceMesh mesh, ConeFit.Form form) {
    return ConeFit.of(Patch.of(mesh, Surfaces.all(mesh)), form);
  }

  @ParameterizedTest
  @CsvSource({"60, 1", "90, 2", "180, 3", "300, 4", "360, 5", "60, 6", "180, 7"})
  void cylinderIsFoundWhereverItLies(double degrees, long seed) {
    SurfaceMesh mesh = moved(Surfaces.tube(25, 25, 40, degrees, 90, 20), seed, false);
    ConeFit fit = fit(mesh, ConeFit.Form.BEST);
    assertThat(fit.cone().isCylinder()).as("seed %d", seed).isTrue();
    assertThat(fit.cone().radiusMm()).as("seed %d", seed).isEqualTo(25, within(1e-6));
    assertThat(fit.rmsMm()).isLessThan(1e-6);
    assertThat(fit.cone().inside()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"60, 1", "120, 2", "360, 3"})
  void coneIsFound(double degrees, long seed) {
    SurfaceMesh mesh = moved(Surfaces.tube(30, 18, 40, degrees, 90, 20), seed, false);
    ConeFit fit = fit(mesh, ConeFit.Form.BEST);
    assertThat(Math.abs(fit.cone().halfAngleDegrees()))
        .as("seed %d", seed)
        .isEqualTo(Math.toDegrees(Math.atan2(12, 40)), within(1e-4));
    assertThat(fit.rmsMm()).isLessThan(1e-5);
  }

  @Test
  void boreIsSeenFromInside() {
    ConeFit fit = fit(moved(Surfaces.tube(25, 25, 40, 200, 90, 20), 3, true), ConeFit.Form.BEST);
    assertThat(fit.cone().inside()).isTrue();
    assertThat(fit.cone().radiusMm()).isEqualTo(25, within(1e-6));
  }

  @Test
  void aMeshMadeRowByRowIsSeenAllRound() {
    // 500 rows: every five-hundredth part of the faces begins a row, in one and the same column.
    for (int rows : new int[] {250, 500, 1000}) {
      ConeFit fit = fit(Surfaces.tube(40, 40, 80, 360, 16, rows), ConeFit.Form.CYLINDER);
      assertThat(fit.cone().radiusMm()).as("%d rows", rows).isEqualTo(40, within(1e-6));
    }
  }

  @Test
  void deviationsAreTold() {
    SurfaceMesh barrel =
        Surfaces.sheet(
            80,
            20,
            false,
            (u, v) -> {
              double r = 20 + Math.sin(Math.PI * v);
              return new Vec3(r * Math.cos(2 * u), r * Math.sin(2 * u), 30 * v);
            });
    ConeFit fit = fit(barrel, ConeFit.Form.CYLINDER);
    assertThat(fit.highestMm() - fit.lowestMm()).isEqualTo(1, within(0.05));
  }

  @Test
  void flatPatchIsRefused() {
    SurfaceMesh flat = Surfaces.sheet(5, 5, false, (u, v) -> new Vec3(10 * u, 10 * v, 0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> fit(flat, ConeFit.Form.BEST))
        .withMessageContaining("flat");
  }

  @Test
  void unrollingKeepsLengthsOnTheCone() {
    Cone cone = new Cone(new Vec3(1, 2, 3), new Vec3(0, 0, 1), new Vec3(1, 0, 0), 20, 12, false);
    double[] a = new double[3];
    double[] b = new double[3];
    double sin = Math.sin(Math.toRadians(12));
    double tan = Math.tan(Math.toRadians(12));
    for (double t = -3; t < 3; t += 0.37) {
      for (double z = -20; z < 20; z += 3.1) {
        double r = 20 + z * tan;
        Vec3 p = new Vec3(1 + r * Math.cos(t), 2 + r * Math.sin(t), 3 + z);
        Vec3 q = new Vec3(1 + r * Math.cos(t + 1e-4), 2 + r * Math.sin(t + 1e-4), 3 + z);
        double up = r + 1e-4 * tan;
        Vec3 s = new Vec3(1 + up * Math.cos(t), 2 + up * Math.sin(t), 3 + z + 1e-4);
        cone.unroll(p, cone.turn(p), a);
        assertThat(a[2]).isEqualTo(0, within(1e-12));
        cone.unroll(q, cone.turn(q), b);
        double across = Math.hypot(b[0] - a[0], b[1] - a[1]);
        assertThat(across).isEqualTo(q.minus(p).length(), within(1e-9));
        cone.unroll(s, cone.turn(s), b);
        double along = Math.hypot(b[0] - a[0], b[1] - a[1]);
        assertThat(along).isEqualTo(s.minus(p).length(), within(1e-9));
        assertThat(Math.hypot(a[0], a[1] + 20 / sin)).isEqualTo(r / sin, within(1e-9));
      }
    }
  }
}
