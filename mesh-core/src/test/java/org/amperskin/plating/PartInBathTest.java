package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Room in the tank and upthrust, against hand arithmetic. */
class PartInBathTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final Step COPPER =
      TankStep.of(
              "copper",
              RecipeLibrary.standard().find("copper-acid-high-throw"),
              PlatedSurface.bare(10_000),
              Target.um(20))
          .build();

  private static PartBody block(double x, double y, double z, OptionalDouble infill) {
    return new PartBody(
        x,
        y,
        z,
        2 * (x * y + y * z + z * x),
        OptionalDouble.of(x * y * z),
        PrintMaterial.find("PLA"),
        infill,
        OptionalDouble.of(1));
  }

  private static TankShape tank(
      OptionalDouble litres, OptionalDouble spacing, TankShape.Inner inner, OptionalDouble rho) {
    return new TankShape(litres, spacing, Optional.ofNullable(inner), rho);
  }

  private static double figure(PartInBath of, String key) {
    return of.figures().stream().filter(f -> f.key().equals(key)).findFirst().orElseThrow().value();
  }

  private static PartInBath of(PartBody part, TankShape tank) {
    return PartInBath.of(part, tank, List.of(COPPER.estimate()));
  }

  @Test
  void smallestTankOfABlockIsByHand() {
    // 160 x 40 x 100 mm, 100 mm to either anode: thin side across, 40 + 200 + 20 = 260 mm;
    // long side along, 160 + 100 = 260 mm; down 100 + 80 = 180 mm: 12.168 L less 0.64 L of part.
    // The other way up, 100 + 100 = 200 by 160 + 80 = 240 mm: 12.48 L, which is more.
    PartInBath found = of(block(160, 40, 100, NONE), tank(NONE, NONE, null, NONE));
    assertThat(figure(found, "clearanceMm")).isEqualTo(100);
    assertThat(figure(found, "smallestTankL")).isCloseTo(12.168 - 0.64, within(1e-9));
    assertThat(figure(found, "displacedL")).isCloseTo(0.64, within(1e-12));
    assertThat(found.warnings()).isEmpty();
    // which way the file's axes run does not matter
    PartInBath turned = of(block(100, 160, 40, NONE), tank(NONE, NONE, null, NONE));
    assertThat(figure(turned, "smallestTankL")).isCloseTo(12.168 - 0.64, within(1e-9));
    // a small part needs no more than its own longest side to the anodes: 20 + 40 + 20 = 80,
    // 20 + 100 = 120, 20 + 80 = 100 mm
    PartInBath cube = of(block(20, 20, 20, NONE), tank(NONE, NONE, null, NONE));
    assertThat(figure(cube, "clearanceMm")).isEqualTo(20);
    assertThat(figure(cube, "smallestTankL")).isCloseTo(0.96 - 0.008, within(1e-12));
    // a bead of 3 mm is not hung 3 mm from an anode
    assertThat(figure(of(block(3, 3, 3, NONE), tank(NONE, NONE, null, NONE)), "clearanceMm"))
        .isEqualTo(20);
  }

  @Test
  void aTankThatIsShortIsToldWithTheClearanceItLeaves() {
    // 10 L and 0.64 L of part over 260 x 180 mm are 227.35 mm across: (227.35 - 40)/2 - 10 = 83.7
    PartInBath short10 =
        of(block(160, 40, 100, NONE), tank(OptionalDouble.of(10), NONE, null, NONE));
    assertThat(short10.warnings())
        .singleElement()
        .asString()
        .contains("10.0 L is short of the 11.5 L", "100 mm to the anodes", "84 mm away");
    assertThat(
            of(block(160, 40, 100, NONE), tank(OptionalDouble.of(12), NONE, null, NONE)).warnings())
        .isEmpty();
    // told inner size: 150 mm across leave (150 - 40)/2 - 10 = 45 mm
    TankShape.Inner narrow = new TankShape.Inner(300, 150, 250);
    assertThat(of(block(160, 40, 100, NONE), tank(NONE, NONE, narrow, NONE)).warnings())
        .singleElement()
        .asString()
        .contains("300 x 150 x 250 mm", "at most 45 mm", "short of 100 mm");
    TankShape.Inner tiny = new TankShape.Inner(120, 120, 120);
    assertThat(of(block(160, 40, 100, NONE), tank(NONE, NONE, tiny, NONE)).warnings())
        .singleElement()
        .asString()
        .contains("160 x 40 x 100 mm, does not go into", "at least 260 x 260 x 180 mm");
    // 300 x 260 x 180 mm hold 14.04 L: 13.8 L and the part's 0.64 L run over by 0.4 L
    TankShape.Inner full = new TankShape.Inner(300, 260, 180);
    assertThat(
            of(block(160, 40, 100, NONE), tank(OptionalDouble.of(13.8), NONE, full, NONE))
                .warnings())
        .singleElement()
        .asString()
        .contains("14.4 L", "14.0 L", "take out 0.40 L");
    assertThat(
            of(block(160, 40, 100, NONE), tank(OptionalDouble.of(20), NONE, full, NONE)).warnings())
        .singleElement()
        .asString()
        .contains("holds 14.0 L to the rim, not 20.0 L");
  }

  @Test
  void ballastIsWhatArchimedesLacks() {
    // 100 mm cube, 1000 cm3, bath 1.2 g/cm3: upthrust 1200 g. Walls 1 mm: 60 cm3 of shell, 20 % of
    // the other 940 cm3: 248 cm3 of PLA at 1.24 are 307.52 g; 892.48 g are lacking.
    TankShape bath = tank(NONE, NONE, null, OptionalDouble.of(1200));
    PartInBath cube = of(block(100, 100, 100, OptionalDouble.of(0.2)), bath);
    assertThat(figure(cube, "upthrustG")).isCloseTo(1200, within(1e-9));
    assertThat(figure(cube, "printG")).isCloseTo(307.52, within(1e-9));
    assertThat(figure(cube, "ballastInsideG")).isCloseTo(892.48, within(1e-9));
    // steel pushes bath aside too: as much of it as makes weight less upthrust equal
    double below = figure(cube, "ballastBelowG");
    assertThat(below - below / 7.9 * 1.2).isCloseTo(892.48, within(1e-9));
    assertThat(cube.warnings()).singleElement().asString().contains("752 cm3", "902 g of bath");
  }

  @Test
  void aSolidPrintSinksAndHasNoAirToFill() {
    TankShape bath = tank(NONE, NONE, null, OptionalDouble.of(1200));
    PartInBath solid = of(block(100, 100, 100, OptionalDouble.of(1)), bath);
    assertThat(figure(solid, "printG")).isCloseTo(1240, within(1e-9));
    assertThat(solid.figures()).extracting(StepFigure::key).doesNotContain("ballastInsideG");
    assertThat(solid.warnings()).isEmpty();
    // of the bath's own density it hovers: neither more nor less is lacking
    PartInBath hovering =
        of(
            block(100, 100, 100, OptionalDouble.of(1)),
            tank(NONE, NONE, null, OptionalDouble.of(1240)));
    assertThat(figure(hovering, "upthrustG")).isCloseTo(figure(hovering, "printG"), within(1e-9));
  }

  @Test
  void whatIsNotToldIsNotMadeUp() {
    PartInBath found = of(block(100, 100, 100, NONE), TankShape.UNKNOWN);
    assertThat(found.figures())
        .extracting(StepFigure::key)
        .contains("upthrustG")
        .doesNotContain("printG", "ballastInsideG");
    assertThat(PartInBath.of(block(9, 9, 9, NONE), TankShape.UNKNOWN, List.of()))
        .isEqualTo(PartInBath.NONE);
    assertThatThrownBy(() -> block(9, 9, 9, OptionalDouble.of(1.2)))
        .hasMessageContaining("120.0 % is not 0 % to 100 %");
  }

  @Test
  void whatEnclosesNothingSaysWhyItsFloatIsNotTold() {
    PartBody open =
        new PartBody(
            40, 40, 40, 9600, NONE, PrintMaterial.find("PLA"), OptionalDouble.of(0.2), NONE);
    PartInBath found = of(open, tank(NONE, NONE, null, NONE));
    assertThat(found.figures()).noneMatch(f -> f.key().equals("upthrustG"));
    assertThat(found.warnings()).anyMatch(w -> w.contains("encloses 0 cm3"));
  }
}
