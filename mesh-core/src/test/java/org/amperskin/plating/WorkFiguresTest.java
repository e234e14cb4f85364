package org.amperskin.plating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Numbers of the work between the plating steps. */
class WorkFiguresTest {
  private static final PlatedSurface TWO_DM2 = PlatedSurface.bare(20_000);

  private static StepEstimate work(WorkKind kind, WorkConditions known) {
    return new WorkStep(kind.key(), "", TWO_DM2, kind, known).estimate();
  }

  private static StepFigure figure(StepEstimate e, String key) {
    return e.figures().stream().filter(f -> f.key().equals(key)).findFirst().orElseThrow();
  }

  private static WorkConditions on(String print) {
    OptionalDouble none = OptionalDouble.empty();
    return new WorkConditions(
        PrintMaterial.find(print), none, Optional.empty(), OptionalDouble.of(8), none, none);
  }

  @ParameterizedTest
  @EnumSource(WorkKind.class)
  void everyFigureHasABasisAndEveryKindButTheEtchItsPace(WorkKind kind) {
    StepEstimate e = work(kind, WorkConditions.unknown());
    assertThat(e.figures()).allSatisfy(f -> assertThat(f.basis()).isNotBlank());
    assertThat(e.handsS().isPresent()).isEqualTo(kind != WorkKind.ETCH);
    e.figures()
        .forEach(
            f ->
                f.band()
                    .ifPresent(
                        b -> assertThat(f.value()).as(f.key()).isBetween(b.low(), b.high())));
  }

  /** Maker's data sheet of a copper screening lacquer: 0.32 m2 from 200 mL at 50 um. */
  @Test
  void paintCoversWhatItsDataSheetSays() {
    StepFigure paint = figure(work(WorkKind.PAINT, WorkConditions.unknown()), "paintMl");
    double withoutLoss = 200.0 / 32 * 2;
    assertThat(paint.band().get().low()).isCloseTo(1.5 * withoutLoss, within(0.02 * withoutLoss));
    assertThat(paint.band().get().high()).isCloseTo(3 * withoutLoss, within(0.03 * withoutLoss));
  }

  /** Maker's data sheet of a positive resist: 200 mL cover 1 m2 with 8 um. */
  @Test
  void resistCoversWhatItsDataSheetSays() {
    StepFigure resist = figure(work(WorkKind.RESIST, on("PLA")), "resistMl");
    assertThat(resist.band().get().low()).isCloseTo(1.5 * 4, within(1e-9));
    assertThat(resist.value()).isCloseTo(8, within(1e-9));
  }

  /** Glass transitions of PLA 59.1 C, ABS 100 C; a bath or bake stays 20 K below. */
  @Test
  void onlyPrintsThatStandItAreBaked() {
    assertThat(work(WorkKind.RESIST, on("PLA")).waitS().getAsDouble()).isEqualTo(24 * 3600);
    assertThat(work(WorkKind.RESIST, on("ABS")).waitS().getAsDouble()).isEqualTo(15 * 60);
  }

  /**
   * Handbook of Electronic Tables and Formulas: 700 circular mils an ampere give 20 AWG (0.812 mm)
   * 1.5 A; fusing after Preece, 80 d^1.5: 0.5 mm 28.3 A, 0.2 mm 7.2 A.
   */
  @ParameterizedTest
  @CsvSource({"0.812, 1.46, 58.5", "0.5, 0.554, 28.3", "0.2, 0.0886, 7.16"})
  void wiresCarryAndFuseAsTheTablesSay(double diameterMm, double carriesA, double fusesA) {
    OptionalDouble none = OptionalDouble.empty();
    ContactWire wire = new ContactWire(Length.ofMm(diameterMm), Length.ofMm(1000));
    WorkConditions known =
        new WorkConditions(Optional.empty(), none, Optional.of(wire), none, none, none);
    StepEstimate e = work(WorkKind.WIRE, known);
    assertThat(figure(e, "wireCurrentA").value()).isCloseTo(carriesA, within(0.01 * carriesA));
    assertThat(figure(e, "wireFusesA").value()).isCloseTo(fusesA, within(0.01 * fusesA));
    // 1.724e-8 ohm.m and pi d L
    assertThat(figure(e, "wireOhm").value())
        .isCloseTo(1.724e-2 / (Math.PI * diameterMm * diameterMm / 4), within(1e-3));
    assertThat(figure(e, "wireAreaMm2").value())
        .isCloseTo(Math.PI * diameterMm * 1000, within(1e-6));
  }

  /** Kushner's table, 2 gal/1000 ft2 poorly drained, is 0.081 L/m2; 40.746 mL/m2 a gallon. */
  @Test
  void twoStillRinsesDiluteByTheSquareOfTheirShare() {
    StepEstimate e = work(WorkKind.RINSE, WorkConditions.unknown());
    double dragMl = 2 * 40.746 * 0.02;
    assertThat(figure(e, "dragOutMl").value()).isCloseTo(dragMl, within(0.01 * dragMl));
    double rinseMl = 1000 * figure(e, "rinseL").value();
    assertThat(Math.pow(figure(e, "dragOutMl").value() / rinseMl, 2)).isCloseTo(1e-3, within(1e-9));
  }

  /** A strip 100 mm x 20 mm is five squares long. */
  @Test
  void stripTestIsFiveSquares() {
    OptionalDouble none = OptionalDouble.empty();
    WorkConditions known =
        new WorkConditions(
            Optional.empty(), OptionalDouble.of(0.3), Optional.empty(), none, none, none);
    assertThat(figure(work(WorkKind.PAINT, known), "stripOhm").value())
        .isCloseTo(1.5, within(1e-12));
  }

  @Test
  void developerIsWeighedAtSevenGramsALitre() {
    StepEstimate e = work(WorkKind.DEVELOP, WorkConditions.unknown());
    assertThat(figure(e, "sodiumHydroxideG").value())
        .isCloseTo(7 * figure(e, "developerL").value(), within(1e-9));
  }

  @Test
  void exposureComesFromTheFilm() {
    OptionalDouble none = OptionalDouble.empty();
    WorkConditions known =
        new WorkConditions(
            Optional.empty(),
            none,
            Optional.empty(),
            none,
            OptionalDouble.of(69),
            OptionalDouble.of(400));
    StepEstimate e = work(WorkKind.EXPOSE, known);
    assertThat(figure(e, "exposureS").value()).isEqualTo(69);
    assertThat(figure(e, "exposureS").band()).contains(new Band(69, 400));
    assertThat(e.handsS().getAsDouble()).isEqualTo(10 * 60 + 69);
  }
}
