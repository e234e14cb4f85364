package org.amperskin.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;
import org.amperskin.skin.Skin;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The local open fraction of striped plates. */
class OpenFractionMapTest {
  private static final SurfaceMesh PLATE = Shapes.box(0, 0, 0, 80, 40, 2);

  private static Region lit(Artwork art) {
    MaskFilm film =
        new MaskFilm(
            "film", art, FlatPlacement.toward(new Vec3(0, 0, -1)), MaskKind.POSITIVE_RESIST, false);
    Skin skin =
        Skin.of(
            MeshDiagnosis.of(PLATE, MeshDiagnosis.Search.ALL, Progress.SILENT), Progress.SILENT);
    return Region.of(
        new RegionRule("r", List.of(film), List.of(), List.of()), skin, Progress.SILENT);
  }

  /** Upright opaque stripes over 80 x 40 mm; left and right halves have their own clear width. */
  private static Artwork stripes(double pitch, double clearLeft, double clearRight) {
    int count = (int) Math.round(80 / pitch);
    double[] xy = new double[8 * count];
    int[] starts = new int[count + 1];
    for (int i = 0; i < count; i++) {
      double clear = i < count / 2 ? clearLeft : clearRight;
      double x0 = -40 + i * pitch + clear / 2;
      double x1 = -40 + (i + 1) * pitch - clear / 2;
      double[] ring = {x0, -20, x1, -20, x1, 20, x0, 20};
      System.arraycopy(ring, 0, xy, 8 * i, 8);
      starts[i + 1] = 4 * (i + 1);
    }
    return Artwork.of(80, 40, xy, starts, 0, List.of());
  }

  // A window whose rim cuts a stripe errs by less than the stripe's share: about pitch over the
  // window's width, and less for finer stripes.
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1, 2})
  void evenStripesGiveTheOverallFractionEverywhere(double pitch) {
    OpenFractionMap map = OpenFractionMap.of(lit(stripes(pitch, 0.3 * pitch, 0.3 * pitch)), 5);
    assertThat(map.overall()).isCloseTo(0.3, within(1e-9));
    double rim = 0.3 * pitch / 5;
    assertThat(map.least()).isCloseTo(0.3, within(rim));
    assertThat(map.most()).isCloseTo(0.3, within(rim));
    assertThat(map.quantile(0.5)).isCloseTo(0.3, within(rim / 3));
    assertThat(map.field().mean()).isCloseTo(0.3, within(rim / 3));
  }

  @Test
  void halvesOfTwoFractionsGiveBothAndTheirPlaces() {
    OpenFractionMap map = OpenFractionMap.of(lit(stripes(1, 0.2, 0.6)), 5);
    assertThat(map.overall()).isCloseTo(0.4, within(1e-9));
    assertThat(map.least()).isCloseTo(0.2, within(0.04));
    assertThat(map.most()).isCloseTo(0.6, within(0.04));
    assertThat(map.quantile(0.25)).isCloseTo(0.2, within(0.03));
    assertThat(map.quantile(0.75)).isCloseTo(0.6, within(0.03));
    assertThat(map.leastAt().x()).isLessThan(36);
    assertThat(map.mostAt().x()).isGreaterThan(44);
    assertThat(map.leastAt().z()).isCloseTo(2, within(1e-9));
  }

  @Test
  void theOtherSideOfAThinPlateDoesNotCount() {
    OpenFractionMap map = OpenFractionMap.of(lit(stripes(1, 0.5, 0.5)), 5);
    SurfaceMesh mesh = map.field().mesh();
    for (int f = 0; f < mesh.faceCount(); f++) {
      boolean top = mesh.unitNormal(f)[2] > 0.5 && mesh.faceAreaMm2(f) > 0;
      assertThat(Double.isNaN(map.field().value(f))).isEqualTo(!top);
    }
  }

  @Test
  void tinyWindowsAndEmptyRegionsAreRefused() {
    Region r = lit(stripes(1, 0.5, 0.5));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> OpenFractionMap.of(r, 1e-4))
        .withMessageContaining("1.0E-4 mm");
    assertThatIllegalArgumentException().isThrownBy(() -> OpenFractionMap.of(r, 0));
  }
}
