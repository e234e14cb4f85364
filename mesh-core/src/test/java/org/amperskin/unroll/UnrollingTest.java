package org.amperskin.unroll;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Unrolled patches against what geometry says. */
class UnrollingTest {
  private static final Vec3 UP = new Vec3(0, 0, 1);

  private static Unrolling unrolled(SurfaceMesh mesh, Vec3 centre, Vec3 up) {
    return Unrolling.of(Patch.of(mesh, Surfaces.all(mesh)), centre, up);
  }

  private static double width(Unrolling u) {
    double low = 1e9;
    double high = -1e9;
    for (Unrolling.Edge e : u.outline()) {
      low = Math.min(low, e.x0());
      high = Math.max(high, e.x0());
    }
    return high - low;
  }

  private static double height(Unrolling u) {
    double low = 1e9;
    double high = -1e9;
    for (Unrolling.Edge e : u.outline()) {
      low = Math.min(low, e.y0());
      high = Math.max(high, e.y0());
    }
    return high - low;
  }

  @ParameterizedTest
  @CsvSource({"120, 240", "300, 600", "360, 720"})
  void cylinderKeepsItsLengths(double degrees, int columns) {
    Unrolling u =
        unrolled(Surfaces.tube(20, 20, 30, degrees, columns, 40), new Vec3(20, 0, 15), UP);
    assertThat(u.ratio()).isEqualTo(1, within(1e-9));
    assertThat(width(u)).isEqualTo(20 * Math.toRadians(degrees), within(1e-3 * 20));
    assertThat(height(u)).isEqualTo(30, within(1e-9));
    assertThat(u.hasSeams()).isEqualTo(degrees == 360);
  }

  @ParameterizedTest
  @ValueSource(doubles = {90, 180, 360})
  void coneKeepsItsLengths(double degrees) {
    // Slant height 40/cos(atan(10/40)); the sector's radii are r/sin(half-angle).
    Unrolling u =
        unrolled(
            Surfaces.tube(20, 10, 40, degrees, (int) (2 * degrees), 40), new Vec3(15, 0, 20), UP);
    assertThat(u.ratio()).isEqualTo(1, within(1e-9));
    double sin = 10 / Math.hypot(10, 40);
    double inner = 10 / sin;
    double outer = 20 / sin;
    double half = Math.min(Math.toRadians(degrees) * sin / 2, Math.PI / 2);
    assertThat(width(u))
        .isEqualTo(2 * outer * Math.sin(half), within(1e-3 * 2 * outer * Math.sin(half)));
    double slant = outer - inner * Math.cos(Math.toRadians(degrees) * sin / 2);
    assertThat(height(u)).isEqualTo(slant, within(1e-3 * slant));
  }

  // Best possible: a/sin a, J. Milnor, A problem in cartography, Amer. Math. Monthly 76 (1969)
  // 1101 (from memory).
  @ParameterizedTest
  @CsvSource({"15, 20", "30, 24", "45, 28", "30, 48"})
  void capStretchesHardlyMoreThanItMust(double degrees, int rings) {
    double a = Math.toRadians(degrees);
    Unrolling u = unrolled(Surfaces.cap(50, degrees, rings), new Vec3(0, 0, 50), new Vec3(0, 1, 0));
    assertThat(u.ratio()).isBetween(0.995 * a / Math.sin(a), 1.02 * a / Math.sin(a));
    assertThat(u.hasSeams()).isFalse();
  }

  @Test
  void foldedSheetOpensExactly() {
    SurfaceMesh roof =
        Surfaces.sheet(
            20, 10, false, (u, v) -> new Vec3(40 * u, 20 * v, u < 0.5 ? 30 * u : 30 * (1 - u)));
    Unrolling flat = unrolled(roof, new Vec3(10, 10, 7), new Vec3(0, 1, 0));
    assertThat(flat.ratio()).isEqualTo(1, within(1e-9));
    assertThat(width(flat)).isEqualTo(50, within(1e-9));
  }

  @Test
  void facesKeepTheirSenseAndAreaAddsUp() {
    Unrolling u = unrolled(Surfaces.cap(50, 40, 20), new Vec3(0, 0, 50), new Vec3(0, 1, 0));
    double sum = 0;
    for (int i = 0; i < u.patch().size(); i++) {
      double doubled =
          (u.x(i, 1) - u.x(i, 0)) * (u.y(i, 2) - u.y(i, 0))
              - (u.y(i, 1) - u.y(i, 0)) * (u.x(i, 2) - u.x(i, 0));
      assertThat(doubled).isPositive();
      sum += doubled / 2;
    }
    double ring = 0;
    for (Unrolling.Edge e : u.outline()) {
      ring += (e.x0() * e.y1() - e.x1() * e.y0()) / 2;
    }
    assertThat(sum).isEqualTo(ring, within(1e-9 * ring));
  }

  @Test
  void originAndUprightFollowWhatIsAsked() {
    Unrolling u =
        unrolled(Surfaces.tube(20, 20, 30, 120, 240, 40), new Vec3(20, 0, 10), new Vec3(0, 0, -1));
    double high = -1e9;
    for (Unrolling.Edge e : u.outline()) {
      high = Math.max(high, e.y0());
    }
    assertThat(high).isEqualTo(10, within(1e-9));
  }

  @Test
  void wholeSphereIsRefused() {
    SurfaceMesh ball =
        Surfaces.sheet(
            24,
            12,
            true,
            (u, v) -> {
              double lat = Math.PI * (v - 0.5) * 0.98;
              return new Vec3(
                  10 * Math.cos(lat) * Math.cos(2 * Math.PI * u),
                  10 * Math.cos(lat) * Math.sin(2 * Math.PI * u),
                  10 * Math.sin(lat));
            });
    assertThatIllegalArgumentException()
        .isThrownBy(() -> unrolled(ball, new Vec3(10, 0, 0), UP))
        .withMessageContaining("cannot be unrolled");
  }

  @Test
  void spiralThatOverlapsItselfIsRefused() {
    // A flat ring of 340 degrees cut from a steep helix: unrolled it closes on itself and beyond.
    SurfaceMesh helix =
        Surfaces.sheet(
            400,
            4,
            false,
            (u, v) -> {
              double t = 4.2 * Math.PI * u;
              double r = 10 + 4 * v;
              return new Vec3(r * Math.cos(t), r * Math.sin(t), 8 * u);
            });
    assertThatIllegalArgumentException()
        .isThrownBy(() -> unrolled(helix, new Vec3(10, 0, 0), UP))
        .withMessageContaining("overlap itself");
  }
}
