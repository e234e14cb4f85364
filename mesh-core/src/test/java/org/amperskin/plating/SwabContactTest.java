package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Where a swab touches: chords of circles, and counts of points that are near enough. */
class SwabContactTest {
  private static SwabContact.Work flat(double pressed) {
    return new SwabContact.Work(OptionalDouble.empty(), pressed);
  }

  private static SwabContact.Work curved(double radius, double pressed) {
    return new SwabContact.Work(OptionalDouble.of(radius), pressed);
  }

  @Test
  void aRollOnFlatWorkTouchesAlongAChord() {
    // a circle of radius 10 mm cut 0.5 mm deep: 2 sqrt(2 R c - c^2) = 6.2450 mm; 2 sqrt(2 R c) is
    // c/(4R) of it more
    double exact = 2 * Math.sqrt(2 * 10 * 0.5 - 0.25);
    SwabContact roll = SwabContact.roll(20, 40, flat(0.5));
    assertThat(roll.areaMm2() / 40).isCloseTo(exact * (1 + 0.5 / 40), within(2e-3));
    assertThat(roll.areaMm2()).isCloseTo(40 * 2 * Math.sqrt(10), within(1e-9));
    assertThat(roll.widthMm()).hasValue(40);
  }

  @Test
  void curvaturesAddOnAHumpAndTakeAwayInAHollow() {
    // 1/R = 1/10 + 1/30 = 1/7.5; 1/10 - 1/30 = 1/15
    assertThat(SwabContact.roll(20, 10, curved(30, 0.5)).areaMm2())
        .isCloseTo(10 * 2 * Math.sqrt(7.5), within(1e-9));
    assertThat(SwabContact.roll(20, 10, curved(-30, 0.5)).areaMm2())
        .isCloseTo(10 * 2 * Math.sqrt(15), within(1e-9));
    // a hump as good as flat is flat
    assertThat(SwabContact.roll(20, 10, curved(1e9, 0.5)).areaMm2())
        .isCloseTo(SwabContact.roll(20, 10, flat(0.5)).areaMm2(), within(1e-6));
    assertThatThrownBy(() -> SwabContact.roll(20, 10, curved(-9, 0.5)))
        .hasMessageContaining("does not go into a hollow of radius 9.00 mm")
        .hasMessageContaining("below 18.0 mm");
  }

  @Test
  void aFlatSwabTouchesWhereTheGapIsLessThanItGives() {
    assertThat(SwabContact.flat(30, 20, flat(1)).areaMm2()).isEqualTo(600);
    // on a hump of 40 mm a chord of 2 sqrt(80) = 17.889 mm; in the hollow 30 - sqrt(900 - 320)
    assertThat(SwabContact.flat(30, 20, curved(40, 1)).areaMm2())
        .isCloseTo(20 * 2 * Math.sqrt(80), within(1e-9));
    assertThat(SwabContact.flat(30, 20, curved(-40, 1)).areaMm2())
        .isCloseTo(20 * (30 - Math.sqrt(580)), within(1e-9));
    assertThat(SwabContact.flat(10, 20, curved(40, 1)).areaMm2()).isEqualTo(200);
    assertThat(SwabContact.flat(10, 20, curved(-40, 1)).areaMm2()).isEqualTo(200);
  }

  @Test
  void roundSwabsAgreeWithCountedPoints() {
    assertThat(SwabContact.round(20, flat(1)).areaMm2()).isCloseTo(Math.PI * 100, within(1e-9));
    for (double radius : new double[] {20, 40, 200, -20, -40, -200}) {
      assertThat(SwabContact.round(20, curved(radius, 1)).areaMm2())
          .as("radius " + radius)
          .isCloseTo(counted(radius), within(0.3));
    }
  }

  /** Cells of a disk of radius 10 mm whose gap to the cylinder is below 1 mm. */
  private static double counted(double radius) {
    int n = 2000;
    double cell = 20.0 / n;
    long touching = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double x = -10 + (i + 0.5) * cell;
        double y = -10 + (j + 0.5) * cell;
        double gap = radius > 0 ? x * x / (2 * radius) : (100 - x * x) / (-2 * radius);
        if (x * x + y * y <= 100 && gap <= 1) {
          touching++;
        }
      }
    }
    return touching * cell * cell;
  }

  @Test
  void theEstimateSaysHowItCameToTheContact() {
    SwabContact contact = SwabContact.roll(12, 40, flat(1));
    Swab swab =
        new Swab(
            OptionalDouble.of(contact.areaMm2()),
            contact.widthMm(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            java.util.Optional.of(contact.basis()));
    StepEstimate e =
        BrushStep.of(
                "pd",
                RecipeLibrary.standard().find("palladium-brush"),
                PlatedSurface.bare(20_000),
                Target.um(0.3))
            .swab(swab)
            .build()
            .estimate();
    assertThat(e.contactAreaMm2()).hasValue(contact.areaMm2());
    assertThat(e.assumptions())
        .anySatisfy(
            a ->
                assertThat(a.value())
                    .contains("roll 12.0 x 40.0 mm on flat work", "a band 6.93 mm wide"));
  }
}
