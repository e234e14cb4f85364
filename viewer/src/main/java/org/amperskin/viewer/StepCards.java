package org.amperskin.viewer;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import org.amperskin.job.RunKeeper;
import org.amperskin.plating.How;
import org.amperskin.plating.Metal;
import org.amperskin.plating.Note;
import org.amperskin.plating.StepEstimate;
import org.amperskin.plating.StepFigure;
import org.amperskin.plating.StepRun;
import org.amperskin.report.Figures;
import org.amperskin.viewer.part.FigureRow;
import org.amperskin.viewer.part.RunStart;
import org.amperskin.viewer.part.StepCard;

/** Turns the plan's estimates into cards, in the words and digits of the reports. */
final class StepCards {
  private static final double MM2_PER_DM2 = 1e4;

  private StepCards() {}

  static StepCard of(StepEstimate s, int surface, RunKeeper keeper) {
    List<String> warnings = new ArrayList<>();
    s.refusal().ifPresent(r -> warnings.add("No figure: " + r));
    warnings.addAll(s.warnings());
    return new StepCard(
        s.name(),
        s.metal().map(m -> Metal.find(m).map(Metal::label).orElse(m)).orElse("none"),
        s.how().key(),
        surface,
        s.currentA(),
        s.timeS(),
        s.massG(),
        thickness(s),
        more(s),
        s.cautions().stream().map(c -> c.hazard() + ": " + c.text()).toList(),
        warnings,
        s.how() == How.PREPARE ? s.notes().stream().map(Note::text).toList() : List.of(),
        StepRun.of(s).map(run -> new RunStart(run, keeper)));
  }

  private static String thickness(StepEstimate s) {
    if (s.thicknessUm().isEmpty()) {
      return "";
    }
    String band =
        s.thicknessBandUm()
            .map(b -> " (" + Figures.number(b.low()) + " to " + Figures.number(b.high()) + ")")
            .orElse("");
    return Figures.number(s.thicknessUm().getAsDouble()) + " µm" + band;
  }

  private static List<FigureRow> more(StepEstimate s) {
    List<FigureRow> rows = new ArrayList<>();
    if (s.how() != How.PREPARE) {
      rows.add(new FigureRow("Open area", Figures.number(s.openAreaMm2() / MM2_PER_DM2), "dm²"));
      rows.add(
          new FigureRow("error at most", Figures.number(s.areaErrorMm2() / MM2_PER_DM2), "dm²"));
    }
    s.timeBandS()
        .ifPresent(
            b -> rows.add(range("Time, 8 of 10 cases", b.low(), b.high(), Figures::time, "")));
    s.massBandG()
        .ifPresent(
            b -> rows.add(range("Metal, 8 of 10 cases", b.low(), b.high(), Figures::number, "g")));
    add(rows, "Current density", s.densityADm2(), "A/dm²");
    s.densityWindowADm2()
        .ifPresent(w -> rows.add(range("allowed", w.low(), w.high(), Figures::number, "A/dm²")));
    add(rows, "Voltage, an estimate", s.voltageV(), "V");
    add(rows, "Charge", s.chargeAh(), "A·h");
    add(rows, "Plating rate", s.rateUmPerH(), "µm/h");
    add(rows, "Anode area", scaled(s.anodeAreaMm2(), 1 / MM2_PER_DM2), "dm²");
    add(rows, "Bath", s.bathL(), "L");
    add(rows, "Swab contact", scaled(s.contactAreaMm2(), 1e-2), "cm²");
    s.dwellS().ifPresent(d -> rows.add(new FigureRow("On every spot", Figures.time(d), "")));
    s.passes().ifPresent(p -> rows.add(new FigureRow("Passes", Long.toString(Math.round(p)), "")));
    add(rows, "Swab speed", s.speedMPerMin(), "m/min");
    add(rows, "Solution used", scaled(s.solutionL(), 1e3), "mL");
    s.figures().forEach(f -> rows.add(figure(f)));
    s.handsS().ifPresent(t -> rows.add(new FigureRow("Hands busy", Figures.time(t), "")));
    s.waitS().ifPresent(t -> rows.add(new FigureRow("Waiting", Figures.time(t), "")));
    s.ramp()
        .forEach(
            p ->
                rows.add(
                    new FigureRow(
                        "Start, at " + Figures.time(p.atS()), Figures.number(p.currentA()), "A")));
    return rows;
  }

  private static FigureRow figure(StepFigure f) {
    String label = Character.toUpperCase(f.label().charAt(0)) + f.label().substring(1);
    return f.unit().equals("s")
        ? new FigureRow(label, Figures.time(f.value()), "")
        : new FigureRow(label, Figures.number(f.value()), f.unit());
  }

  private static void add(List<FigureRow> rows, String label, OptionalDouble value, String unit) {
    value.ifPresent(v -> rows.add(new FigureRow(label, Figures.number(v), unit)));
  }

  private static OptionalDouble scaled(OptionalDouble value, double factor) {
    return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * factor) : value;
  }

  private static FigureRow range(
      String label, double low, double high, DoubleFunction<String> show, String unit) {
    return new FigureRow(label, show.apply(low) + " to " + show.apply(high), unit);
  }
}
