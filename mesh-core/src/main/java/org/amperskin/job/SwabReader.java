package org.amperskin.job;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.amperskin.plating.Swab;
import org.amperskin.plating.SwabContact;
import org.amperskin.units.Dimension;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/** Reads the tool of a brush step: its contact as told, as printed on paper, or by its shape. */
final class SwabReader {
  private static final List<String> CONTACT = List.of("contact", "print", "flat", "round", "roll");
  private static final Set<String> KEYS =
      Set.of(
          "contact", "print", "flat", "round", "roll", "press", "hump", "hollow", "width", "speed",
          "wrap");

  /** A wrap gives by a quarter of its usual 4 mm (common practice, no source). */
  private static final double USUAL_PRESS_MM = 1;

  private SwabReader() {}

  static Swab read(YamlMap map) throws YamlFault {
    map.onlyKeys(KEYS);
    List<String> given = CONTACT.stream().filter(map::has).toList();
    if (given.size() > 1) {
      throw map.faultAtKey(
          given.get(1), "one of contact, print, flat, round, roll fits, found " + given);
    }
    String by = given.isEmpty() ? "" : given.get(0);
    boolean shaped = Set.of("flat", "round", "roll").contains(by);
    for (String key : List.of("press", "hump", "hollow")) {
      if (map.has(key) && !shaped) {
        throw map.faultAtKey(key, "'" + key + "' goes with a shape: flat, round or roll");
      }
    }
    OptionalDouble width = map.maybePositive("width", Dimension.LENGTH, "mm");
    OptionalDouble speed = map.maybePositive("speed", Dimension.SPEED, "m/min");
    OptionalDouble wrap = map.maybePositive("wrap", Dimension.LENGTH, "mm");
    if (!shaped && !by.equals("print")) {
      return new Swab(map.maybePositive("contact", Dimension.AREA, "mm2"), width, speed, wrap);
    }
    SwabContact contact =
        shaped
            ? shaped(map, by)
            : SwabContact.print(map.maybePositive("print", Dimension.AREA, "mm2").getAsDouble());
    return new Swab(
        OptionalDouble.of(contact.areaMm2()),
        width.isPresent() ? width : contact.widthMm(),
        speed,
        wrap,
        Optional.of(contact.basis()));
  }

  private static SwabContact shaped(YamlMap map, String by) throws YamlFault {
    SwabContact.Work work = work(map);
    try {
      if (by.equals("round")) {
        return SwabContact.round(map.maybePositive(by, Dimension.LENGTH, "mm").getAsDouble(), work);
      }
      double[] size = Directions.size(map.word(by));
      return by.equals("flat")
          ? SwabContact.flat(size[0], size[1], work)
          : SwabContact.roll(size[0], size[1], work);
    } catch (IllegalArgumentException bad) {
      throw map.fault(by, bad.getMessage());
    }
  }

  private static SwabContact.Work work(YamlMap map) throws YamlFault {
    if (map.has("hump") && map.has("hollow")) {
      throw map.faultAtKey("hollow", "the work is a 'hump' or a 'hollow', not both");
    }
    OptionalDouble hump = map.maybePositive("hump", Dimension.LENGTH, "mm");
    OptionalDouble hollow = map.maybePositive("hollow", Dimension.LENGTH, "mm");
    double press = map.maybePositive("press", Dimension.LENGTH, "mm").orElse(USUAL_PRESS_MM);
    double wrap =
        map.maybePositive("wrap", Dimension.LENGTH, "mm").orElse(Double.POSITIVE_INFINITY);
    if (press > wrap) {
      throw map.fault(
          "press",
          String.format(
              Locale.ROOT, "press %s: a wrap of %.3g mm gives no more", map.word("press"), wrap));
    }
    return new SwabContact.Work(
        hollow.isPresent() ? OptionalDouble.of(-hollow.getAsDouble()) : hump, press);
  }
}
