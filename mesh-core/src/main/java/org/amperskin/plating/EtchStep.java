package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.Length;
import org.amperskin.units.Volume;

/**
 * Taking metal off through the openings of a mask: the part on plus.
 *
 * <p>In a tank or with a swab, as the recipe says. What is not said comes from the recipe and is
 * told as an assumption. Worked out by {@link EtchEstimator}.
 */
public final class EtchStep extends CurrentStep {
  private final OptionalDouble efficiency;
  private final Swab swab;
  private final Optional<Volume> bath;
  private final Optional<ContactWire> wire;
  private final Length wireCoat;
  private final Optional<Length> layer;

  private EtchStep(Builder b) {
    super(b, How.ETCH);
    if (basics().target() instanceof Target.Coverage) {
      throw new IllegalArgumentException(
          "coverage given for " + recipe().id() + ": an etch has a depth or a charge");
    }
    efficiency = b.efficiency;
    swab = b.swab;
    bath = b.bath;
    wire = b.wire;
    wireCoat = b.wireCoat;
    layer = b.layer;
  }

  /**
   * Begins a step; everything else has a default.
   *
   * @param target depth or charge
   */
  public static Builder of(String name, Recipe recipe, PlatedSurface surface, Target target) {
    return new Builder(name, recipe, surface, target);
  }

  @Override
  public StepEstimate estimate() {
    return new EtchEstimator(this).estimate();
  }

  OptionalDouble efficiency() {
    return efficiency;
  }

  Swab swab() {
    return swab;
  }

  Optional<Volume> bath() {
    return bath;
  }

  /** The contact wire, as thick as it is with what was plated on it. */
  Optional<ContactWire> wire() {
    return wire;
  }

  /** Thickness of what was plated on the wire before. */
  Length wireCoat() {
    return wireCoat;
  }

  /** Thickness of the metal that is there, where no step of the plan plates it. */
  Optional<Length> layer() {
    return layer;
  }

  /** Gathers what is known of an etch. */
  public static final class Builder extends CurrentStep.Builder<Builder> {
    private OptionalDouble efficiency = OptionalDouble.empty();
    private Swab swab = Swab.unknown();
    private Optional<Volume> bath = Optional.empty();
    private Optional<ContactWire> wire = Optional.empty();
    private Length wireCoat = new Length(0);
    private Optional<Length> layer = Optional.empty();

    private Builder(String name, Recipe recipe, PlatedSurface surface, Target target) {
      super(name, recipe, surface, target);
    }

    @Override
    Builder self() {
      return this;
    }

    /** Share of the charge that takes metal off (0..1), taken without spread. */
    public Builder efficiency(double value) {
      efficiency = OptionalDouble.of(Faraday.checked(value));
      return this;
    }

    /** The tool, where the recipe works with one. */
    public Builder swab(Swab value) {
      swab = value;
      return this;
    }

    /** Volume of the bath. */
    public Builder bath(Volume value) {
      Faraday.positive("bath volume", value.cubicMetres(), "m3");
      bath = Optional.of(value);
      return this;
    }

    /** Bare contact wire under the surface of the bath; it is eaten too. */
    public Builder wire(Length diameter, Length submerged) {
      return wire(diameter, submerged, new Length(0));
    }

    /**
     * The same with metal on it.
     *
     * @param coat thickness of what was plated on the wire before
     */
    public Builder wire(Length diameter, Length submerged, Length coat) {
      Length thick = new Length(diameter.metres() + 2 * coat.metres());
      wire = Optional.of(new ContactWire(thick, submerged));
      wireCoat = coat;
      return this;
    }

    /** Thickness of the metal that is there, where no step of the plan plates it. */
    public Builder layer(Length value) {
      Faraday.positive("thickness of the layer", value.metres(), "m");
      layer = Optional.of(value);
      return this;
    }

    /** The step. */
    public EtchStep build() {
      return new EtchStep(this);
    }
  }
}
