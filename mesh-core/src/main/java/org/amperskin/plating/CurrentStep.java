package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.MassDensity;

/** A step with current, after a recipe: what plating in a tank, brushing and etching share. */
public abstract sealed class CurrentStep implements Step permits TankStep, BrushStep, EtchStep {
  private final StepBasics basics;
  private final Optional<Already> already;

  CurrentStep(Builder<?> b, How how) {
    basics =
        new StepBasics(b.name, b.region, b.recipe, b.surface, b.target, b.density, b.metalDensity);
    basics.expect(how);
    already = b.already;
  }

  @Override
  public final String name() {
    return basics.name();
  }

  @Override
  public final String region() {
    return basics.region();
  }

  @Override
  public final PlatedSurface surface() {
    return basics.surface();
  }

  @Override
  public final How how() {
    return basics.recipe().how();
  }

  /** The solution. */
  public final Recipe recipe() {
    return basics.recipe();
  }

  final StepBasics basics() {
    return basics;
  }

  /** What of it was done before. */
  final Optional<Already> already() {
    return already;
  }

  /**
   * Gathers what is known of a step.
   *
   * @param <B> the builder itself
   */
  public abstract static class Builder<B extends Builder<B>> {
    private final String name;
    private final Recipe recipe;
    private final PlatedSurface surface;
    private final Target target;
    private String region = "";
    private OptionalDouble density = OptionalDouble.empty();
    private OptionalDouble metalDensity = OptionalDouble.empty();
    private Optional<Already> already = Optional.empty();

    Builder(String name, Recipe recipe, PlatedSurface surface, Target target) {
      this.name = name;
      this.recipe = recipe;
      this.surface = surface;
      this.target = target;
    }

    abstract B self();

    /** The region worked on. */
    public final B region(String value) {
      region = value;
      return self();
    }

    /** Current density on the bare metal; on a brush, that under the swab. */
    public final B density(CurrentDensity value) {
      density = OptionalDouble.of(value.amperesPerSquareMetre());
      return self();
    }

    /** Density of the metal, taken without spread. */
    public final B metalDensity(MassDensity value) {
      metalDensity = OptionalDouble.of(value.kilogramsPerCubicMetre());
      return self();
    }

    /** Goes on from what was done; figures are of what is left. */
    public final B already(Already value) {
      already = Optional.of(value);
      return self();
    }
  }
}
