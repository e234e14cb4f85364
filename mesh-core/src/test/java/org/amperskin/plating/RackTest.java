package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Time;
import org.junit.jupiter.api.Test;

/** Parts that share a tank and a supply: charge balance, by hand. */
class RackTest {
  private static final Recipe COPPER = RecipeLibrary.standard().find("copper-acid-decorative");

  private static Rack.Hung part(String name, double mm2, double um, double softS) {
    return Rack.Hung.of(
        name,
        TankStep.of(name, COPPER, PlatedSurface.bare(mm2), Target.um(um))
            .density(CurrentDensity.ofPerDm2(2))
            .softStart(new Time(softS))
            .build()
            .estimate());
  }

  private static Rack rack(Rack.Hung... parts) {
    return Rack.of(COPPER, List.of(parts), OptionalDouble.of(50));
  }

  /** 1, 2 and 3 dm2 at 2 A/dm2 draw 2, 4 and 6 A; the thin one leaves first, 12 A become 10 A. */
  @Test
  void currentIsSharedByAreaAndFallsWhenOneLeaves() {
    Rack rack = rack(part("a", 10_000, 10, 0), part("b", 20_000, 30, 0), part("c", 30_000, 30, 0));
    assertThat(rack.mostA()).isCloseTo(12, within(1e-9));
    assertThat(rack.stages()).hasSize(3);
    assertThat(rack.stages().get(0).setA()).isCloseTo(12, within(1e-9));
    Rack.Stage leaves = rack.stages().get(1);
    assertThat(leaves.out()).containsExactly("a");
    assertThat(leaves.setA()).isCloseTo(10, within(1e-9));
    assertThat(leaves.areaDm2()).isCloseTo(5, within(1e-9));
    assertThat(leaves.forgottenADm2().orElseThrow()).isCloseTo(12.0 / 5, within(1e-9));
    Rack.Stage last = rack.stages().get(2);
    assertThat(last.out()).containsExactly("b", "c");
    assertThat(last.setA()).isZero();
    assertThat(last.forgottenADm2()).isEmpty();
    assertThat(rack.warnings()).isEmpty();
  }

  private static void balances(Rack rack) {
    double stages = rack.stages().stream().mapToDouble(Rack.Stage::chargeAh).sum();
    assertThat(stages).isCloseTo(rack.chargeAh(), within(1e-9 * rack.chargeAh()));
  }

  /** Charge of the stages = charge of the parts, slow starts and all. */
  @Test
  void chargeAddsUp() {
    balances(rack(part("a", 10_000, 10, 0), part("b", 20_000, 30, 0)));
    balances(rack(part("a", 10_000, 10, 300), part("b", 25_000, 31, 300)));
    balances(rack(part("a", 10_000, 10, 300), part("b", 7_000, 60, 0), part("c", 1_000, 5, 120)));
  }

  @Test
  void oneAloneIsAsItsStepSays() {
    Rack.Hung one = part("a", 10_000, 10, 300);
    Rack rack = rack(one);
    assertThat(rack.stages().get(0).setA()).isCloseTo(0.5, within(1e-9));
    assertThat(rack.stages().get(rack.stages().size() - 1).atS()).isEqualTo(one.timeS());
    balances(rack);
  }

  @Test
  void whatIsTooMuchIsTold() {
    Rack.Hung[] three = {
      part("a", 20_000, 9, 0), part("b", 20_000, 9, 0), part("c", 20_000, 9, 60)
    };
    Rack small = Rack.of(COPPER, List.of(three), OptionalDouble.of(8));
    assertThat(small.warnings()).hasSize(2);
    assertThat(small.warnings().get(0)).contains("8.00 L is small", "12.0 L", "2 of the 3");
    assertThat(small.warnings().get(1)).contains("1 of 3 parts start slowly");
    assertThat(small.shortOf(20, 1)).isEmpty();
    assertThat(small.shortOf(8, 1).orElseThrow()).contains("12.0 A", "2 of the 3", "1.33 A/dm2");
    assertThat(small.shortOf(5, 1).orElseThrow()).contains("1 of the 3", "may not cover");
  }
}
