package org.amperskin.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.bench.BathState;
import org.amperskin.bench.Calibration;
import org.amperskin.bench.CoverageMean;
import org.amperskin.bench.EfficiencyFit;
import org.amperskin.bench.LogEntry;

/** Answers of the bench log as JSON: one shape for all, empty lists for what was not asked. */
public final class LogJson {
  /** Square millimetres in a square decimetre. */
  private static final double MM2_PER_DM2 = 10_000;

  private LogJson() {}

  /**
   * The answer.
   *
   * @param log the log's file
   * @param entries entries shown or written
   * @param baths baths shown
   * @param calibration bath that was calibrated, if one was
   * @param files files written
   */
  public static String of(
      Path log,
      List<LogEntry> entries,
      List<BathState> baths,
      Optional<Calibration> calibration,
      List<Path> files) {
    return Json.object(
        j -> {
          j.text("schema", "amperskin.log/1").text("file", log.toString());
          j.objects("entries", entries, LogJson::entry);
          j.objects("baths", baths, LogJson::bath);
          j.objects("calibrations", calibration.stream().toList(), LogJson::calibration);
          j.texts("files", files.stream().map(Path::toString).toList());
        });
  }

  /** All that an entry may say; what its kind does not say is null. */
  private static final class Row {
    private Optional<String> name = Optional.empty();
    private Optional<String> bath = Optional.empty();
    private OptionalDouble chargeAh = OptionalDouble.empty();
    private OptionalDouble readingAh = OptionalDouble.empty();
    private Optional<LogEntry.Weighing> weighing = Optional.empty();
    private Optional<LogEntry.Coupon> coupon = Optional.empty();
    private Optional<LogEntry.BathReading> reading = Optional.empty();
    private List<LogEntry.Step> steps = List.of();

    Row(LogEntry entry) {
      if (entry instanceof LogEntry.Job job) {
        name = Optional.of(job.file());
        steps = job.steps();
      } else if (entry instanceof LogEntry.Weighing w) {
        weighing = Optional.of(w);
        name = Optional.of(w.what());
        bath = w.bath();
        chargeAh = w.chargeAh();
      } else if (entry instanceof LogEntry.Coupon c) {
        coupon = Optional.of(c);
        name = Optional.of(c.what());
        bath = c.bath();
        chargeAh = c.chargeAh();
      } else if (entry instanceof LogEntry.BathReading r) {
        reading = Optional.of(r);
        bath = Optional.of(r.bath());
      } else if (entry instanceof LogEntry.Counter c) {
        bath = Optional.of(c.bath());
        chargeAh = c.addedAh();
        readingAh = c.readingAh();
      }
    }
  }

  private static void entry(Json j, LogEntry entry) throws IOException {
    Row row = new Row(entry);
    j.count("number", entry.head().number())
        .text("kind", entry.kind())
        .text("date", entry.head().date().toString())
        .maybeText("note", entry.head().note())
        .maybeText("struck", entry.head().struck())
        .maybeText("name", row.name)
        .maybeText("bath", row.bath)
        .maybe("chargeAh", row.chargeAh)
        .maybe("readingAh", row.readingAh)
        .maybe("beforeG", from(row.weighing, LogEntry.Weighing::beforeG))
        .maybe("afterG", from(row.weighing, LogEntry.Weighing::afterG))
        .maybe("gainG", from(row.weighing, LogEntry.Weighing::gainG))
        .maybe("balanceG", from(row.weighing, LogEntry.Weighing::balanceG))
        .maybe(
            "job",
            row.weighing.filter(w -> w.job().isPresent()).isPresent()
                ? OptionalDouble.of(row.weighing.get().job().getAsLong())
                : OptionalDouble.empty())
        .maybe("coverageAhPerDm2", from(row.coupon, LogEntry.Coupon::coverageAhPerDm2))
        .maybe("areaMm2", scaled(row.coupon.map(LogEntry.Coupon::areaDm2), MM2_PER_DM2))
        .maybeText("colour", row.coupon.flatMap(LogEntry.Coupon::colour))
        .maybeText("photo", row.coupon.flatMap(LogEntry.Coupon::photo))
        .maybe("volumeL", scaled(row.reading.map(LogEntry.BathReading::volumeL), 1))
        .maybe("metalGPerL", scaled(row.reading.map(LogEntry.BathReading::metalGPerL), 1))
        .objects(
            "steps",
            row.steps,
            (o, s) ->
                o.text("name", s.name())
                    .number("chargeAh", s.chargeAh())
                    .maybeText("bath", s.bath()))
        .objects(
            "additions",
            row.reading.map(LogEntry.BathReading::additions).orElse(List.of()),
            (o, a) ->
                o.text("name", a.what())
                    .number("amount", a.amount())
                    .text("unit", a.unit())
                    .number("metalG", a.metalG()))
        .objects(
            "doses",
            row.reading.map(LogEntry.BathReading::doses).orElse(List.of()),
            (o, d) -> o.text("additive", d.additive()).number("mlPerAh", d.mlPerAh()));
  }

  private static <T> OptionalDouble from(
      Optional<T> value, java.util.function.ToDoubleFunction<T> number) {
    return value.isPresent()
        ? OptionalDouble.of(number.applyAsDouble(value.get()))
        : OptionalDouble.empty();
  }

  private static OptionalDouble scaled(Optional<OptionalDouble> value, double factor) {
    OptionalDouble inner = value.orElse(OptionalDouble.empty());
    return inner.isPresent() ? OptionalDouble.of(factor * inner.getAsDouble()) : inner;
  }

  private static void bath(Json j, BathState s) throws IOException {
    j.text("name", s.bath().name())
        .maybeText("recipe", s.bath().recipe())
        .maybe("volumeL", s.volumeL())
        .maybe("metalGPerL", s.metalGPerL());
    interval(j, "metalBandGPerL", s.metalBandGPerL());
    j.maybe("analysisGPerL", s.analysisGPerL())
        .number("addedMetalG", s.addedMetalG())
        .number("drawnMetalG", s.drawnMetalG())
        .number("chargeAh", s.chargeAh())
        .number("chargeSinceAnalysisAh", s.chargeSinceAnalysisAh())
        .objects(
            "additives",
            s.additives(),
            (o, d) ->
                o.text("additive", d.additive())
                    .number("mlPerAh", d.mlPerAh())
                    .number("dueMl", d.dueMl()))
        .texts("notes", s.notes());
  }

  private static void interval(Json j, String key, Optional<EfficiencyFit.Interval> i)
      throws IOException {
    j.range(
        key,
        i.isPresent(),
        i.map(EfficiencyFit.Interval::low).orElse(0.0),
        i.map(EfficiencyFit.Interval::high).orElse(0.0));
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }

  private static void calibration(Json j, Calibration c) throws IOException {
    Optional<EfficiencyFit> fit = c.fit();
    j.text("bath", c.bath().name())
        .maybeText("recipe", c.bath().recipe())
        .maybe("efficiency", number(fit.map(EfficiencyFit::efficiency)))
        .maybe("standardError", number(fit.flatMap(EfficiencyFit::standardError)));
    interval(j, "interval", fit.flatMap(EfficiencyFit::interval));
    j.maybe("scatterOverBalance", number(fit.flatMap(EfficiencyFit::scatterOverBalance)))
        .objects(
            "weighings",
            fit.map(EfficiencyFit::points).orElse(List.of()),
            (o, p) ->
                o.count("number", p.weighing().head().number())
                    .text("name", p.weighing().what())
                    .text("date", p.weighing().head().date().toString())
                    .number("chargeAh", p.weighing().chargeAh().orElse(0))
                    .number("gainG", p.weighing().gainG())
                    .number("efficiency", p.efficiency())
                    .number("residualG", p.residualG())
                    .maybe("studentised", number(p.studentised()))
                    .flag("outlier", p.outlier()))
        .count("coupons", c.coverage().map(CoverageMean::coupons).orElse(0))
        .maybe("coverageAhPerDm2", number(c.coverage().map(CoverageMean::meanAhPerDm2)));
    interval(j, "coverageInterval", c.coverage().flatMap(CoverageMean::interval));
  }
}
