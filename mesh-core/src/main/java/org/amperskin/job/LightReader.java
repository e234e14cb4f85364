package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.amperskin.film.FilmStock;
import org.amperskin.film.Light;
import org.amperskin.film.Resist;
import org.amperskin.region.MaskKind;
import org.amperskin.units.Dimension;
import org.amperskin.units.Unit;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/** Reads the lamp, what the resist needs and what films are made of. */
final class LightReader {
  /** The keys of a film's stock. */
  static final Set<String> STOCK_KEYS = Set.of("layers", "density", "base", "registration");

  private static final Unit MM = Unit.of("mm");

  private LightReader() {}

  /**
   * Reads the sections {@code light} and {@code resist}.
   *
   * @param top the job
   */
  static Job.LightSpec read(YamlMap top) throws YamlFault {
    List<String> assumed = new ArrayList<>();
    double halfAngle = Light.USUAL.halfAngleDegrees();
    OptionalDouble irradiance = OptionalDouble.empty();
    boolean angleTold = false;
    if (top.has("light")) {
      YamlMap map = top.map("light");
      map.onlyKeys(Set.of("half-angle", "irradiance"));
      if (map.keys().isEmpty()) {
        throw top.fault("light", "light says nothing: 'half-angle' or 'irradiance' fit");
      }
      if (map.has("half-angle")) {
        angleTold = true;
        halfAngle = Math.toDegrees(map.quantity("half-angle", Dimension.ANGLE));
        if (!(halfAngle >= 0 && halfAngle <= 60 + 1e-9)) {
          throw map.fault(
              "half-angle", "half-angle '" + map.word("half-angle") + "': 0 to 60 deg fits");
        }
        halfAngle = Math.min(60, halfAngle);
      }
      irradiance = map.maybePositive("irradiance", Dimension.IRRADIANCE);
    }
    if (!angleTold) {
      assumed.add("lamp's half-angle 5 deg (rule of thumb)");
    }
    double thickness = Resist.USUAL.thicknessMm();
    double dose = Resist.USUAL.doseJPerM2();
    YamlMap resist = top.has("resist") ? top.map("resist") : null;
    if (resist != null && resist.has("thickness")) {
      thickness = MM.fromSi(resist.positive("thickness", Dimension.LENGTH));
      if (thickness > 10) {
        throw resist.fault(
            "thickness", "resist thickness '" + resist.word("thickness") + "': up to 10 mm fits");
      }
    } else {
      assumed.add("resist 8 um (rule of thumb)");
    }
    if (resist != null && resist.has("dose")) {
      dose = resist.positive("dose", Dimension.DOSE);
    } else {
      assumed.add("clearing dose 150 mJ/cm2 (from memory, 100 to 300)");
    }
    return new Job.LightSpec(
        new Light(halfAngle, irradiance), new Resist(thickness, dose), assumed);
  }

  /** Reads what a film is made of. */
  static Job.StockSpec stock(YamlMap map, MaskKind kind) throws YamlFault {
    for (String key : STOCK_KEYS) {
      if (kind == MaskKind.STOP_OFF && map.has(key)) {
        throw map.fault(key, "'" + key + "' does not fit a stop-off: no light passes it");
      }
    }
    List<String> assumed = new ArrayList<>();
    FilmStock usual = FilmStock.USUAL;
    int layers = usual.layers();
    if (map.has("layers")) {
      layers = map.whole("layers");
      if (layers < 1 || layers > 4) {
        throw map.fault("layers", "layers " + layers + ": 1 to 4 fit");
      }
    } else {
      assumed.add("one layer");
    }
    double density = usual.densityPerLayer();
    if (map.has("density")) {
      density = FilmReader.number(map, "density", 0.1, 10);
    } else {
      assumed.add("black of density 2 (rule of thumb)");
    }
    double base = length(map, "base", usual.baseMm());
    double registration =
        length(map, "registration", layers > 1 ? FilmStock.HAND_REGISTRATION_MM : 0);
    if (layers > 1) {
      if (!map.has("base")) {
        assumed.add("base 0.1 mm");
      }
      if (!map.has("registration")) {
        assumed.add("layers laid by hand to 0.1 mm (rule of thumb)");
      }
    } else {
      for (String key : new String[] {"base", "registration"}) {
        if (map.has(key)) {
          throw map.fault(key, "'" + key + "' is for several layers; 'layers' is " + layers);
        }
      }
    }
    return new Job.StockSpec(
        new FilmStock(layers, density, base, usual.refractiveIndex(), registration), assumed);
  }

  private static double length(YamlMap map, String key, double usual) throws YamlFault {
    if (!map.has(key)) {
      return usual;
    }
    double mm = MM.fromSi(map.quantity(key, Dimension.LENGTH));
    if (!(mm >= 0 && mm <= 5)) {
      throw map.fault(key, key + " '" + map.word(key) + "': 0 to 5 mm fits");
    }
    return mm;
  }
}
