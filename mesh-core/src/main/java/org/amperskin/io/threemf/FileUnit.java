package org.amperskin.io.threemf;

import java.util.Arrays;
import java.util.Optional;
import org.amperskin.units.Unit;

/** The units of a model part, by the words of the standard. */
enum FileUnit {
  MICRON("um"),
  MILLIMETER("mm"),
  CENTIMETER("cm"),
  INCH("in"),
  FOOT("ft"),
  METER("m");

  final String symbol;

  FileUnit(String symbol) {
    this.symbol = symbol;
  }

  static Optional<FileUnit> named(String word) {
    return Arrays.stream(values()).filter(u -> u.word().equals(word)).findFirst();
  }

  String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }

  /** How many of another unit one of this is. */
  double in(FileUnit other) {
    return this == other ? 1 : Unit.of(other.symbol).fromSi(Unit.of(symbol).toSi(1));
  }
}
