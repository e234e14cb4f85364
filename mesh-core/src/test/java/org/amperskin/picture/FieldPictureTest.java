package org.amperskin.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.region.FaceField;
import org.amperskin.region.RegionKind;
import org.amperskin.region.SplitMesh;
import org.junit.jupiter.api.Test;

/** Fields and vanishing lines in pictures. */
class FieldPictureTest {
  /** L* of an sRGB colour by IEC 61966-2-1 and ISO/CIE 11664-4, worked the other way round. */
  private static double lightness(int argb) {
    double[] weights = {0.2126729, 0.7151522, 0.0721750};
    double y = 0;
    for (int k = 0; k < 3; k++) {
      double s = (argb >> (16 - 8 * k) & 255) / 255.0;
      y += weights[k] * (s <= 0.04045 ? s / 12.92 : Math.pow((s + 0.055) / 1.055, 2.4));
    }
    return y > 216.0 / 24389 ? 116 * Math.cbrt(y) - 16 : 24389.0 / 27 * y;
  }

  @Test
  void lightnessRisesEvenly() {
    int[] palette = FieldScale.palette();
    double step = (93 - 22) / (FieldScale.STEPS - 1.0);
    for (int i = 0; i < FieldScale.STEPS; i++) {
      // eight-bit colours round by up to 0.4 in L*
      assertThat(lightness(palette[i])).isCloseTo(22 + i * step, within(0.5));
    }
    Set<Integer> all = new HashSet<>();
    Arrays.stream(palette).forEach(all::add);
    assertThat(all).hasSize(FieldScale.STEPS + 1);
  }

  private static FaceField ramp(SurfaceMesh mesh) {
    double[] values = new double[mesh.faceCount()];
    for (int f = 0; f < values.length; f++) {
      values[f] = f;
    }
    values[0] = Double.NaN;
    return FaceField.of(mesh, "gap", "mm", values);
  }

  @Test
  void fieldsArePaintedByTheirScale() {
    SurfaceMesh box = SampleParts.box(10, 10, 10);
    FaceField field = ramp(box);
    FieldScale scale = new FieldScale(1, 11, "gap", "mm", false);
    Painting painting = Painting.field(field, scale);
    assertThat(painting.colourOf(0)).isEqualTo(FieldScale.STEPS);
    assertThat(painting.colourOf(1)).isZero();
    assertThat(painting.colourOf(6)).isEqualTo(FieldScale.STEPS / 2);
    assertThat(painting.colourOf(11)).isEqualTo(FieldScale.STEPS - 1);
    // 1 to 11 between round numbers: four steps of 2.5 from 0 are too few, of 4 enough.
    assertThat(FieldScale.of(field).low()).isZero();
    assertThat(FieldScale.of(field).high()).isGreaterThanOrEqualTo(11).isLessThanOrEqualTo(16);
    assertThat(FieldScale.of(field).clipped()).isFalse();
  }

  /** A flat film's stretch is 1 but for rounding; a scale of no width once had no numbers. */
  @Test
  void fieldThatIsOneValueButForRoundingHasAScale() {
    SurfaceMesh box = SampleParts.box(10, 10, 10);
    double[] values = new double[12];
    Arrays.fill(values, 1);
    values[3] = Math.nextUp(1.0);
    FieldScale scale = FieldScale.of(FaceField.of(box, "skin over film", "", values));
    assertThat(scale.low()).isEqualTo(1);
    assertThat(scale.high()).isEqualTo(1);
    assertThat(scale.index(1)).isEqualTo(scale.index(Math.nextUp(1.0)));
  }

  @Test
  void legendTellsNumbersWithUnitAndWhatLiesAbove() {
    ScaleLegend legend = new ScaleLegend(new FieldScale(0, 2, "gap", "mm", true));
    assertThat(legend.figure(0)).isEqualTo("0.00 mm");
    assertThat(legend.figure(2)).isEqualTo("1.00 mm");
    assertThat(legend.figure(4)).isEqualTo("2.00 mm or more");
    SurfaceMesh box = SampleParts.box(10, 10, 10);
    Painting painting = Painting.plain(box, 0xFF808080);
    Camera camera = Camera.fitting(box, 30, 20, 4.0 / 3);
    Picture picture = Renderer.render(painting, camera, 400, 300, RenderOptions.USUAL);
    Set<Integer> seen = new HashSet<>();
    Arrays.stream(legend.drawnOn(picture).argb()).forEach(seen::add);
    for (int i = 0; i < FieldScale.STEPS; i++) {
      assertThat(seen).contains(FieldScale.palette()[i]);
    }
    Picture small = Renderer.render(painting, camera, 40, 30, RenderOptions.USUAL);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> legend.drawnOn(small))
        .withMessageContaining("40 x 30 px");
  }

  @Test
  void vanishingPiecesAreLoudAndHatched() {
    SurfaceMesh box = SampleParts.box(10, 10, 10);
    int[] parents = new int[12];
    RegionKind[] kinds = new RegionKind[12];
    double[] fates = new double[12];
    for (int f = 0; f < 12; f++) {
      parents[f] = f;
      kinds[f] = RegionKind.MASKED;
      fates[f] = 2;
    }
    fates[0] = Double.NaN;
    SplitMesh split = new SplitMesh(box, box, parents, kinds, Set.of(RegionKind.EXPOSED));
    Painting painting = Painting.fates(split, FaceField.of(box, "lines", "", fates));
    assertThat(painting.argb(painting.colourOf(0)))
        .isEqualTo(RegionColour.of(RegionKind.MASKED).argb());
    assertThat(painting.argb(painting.colourOf(5))).isEqualTo(LineColour.LINE_VANISHES.argb());
    Camera camera = Camera.fitting(box, 30, 20, 4.0 / 3);
    Picture picture =
        Renderer.render(painting, camera, 200, 150, RenderOptions.USUAL.withLit(false));
    Picture hatched = Hatching.over(picture, painting, LineColour.hatches());
    int face = 0;
    int inked = 0;
    for (int i = 0; i < picture.argb().length; i++) {
      if (picture.faces()[i] > 0) {
        face++;
        inked += hatched.argb()[i] != picture.argb()[i] ? 1 : 0;
      }
    }
    // both slants ink eleven of each 36 pixels
    assertThat((double) inked / face).isCloseTo(11 / 36.0, within(0.03));
  }
}
