package org.amperskin.job;

import java.util.Locale;
import java.util.Set;
import org.amperskin.geom.Vec3;
import org.amperskin.region.DrapedPlacement;
import org.amperskin.region.FlatPlacement;
import org.amperskin.region.Placement;
import org.amperskin.region.WrappedPlacement;
import org.amperskin.units.Dimension;
import org.amperskin.unroll.ConeFit;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/** Reads how a film lies on the part. */
final class PlacementReader {
  /** The keys of a placement. */
  static final Set<String> KEYS =
      Set.of(
          "lies", "toward", "up", "centre", "turn", "scale", "mirror", "repeat", "axis", "form",
          "patch");

  /** How films can lie. */
  private enum Lies {
    FLAT,
    WRAPPED,
    DRAPED;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private PlacementReader() {}

  static Placement read(YamlMap map) throws YamlFault {
    Lies lies =
        map.has("lies")
            ? map.oneOf("lies", map.word("lies"), Lies.values(), Lies::word)
            : Lies.FLAT;
    refuseOthers(map, lies);
    double turn = map.has("turn") ? Math.toDegrees(map.quantity("turn", Dimension.ANGLE)) : 0;
    double scale = map.has("scale") ? map.positive("scale", Dimension.FRACTION) : 1;
    boolean mirror = map.has("mirror") && map.yesNo("mirror");
    int[] repeat = map.has("repeat") ? repeat(map) : new int[] {1, 1};
    Vec3 centre = map.has("centre") ? FilmReader.point(map, "centre") : null;
    try {
      return switch (lies) {
        case FLAT -> {
          Vec3 toward = FilmReader.direction(map, "toward");
          Vec3 up =
              map.has("up") ? FilmReader.direction(map, "up") : FlatPlacement.uprightFor(toward);
          yield new FlatPlacement(toward, up, centre, turn, scale, mirror, repeat[0], repeat[1]);
        }
        case WRAPPED -> {
          WrappedPlacement.Axis axis = map.has("axis") ? axis(map.map("axis")) : null;
          Vec3 up =
              map.has("up") ? FilmReader.direction(map, "up") : WrappedPlacement.uprightFor(axis);
          yield new WrappedPlacement(
              axis, form(map), up, centre, turn, scale, mirror, repeat[0], repeat[1]);
        }
        case DRAPED -> {
          Vec3 up = map.has("up") ? FilmReader.direction(map, "up") : new Vec3(0, 0, 1);
          yield new DrapedPlacement(up, centre, turn, scale, mirror, repeat[0], repeat[1]);
        }
      };
    } catch (IllegalArgumentException bad) {
      String blamed = map.has("up") ? "up" : map.has("toward") ? "toward" : "";
      throw map.fault(blamed, bad.getMessage());
    }
  }

  private static void refuseOthers(YamlMap map, Lies lies) throws YamlFault {
    boolean flat = lies == Lies.FLAT;
    for (String key : new String[] {"axis", "form", "toward"}) {
      boolean fits = key.equals("toward") ? flat : lies == Lies.WRAPPED;
      if (map.has(key) && !fits) {
        throw map.fault(
            key, "'" + key + "' does not fit a film that lies " + lies.word() + "; " + others(key));
      }
    }
    if (!flat && !map.has("patch") && !map.has("axis")) {
      throw map.fault(
          "lies",
          "a film that lies "
              + lies.word()
              + " needs a 'patch': which skin it covers, as '- grown: {from: 0 0 20 mm, crease: 30"
              + " deg}'");
    }
  }

  private static String others(String key) {
    return key.equals("toward")
        ? "its light falls square on the film"
        : "it is for 'lies: wrapped'";
  }

  private static WrappedPlacement.Axis axis(YamlMap map) throws YamlFault {
    map.onlyKeys(Set.of("point", "direction"));
    return new WrappedPlacement.Axis(
        FilmReader.point(map, "point"), FilmReader.direction(map, "direction"));
  }

  private static ConeFit.Form form(YamlMap map) throws YamlFault {
    if (!map.has("form")) {
      return ConeFit.Form.BEST;
    }
    if (map.has("axis")) {
      throw map.fault("form", "'form' does not fit beside 'axis': that film is a cylinder");
    }
    return map.oneOf(
        "form", map.word("form"), ConeFit.Form.values(), f -> f.name().toLowerCase(Locale.ROOT));
  }

  private static int[] repeat(YamlMap map) throws YamlFault {
    int[] tiles;
    try {
      tiles = Directions.tiles(map.word("repeat"));
    } catch (IllegalArgumentException bad) {
      throw map.fault("repeat", "repeat " + bad.getMessage());
    }
    if (tiles[0] < 1 || tiles[1] < 1) {
      throw map.fault(
          "repeat", "repeat '" + map.word("repeat") + "': columns x rows fit, such as '3 x 2'");
    }
    return tiles;
  }
}
