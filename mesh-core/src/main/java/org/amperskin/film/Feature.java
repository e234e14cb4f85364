package org.amperskin.film;

import org.amperskin.geom.Vec3;

/**
 * A line or a space of the artwork at one place of the skin.
 *
 * @param filmMm width on the film (mm)
 * @param skinMm width on the skin, square to its edge (mm)
 * @param shiftMm how far an edge may move there to each side, on the skin (mm)
 * @param diffractionMm narrowest width that diffraction lets through there, on the skin (mm)
 * @param gapMm distance between film and skin (mm)
 * @param at where on the skin (mm)
 * @param artworkX where on the sheet, across from its centre (artwork mm)
 * @param artworkY where, upward
 * @param outline number of the outline in the sheet, from 0
 */
public record Feature(
    double filmMm,
    double skinMm,
    double shiftMm,
    double diffractionMm,
    double gapMm,
    Vec3 at,
    double artworkX,
    double artworkY,
    int outline) {
  /** What becomes of a line or space. */
  public enum Fate {
    /** Wider than both edges' shift and diffraction. */
    HOLDS,
    /** Wider than both edges' shift, but not by what diffraction takes. */
    AT_RISK,
    /** Not wider than both edges' shift. */
    VANISHES
  }

  /** Width that stays fully dark or fully lit (mm), 0 if none. */
  public double sharpMm() {
    return Math.max(0, skinMm - 2 * shiftMm);
  }

  /** Width less both edges' shift, taken back to the film (mm); below zero if it vanishes. */
  double leftOnFilmMm() {
    return (skinMm - 2 * shiftMm) * filmMm / skinMm;
  }

  /** What becomes of it. */
  public Fate fate() {
    if (skinMm <= 2 * shiftMm) {
      return Fate.VANISHES;
    }
    return skinMm <= 2 * shiftMm + diffractionMm ? Fate.AT_RISK : Fate.HOLDS;
  }
}
