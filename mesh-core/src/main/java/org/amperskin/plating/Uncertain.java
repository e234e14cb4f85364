package org.amperskin.plating;

import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;

/**
 * A result of a step as a function of what is not known.
 *
 * <p>Two unknowns that are equal are the same unknown, also in different steps: one bath's
 * efficiency, one region's area.
 */
public final class Uncertain {
  private final String step;
  private final String result;
  private final String unit;
  private final boolean told;
  private final ToDoubleFunction<double[]> value;
  private final List<Unknown> unknowns;

  /**
   * A result.
   *
   * @param step the step
   * @param result what it is: time, metal, thickness, depth, solution or the key of a figure
   * @param unit its unit
   * @param told whether the step itself tells its band, and how far each unknown moves it
   * @param value the result by the unknowns, in their order
   * @param unknowns what is not known, possibly nothing
   */
  Uncertain(
      String step,
      String result,
      String unit,
      boolean told,
      ToDoubleFunction<double[]> value,
      List<Unknown> unknowns) {
    this.step = step;
    this.result = result;
    this.unit = unit;
    this.told = told;
    this.value = value;
    this.unknowns = List.copyOf(unknowns);
  }

  /** A result that is known. */
  static Uncertain known(String step, String result, String unit, double value) {
    return new Uncertain(step, result, unit, false, x -> value, List.of());
  }

  /** A figure, with its range as the unknown. */
  static Uncertain of(String step, StepFigure figure) {
    boolean ranged =
        figure
            .band()
            .filter(b -> b.low() <= figure.value() && figure.value() <= b.high())
            .isPresent();
    if (!ranged) {
      return known(step, figure.key(), figure.unit(), figure.value());
    }
    Band band = figure.band().get();
    Spread.Triangle range = new Spread.Triangle(band.low(), figure.value(), band.high());
    String remedy = "note what it really takes; now " + figure.basis();
    List<Unknown> unknown = List.of(new Unknown(figure.label(), range, remedy));
    return new Uncertain(step, figure.key(), figure.unit(), false, x -> x[0], unknown);
  }

  private double typical() {
    return at(Unknown.typicals(unknowns));
  }

  /**
   * Equal if they are the same result of the same step with the same unknowns and typical value.
   */
  @Override
  public boolean equals(Object other) {
    return other instanceof Uncertain u
        && step.equals(u.step)
        && result.equals(u.result)
        && unknowns.equals(u.unknowns)
        && Double.compare(typical(), u.typical()) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(step, result, unknowns);
  }

  String step() {
    return step;
  }

  String result() {
    return result;
  }

  List<Unknown> unknowns() {
    return unknowns;
  }

  /** Whether the step itself tells its band. */
  boolean told() {
    return told;
  }

  /** How far each unknown moves it. */
  List<Swing> swings() {
    return Unknown.swings(result, unit, value, unknowns);
  }

  double at(double[] values) {
    return value.applyAsDouble(values);
  }
}
