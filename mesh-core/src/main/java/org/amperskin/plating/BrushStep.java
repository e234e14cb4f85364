package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Unit;

/**
 * Plating with a moving swab.
 *
 * <p>Current flows only where the wet swab touches bare metal: it is density times contact area
 * times open fraction. Charge, metal and solution follow the open area; the time does not, since
 * every opening needs its dwell. Worked out by {@link BrushEstimator}.
 */
public final class BrushStep implements Step {
  private final StepBasics basics;
  private final Swab swab;
  private final OptionalDouble factor;
  private final Optional<Pulse> pulse;
  private final Optional<Already> already;

  private BrushStep(Builder b) {
    basics =
        new StepBasics(b.name, b.region, b.recipe, b.surface, b.target, b.density, b.metalDensity);
    basics.expect(How.BRUSH);
    swab = b.swab;
    factor = b.factor;
    pulse = b.pulse;
    already = b.already;
    if (factor.isPresent() && b.recipe.claim() != Claim.FARADAY) {
      throw new IllegalArgumentException(
          "factor given for "
              + b.recipe.id()
              + ": its colour is calibrated by a coupon; give a coverage in A.h/dm2");
    }
  }

  /** Begins a step; everything else has a default. */
  public static Builder of(String name, Recipe recipe, PlatedSurface surface, Target target) {
    return new Builder(name, recipe, surface, target);
  }

  @Override
  public String name() {
    return basics.name();
  }

  @Override
  public String region() {
    return basics.region();
  }

  @Override
  public PlatedSurface surface() {
    return basics.surface();
  }

  @Override
  public How how() {
    return How.BRUSH;
  }

  @Override
  public StepEstimate estimate() {
    return new BrushEstimator(this).estimate();
  }

  /** The solution. */
  public Recipe recipe() {
    return basics.recipe();
  }

  StepBasics basics() {
    return basics;
  }

  Swab swab() {
    return swab;
  }

  /** Charge per area and thickness as given (C/m3). */
  OptionalDouble factor() {
    return factor;
  }

  Optional<Pulse> pulse() {
    return pulse;
  }

  Optional<Already> already() {
    return already;
  }

  /** Gathers what is known of a brush step. */
  public static final class Builder {
    private final String name;
    private final Recipe recipe;
    private final PlatedSurface surface;
    private final Target target;
    private String region = "";
    private OptionalDouble density = OptionalDouble.empty();
    private OptionalDouble metalDensity = OptionalDouble.empty();
    private OptionalDouble factor = OptionalDouble.empty();
    private Swab swab = Swab.unknown();
    private Optional<Pulse> pulse = Optional.empty();
    private Optional<Already> already = Optional.empty();

    private Builder(String name, Recipe recipe, PlatedSurface surface, Target target) {
      this.name = name;
      this.recipe = recipe;
      this.surface = surface;
      this.target = target;
    }

    /** The region worked on. */
    public Builder region(String value) {
      region = value;
      return this;
    }

    /** Density on the bare metal under the swab. */
    public Builder density(CurrentDensity value) {
      density = OptionalDouble.of(value.amperesPerSquareMetre());
      return this;
    }

    /** Density of the deposit, taken without spread. */
    public Builder metalDensity(MassDensity value) {
      metalDensity = OptionalDouble.of(value.kilogramsPerCubicMetre());
      return this;
    }

    /** The factor on the bottle, in A.h/(dm2.um), taken without spread. */
    public Builder factor(double ampereHoursPerDm2Um) {
      Faraday.positive("factor", ampereHoursPerDm2Um, "A.h/(dm2.um)");
      factor = OptionalDouble.of(Unit.of("A.h/(dm2.um)").toSi(ampereHoursPerDm2Um));
      return this;
    }

    /** The tool. */
    public Builder swab(Swab value) {
      swab = value;
      return this;
    }

    /** Current switched on and off; the density asked for is its mean. */
    public Builder pulse(Pulse value) {
      pulse = Optional.of(value);
      return this;
    }

    /** Goes on from what was done; figures are of what is left. */
    public Builder already(Already value) {
      already = Optional.of(value);
      return this;
    }

    /** The step. */
    public BrushStep build() {
      return new BrushStep(this);
    }
  }
}
