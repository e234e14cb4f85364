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
  private static final double ROUNDING = 1e-9;

  static final Layers NONE = new Layers(List.of(), false);

  /**
   * One metal.
   *
   * @param um its thickness (um), if known
   * @param takenUm how much of it was taken off before (um)
   */
  record Layer(Metal metal, OptionalDouble um, double takenUm) {
    /** Whether nothing of it is left. */
    boolean gone() {
      return um.isPresent() && um.getAsDouble() <= 0;
    }
  }

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
      return with(new Layer(metal, um, 0));
    }
    Layer old = top().orElseThrow();
    boolean known = old.um().isPresent() && um.isPresent();
    OptionalDouble all = known ? OptionalDouble.of(old.um().getAsDouble() + um.getAsDouble()) : um;
    return withoutTop().with(new Layer(metal, all, old.takenUm()));
  }

  private Layers with(Layer layer) {
    List<Layer> more = new ArrayList<>(stack);
    more.add(layer);
    return new Layers(more, resist);
  }

  /** A layer that was there before the plan begins; what the plan plated goes before it. */
  Layers orPresent(Metal metal, OptionalDouble um) {
    return stack.isEmpty() ? and(metal, um) : this;
  }

  /** With the top layer thinner, if it is of this metal; one that is gone shows what is below. */
  Layers less(Metal metal, double um) {
    if (topUm(metal).isEmpty()) {
      return this;
    }
    Layer old = top().orElseThrow();
    double left = old.um().getAsDouble() - um;
    left = left > ROUNDING * um ? left : 0;
    return left == 0 && stack.size() > 1
        ? withoutTop()
        : withoutTop().with(new Layer(metal, OptionalDouble.of(left), old.takenUm() + um));
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
