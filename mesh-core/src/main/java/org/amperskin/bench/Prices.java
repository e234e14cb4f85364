package org.amperskin.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.amperskin.plating.Material;
import org.amperskin.plating.Metal;
import org.amperskin.plating.Total;
import org.amperskin.units.Dimension;
import org.amperskin.units.NearestWord;
import org.amperskin.units.Quantity;
import org.amperskin.units.QuantityException;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/**
 * What things cost, in the user's money.
 *
 * <p>Definition: a YAML mapping of {@code currency}, a word, and {@code price}, from the names that
 * plans print for materials to prices such as {@code 14.50 /kg}, {@code 320 /L} or {@code 0.80
 * each}. Guaranteed: only what has a price is summed, and what has none is named. Not guaranteed:
 * packs: half a bottle costs half a bottle here. Cost: linear in the file.
 *
 * @param currency word for the money
 * @param prices price by material
 */
public record Prices(String currency, Map<String, Price> prices) {
  private static final Pattern PRICE =
      Pattern.compile("([0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)\\s*(?:/|per\\s)\\s*(.+)");
  private static final Pattern EACH =
      Pattern.compile("([0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)\\s*(?:each|/\\s*piece)");

  public Prices {
    prices = Collections.unmodifiableMap(new LinkedHashMap<>(prices));
  }

  /**
   * A price.
   *
   * @param money for one SI-coherent unit (kg or m3), or for one piece
   * @param dimension mass or volume, or none for pieces
   */
  public record Price(double money, Optional<Dimension> dimension) {
    /** The cost of one such unit, empty if that is of another kind. */
    OptionalDouble per(String unit) {
      if (unit.equals("piece") || unit.equals("pieces")) {
        return dimension.isEmpty() ? OptionalDouble.of(money) : OptionalDouble.empty();
      }
      if (dimension.isEmpty()) {
        return OptionalDouble.empty();
      }
      try {
        return OptionalDouble.of(money * Quantity.parse("1 " + unit, dimension.get()).si());
      } catch (QuantityException other) {
        return OptionalDouble.empty();
      }
    }
  }

  /**
   * A material and what it costs.
   *
   * @param material the material
   * @param cost its cost, if it has a price that fits its unit
   */
  public record Row(Material material, OptionalDouble cost) {}

  /**
   * The cost of a plan.
   *
   * @param currency word for the money
   * @param rows a row for each material
   * @param sum of the rows that have a cost, with what is not known of it; prices are certain
   * @param preciousMg mass of each precious metal laid down (mg)
   * @param notes what has no price, and prices that met no material
   */
  public record Bill(
      String currency,
      List<Row> rows,
      Total sum,
      Map<String, Double> preciousMg,
      List<String> notes) {
    /** The sum with everything typical. */
    public double total() {
      return sum.typical();
    }
  }

  /** Reads a price file. */
  public static Prices read(String text, String file) throws YamlFault {
    YamlMap top = YamlMap.of(text, file, "price file");
    top.onlyKeys(Set.of("currency", "price"));
    YamlMap map = top.map("price");
    Map<String, Price> prices = new LinkedHashMap<>();
    for (String name : map.keys()) {
      String word = map.word(name).strip();
      prices.put(name, price(map, name, word));
    }
    return new Prices(top.word("currency"), prices);
  }

  private static Price price(YamlMap map, String name, String word) throws YamlFault {
    Matcher each = EACH.matcher(word);
    if (each.matches()) {
      return new Price(Double.parseDouble(each.group(1)), Optional.empty());
    }
    Matcher per = PRICE.matcher(word);
    if (per.matches()) {
      String unit = per.group(2).strip();
      String one = unit.matches("[0-9.].*") ? unit : "1 " + unit;
      for (Dimension dimension : List.of(Dimension.MASS, Dimension.VOLUME)) {
        try {
          double si = Quantity.parse(one, dimension).si();
          if (si > 0) {
            return new Price(Double.parseDouble(per.group(1)) / si, Optional.of(dimension));
          }
        } catch (QuantityException other) {
          // the other dimension may fit
        }
      }
    }
    throw map.fault(
        name,
        "price '"
            + word
            + "' of "
            + name
            + " is not read; '14.50 /kg', '3.20 /100 mL', '320 /L' or '0.80 each' fit");
  }

  /** The bill for materials. */
  public Bill bill(List<Material> materials) {
    List<Row> rows = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    Map<String, Double> precious = new LinkedHashMap<>();
    Set<String> met = new LinkedHashSet<>();
    Map<Total, Double> paid = new LinkedHashMap<>();
    for (Material m : materials) {
      Optional<Map.Entry<String, Price>> price =
          prices.entrySet().stream().filter(e -> e.getKey().equalsIgnoreCase(m.name())).findFirst();
      price.ifPresent(e -> met.add(e.getKey()));
      OptionalDouble per =
          price.map(e -> e.getValue().per(m.unit())).orElse(OptionalDouble.empty());
      per.ifPresent(money -> paid.put(m.total(), money));
      if (price.isPresent() && per.isEmpty()) {
        notes.add("price of " + m.name() + " does not fit its unit, " + m.unit());
      }
      rows.add(
          new Row(
              m,
              per.isPresent()
                  ? OptionalDouble.of(per.getAsDouble() * m.amount())
                  : OptionalDouble.empty()));
      preciousMetal(m).ifPresent(metal -> precious.merge(metal, 1000 * m.amount(), Double::sum));
    }
    unpriced(rows).ifPresent(notes::add);
    List<String> names = materials.stream().map(Material::name).toList();
    for (String name : prices.keySet()) {
      if (!met.contains(name)) {
        NearestWord.of(name, names)
            .ifPresent(
                near ->
                    notes.add(
                        "price '" + name + "' met no material, did you mean '" + near + "'?"));
      }
    }
    Total sum = Total.sum("cost", currency, paid);
    return new Bill(currency, List.copyOf(rows), sum, precious, List.copyOf(notes));
  }

  private static Optional<String> unpriced(List<Row> rows) {
    List<String> names =
        rows.stream()
            .filter(r -> r.cost().isEmpty())
            .map(r -> r.material().name())
            .filter(name -> !name.endsWith(Material.DEPOSITED)) // comes out of what is bought
            .toList();
    return names.isEmpty()
        ? Optional.empty()
        : Optional.of("no price, so not in the sum: " + String.join(", ", names));
  }

  private static Optional<String> preciousMetal(Material m) {
    if (!m.unit().equals("g") || !m.name().endsWith(Material.DEPOSITED)) {
      return Optional.empty();
    }
    for (Metal metal :
        List.of(Metal.PALLADIUM, Metal.PLATINUM, Metal.GOLD, Metal.SILVER, Metal.RHODIUM)) {
      if (m.name().toLowerCase(Locale.ROOT).startsWith(metal.label())) {
        return Optional.of(metal.label());
      }
    }
    return Optional.empty();
  }
}
