package org.amperskin.pattern.motif;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.Unit;

/** A value that some motif takes, with the word for it in jobs and on the command line. */
public enum MotifParameter {
  /** From one line to the next. */
  PITCH("pitch", "mm", "from the middle of one line to the next"),
  /** Width of the lines. */
  LINE("line", "mm", "width of the lines; diameter of dots"),
  /** Rise of the arms of chevrons. */
  SLOPE("slope", "deg", "rise of the arms of chevrons"),
  /** From peak to peak. */
  LENGTH("length", "mm", "from peak to peak of chevrons and waves"),
  /** Height of waves and letters. */
  HEIGHT("height", "mm", "of waves, trough to crest; of capital letters"),
  /** Between a line and what passes under it. */
  GAP("gap", "mm", "where a woven band or a ring passes under"),
  /** Number of rings of a rosette. */
  RINGS("rings", "", "number of rings of a rosette"),
  /** Diameter of a rosette. */
  DIAMETER("diameter", "mm", "of a rosette, over the middles of its lines"),
  /** Radius of one ring of a rosette. */
  RADIUS("radius", "mm", "of one ring of a rosette, at the middle of its line"),
  /** Chooses one of many fields of dots. */
  SEED("seed", "", "chooses one of many fields of dots"),
  /** Side of the square of dots that repeats. */
  TILE("tile", "mm", "side of the square of dots that repeats"),
  /** What is written. */
  TEXT("text", "", "what the lettering says"),
  /** Font of the lettering. */
  FONT("font", "", "an installed font, or a .ttf or .otf file");

  private static final double LEAST_MM = 0.05;
  private static final double MOST_MM = 1000;

  private final String word;
  private final String unit;
  private final String meaning;

  MotifParameter(String word, String unit, String meaning) {
    this.word = word;
    this.unit = unit;
    this.meaning = meaning;
  }

  /** Its word. */
  public String word() {
    return word;
  }

  /** Unit in which it is held: mm, deg or nothing. */
  public String unit() {
    return unit;
  }

  /** What it is, in a few words. */
  public String meaning() {
    return meaning;
  }

  /** All words. */
  public static List<String> words() {
    return Arrays.stream(values()).map(MotifParameter::word).toList();
  }

  /**
   * Reads what was typed into the unit in which it is held.
   *
   * @throws MotifFault if it does not read as one
   */
  double number(String typed) {
    try {
      return switch (unit) {
        case "mm" -> Unit.of("mm").fromSi(Quantity.parse(typed, Dimension.LENGTH).si());
        case "deg" -> Math.toDegrees(Quantity.parse(typed, Dimension.ANGLE).si());
        default -> Long.parseLong(typed.strip());
      };
    } catch (NumberFormatException bad) {
      throw new MotifFault(this, word + " '" + typed + "' is not a whole number");
    } catch (IllegalArgumentException bad) {
      throw new MotifFault(this, word + ": " + bad.getMessage());
    }
  }

  /** Refuses a length that no film could show. */
  void check(double mm) {
    MotifFault.within(this, mm, LEAST_MM, MOST_MM);
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
