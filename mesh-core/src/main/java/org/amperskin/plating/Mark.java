package org.amperskin.plating;

import java.util.Optional;

/** How far a number can be trusted: it stands beside every figure and constant. */
public enum Mark {
  /** Read in the source named. */
  READ("R", "read in the source"),
  /** Quoted from memory of the source named; check before relying on it. */
  MEMORY("M", "from memory of the source"),
  /** Common practice of the trade, no source found. */
  COMMON("C", "rule of thumb: common practice, no source"),
  /** Worked out from the formulas given. */
  COMPUTED("X", "computed");

  private final String letter;
  private final String meaning;

  Mark(String letter, String meaning) {
    this.letter = letter;
    this.meaning = meaning;
  }

  /** The letter used in recipe files. */
  public String letter() {
    return letter;
  }

  /** What to print beside the number. */
  public String meaning() {
    return meaning;
  }

  /** The mark with this letter, if there is one. */
  public static Optional<Mark> ofLetter(String letter) {
    for (Mark mark : values()) {
      if (mark.letter.equals(letter)) {
        return Optional.of(mark);
      }
    }
    return Optional.empty();
  }
}
