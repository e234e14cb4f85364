package org.amperskin.plating;

import java.util.List;

/** The coupon procedure for finishes whose colour, not thickness, is the target. */
public final class Coupon {
  private static final List<String> PROCEDURE =
      List.of(
          "Cut a coupon of known area, say 0.1 to 0.5 dm2, of the same metal as the part will have.",
          "Clean and activate it as the part; weigh it to 1 mg if a balance is at hand.",
          "Plate with the same swab, density and speed; read the ampere-hour meter each minute.",
          "Stop when the colour is right and note the ampere-hours; go on to see where it dulls.",
          "Rinse, dry, weigh again. Coverage is ampere-hours over the coupon's area in dm2.",
          "Do it three times; enter the mean as coverage, in A.h/dm2.");

  private Coupon() {}

  /** What to do, in order. */
  public static List<String> procedure() {
    return PROCEDURE;
  }

  static String refusal(Recipe recipe) {
    return recipe.name()
        + " ("
        + recipe.id()
        + ") has no factor or thickness to stand behind: give a coverage in"
        + " A.h/dm2 from a coupon. Procedure: "
        + String.join(" ", PROCEDURE);
  }
}
