package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Length;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Volume;

/**
 * Taking metal off through the openings of a mask: the part on plus.
 *
 * <p>In a tank or with a swab, as the recipe says. What is not said comes from the recipe and is
 * told as an assumption. Worked out by {@link EtchEstimator}.
 */
public final class EtchStep implements Step {
  private final StepBasics basics;
  private final OptionalDouble efficiency;
  private final Swab swab;
  private final Optional<Volume> bath;
  private final Optional<ContactWire> wire;
  private final Optional<Length> layer;

  private EtchStep(Builder b) {
    basics =
        new StepBasics(b.name, b.region, b.recipe, b.surface, b.target, b.density, b.metalDensity);
    basics.expect(How.ETCH);
    if (b.target instanceof Target.Coverage) {
      throw new IllegalArgumentException(
          "coverage given for " + b.recipe.id() + ": an etch has a depth or a charge");
    }
    efficiency = b.efficiency;
    swab = b.swab;
    bath = b.bath;
    wire = b.wire;
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
    return How.ETCH;
  }

  @Override
  public StepEstimate estimate() {
    return new EtchEstimator(this).estimate();
  }

  /** The solution. */
  public Recipe recipe() {
    return basics.recipe();
  }

  StepBasics basics() {
    return basics;
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

  Optional<ContactWire> wire() {
    return wire;
  }

  /** Thickness of the metal that is there, where no step of the plan plates it. */
  Optional<Length> layer() {
    return layer;
  }

  /** Gathers what is known of an etch. */
  public static final class Builder {
    private final String name;
    private final Recipe recipe;
    private final PlatedSurface surface;
    private final Target target;
    private String region = "";
    private OptionalDouble density = OptionalDouble.empty();
    private OptionalDouble metalDensity = OptionalDouble.empty();
    private OptionalDouble efficiency = OptionalDouble.empty();
    private Swab swab = Swab.unknown();
    private Optional<Volume> bath = Optional.empty();
    private Optional<ContactWire> wire = Optional.empty();
    private Optional<Length> layer = Optional.empty();

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

    /** Anode current density on the bare metal. */
    public Builder density(CurrentDensity value) {
      density = OptionalDouble.of(value.amperesPerSquareMetre());
      return this;
    }

    /** Density of the metal, taken without spread. */
    public Builder metalDensity(MassDensity value) {
      metalDensity = OptionalDouble.of(value.kilogramsPerCubicMetre());
      return this;
    }

    /** Share of the charge that takes metal off (0..1), taken without spread. */
    public Builder efficiency(double value) {
      if (!(value > 0 && value <= 1)) {
        throw new IllegalArgumentException("efficiency " + value + " is not above 0 and up to 1");
      }
      efficiency = OptionalDouble.of(value);
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
      wire = Optional.of(new ContactWire(diameter, submerged));
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
