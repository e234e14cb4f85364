package org.amperskin.job;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.amperskin.geom.Vec3;
import org.amperskin.region.MaskKind;
import org.amperskin.region.Placement;
import org.amperskin.units.Dimension;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/** Reads one film or stop-off of a job. */
final class FilmReader {
  private static final Set<String> OWN_KEYS =
      Set.of("artwork", "motif", "dpi", "threshold", "smooth", "surround", "use");

  private final Path folder;

  FilmReader(Path folder) {
    this.folder = folder;
  }

  Job.FilmSpec read(YamlMap map, MaskKind resist) throws YamlFault {
    Set<String> keys = new HashSet<>(OWN_KEYS);
    keys.addAll(PlacementReader.KEYS);
    keys.addAll(LightReader.STOCK_KEYS);
    map.onlyKeys(keys);
    MaskKind kind = resist;
    if (map.has("use")) {
      MaskKind[] uses = {resist, MaskKind.STOP_OFF};
      kind =
          map.oneOf(
              "use", map.word("use"), uses, k -> k == MaskKind.STOP_OFF ? "stop-off" : "light");
    }
    Placement placement = PlacementReader.read(map);
    boolean surroundClear = false;
    if (map.has("surround")) {
      Boolean[] both = {false, true};
      surroundClear =
          map.oneOf("surround", map.word("surround"), both, c -> c ? "clear" : "opaque");
    }
    double dpi = map.has("dpi") ? number(map, "dpi", 1, 1e6) : Double.NaN;
    double threshold = map.has("threshold") ? map.quantity("threshold", Dimension.FRACTION) : 0.5;
    if (!(threshold > 0 && threshold <= 1)) {
      throw map.fault("threshold", "threshold '" + map.word("threshold") + "': above 0 % to 100 %");
    }
    if (map.has("motif") && map.has("artwork")) {
      throw map.faultAtKey("motif", "'artwork' and 'motif' are both given: one of them fits");
    }
    Optional<Job.MotifSpec> motif =
        map.has("motif") ? Optional.of(MotifReader.read(map, kind)) : Optional.empty();
    double smoothMm = map.has("smooth") ? smoothMm(map) : 0;
    return new Job.FilmSpec(
        motif.isPresent() ? Optional.empty() : Optional.of(path(map, "artwork", folder)),
        motif,
        dpi,
        threshold,
        smoothMm,
        placement,
        RegionReader.selectors(map, "patch"),
        surroundClear,
        kind,
        LightReader.stock(map, kind),
        map.place(motif.isPresent() ? "motif" : "artwork"));
  }

  private static double smoothMm(YamlMap map) throws YamlFault {
    double mm = 1000 * map.quantity("smooth", Dimension.LENGTH);
    if (!(mm >= 0 && mm <= 1000)) {
      throw map.fault("smooth", "smooth '" + map.word("smooth") + "': 0 to 1000 mm fit, as 0.1 mm");
    }
    return mm;
  }

  static Path path(YamlMap map, String key, Path folder) throws YamlFault {
    try {
      return folder.resolve(map.word(key));
    } catch (InvalidPathException bad) {
      throw map.fault(key, key + ": " + bad.getReason() + " in a path");
    }
  }

  static double number(YamlMap map, String key, double low, double high) throws YamlFault {
    double value;
    try {
      value = Double.parseDouble(map.word(key));
    } catch (NumberFormatException bad) {
      throw map.fault(key, key + " '" + map.word(key) + "' is not a number");
    }
    if (!(value >= low && value <= high)) {
      throw map.fault(key, key + " " + value + " is not within " + low + " to " + high);
    }
    return value;
  }

  static Vec3 direction(YamlMap map, String key) throws YamlFault {
    try {
      return Directions.direction(map.word(key));
    } catch (IllegalArgumentException bad) {
      throw map.fault(key, key + ": " + bad.getMessage());
    }
  }

  static Vec3 point(YamlMap map, String key) throws YamlFault {
    try {
      return Directions.point(map.word(key));
    } catch (IllegalArgumentException bad) {
      throw map.fault(key, key + ": " + bad.getMessage());
    }
  }
}
