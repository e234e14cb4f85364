package org.amperskin.bench;

import java.util.Optional;

/**
 * A bath of the user's, by name.
 *
 * @param name the user's name for it; letter case aside, one bath each
 * @param recipe id of the recipe it was made up by, if told
 * @param solubleAnode whether its anodes feed it, if told; else the recipe's anode counts
 */
public record Bath(String name, Optional<String> recipe, Optional<Boolean> solubleAnode) {
  public Bath {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a bath needs a name; '" + name + "' is blank");
    }
  }

  /** This bath where newer words replace those it had. */
  Bath with(Bath newer) {
    return new Bath(name, newer.recipe.or(() -> recipe), newer.solubleAnode.or(() -> solubleAnode));
  }
}
