package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.amperskin.geom.Box;
import org.amperskin.geom.Vec3;
import org.amperskin.region.Selector;
import org.amperskin.units.Dimension;
import org.amperskin.units.NearestWord;
import org.amperskin.units.Unit;
import org.amperskin.yaml.Place;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/** Reads one region of a job. */
final class RegionReader {
  private static final Set<String> SHAPES =
      Set.of("plane", "box", "sphere", "cylinder", "group", "facing", "grown");

  private static final Set<String> KEYS = Set.of("film", "within", "except");

  private RegionReader() {}

  static Job.RegionSpec read(YamlMap map, Set<String> films, Place place) throws YamlFault {
    map.onlyKeys(KEYS);
    if (map.keys().isEmpty()) {
      throw map.fault("", "an empty region: one of " + new TreeSet<>(KEYS) + " fits");
    }
    List<String> used = map.wordOrWords("film");
    for (String film : used) {
      if (!films.contains(film)) {
        String hint =
            NearestWord.of(film, films)
                .map(near -> ", did you mean '" + near + "'?")
                .orElse("; the job has " + new TreeSet<>(films));
        throw map.fault("film", "film '" + film + "' is not in the job" + hint);
      }
    }
    return new Job.RegionSpec(used, selectors(map, "within"), selectors(map, "except"), place);
  }

  /** Selectors below a key, one or a list of them; none if it is not there. */
  static List<Selector> selectors(YamlMap map, String key) throws YamlFault {
    List<Selector> list = new ArrayList<>();
    List<YamlMap> entries =
        !map.has(key) ? List.of() : map.isList(key) ? map.maps(key) : List.of(map.map(key));
    for (YamlMap entry : entries) {
      list.add(selector(entry));
    }
    return list;
  }

  private static Selector selector(YamlMap entry) throws YamlFault {
    entry.onlyKeys(SHAPES);
    if (entry.keys().size() != 1) {
      throw entry.fault("", "one of " + new TreeSet<>(SHAPES) + " fits, found " + entry.keys());
    }
    String shape = entry.keys().get(0);
    if (shape.equals("group")) {
      return new Selector.InGroup(entry.word("group"));
    }
    YamlMap map = entry.map(shape);
    try {
      return switch (shape) {
        case "plane" -> {
          map.onlyKeys(Set.of("point", "normal"));
          yield new Selector.HalfSpace(
              FilmReader.point(map, "point"), FilmReader.direction(map, "normal"));
        }
        case "box" -> {
          map.onlyKeys(Set.of("from", "to"));
          Vec3 a = FilmReader.point(map, "from");
          Vec3 b = FilmReader.point(map, "to");
          if (!(a.x() < b.x() && a.y() < b.y() && a.z() < b.z())) {
            throw map.fault(
                "from",
                "'from' "
                    + map.word("from")
                    + " is not below 'to' "
                    + map.word("to")
                    + " in each of x, y and z");
          }
          yield new Selector.InBox(new Box(a.x(), a.y(), a.z(), b.x(), b.y(), b.z()));
        }
        case "sphere" -> {
          map.onlyKeys(Set.of("centre", "radius"));
          yield new Selector.Ball(FilmReader.point(map, "centre"), radius(map));
        }
        case "cylinder" -> {
          map.onlyKeys(Set.of("point", "axis", "radius"));
          yield new Selector.Rod(
              FilmReader.point(map, "point"), FilmReader.direction(map, "axis"), radius(map));
        }
        case "grown" -> {
          map.onlyKeys(Set.of("from", "crease"));
          yield new Selector.Grown(
              FilmReader.point(map, "from"),
              Math.toDegrees(map.quantity("crease", Dimension.ANGLE)));
        }
        default -> {
          map.onlyKeys(Set.of("direction", "within"));
          yield new Selector.Facing(
              FilmReader.direction(map, "direction"),
              Math.toDegrees(map.quantity("within", Dimension.ANGLE)));
        }
      };
    } catch (IllegalArgumentException bad) {
      throw entry.fault(shape, shape + ": " + bad.getMessage());
    }
  }

  private static double radius(YamlMap map) throws YamlFault {
    return Unit.of("mm").fromSi(map.positive("radius", Dimension.LENGTH));
  }
}
