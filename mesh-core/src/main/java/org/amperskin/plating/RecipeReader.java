package org.amperskin.plating;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.QuantityException;
import org.amperskin.units.Unit;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/**
 * Reads a recipe from YAML 1.2 and checks it.
 *
 * <p>Guaranteed: unknown, doubled and missing keys, a number without source, a range out of order,
 * a unit that does not fit and a hazard left out are all told with line and column. Cost: linear in
 * the text.
 */
public final class RecipeReader {
  private static final Set<String> PLAIN_KEYS =
      Set.of(
          "id",
          "name",
          "how",
          "metal",
          "valence",
          "alkaline",
          "claim",
          "efficiency-by-density",
          "anode",
          "hazards",
          "make-up",
          "cautions",
          "notes");
  private static final Set<String> FIGURE_KEYS =
      Set.of("value", "low", "typical", "high", "unit", "mark", "source");
  private static final Set<String> CURVE_KEYS = Set.of("points", "mark", "source");
  private static final Set<String> NOTE_KEYS = Set.of("text", "mark", "source");
  private static final Set<String> ANODE_KEYS = Set.of("kind", "soluble", "mark", "source");

  private RecipeReader() {}

  /**
   * Reads one recipe.
   *
   * @param text the YAML
   * @param file its name, for messages
   */
  public static Recipe read(String text, String file) throws YamlFault {
    YamlMap top = YamlMap.of(text, file, "recipe");
    Set<String> known =
        Stream.concat(PLAIN_KEYS.stream(), Arrays.stream(FigureKey.values()).map(FigureKey::key))
            .collect(Collectors.toSet());
    top.onlyKeys(known);
    Map<FigureKey, Figure> figures = new EnumMap<>(FigureKey.class);
    for (FigureKey key : FigureKey.values()) {
      if (top.has(key.key())) {
        figures.put(key, figure(top.map(key.key()), key));
      }
    }
    Optional<Anode> anode =
        top.has("anode") ? Optional.of(anode(top.map("anode"))) : Optional.empty();
    Optional<EfficiencyCurve> curve = curve(top);
    Set<Hazard> hazards = EnumSet.noneOf(Hazard.class);
    for (String word : top.words("hazards")) {
      hazards.add(top.oneOf("hazards", word, Hazard.values(), Hazard::key));
    }
    Metal metal = metal(top);
    int valence = top.whole("valence");
    if (!metal.valences().contains(valence)) {
      throw top.fault(
          "valence",
          "valence " + valence + " of " + metal.label() + " is not one of " + metal.valences());
    }
    How how = top.oneOf("how", top.word("how"), How.values(), How::key);
    Claim claim = top.oneOf("claim", top.word("claim"), Claim.values(), Claim::key);
    try {
      return new Recipe(
          top.word("id"),
          top.word("name"),
          how,
          new Ion(metal, valence),
          top.yesNo("alkaline"),
          claim,
          figures,
          curve,
          anode,
          hazards,
          notes(top, "make-up"),
          notes(top, "cautions"),
          notes(top, "notes"));
    } catch (IllegalArgumentException broken) {
      String message = broken.getMessage();
      throw top.fault(keyNamedIn(message, top), message);
    }
  }

  private static Metal metal(YamlMap top) throws YamlFault {
    String word = top.word("metal");
    return Metal.find(word)
        .orElseThrow(
            () ->
                top.fault(
                    "metal",
                    "metal '"
                        + word
                        + "' is not one of "
                        + Arrays.stream(Metal.values()).map(Metal::symbol).toList()));
  }

  /** Points at the key a rule complained about, or at the top of the file. */
  private static String keyNamedIn(String message, YamlMap top) {
    String afterId = message.substring(message.indexOf(": ") + 2);
    String first = afterId.split("[ :]")[0];
    if (first.equals("hazard")) {
      first = "hazards";
    } else if (first.equals("cyanide")) {
      first = "make-up";
    }
    return top.has(first) ? first : "";
  }

  private static Figure figure(YamlMap map, FigureKey key) throws YamlFault {
    map.onlyKeys(FIGURE_KEYS);
    boolean single = map.has("value");
    if (single && (map.has("low") || map.has("typical") || map.has("high"))) {
      throw map.fault("value", "value stands beside low, typical or high: give one or the other");
    }
    String unitText = map.word("unit");
    double[] low = new double[3];
    String[] names = single ? new String[] {"value"} : new String[] {"low", "typical", "high"};
    Unit unit = null;
    for (int i = 0; i < 3; i++) {
      String name = names[Math.min(i, names.length - 1)];
      try {
        Quantity quantity = Quantity.parse(map.word(name) + " " + unitText, key.dimension());
        boolean temperature = key == FigureKey.TEMPERATURE;
        unit = temperature ? RecipeRules.kelvin() : Unit.of(unitText);
        low[i] = temperature ? quantity.si() : Double.parseDouble(map.word(name));
      } catch (QuantityException wrong) {
        throw map.fault(name, wrong.getMessage());
      }
    }
    Mark mark = mark(map);
    String source = map.word("source");
    if (!(low[0] <= low[1] && low[1] <= low[2])) {
      throw map.fault(
          "low",
          "low "
              + map.word("low")
              + ", typical "
              + map.word("typical")
              + ", high "
              + map.word("high")
              + " "
              + unitText
              + " are not in order");
    }
    return new Figure(low[0], low[1], low[2], unit, mark, source);
  }

  private static Optional<EfficiencyCurve> curve(YamlMap top) throws YamlFault {
    if (!top.has("efficiency-by-density")) {
      return Optional.empty();
    }
    YamlMap map = top.map("efficiency-by-density");
    map.onlyKeys(CURVE_KEYS);
    List<EfficiencyCurve.Point> points = new ArrayList<>();
    for (YamlMap point : map.maps("points")) {
      point.onlyKeys(Set.of("density", "efficiency"));
      double density = point.positive("density", Dimension.CURRENT_DENSITY);
      double efficiency = point.positive("efficiency", Dimension.FRACTION);
      try {
        points.add(new EfficiencyCurve.Point(density, efficiency));
      } catch (IllegalArgumentException broken) {
        throw point.fault("efficiency", broken.getMessage());
      }
    }
    try {
      return Optional.of(new EfficiencyCurve(points, mark(map), map.word("source")));
    } catch (IllegalArgumentException broken) {
      throw map.fault(map.has("points") ? "points" : "", broken.getMessage());
    }
  }

  private static Mark mark(YamlMap map) throws YamlFault {
    return map.oneOf("mark", map.word("mark"), Mark.values(), Mark::letter);
  }

  private static Anode anode(YamlMap map) throws YamlFault {
    map.onlyKeys(ANODE_KEYS);
    return new Anode(map.word("kind"), map.yesNo("soluble"), mark(map), map.word("source"));
  }

  private static List<Note> notes(YamlMap top, String key) throws YamlFault {
    List<Note> notes = new ArrayList<>();
    for (YamlMap map : top.maps(key)) {
      map.onlyKeys(NOTE_KEYS);
      notes.add(new Note(map.word("text"), mark(map), map.word("source")));
    }
    return notes;
  }
}
