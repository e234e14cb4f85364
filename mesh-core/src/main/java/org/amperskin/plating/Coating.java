package org.amperskin.plating;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.Quantity;

/** The metals on the part so far, as thick as their steps meant them, the last on top. */
final class Coating {
  /** Share of a layer that a mean depth may reach, since current is uneven (rule of thumb). */
  private static final double DEEPEST_SHARE = 0.5;

  private record Layer(Metal metal, OptionalDouble um) {}

  private final Deque<Layer> layers = new ArrayDeque<>();

  void clear() {
    layers.clear();
  }

  /** A layer that was there before the plan begins; what the plan plates goes before it. */
  void present(Metal metal, OptionalDouble um) {
    if (layers.isEmpty()) {
      add(metal, um);
    }
  }

  /** Another layer; one of the metal already on top thickens it. */
  void add(Metal metal, OptionalDouble um) {
    Layer top = layers.peek();
    if (top != null && top.metal() == metal) {
      layers.pop();
      boolean known = top.um().isPresent() && um.isPresent();
      um = known ? OptionalDouble.of(top.um().getAsDouble() + um.getAsDouble()) : um;
    }
    layers.push(new Layer(metal, um));
  }

  /** Thickness of the top layer (um) if it is of this metal and known. */
  OptionalDouble topUm(Metal metal) {
    Layer top = layers.peek();
    return top != null && top.metal() == metal ? top.um() : OptionalDouble.empty();
  }

  /** What speaks against taking so much of a metal off. */
  Optional<String> fault(Metal metal, double deepUm) {
    Layer top = layers.peek();
    if (top == null) {
      return Optional.of(
          "takes " + metal.label() + " off a part that has 0 um of metal: plate it first");
    }
    if (top.metal() != metal) {
      return Optional.of(
          "is meant for "
              + metal.label()
              + ", but on top lies "
              + top.um().stream()
                  .mapToObj(um -> Quantity.plain(um, 3) + " um of ")
                  .findFirst()
                  .orElse("")
              + top.metal().label()
              + ", which this solution may not take off: etch before that step, or take a recipe"
              + " for "
              + top.metal().label());
    }
    if (top.um().isEmpty() || deepUm <= DEEPEST_SHARE * top.um().getAsDouble()) {
      return Optional.empty();
    }
    double um = top.um().getAsDouble();
    return Optional.of(
        "goes "
            + Quantity.plain(deepUm, 3)
            + " um deep into "
            + Quantity.plain(um, 3)
            + " um of "
            + metal.label()
            + ": where current crowds it breaks through and cuts the rest off from it; etch at most "
            + Quantity.plain(DEEPEST_SHARE * um, 3)
            + " um deep or plate "
            + Quantity.plain(deepUm / DEEPEST_SHARE, 3)
            + " um (rule of thumb)");
  }
}
