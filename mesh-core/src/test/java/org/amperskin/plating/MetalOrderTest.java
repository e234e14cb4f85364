package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Which metal a step meets where: a part of 100 cm2, palladium on its front (40 cm2), a pattern of
 * 10 cm2 of which 7 cm2 lie on the front.
 */
class MetalOrderTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();
  private static final Overlap OVERLAP =
      Map.of(
              "all",
              List.of(
                  patch(5700, "all"),
                  patch(3300, "all", "front"),
                  patch(700, "all", "front", "pattern"),
                  patch(300, "all", "pattern")),
              "front",
              List.of(patch(3300, "all", "front"), patch(700, "all", "front", "pattern")),
              "pattern",
              List.of(patch(700, "all", "front", "pattern"), patch(300, "all", "pattern")))
          ::get;

  private static Overlap.Patch patch(double mm2, String... regions) {
    return new Overlap.Patch(Set.of(regions), mm2);
  }

  private static Step copper() {
    return TankStep.of(
            "copper",
            RECIPES.find("copper-acid-high-throw"),
            PlatedSurface.bare(10_000),
            Target.um(60))
        .region("all")
        .build();
  }

  private static Step brush(String name, String recipe, String region, double mm2, Target target) {
    return BrushStep.of(name, RECIPES.find(recipe), PlatedSurface.bare(mm2), target)
        .region(region)
        .build();
  }

  private static Step palladium(String region) {
    return brush("barrier", "palladium-brush", region, 4000, Target.um(0.3));
  }

  private static Step chromium() {
    return brush("dark", "chromium-brush-dark-trivalent", "pattern", 1000, Target.coverage(0.4));
  }

  private static Step work(WorkKind kind, String region, double mm2) {
    return new WorkStep(kind.key(), region, PlatedSurface.bare(mm2), kind);
  }

  private static List<String> warnings(Step... steps) {
    Workpiece piece =
        new Workpiece(Optional.empty(), OptionalDouble.empty(), false, Optional.of(OVERLAP));
    return Plan.of(List.of(steps), piece).warnings();
  }

  @Test
  void patternThatLeavesTheBarrierIsToldWithItsArea() {
    assertThat(warnings(copper(), palladium("front"), chromium()))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("straight on copper", "3.0 cm2 of its 10 cm2"));
    assertThat(warnings(copper(), palladium("all"), chromium())).isEmpty();
    assertThat(warnings(copper(), chromium()))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("straight on copper").doesNotContain("so on about"));
  }

  /** Steps taken before are known and not warned of again; a rest adds the rest alone. */
  @Test
  void stepsTakenBeforeAreKnown() {
    Workpiece piece =
        new Workpiece(Optional.empty(), OptionalDouble.empty(), false, Optional.of(OVERLAP));
    assertThat(
            Plan.of(
                    List.of(copper(), chromium()),
                    List.of(work(WorkKind.OIL, "all", 10_000)),
                    piece)
                .warnings())
        .isEmpty();
    Step thick = brush("thick", "palladium-brush", "all", 10_000, Target.um(0.4));
    Step rest =
        BrushStep.of(
                "thick",
                RECIPES.find("palladium-brush"),
                PlatedSurface.bare(10_000),
                Target.um(0.4))
            .region("all")
            .already(Already.reading(0.35))
            .build();
    assertThat(Plan.of(List.of(copper(), thick), List.of(rest, chromium()), piece).warnings())
        .as("0.40 um and 0.05 um of rest are 0.45 um")
        .isEmpty();
    assertThat(Plan.of(List.of(copper(), thick), List.of(thick, chromium()), piece).warnings())
        .singleElement()
        .satisfies(w -> assertThat(w).contains("0.800 um of palladium"));
  }

  private static Step etch(String name, String recipe, double um) {
    return EtchStep.of(name, RECIPES.find(recipe), PlatedSurface.bare(1000), Target.um(um))
        .region("pattern")
        .build();
  }

  private static Step nickel() {
    return brush("nickel", "nickel-brush-acid", "pattern", 1000, Target.um(5));
  }

  /** 5 um of nickel etched through: copper shows, and chromium on it wants a barrier. */
  @Test
  void aLayerThatIsEtchedThroughShowsWhatIsBelow() {
    Step through = etch("through", "nickel-etch-brush", 5);
    assertThat(warnings(copper(), nickel(), through, chromium()))
        .hasSize(2)
        .anyMatch(w -> w.contains("5.00 um deep into 5.00 um") && w.contains("to what lies below"))
        .anyMatch(w -> w.contains("straight on copper"));
    Step all = etch("all of it", "copper-etch-brush", 60);
    assertThat(warnings(copper(), all, nickel()))
        .hasSize(2)
        .anyMatch(w -> w.contains("all of it goes"))
        .anyMatch(w -> w.contains("plates where 0 um of metal are left"));
  }

  @Test
  void nothingHoldsOnChromiumOrOil() {
    assertThat(warnings(copper(), palladium("all"), chromium(), nickel()))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("plates on chromium", "chromium-off"));
    assertThat(warnings(copper(), work(WorkKind.OIL, "all", 10_000), palladium("all")))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("oiled part"));
    assertThat(
            warnings(
                copper(),
                work(WorkKind.OIL, "all", 10_000),
                work(WorkKind.CLEAN, "all", 10_000),
                palladium("all")))
        .isEmpty();
  }

  /**
   * The dip takes chromium wherever it is bare: 7 cm2 of the pattern on the front, not its rest.
   */
  @Test
  void otherChromiumInTheDipIsTold() {
    Step dark =
        brush("all dark", "chromium-brush-dark-trivalent", "all", 10_000, Target.coverage(0.4));
    Step off = work(WorkKind.CHROMIUM_OFF, "pattern", 1000);
    assertThat(warnings(copper(), palladium("all"), dark, off))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("90 cm2 of chromium outside its region"));
    assertThat(
            warnings(copper(), palladium("all"), dark, work(WorkKind.STOP_OFF, "all", 9000), off))
        .as("stopped off")
        .isEmpty();
  }

  @Test
  void aPartThatComesPaintedIsKnownToBe() {
    Workpiece painted =
        new Workpiece(Optional.empty(), OptionalDouble.empty(), true, Optional.of(OVERLAP));
    assertThat(Plan.of(List.of(chromium()), painted).warnings())
        .singleElement()
        .satisfies(w -> assertThat(w).contains("brushes on bare conductive paint"));
    assertThat(Plan.of(List.of(copper(), palladium("all"), chromium()), painted).warnings())
        .isEmpty();
    assertThat(Plan.of(List.of(work(WorkKind.CHROMIUM_OFF, "pattern", 1000)), painted).warnings())
        .singleElement()
        .satisfies(w -> assertThat(w).contains("wets bare conductive paint"));
  }

  /** The borders of regions are not exact: a sliver is not worth a word. */
  @Test
  void aSliverIsLeftOut() {
    Overlap nearly =
        region -> List.of(patch(995, "all", "front", "pattern"), patch(5, "all", "pattern"));
    Workpiece piece =
        new Workpiece(Optional.empty(), OptionalDouble.empty(), false, Optional.of(nearly));
    assertThat(Plan.of(List.of(copper(), palladium("front"), chromium()), piece).warnings())
        .isEmpty();
  }

  @Test
  void electrocleaningBesideThePalladiumIsFine() {
    assertThat(warnings(copper(), palladium("front"), work(WorkKind.ELECTROCLEAN, "front", 4000)))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("hydrogen on palladium"));
    assertThat(warnings(copper(), palladium("front"), work(WorkKind.ELECTROCLEAN, "pattern", 1000)))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("7.0 cm2 of its 10 cm2"));
  }

  @Test
  void anEtchMeetsOneMetalHereAndAnotherThere() {
    Step etch =
        EtchStep.of(
                "etch", RECIPES.find("copper-etch-brush"), PlatedSurface.bare(1000), Target.um(10))
            .region("pattern")
            .build();
    assertThat(warnings(copper(), palladium("front"), etch))
        .singleElement()
        .satisfies(
            w ->
                assertThat(w)
                    .contains("is meant for copper", "0.300 um of palladium", "7.0 cm2 of its"));
  }

  /** A pattern of 10 cm2 whose front part alone has resist: 3 cm2 of openings in the bare. */
  @Test
  void openingsBesideTheResistAreTold() {
    Step dark =
        BrushStep.of(
                "dark",
                RECIPES.find("chromium-brush-dark-trivalent"),
                PlatedSurface.masked(1000, 3000),
                Target.coverage(0.4))
            .region("pattern")
            .build();
    Step[] mask = {
      work(WorkKind.RESIST, "front", 4000),
      work(WorkKind.EXPOSE, "pattern", 1000),
      work(WorkKind.DEVELOP, "pattern", 1000),
      work(WorkKind.ACTIVATE, "pattern", 1000)
    };
    Step wide = work(WorkKind.RESIST, "all", 10_000);
    Step strip = work(WorkKind.STRIP, "front", 4000);
    assertThat(warnings(copper(), palladium("all"), mask[0], mask[1], mask[2], mask[3], dark))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("0 um of resist", "3.0 cm2 of its 10 cm2"));
    assertThat(warnings(copper(), palladium("all"), wide, mask[1], mask[2], mask[3], dark))
        .isEmpty();
    assertThat(warnings(copper(), palladium("all"), mask[0], strip, dark))
        .as("no mask is meant")
        .isEmpty();
  }

  /** What was etched off is gone: 60 um less 25 um leave 35 um, too few for 25 um more. */
  @Test
  void aSecondEtchMeetsAThinnerLayer() {
    Recipe recipe = RECIPES.find("copper-etch-brush");
    Step once =
        EtchStep.of("once", recipe, PlatedSurface.bare(1000), Target.um(25))
            .region("pattern")
            .build();
    Step twice =
        EtchStep.of("twice", recipe, PlatedSurface.bare(1000), Target.um(25))
            .region("pattern")
            .build();
    assertThat(warnings(copper(), once)).isEmpty();
    assertThat(warnings(copper(), once, twice))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("25.0 um deep into 35.0 um", "plate 75.0 um"));
  }

  @Test
  void chromiumComesOffWhereItIs() {
    Step off = work(WorkKind.CHROMIUM_OFF, "pattern", 1000);
    assertThat(warnings(copper(), palladium("all"), chromium(), off, chromium())).isEmpty();
    assertThat(warnings(copper(), palladium("all"), off))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("on top lies 0.300 um of palladium"));
    assertThat(warnings(off)).as("a part that the plan did not plate").isEmpty();
    Step zinc =
        TankStep.of(
                "zinc",
                RECIPES.find("zinc-acid-chloride"),
                PlatedSurface.bare(10_000),
                Target.um(8))
            .region("all")
            .build();
    assertThat(warnings(copper(), zinc, chromium(), off))
        .singleElement()
        .satisfies(w -> assertThat(w).contains("8.00 um of zinc", "scour the chromium"));
  }
}
