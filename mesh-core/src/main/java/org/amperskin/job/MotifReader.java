package org.amperskin.job;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.amperskin.pattern.motif.Motif;
import org.amperskin.pattern.motif.MotifDesign;
import org.amperskin.pattern.motif.MotifFault;
import org.amperskin.pattern.motif.MotifKind;
import org.amperskin.pattern.motif.MotifParameter;
import org.amperskin.pattern.motif.MotifValues;
import org.amperskin.region.MaskKind;
import org.amperskin.units.Dimension;
import org.amperskin.units.NearestWord;
import org.amperskin.yaml.Place;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/** Reads the motif of a film: {@code motif: {chevrons: {pitch: 6 mm, open: 35 %}}}. */
final class MotifReader {
  private MotifReader() {}

  static Job.MotifSpec read(YamlMap film, MaskKind kind) throws YamlFault {
    YamlMap named = film.map("motif");
    named.onlyKeys(Set.copyOf(MotifKind.words()));
    if (named.keys().size() != 1) {
      throw film.fault("motif", "one of " + MotifKind.words() + " fits, found " + named.keys());
    }
    String word = named.keys().get(0);
    MotifKind motifKind = MotifKind.find(word).orElseThrow();
    YamlMap map = named.map(word);
    Set<String> known = new HashSet<>(Set.of("angle", "lines", "size", "open", "region"));
    motifKind.parameters().forEach(p -> known.add(p.word()));
    map.onlyKeys(known);
    if (map.has("open") && map.has("line")) {
      throw map.faultAtKey("line", "'line' and 'open' are both given: 'open' solves the line");
    }
    Map<MotifParameter, String> typed = new EnumMap<>(MotifParameter.class);
    for (MotifParameter p : motifKind.parameters()) {
      if (map.has(p.word())) {
        typed.put(p, map.word(p.word()));
      }
    }
    double angle = map.has("angle") ? Math.toDegrees(map.quantity("angle", Dimension.ANGLE)) : 0;
    boolean clear = false;
    if (map.has("lines")) {
      Boolean[] both = {false, true};
      clear = map.oneOf("lines", map.word("lines"), both, c -> c ? "clear" : "opaque");
    }
    MotifDesign design;
    try {
      Motif motif = motifKind.of(new MotifValues(typed));
      design = new MotifDesign(motif, angle, clear);
      double[] size = map.has("size") ? Directions.size(map.word("size")) : null;
      if (size != null) {
        design.checkSize(size[0], size[1]);
      }
      OptionalDouble open = open(map, design, kind);
      return new Job.MotifSpec(
          design,
          size == null ? OptionalDouble.empty() : OptionalDouble.of(size[0]),
          size == null ? OptionalDouble.empty() : OptionalDouble.of(size[1]),
          open,
          map.has("region") ? Optional.of(map.word("region")) : Optional.empty(),
          map.place(map.has("region") ? "region" : map.has("open") ? "open" : ""));
    } catch (MotifFault bad) {
      throw map.fault(bad.parameter().word(), bad.getMessage());
    } catch (IllegalArgumentException bad) {
      throw map.fault(bad.getMessage().startsWith("angle") ? "angle" : "size", bad.getMessage());
    }
  }

  private static OptionalDouble open(YamlMap map, MotifDesign design, MaskKind kind)
      throws YamlFault {
    if (!map.has("open")) {
      if (map.has("region")) {
        throw map.faultAtKey(
            "region", "'region' tells where 'open' counts, and there is no 'open'");
      }
      return OptionalDouble.empty();
    }
    double open = map.positive("open", Dimension.FRACTION);
    if (!(open < 1)) {
      throw map.fault("open", "open '" + map.word("open") + "': above 0 %, below 100 %");
    }
    if (kind == MaskKind.STOP_OFF) {
      throw map.faultAtKey(
          "open", "'open' is for films over resist; beside a stop-off everything is open");
    }
    try {
      design.lined();
    } catch (IllegalArgumentException noLine) {
      throw map.faultAtKey("open", noLine.getMessage());
    }
    return OptionalDouble.of(open);
  }

  /** Checks that each motif's region is there and has the film. */
  static void check(Map<String, Job.FilmSpec> films, Map<String, Job.RegionSpec> regions)
      throws YamlFault {
    for (Map.Entry<String, Job.FilmSpec> film : films.entrySet()) {
      Optional<Job.MotifSpec> motif = film.getValue().motif();
      if (motif.isEmpty() || motif.get().region().isEmpty()) {
        continue;
      }
      String region = motif.get().region().get();
      Place place = motif.get().place();
      Job.RegionSpec spec = regions.get(region);
      if (spec == null) {
        String hint =
            NearestWord.of(region, regions.keySet())
                .map(near -> ", did you mean '" + near + "'?")
                .orElse("; the job has " + new java.util.TreeSet<>(regions.keySet()));
        throw new YamlFault(place, "region '" + region + "' is not in the job" + hint);
      }
      if (!spec.films().contains(film.getKey())) {
        throw new YamlFault(
            place,
            "region '"
                + region
                + "' has not the film '"
                + film.getKey()
                + "', but "
                + spec.films());
      }
    }
  }
}
