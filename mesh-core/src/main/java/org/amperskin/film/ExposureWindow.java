package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Whether one exposure can clear the open places and spare the covered ones, and how long it lasts.
 *
 * <p>Definition: the least lit open place must get k = {@value #ENOUGH} times the clearing dose
 * (1.2 to 2 is common practice), the most lit covered place at most {@value #SPARED} of it. With
 * the light's share between them r = most / least over slopes, and resist up to t times thicker in
 * places, black needs density log10(k / 0.1 x r x t): 1.2 on a flat part with even resist, 1.7
 * where it is three times thicker in corners, as sprayed resist is.
 *
 * <p>Guaranteed: what a clear film and a pane take off cancels in the density and is counted in the
 * time. Not guaranteed: the resist's own dose; expose a test strip first.
 *
 * @param stock the film
 * @param light the lamp
 * @param resist the resist
 * @param leastShare light on the least lit open place over light square-on, 0 to 1
 * @param mostShare light on the most lit place over light square-on, 0 to 1
 * @param pane true if a pane of glass presses the film flat
 */
public record ExposureWindow(
    FilmStock stock,
    Light light,
    Resist resist,
    double leastShare,
    double mostShare,
    boolean pane) {
  /** Clearing doses that an open place should get; 1.2 to 2, common practice, no source. */
  public static final double ENOUGH = 1.5;

  /** Part of the clearing dose that a covered place may get; common practice, no source. */
  public static final double SPARED = 0.1;

  /** Thickest over thinnest sprayed resist, runs and corners; common practice, 2 to 3. */
  public static final double UNEVEN = 3;

  /** Light that a pane of float glass passes at 365 to 405 nm, 0.85 to 0.9, from memory. */
  public static final double PANE = 0.9;

  /** Each strip of a test gets so much more light: half a stop, as in printers' step wedges. */
  public static final double STEP = Math.sqrt(2);

  /** Seconds of the first strip where nothing is known of the lamp: 10 to 15, common practice. */
  private static final double FIRST_STRIP_S = 10;

  private static final int STRIPS = 7;

  /** Checks the shares. */
  public ExposureWindow {
    if (!(leastShare > 0 && leastShare <= mostShare && mostShare <= 1 + 1e-9)) {
      throw new IllegalArgumentException(
          "share of light " + leastShare + " to " + mostShare + "; above 0 to 1 fits");
    }
  }

  /** How far the black reaches. */
  public enum Verdict {
    /** Dense enough, also where sprayed resist is three times thicker. */
    ENOUGH,
    /** Dense enough for even resist only. */
    EVEN_ONLY,
    /** Too thin: covered resist gets too much light before open places clear. */
    TOO_THIN
  }

  /** Density needed for resist whose thickness varies by a factor. */
  public double neededDensity(double thicknessRatio) {
    return StrictMath.log10(ENOUGH / SPARED * thicknessRatio * mostShare / leastShare);
  }

  /** Whether the film is dense enough. */
  public Verdict verdict() {
    double slack = 1e-9;
    if (stock.density() >= neededDensity(UNEVEN) - slack) {
      return Verdict.ENOUGH;
    }
    return stock.density() >= neededDensity(1) - slack ? Verdict.EVEN_ONLY : Verdict.TOO_THIN;
  }

  /** The least share of light, over that of the most lit place, that one exposure still serves. */
  public double leastShareServed() {
    return Math.min(1, mostShare * ENOUGH / SPARED * stock.leak());
  }

  /** Light that reaches the skin through clear film, over light on the film. */
  public double passed() {
    return stock.clear() * (pane ? PANE : 1);
  }

  /** Time after which places square to the light have enough (s), if the lamp is known. */
  public OptionalDouble squareOnS() {
    return seconds(ENOUGH, passed());
  }

  /** Time after which the least lit open places have enough (s), if the lamp is known. */
  public OptionalDouble shortestS() {
    return seconds(ENOUGH, passed() * leastShare);
  }

  /** Time from which covered resist gets too much (s), if the lamp is known. */
  public OptionalDouble longestS() {
    return seconds(SPARED, passed() * stock.leak() * mostShare);
  }

  private OptionalDouble seconds(double doses, double share) {
    return light.irradianceWPerM2().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            doses * resist.doseJPerM2() / (light.irradianceWPerM2().getAsDouble() * share));
  }

  /**
   * Times of a test strip (s), each the last times the square root of two: round the time for
   * square-on places, or from 10 s on where the lamp is not known. Expose strips of 1 to 2 cm.
   */
  public List<Double> stripsS() {
    double next =
        squareOnS().isPresent() ? squareOnS().getAsDouble() / (STEP * STEP * STEP) : FIRST_STRIP_S;
    List<Double> strips = new ArrayList<>();
    for (int i = 0; i < STRIPS; i++) {
      strips.add(next);
      next *= STEP;
    }
    return List.copyOf(strips);
  }
}
