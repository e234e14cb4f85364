package org.amperskin.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;
import org.amperskin.plating.FigureKey;
import org.amperskin.plating.Ion;
import org.amperskin.plating.Metal;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.RecipeReader;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

/** What weighed coupons show of the efficiency, and how sure that is. */
class EfficiencyFitTest {
  private static final Ion NICKEL = new Ion(Metal.NICKEL, 2);
  private static final Ion COPPER = new Ion(Metal.COPPER, 2);
  private static final LocalDate DAY = LocalDate.of(2026, 3, 1);

  private static LogEntry.Weighing weighing(
      int number, double before, double after, double balance, double chargeAh) {
    return new LogEntry.Weighing(
        new LogEntry.Head(number, DAY.plusDays(number), Optional.empty(), Optional.empty()),
        "coupon " + number,
        before,
        after,
        balance,
        OptionalDouble.of(chargeAh),
        Optional.of("nickel"),
        OptionalLong.empty());
  }

  /** Coupons of a bath of known efficiency, weighed on two balances with noise and rounding. */
  private static List<LogEntry.Weighing> series(long seed, int n, double efficiency) {
    Random random = new Random(seed);
    List<LogEntry.Weighing> series = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double step = random.nextBoolean() ? 0.001 : 0.005;
      double charge = 0.05 + 0.35 * random.nextDouble();
      double before = 5 + 3 * random.nextDouble();
      double gain = efficiency * NICKEL.massPerAmpereHour().inGrams() * charge;
      series.add(
          weighing(
              i + 1, read(before, step, random), read(before + gain, step, random), step, charge));
    }
    return series;
  }

  private static double read(double grams, double step, Random random) {
    return step * Math.round((grams + step * random.nextGaussian()) / step);
  }

  @Test
  void theIntervalCoversTheTruthAsOftenAsItSays() {
    // 95 % of 200 is 190; the binomial distribution lies in 183 to 198 in 996 cases of 1000
    for (int n : new int[] {3, 6, 12}) {
      for (double truth : new double[] {0.953, 0.18}) {
        int covered = 0;
        for (int seed = 1; seed <= 200; seed++) {
          EfficiencyFit.Interval i =
              EfficiencyFit.of(series(seed + 1000L * n, n, truth), NICKEL).interval().orElseThrow();
          covered += i.low() <= truth && truth <= i.high() ? 1 : 0;
        }
        assertThat(covered).as("%d coupons, truth %.3f, seeds 1-200", n, truth).isBetween(183, 198);
      }
    }
  }

  /** An interval that takes the normal distribution for Student's t is caught by the same count. */
  @Test
  void aNormalIntervalWouldBeTooNarrowForThreeCoupons() {
    int covered = 0;
    for (int seed = 1; seed <= 200; seed++) {
      EfficiencyFit fit = EfficiencyFit.of(series(seed + 3000L, 3, 0.953), NICKEL);
      double half = 1.96 * fit.standardError().orElseThrow();
      covered += Math.abs(fit.efficiency() - 0.953) <= half ? 1 : 0;
    }
    assertThat(covered).isLessThan(183);
  }

  @Test
  void aSeriesWithoutNoiseGivesItsEfficiencyBack() {
    List<LogEntry.Weighing> series = new ArrayList<>();
    for (int i = 1; i <= 4; i++) {
      double gain = 0.9 * COPPER.massPerAmpereHour().inGrams() * 0.1 * i;
      series.add(weighing(i, 10, 10 + gain, 0.001, 0.1 * i));
    }
    EfficiencyFit fit = EfficiencyFit.of(series, COPPER);
    assertThat(fit.efficiency()).isCloseTo(0.9, within(1e-12));
    // digits that happen to agree are not surer than the balance's step allows
    assertThat(fit.standardError().orElseThrow()).isGreaterThan(1e-5);
  }

  /** The same fit by the library's general least squares on rows scaled by their weight. */
  @Test
  void theFitIsThatOfGeneralLeastSquares() {
    List<LogEntry.Weighing> series = series(7, 8, 0.95);
    double[] y = new double[8];
    double[][] x = new double[8][1];
    for (int i = 0; i < 8; i++) {
      LogEntry.Weighing w = series.get(i);
      x[i][0] = NICKEL.massPerAmpereHour().inGrams() * w.chargeAh().getAsDouble() / w.balanceG();
      y[i] = w.gainG() / w.balanceG();
    }
    OLSMultipleLinearRegression general = new OLSMultipleLinearRegression();
    general.setNoIntercept(true);
    general.newSampleData(y, x);
    EfficiencyFit fit = EfficiencyFit.of(series, NICKEL);
    assertThat(fit.efficiency())
        .isCloseTo(general.estimateRegressionParameters()[0], within(1e-12));
    assertThat(fit.standardError().orElseThrow())
        .isCloseTo(general.estimateRegressionParametersStandardErrors()[0], within(1e-12));
    // Student's t at 7 degrees of freedom, 97.5 %: 2.3646 (printed tables)
    EfficiencyFit.Interval i = fit.interval().orElseThrow();
    assertThat((i.high() - i.low()) / 2 / fit.standardError().orElseThrow())
        .isCloseTo(2.3646, within(1e-4));
  }

  @Test
  void aCoarseBalanceCountsLess() {
    List<LogEntry.Weighing> series =
        List.of(
            weighing(1, 10, 10 + 0.95 * 1.0950 * 0.3, 0.001, 0.3),
            weighing(2, 10, 10 + 0.95 * 1.0950 * 0.3, 0.001, 0.3),
            weighing(3, 10, 10 + 0.70 * 1.0950 * 0.3, 0.1, 0.3));
    assertThat(EfficiencyFit.of(series, NICKEL).efficiency()).isCloseTo(0.95, within(1e-3));
  }

  @Test
  void anOutlierIsToldAndStaysInTheFit() {
    List<LogEntry.Weighing> series = new ArrayList<>(series(11, 8, 0.95));
    assertThat(EfficiencyFit.of(series, NICKEL).outliers()).isEmpty();
    series.add(weighing(9, 5, 5.20, 0.001, 0.4)); // wet, or another coupon: half of what is due
    EfficiencyFit fit = EfficiencyFit.of(series, NICKEL);
    assertThat(fit.outliers())
        .singleElement()
        .satisfies(p -> assertThat(p.weighing().what()).isEqualTo("coupon 9"));
    assertThat(fit.points()).hasSize(9);
    assertThat(fit.efficiency()).isLessThan(0.9);
  }

  @Test
  void honestSeriesSeldomHaveOutliers() {
    int told = 0;
    for (int seed = 1; seed <= 200; seed++) {
      told += EfficiencyFit.of(series(seed, 8, 0.95), NICKEL).outliers().isEmpty() ? 0 : 1;
    }
    assertThat(told).as("series of 200 with an outlier; 5 %% is meant").isBetween(2, 20);
  }

  @Test
  void fewerThanThreeCouponsHaveNoInterval() {
    for (int n = 1; n <= 2; n++) {
      EfficiencyFit fit = EfficiencyFit.of(series(5, n, 0.95), NICKEL);
      assertThat(fit.interval()).isEmpty();
      assertThat(fit.standardError()).isEmpty();
      assertThat(fit.efficiency()).isCloseTo(0.95, within(0.2));
    }
    assertThatThrownBy(() -> EfficiencyFit.of(List.of(), NICKEL))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0 weighings");
  }

  @Test
  void everyStandardRecipeIsReadBackAsItWasWritten() throws Exception {
    for (Recipe recipe : RecipeLibrary.standard().all()) {
      String yaml = RecipeYaml.of(recipe, recipe.id(), recipe.name(), java.util.Map.of(), "copy");
      Recipe read = RecipeReader.read(yaml, "copy.yaml");
      assertThat(read.id()).isEqualTo(recipe.id());
      assertThat(read.name()).isEqualTo(recipe.name());
      assertThat(read.how()).isEqualTo(recipe.how());
      assertThat(read.ion()).isEqualTo(recipe.ion());
      assertThat(read.alkaline()).isEqualTo(recipe.alkaline());
      assertThat(read.claim()).isEqualTo(recipe.claim());
      assertThat(read.figures()).isEqualTo(recipe.figures());
      assertThat(read.anode()).isEqualTo(recipe.anode());
      assertThat(read.hazards()).isEqualTo(recipe.hazards());
      assertThat(read.makeUp()).isEqualTo(recipe.makeUp());
      assertThat(read.cautions()).isEqualTo(recipe.cautions());
      assertThat(read.notes()).isEqualTo(recipe.notes());
    }
  }

  @Test
  void aCalibratedRecipeCarriesTheFitAndItsOrigin() {
    Recipe base = RecipeLibrary.standard().find("nickel-watts");
    EfficiencyFit fit = EfficiencyFit.of(series(2, 6, 0.953), NICKEL);
    CalibratedRecipe mine = CalibratedRecipe.of(base, fit, "My \"bright\" nickel");
    assertThat(mine.recipe().id()).isEqualTo("my-bright-nickel");
    assertThat(mine.recipe().name()).isEqualTo("My \"bright\" nickel");
    assertThat(mine.yaml()).contains("# Based on nickel-watts");
    assertThat(mine.recipe().figure(FigureKey.EFFICIENCY).orElseThrow())
        .satisfies(
            f -> {
              assertThat(f.typicalSi()).isCloseTo(fit.efficiency(), within(1e-6));
              assertThat(f.lowSi()).isCloseTo(fit.interval().orElseThrow().low(), within(1e-6));
              assertThat(f.mark().letter()).isEqualTo("X");
              assertThat(f.source()).contains("bench log, 6 coupons, 2026-03-02 to 2026-03-07");
            });
    assertThat(mine.recipe().figure(FigureKey.DENSITY)).isEqualTo(base.figure(FigureKey.DENSITY));
    assertThat(mine.recipe().allCautions()).isEqualTo(base.allCautions());
    Recipe tabled = RecipeLibrary.standard().find("chromium-hexavalent-decorative");
    EfficiencyFit weighed = EfficiencyFit.of(series(2, 6, 0.16), NICKEL);
    assertThat(CalibratedRecipe.of(tabled, weighed, "mine").recipe().efficiencyByDensity())
        .as("what was weighed goes before a table")
        .isEmpty();
  }

  @Test
  void whatCannotBeARecipeIsRefusedWithNumbers() {
    RecipeLibrary library = RecipeLibrary.standard();
    Recipe watts = library.find("nickel-watts");
    EfficiencyFit two = EfficiencyFit.of(series(2, 2, 0.95), NICKEL);
    refused(watts, two, "mine", "2 weighed with a charge: a recipe needs 3");
    EfficiencyFit tooMuch = EfficiencyFit.of(series(2, 9, 1.3), NICKEL);
    refused(watts, tooMuch, "mine", "more metal than the charge can deposit");
    EfficiencyFit good = EfficiencyFit.of(series(2, 9, 0.95), NICKEL);
    refused(watts, good, "nickel-watts", "a name of its own");
    refused(watts, good, "7", "does not begin with a letter");
    refused(library.find("nickel-brush-acid"), good, "mine", "uses a factor");
  }

  private static void refused(Recipe base, EfficiencyFit fit, String name, String words) {
    assertThatThrownBy(() -> CalibratedRecipe.of(base, fit, name))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(words);
  }

  /** An etch is weighed by what is lost: 0.95 g gone of each gram that the charge can take. */
  @Test
  void metalTakenOffIsWeighedByItsLoss() {
    List<LogEntry.Weighing> lost = series(2, 6, -0.95);
    EfficiencyFit off = EfficiencyFit.of(lost, NICKEL, true);
    assertThat(off.efficiency()).isCloseTo(0.95, within(2e-2));
    assertThat(off.efficiency()).isEqualTo(-EfficiencyFit.of(lost, NICKEL).efficiency());
    assertThat(off.points()).allMatch(p -> p.efficiency() > 0);
  }

  @Test
  void coverageIsTheMeanOfTheCouponsWithStudentsInterval() {
    List<LogEntry.Coupon> coupons = new ArrayList<>();
    for (double c : new double[] {0.8, 0.9, 1.0}) {
      coupons.add(
          new LogEntry.Coupon(
              LogEntry.Head.of(DAY, Optional.empty()),
              "c",
              c,
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              Optional.of("deep black"),
              Optional.empty(),
              Optional.empty()));
    }
    CoverageMean mean = CoverageMean.of(coupons).orElseThrow();
    assertThat(mean.meanAhPerDm2()).isCloseTo(0.9, within(1e-12));
    // t at 2 degrees of freedom, 97.5 %: 4.3027 (printed tables); times 0.1 / sqrt 3
    assertThat(mean.interval().orElseThrow().high()).isCloseTo(0.9 + 0.24842, within(1e-4));
    assertThat(CoverageMean.of(coupons.subList(0, 2)).orElseThrow().interval()).isEmpty();
    assertThat(CoverageMean.of(List.of())).isEmpty();
  }
}
