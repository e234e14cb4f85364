package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.Unit;

/**
 * Plating with a moving swab.
 *
 * <p>Current flows only where the wet swab touches bare metal: it is density times contact area
 * times open fraction. Charge, metal and solution follow the open area; the time does not, since
 * every opening needs its dwell. Worked out by {@link BrushEstimator}.
 */
public final class BrushStep extends CurrentStep {
  private final Swab swab;
  private final OptionalDouble factor;
  private final Optional<Pulse> pulse;

  private BrushStep(Builder b) {
    super(b, How.BRUSH);
    swab = b.swab;
    factor = b.factor;
    pulse = b.pulse;
    if (factor.isPresent() && recipe().claim() != Claim.FARADAY) {
      throw new IllegalArgumentException(
          "factor given for "
              + recipe().id()
              + ": its colour is calibrated by a coupon; give a coverage in A.h/dm2");
    }
  }

  /** Begins a step; everything else has a default. */
  public static Builder of(String name, Recipe recipe, PlatedSurface surface, Target target) {
    return new Builder(name, recipe, surface, target);
  }

  @Override
  public StepEstimate estimate() {
    return new BrushEstimator(this).estimate();
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

  /** Gathers what is known of a brush step. */
  public static final class Builder extends CurrentStep.Builder<Builder> {
    private OptionalDouble factor = OptionalDouble.empty();
    private Swab swab = Swab.unknown();
    private Optional<Pulse> pulse = Optional.empty();

    private Builder(String name, Recipe recipe, PlatedSurface surface, Target target) {
      super(name, recipe, surface, target);
    }

    @Override
    Builder self() {
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

    /** The step. */
    public BrushStep build() {
      return new BrushStep(this);
    }
  }
}
