package org.amperskin.report;

import java.io.IOException;
import java.util.Optional;
import org.amperskin.plating.Band;
import org.amperskin.plating.StepEstimate;
import org.amperskin.plating.StepFigure;
import org.amperskin.plating.Swing;
import org.amperskin.plating.Window;

/** One step of a plan as JSON members; what does not apply is null. */
final class StepJson {
  private StepJson() {}

  static void write(Json j, StepEstimate s) throws IOException {
    j.text("name", s.name())
        .maybeText("recipe", s.recipe())
        .maybeText("metal", s.metal())
        .text("how", s.how().key())
        .text("region", s.region())
        .number("openAreaMm2", s.openAreaMm2())
        .number("openFraction", s.openFraction())
        .maybe("densityADm2", s.densityADm2());
    window(j, "densityWindowADm2", s.densityWindowADm2());
    j.maybe("currentA", s.currentA());
    window(j, "currentBandA", s.currentBandA());
    j.maybe("voltageV", s.voltageV());
    window(j, "voltageWindowV", s.voltageWindowV());
    j.maybe("timeS", s.timeS());
    band(j, "timeBandS", s.timeBandS());
    j.maybe("chargeAh", s.chargeAh()).maybe("massG", s.massG());
    band(j, "massBandG", s.massBandG());
    j.maybe("thicknessUm", s.thicknessUm());
    band(j, "thicknessBandUm", s.thicknessBandUm());
    j.maybe("rateUmPerH", s.rateUmPerH())
        .maybe("anodeAreaMm2", s.anodeAreaMm2())
        .maybe("bathL", s.bathL())
        .maybe("tankLoadDm2PerL", s.tankLoadDm2PerL())
        .maybe("tankCurrentAPerL", s.tankCurrentAPerL())
        .maybe("contactAreaMm2", s.contactAreaMm2())
        .maybe("dwellS", s.dwellS())
        .maybe("passes", s.passes())
        .maybe("speedMPerMin", s.speedMPerMin())
        .maybe("solutionL", s.solutionL())
        .maybe("hydrogenL", s.hydrogenL())
        .maybe("handsS", s.handsS())
        .maybe("waitS", s.waitS());
    j.objects("figures", s.figures(), StepJson::figure);
    j.objects("swings", s.swings(), StepJson::swing);
    j.objects(
        "ramp", s.ramp(), (k, p) -> k.number("atS", p.atS()).number("currentA", p.currentA()));
    j.maybeText("refusal", s.refusal()).texts("warnings", s.warnings());
    j.objects(
        "cautions",
        s.cautions(),
        (k, c) ->
            k.text("hazard", c.hazard())
                .text("text", c.text())
                .text("mark", c.mark().letter())
                .text("source", c.source()));
    j.objects("notes", s.notes(), JsonReports::note);
    j.objects(
        "assumptions",
        s.assumptions(),
        (k, a) ->
            k.text("what", a.what())
                .text("value", a.value())
                .text("mark", a.mark().letter())
                .text("source", a.source()));
  }

  /** A number with its unit, band, mark and basis. */
  static void figure(Json k, StepFigure f) throws IOException {
    k.text("key", f.key()).text("label", f.label()).number("value", f.value());
    k.text("unit", f.unit());
    band(k, "band", f.band());
    k.text("mark", f.mark().letter()).text("basis", f.basis());
  }

  static void swing(Json k, Swing w) throws IOException {
    k.text("result", w.result())
        .text("unknown", w.unknown())
        .number("typical", w.typical())
        .number("atLow", w.atLow())
        .number("atHigh", w.atHigh())
        .text("unit", w.unit())
        .text("remedy", w.remedy());
  }

  private static void window(Json j, String key, Optional<Window> w) throws IOException {
    j.range(key, w.isPresent(), w.map(Window::low).orElse(0.0), w.map(Window::high).orElse(0.0));
  }

  static void band(Json j, String key, Optional<Band> b) throws IOException {
    j.range(key, b.isPresent(), b.map(Band::low).orElse(0.0), b.map(Band::high).orElse(0.0));
  }
}
