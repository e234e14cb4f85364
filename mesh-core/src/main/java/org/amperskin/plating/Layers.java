package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The metals on one place of the part, as thick as their steps meant them. Immutable.
 *
 * @param stack the lowest first
 * @param resist whether resist was laid over them, open or not
 */
record Layers(List<Layer> stack, boolean resist) {
  static final Layers NONE = new Layers(List.of(), false);

  /**
   * One metal.
   *
   * @param um its thickness (um), if known
   */
  record Layer(Metal metal, OptionalDouble um) {}

  Layers {
    stack = List.copyOf(stack);
  }

  /** What lies on top. */
  Optional<Layer> top() {
    return stack.isEmpty() ? Optional.empty() : Optional.of(stack.get(stack.size() - 1));
  }

  boolean endsWith(Metal metal) {
    return top().filter(t -> t.metal() == metal).isPresent();
  }

  /** Thickness of the top layer (um) if it is of this metal and known. */
  OptionalDouble topUm(Metal metal) {
    return endsWith(metal) ? top().orElseThrow().um() : OptionalDouble.empty();
  }

  /** With another layer; one of the metal already on top thickens it. */
  Layers and(Metal metal, OptionalDouble um) {
    if (!endsWith(metal)) {
      List<Layer> more = new ArrayList<>(stack);
      more.add(new Layer(metal, um));
      return new Layers(more, resist);
    }
    OptionalDouble below = top().orElseThrow().um();
    boolean known = below.isPresent() && um.isPresent();
    return withoutTop()
        .and(metal, known ? OptionalDouble.of(below.getAsDouble() + um.getAsDouble()) : um);
  }

  /** A layer that was there before the plan begins; what the plan plated goes before it. */
  Layers orPresent(Metal metal, OptionalDouble um) {
    return stack.isEmpty() ? and(metal, um) : this;
  }

  /** With the top layer thinner, if it is of this metal. */
  Layers less(Metal metal, double um) {
    OptionalDouble now = topUm(metal);
    return now.isEmpty()
        ? this
        : withoutTop().and(metal, OptionalDouble.of(Math.max(0, now.getAsDouble() - um)));
  }

  /** Without the top layer, if it is of this metal. */
  Layers without(Metal metal) {
    return endsWith(metal) ? withoutTop() : this;
  }

  /** With resist over them, or without. */
  Layers under(boolean laid) {
    return new Layers(stack, laid);
  }

  private Layers withoutTop() {
    return new Layers(stack.subList(0, stack.size() - 1), resist);
  }
}
