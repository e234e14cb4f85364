package org.amperskin.plating;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;

/**
 * A caution that stands with a step and is never left out.
 *
 * @param hazard what can hurt, short
 * @param text what to do about it
 * @param mark how far the text can be trusted
 * @param source where it comes from
 */
public record Caution(String hazard, String text, Mark mark, String source) {
  public Caution {
    if (hazard.isBlank() || text.isBlank() || source.isBlank()) {
      throw new IllegalArgumentException(
          "caution needs hazard, text and source: '"
              + hazard
              + "', '"
              + text
              + "', '"
              + source
              + "'");
    }
  }

  /** The cautions of these hazards in a fixed order, closed by the one about local rules. */
  public static List<Caution> of(Collection<Hazard> hazards) {
    EnumSet<Hazard> set = EnumSet.of(Hazard.LOCAL_RULES);
    set.addAll(hazards);
    List<Caution> cautions = new ArrayList<>();
    for (Hazard hazard : set) {
      cautions.add(hazard.caution());
    }
    return List.copyOf(cautions);
  }
}
