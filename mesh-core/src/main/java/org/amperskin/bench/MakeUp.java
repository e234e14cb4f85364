package org.amperskin.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.amperskin.plating.Mark;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.QuantityException;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/**
 * What a bath is made up from: a litre's contents with range, mark and source.
 *
 * <p>Not guaranteed: additives, which are their maker's.
 *
 * @param recipe the recipe it makes
 * @param contents the contents
 * @param metalLowGPerL least metal published (g/L)
 * @param metalHighGPerL most metal published (g/L)
 * @param metalMark how far that can be trusted
 * @param metalSource where it comes from
 */
record MakeUp(
    String recipe,
    List<Content> contents,
    double metalLowGPerL,
    double metalHighGPerL,
    Mark metalMark,
    String metalSource) {
  private static final String FILE = "make-up.yaml";

  MakeUp {
    contents = List.copyOf(contents);
  }

  /** What a number of a make-up counts. */
  enum Counted {
    /** The chemical as weighed. */
    SELF,
    /** The metal in it. */
    METAL,
    /** Chloride, from whatever brings it. */
    CHLORIDE
  }

  /**
   * One of the contents.
   *
   * @param chemical what is weighed; none for chloride, where the user chooses
   * @param counted what the numbers count
   * @param low least (g/L)
   * @param typical usual (g/L)
   * @param high most (g/L)
   * @param mark how far the range can be trusted
   * @param source where it comes from
   */
  record Content(
      Optional<Chemical> chemical,
      Counted counted,
      double low,
      double typical,
      double high,
      Mark mark,
      String source) {
    /** The metal that comes with so much of it (g/L). */
    double metal(double gPerL) {
      return counted == Counted.METAL
          ? gPerL
          : gPerL * chemical.map(Chemical::metalShare).orElse(0.0);
    }

    /** Its name. */
    String name() {
      return chemical.map(Chemical::label).orElse("chloride");
    }
  }

  /** All make-ups by recipe. */
  static Map<String, MakeUp> all() {
    try (InputStream in = MakeUp.class.getResourceAsStream(FILE)) {
      YamlMap top = YamlMap.of(new String(in.readAllBytes(), StandardCharsets.UTF_8), FILE, FILE);
      Map<String, MakeUp> all = new LinkedHashMap<>();
      for (String recipe : top.keys()) {
        all.put(recipe, read(recipe, top.map(recipe)));
      }
      return all;
    } catch (IOException broken) {
      throw new UncheckedIOException("resource " + FILE, broken);
    } catch (YamlFault ours) {
      throw new IllegalStateException(ours.getMessage(), ours);
    }
  }

  private static MakeUp read(String recipe, YamlMap map) throws YamlFault {
    map.onlyKeys(Set.of("metal-range", "contents"));
    List<Content> contents = new ArrayList<>();
    for (YamlMap c : map.maps("contents")) {
      Counted counted =
          c.has("as")
              ? c.oneOf(
                  "as", c.word("as"), Counted.values(), k -> k.name().toLowerCase(Locale.ROOT))
              : Counted.SELF;
      Optional<Chemical> chemical =
          c.has("chemical") ? Chemical.find(c.word("chemical")) : Optional.empty();
      if (chemical.isEmpty() != (counted == Counted.CHLORIDE)) {
        throw c.fault("chemical", "a chemical known here, or chloride, was expected");
      }
      contents.add(
          new Content(
              chemical,
              counted,
              gPerL(c, "low"),
              gPerL(c, "typical"),
              gPerL(c, "high"),
              mark(c),
              c.word("source")));
    }
    if (map.has("metal-range")) {
      YamlMap metal = map.map("metal-range");
      return new MakeUp(
          recipe,
          contents,
          metal.whole("low"),
          metal.whole("high"),
          mark(metal),
          metal.word("source"));
    }
    return new MakeUp(
        recipe,
        contents,
        contents.stream().mapToDouble(c -> c.metal(c.low())).sum(),
        contents.stream().mapToDouble(c -> c.metal(c.high())).sum(),
        Mark.COMPUTED,
        "computed from the ranges of the contents");
  }

  private static double gPerL(YamlMap c, String key) throws YamlFault {
    try {
      return Quantity.parse(c.word(key) + " " + c.word("unit"), Dimension.CONCENTRATION).si();
    } catch (QuantityException wrong) {
      throw c.fault(key, wrong.getMessage());
    }
  }

  private static Mark mark(YamlMap map) throws YamlFault {
    return map.oneOf("mark", map.word("mark"), Mark.values(), Mark::letter);
  }
}
