package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.amperskin.plating.Already;
import org.amperskin.plating.Claim;
import org.amperskin.plating.How;
import org.amperskin.plating.Pulse;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.Swab;
import org.amperskin.plating.Target;
import org.amperskin.plating.WorkKind;
import org.amperskin.units.Dimension;
import org.amperskin.units.NearestWord;
import org.amperskin.units.Unit;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/** Reads the steps of a job. */
final class StepReader {
  private static final Set<String> ALWAYS = Set.of("name", "region");
  private static final Set<String> PLATING =
      Set.of(
          "thickness",
          "charge",
          "coverage",
          "density",
          "metal-density",
          "pulse",
          "already",
          "thinnest");
  private static final Set<String> TANK =
      Set.of("efficiency", "temperature", "conductivity", "soft-start");
  private static final Set<String> BRUSH = Set.of("factor", "swab");
  private static final Set<String> ETCH =
      Set.of(
          "depth",
          "charge",
          "density",
          "metal-density",
          "efficiency",
          "layer",
          "swab",
          "already",
          "wire");
  private static final Set<String> SETTINGS = union(PLATING, TANK, BRUSH, ETCH);

  private final RecipeLibrary recipes;
  private final Set<String> regions;
  private boolean paintLeft;

  StepReader(RecipeLibrary recipes, Set<String> regions, boolean paint) {
    this.recipes = recipes;
    this.regions = regions;
    this.paintLeft = paint;
  }

  List<StepSpec> read(YamlMap top) throws YamlFault {
    List<StepSpec> steps = new ArrayList<>();
    for (YamlMap map : top.maps("step")) {
      steps.add(step(map));
    }
    return List.copyOf(steps);
  }

  private StepSpec step(YamlMap map) throws YamlFault {
    String region = map.has("region") ? map.word("region") : Job.WHOLE_SKIN;
    if (!region.equals(Job.WHOLE_SKIN) && !regions.contains(region)) {
      String hint =
          NearestWord.of(region, regions)
              .map(near -> ", did you mean '" + near + "'?")
              .orElse(
                  regions.isEmpty()
                      ? "; the job has only '" + Job.WHOLE_SKIN + "', the whole skin"
                      : "; the job has "
                          + String.join(", ", new TreeSet<>(regions))
                          + " and '"
                          + Job.WHOLE_SKIN
                          + "'");
      throw map.fault("region", "region '" + region + "' is not in the job" + hint);
    }
    if (map.has("work") && map.has("recipe")) {
      throw map.faultAtKey("work", "a step has a 'recipe' or 'work', this one has both");
    }
    if (map.has("work")) {
      for (String key : map.keys()) {
        if (SETTINGS.contains(key)) {
          throw map.faultAtKey(key, "'" + key + "' does not fit: work takes no plating settings");
        }
      }
      map.onlyKeys(union(ALWAYS, Set.of("work")));
      WorkKind kind = map.oneOf("work", map.word("work"), WorkKind.values(), WorkKind::key);
      String name = map.has("name") ? map.word("name") : kind.key();
      return new StepSpec(name, region, new StepSpec.Work(kind), map.place("work"));
    }
    if (!map.has("recipe")) {
      map.onlyKeys(union(ALWAYS, SETTINGS, Set.of("work", "recipe")));
      throw map.fault("", "a step has a 'recipe' to plate with or 'work' to do; this has neither");
    }
    Recipe recipe;
    try {
      recipe = recipes.find(map.word("recipe"));
    } catch (IllegalArgumentException unknown) {
      throw map.fault("recipe", unknown.getMessage());
    }
    Set<String> fitting = settingsOf(recipe);
    for (String key : map.keys()) {
      if (SETTINGS.contains(key) && !fitting.contains(key)) {
        throw map.faultAtKey(key, "'" + key + "' does not fit: " + recipe.id() + works(recipe));
      }
    }
    map.onlyKeys(union(ALWAYS, Set.of("recipe"), fitting));
    String name = map.has("name") ? map.word("name") : recipe.name();
    boolean tank = recipe.how() == How.TANK;
    boolean onPaint = tank && paintLeft;
    paintLeft &= !tank;
    StepSpec.Plate plate =
        new StepSpec.Plate(recipe, target(map, recipe), settings(map, recipe), onPaint);
    return new StepSpec(name, region, plate, map.place("recipe"));
  }

  private static Set<String> settingsOf(Recipe recipe) {
    return switch (recipe.how()) {
      case TANK -> union(PLATING, TANK);
      case BRUSH -> union(PLATING, BRUSH);
      case ETCH -> {
        Set<String> etch = new TreeSet<>(ETCH);
        etch.remove(recipe.swabbed() ? "wire" : "swab");
        yield etch;
      }
      case PREPARE -> Set.of();
    };
  }

  private static String works(Recipe recipe) {
    return recipe.how() == How.ETCH
        ? " takes metal off" + (recipe.swabbed() ? " with the brush" : " in a tank")
        : " works with the " + recipe.how().key();
  }

  private static Optional<Target> target(YamlMap map, Recipe recipe) throws YamlFault {
    List<String> given =
        List.of("thickness", "depth", "charge", "coverage").stream().filter(map::has).toList();
    String fit = recipe.how() == How.ETCH ? "depth, charge" : "thickness, charge, coverage";
    if (given.size() > 1) {
      throw map.faultAtKey(given.get(1), "one of " + fit + " fits, found " + given);
    }
    if (given.isEmpty()) {
      // A finish that needs a coupon may be asked about before there is one: the plan then tells
      // how.
      if (recipe.claim() != Claim.COUPON) {
        throw map.fault(
            "recipe", fit.replaceAll(", (\\w+)$", " or $1") + " is missing for " + recipe.id());
      }
      return Optional.empty();
    }
    return Optional.of(
        switch (given.get(0)) {
          case "thickness", "depth" ->
              Target.um(Unit.of("um").fromSi(map.positive(given.get(0), Dimension.LENGTH)));
          case "charge" ->
              Target.ampereHours(Unit.of("A.h").fromSi(map.positive("charge", Dimension.CHARGE)));
          default ->
              Target.coverage(
                  Unit.of("A.h/dm2").fromSi(map.positive("coverage", Dimension.CHARGE_PER_AREA)));
        });
  }

  private static StepSpec.Settings settings(YamlMap map, Recipe recipe) throws YamlFault {
    OptionalDouble efficiency = map.maybePositive("efficiency", Dimension.FRACTION);
    if (efficiency.orElse(0) > 1) {
      throw map.fault("efficiency", "efficiency '" + map.word("efficiency") + "' is above 100 %");
    }
    OptionalDouble thinnest = map.maybePositive("thinnest", Dimension.FRACTION);
    if (thinnest.orElse(0) > 1) {
      throw map.fault(
          "thinnest",
          "thinnest '" + map.word("thinnest") + "' is above 100 % of the mean thickness");
    }
    return new StepSpec.Settings(
        map.maybePositive("density", Dimension.CURRENT_DENSITY),
        efficiency,
        map.maybePositive("metal-density", Dimension.DENSITY),
        map.maybePositive("temperature", Dimension.TEMPERATURE),
        map.maybePositive("conductivity", Dimension.CONDUCTIVITY),
        map.maybePositive("factor", Dimension.ENERGY_FACTOR),
        map.maybePositive("soft-start", Dimension.TIME),
        map.has("swab") ? SwabReader.read(map.map("swab")) : Swab.unknown(),
        map.has("pulse") ? Optional.of(pulse(map.map("pulse"))) : Optional.empty(),
        map.has("already")
            ? Optional.of(already(map.map("already"), recipe.how() == How.ETCH))
            : Optional.empty(),
        map.maybePositive("layer", Dimension.LENGTH),
        thinnest,
        map.has("wire")
            && map.oneOf("wire", map.word("wire"), WireState.values(), WireState::key)
                == WireState.COVERED);
  }

  /** How the contact wire hangs in an etch. */
  private enum WireState {
    BARE,
    COVERED;

    String key() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private static Already already(YamlMap map, boolean etch) throws YamlFault {
    String weighed = etch ? "loss" : "gain";
    String read = etch ? "depth" : "thickness";
    map.onlyKeys(Set.of("charge", weighed, read));
    try {
      return new Already(
          map.maybePositive("charge", Dimension.CHARGE, "A.h"),
          map.maybePositive(weighed, Dimension.MASS, "g"),
          map.maybePositive(read, Dimension.LENGTH, "um"));
    } catch (IllegalArgumentException bad) {
      throw map.fault(map.has(read) ? read : "", bad.getMessage());
    }
  }

  private static Pulse pulse(YamlMap map) throws YamlFault {
    map.onlyKeys(Set.of("on", "off"));
    return new Pulse(map.positive("on", Dimension.TIME), map.positive("off", Dimension.TIME));
  }

  @SafeVarargs
  private static Set<String> union(Set<String>... sets) {
    Set<String> all = new TreeSet<>();
    for (Set<String> set : sets) {
      all.addAll(set);
    }
    return all;
  }
}
