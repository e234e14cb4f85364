package org.amperskin.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.film.FilmStock;
import org.amperskin.film.Light;
import org.amperskin.film.Resist;
import org.amperskin.units.Dimension;
import picocli.CommandLine.Option;

/** The lamp, the film's layers and the resist, as options. */
final class LightOptions {
  @Option(
      names = "--light",
      paramLabel = "ANGLE",
      description = "Half-angle of the lamp seen from the film; 5deg.")
  private String light;

  @Option(
      names = "--irradiance",
      paramLabel = "POWER",
      description = "Light on the film, as 5mW/cm2: gives the exposure time.")
  private String irradiance;

  @Option(
      names = "--dose",
      paramLabel = "DOSE",
      description = "Light that clears the resist; 150mJ/cm2.")
  private String dose;

  @Option(names = "--layers", paramLabel = "N", description = "Films laid on one another; 1.")
  private Integer layers;

  @Option(
      names = "--black",
      paramLabel = "D",
      description = "Optical density of one layer's black; 2.")
  private Double black;

  private final List<String> assumed = new ArrayList<>();

  /** The lamp. */
  Light light() throws UsageFault {
    double degrees = Light.USUAL.halfAngleDegrees();
    if (light == null) {
      assumed.add("lamp's half-angle 5 deg (rule of thumb)");
    } else {
      degrees = Math.toDegrees(Verb.quantity("--light", light, Dimension.ANGLE));
    }
    OptionalDouble power =
        irradiance == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(Verb.positive("--irradiance", irradiance, Dimension.IRRADIANCE));
    try {
      return new Light(degrees, power);
    } catch (IllegalArgumentException bad) {
      throw new UsageFault("--light " + light + ": " + bad.getMessage());
    }
  }

  /** The film. */
  FilmStock stock() throws UsageFault {
    if (layers == null) {
      assumed.add("one layer");
    } else if (layers > 1) {
      assumed.add("layers laid by hand to 0.1 mm (rule of thumb)");
    }
    if (black == null) {
      assumed.add("black of density 2 (rule of thumb)");
    }
    try {
      return FilmStock.of(
          layers == null ? 1 : layers, black == null ? FilmStock.USUAL.densityPerLayer() : black);
    } catch (IllegalArgumentException bad) {
      throw new UsageFault("--layers, --black: " + bad.getMessage());
    }
  }

  /** The resist. */
  Resist resist() throws UsageFault {
    assumed.add("resist 8 um (rule of thumb)");
    if (dose == null) {
      assumed.add("clearing dose 150 mJ/cm2 (from memory, 100 to 300)");
      return Resist.USUAL;
    }
    return new Resist(Resist.USUAL.thicknessMm(), Verb.positive("--dose", dose, Dimension.DOSE));
  }

  /** What was not told, once all has been read. */
  List<String> assumed() {
    return List.copyOf(assumed);
  }
}
