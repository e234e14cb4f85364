package org.amperskin.bench;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.amperskin.plating.EfficiencyCurve;
import org.amperskin.plating.Figure;
import org.amperskin.plating.FigureKey;
import org.amperskin.plating.Hazard;
import org.amperskin.plating.Mark;
import org.amperskin.plating.Note;
import org.amperskin.plating.Recipe;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.Unit;

/**
 * Writes a recipe as the YAML that {@code RecipeReader} reads.
 *
 * <p>Guaranteed: reading it back gives the same recipe, to the last bit of its numbers. Not kept:
 * comments of the file it was read from.
 */
final class RecipeYaml {
  private static final double ZERO_C = Quantity.parse("0 C", Dimension.TEMPERATURE).si();

  private RecipeYaml() {}

  static String of(Recipe r, String id, String name, Map<FigureKey, Figure> instead, String head) {
    StringBuilder out = new StringBuilder();
    head.lines().forEach(l -> out.append("# ").append(l).append('\n'));
    line(out, "id", id);
    line(out, "name", quoted(name));
    line(out, "how", r.how().key());
    line(out, "metal", r.metal().symbol());
    line(out, "valence", Integer.toString(r.ion().valence()));
    line(out, "alkaline", Boolean.toString(r.alkaline()));
    line(out, "claim", r.claim().key());
    r.figures()
        .forEach(
            (key, figure) -> line(out, key.key(), figure(key, instead.getOrDefault(key, figure))));
    // an efficiency that was weighed goes before a table of efficiencies
    if (!instead.containsKey(FigureKey.EFFICIENCY)) {
      r.efficiencyByDensity().ifPresent(curve -> curve(out, curve));
    }
    r.anode()
        .ifPresent(
            a ->
                line(
                    out,
                    "anode",
                    "{kind: "
                        + quoted(a.kind())
                        + ", soluble: "
                        + a.soluble()
                        + origin(a.mark(), a.source())));
    line(
        out,
        "hazards",
        r.hazards().stream().map(Hazard::key).collect(Collectors.joining(", ", "[", "]")));
    notes(out, "make-up", r.makeUp());
    notes(out, "cautions", r.cautions());
    notes(out, "notes", r.notes());
    return out.toString();
  }

  private static void line(StringBuilder out, String key, String value) {
    out.append(key).append(": ").append(value).append('\n');
  }

  private static void curve(StringBuilder out, EfficiencyCurve curve) {
    String points =
        curve.points().stream()
            .map(p -> "{density: " + p.densityAm2() + " A/m2, efficiency: " + share(p) + " %}")
            .collect(Collectors.joining(", ", "[", "]"));
    line(out, "efficiency-by-density", "{points: " + points + origin(curve.mark(), curve.source()));
  }

  /** In percent, the shortest number that reads as the same double. */
  private static String share(EfficiencyCurve.Point p) {
    for (int digits = 3; digits < 17; digits++) {
      String text = String.format(Locale.ROOT, "%." + digits + "g", 100 * p.efficiency());
      if (Unit.of("%").toSi(Double.parseDouble(text)) == p.efficiency()) {
        return text;
      }
    }
    return Double.toString(100 * p.efficiency());
  }

  private static String figure(FigureKey key, Figure f) {
    boolean celsius = key == FigureKey.TEMPERATURE;
    String unit = celsius ? "C" : f.unit().text();
    String values =
        f.low() == f.typical() && f.typical() == f.high()
            ? "value: " + number(f.low(), celsius)
            : "low: "
                + number(f.low(), celsius)
                + ", typical: "
                + number(f.typical(), celsius)
                + ", high: "
                + number(f.high(), celsius);
    return "{" + values + ", unit: " + quoted(unit) + origin(f.mark(), f.source());
  }

  /** The shortest number that reads as the same double; kelvin become degrees Celsius. */
  private static String number(double value, boolean celsius) {
    if (!celsius) {
      return Double.toString(value);
    }
    for (int digits = 3; digits < 17; digits++) {
      double rounded =
          Double.parseDouble(String.format(Locale.ROOT, "%." + digits + "g", value - ZERO_C));
      if (rounded + ZERO_C == value) {
        return Double.toString(rounded);
      }
    }
    return Double.toString(value - ZERO_C);
  }

  private static String origin(Mark mark, String source) {
    return ", mark: " + mark.letter() + ", source: " + quoted(source) + "}";
  }

  private static void notes(StringBuilder out, String key, List<Note> notes) {
    if (!notes.isEmpty()) {
      out.append(key).append(":\n");
      notes.forEach(
          n ->
              out.append("  - {text: ")
                  .append(quoted(n.text()))
                  .append(origin(n.mark(), n.source()))
                  .append('\n'));
    }
  }

  private static String quoted(String text) {
    return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n") + '"';
  }
}
