package org.amperskin.plating;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a tank must know of a part as a body: its box, the liquid it pushes aside, what it is made
 * of.
 *
 * @param xMm length of its box (mm)
 * @param yMm width of its box (mm)
 * @param zMm height of its box (mm)
 * @param skinMm2 its skin (mm2)
 * @param displacedMm3 liquid it pushes aside (mm3), if that is known
 * @param print what it is printed of, if known
 * @param infill share of its inside that is plastic (0 to 1), if told
 * @param wallMm thickness of its printed walls (mm), if told
 */
public record PartBody(
    double xMm,
    double yMm,
    double zMm,
    double skinMm2,
    OptionalDouble displacedMm3,
    Optional<PrintMaterial> print,
    OptionalDouble infill,
    OptionalDouble wallMm) {
  public PartBody {
    Faraday.positive("length of the box", xMm, "mm");
    Faraday.positive("width of the box", yMm, "mm");
    Faraday.positive("height of the box", zMm, "mm");
    Faraday.positive("skin", skinMm2, "mm2");
    displacedMm3.ifPresent(v -> Faraday.positive("displaced volume", v, "mm3"));
    wallMm.ifPresent(v -> Faraday.positive("printed wall", v, "mm"));
    if (infill.isPresent() && !(infill.getAsDouble() >= 0 && infill.getAsDouble() <= 1)) {
      throw new IllegalArgumentException(
          "infill " + 100 * infill.getAsDouble() + " % is not 0 % to 100 %");
    }
  }

  /** Its longest side (mm). */
  double longestMm() {
    return Math.max(xMm, Math.max(yMm, zMm));
  }

  /** Its shortest side (mm). */
  double thinnestMm() {
    return Math.min(xMm, Math.min(yMm, zMm));
  }

  /** The ways its box can hang: each as across between the anodes, along them, down (mm). */
  List<double[]> hangings() {
    return List.of(
        new double[] {xMm, yMm, zMm},
        new double[] {xMm, zMm, yMm},
        new double[] {yMm, xMm, zMm},
        new double[] {yMm, zMm, xMm},
        new double[] {zMm, xMm, yMm},
        new double[] {zMm, yMm, xMm});
  }
}
