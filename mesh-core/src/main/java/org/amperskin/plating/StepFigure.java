package org.amperskin.plating;

import java.util.Optional;

/**
 * One number of a step that only some steps have: paint by volume, turns of wire, heat, undercut.
 *
 * <p>What every plating step has stands in {@link StepEstimate} itself; what a single kind of work
 * needs stands here, so that text, JSON, viewer and sheet show it without knowing the kind.
 *
 * @param key name for machines, ends in its unit: {@code paintMl}
 * @param label name for people, short: {@code paint}
 * @param value central value (in the unit)
 * @param unit unit as people read it; {@code s} is shown as a clock tells it, "" for a count
 * @param band tenth to ninetieth percentile, or the range of a rule of thumb
 * @param mark how far it can be trusted
 * @param basis how it comes about, or its source, in a few words
 */
public record StepFigure(
    String key,
    String label,
    double value,
    String unit,
    Optional<Band> band,
    Mark mark,
    String basis) {
  public StepFigure {
    if (!key.matches("[a-z][A-Za-z0-9]*")) {
      throw new IllegalArgumentException("key '" + key + "' of a figure is not in camel case");
    }
    if (label.isBlank() || basis.isBlank()) {
      throw new IllegalArgumentException("figure " + key + " has no label or no basis");
    }
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("figure " + key + " is " + value + " " + unit);
    }
  }

  /** A figure without a band. */
  static StepFigure of(
      String key, String label, double value, String unit, Mark mark, String basis) {
    return new StepFigure(key, label, value, unit, Optional.empty(), mark, basis);
  }
}
