package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.units.Area;
import org.amperskin.units.Length;
import org.amperskin.units.Time;
import org.amperskin.units.Volume;

/**
 * Plating in a tank.
 *
 * <p>Current is density times the area that takes metal: the open area and the submerged contact
 * wire. What is not said comes from the recipe and is told as an assumption. Worked out by {@link
 * TankEstimator}.
 */
public final class TankStep extends CurrentStep {
  private final OptionalDouble efficiency;
  private final OptionalDouble conductivitySPerM;
  private final OptionalDouble temperatureK;
  private final Optional<Volume> bath;
  private final Optional<Length> gap;
  private final Optional<ContactWire> wire;
  private final Optional<ConductivePaint> paint;
  private final Time softStart;
  private final Optional<Pulse> pulse;

  private TankStep(Builder b) {
    super(b, How.TANK);
    efficiency = b.efficiency;
    conductivitySPerM = b.conductivitySPerM;
    temperatureK = b.temperatureK;
    bath = b.bath;
    gap = b.gap;
    wire = b.wire;
    paint = b.paint;
    softStart = b.softStart;
    pulse = b.pulse;
  }

  /** Begins a step; everything else has a default. */
  public static Builder of(String name, Recipe recipe, PlatedSurface surface, Target target) {
    return new Builder(name, recipe, surface, target);
  }

  @Override
  public StepEstimate estimate() {
    return new TankEstimator(this).estimate();
  }

  /** Bath temperature (K), the recipe's when none is given. */
  public double temperatureK() {
    return temperatureK.orElse(recipe().needed(FigureKey.TEMPERATURE).typicalSi());
  }

  /** The paint it grows on, if it is the first metal. */
  public Optional<ConductivePaint> paint() {
    return paint;
  }

  OptionalDouble efficiency() {
    return efficiency;
  }

  OptionalDouble conductivitySPerM() {
    return conductivitySPerM;
  }

  boolean temperatureGiven() {
    return temperatureK.isPresent();
  }

  Optional<Volume> bath() {
    return bath;
  }

  Optional<Length> gap() {
    return gap;
  }

  Optional<ContactWire> wire() {
    return wire;
  }

  Optional<Pulse> pulse() {
    return pulse;
  }

  /** Area of the submerged wire, none if there is none. */
  Area wireArea() {
    return wire.map(ContactWire::area).orElse(new Area(0));
  }

  Time softStart() {
    return softStart;
  }

  /** Gathers what is known of a tank step. */
  public static final class Builder extends CurrentStep.Builder<Builder> {
    private OptionalDouble efficiency = OptionalDouble.empty();
    private OptionalDouble conductivitySPerM = OptionalDouble.empty();
    private OptionalDouble temperatureK = OptionalDouble.empty();
    private Optional<Volume> bath = Optional.empty();
    private Optional<Length> gap = Optional.empty();
    private Optional<ContactWire> wire = Optional.empty();
    private Optional<ConductivePaint> paint = Optional.empty();
    private Time softStart = new Time(0);
    private Optional<Pulse> pulse = Optional.empty();

    private Builder(String name, Recipe recipe, PlatedSurface surface, Target target) {
      super(name, recipe, surface, target);
    }

    @Override
    Builder self() {
      return this;
    }

    /** Cathode efficiency measured on this bath (0..1), taken without spread. */
    public Builder efficiency(double value) {
      efficiency = OptionalDouble.of(Faraday.checked(value));
      return this;
    }

    /** Conductivity of the bath (S/m). */
    public Builder conductivity(double siemensPerMetre) {
      conductivitySPerM =
          OptionalDouble.of(Faraday.positive("conductivity", siemensPerMetre, "S/m"));
      return this;
    }

    /** Bath temperature (K). */
    public Builder temperature(double kelvin) {
      temperatureK = OptionalDouble.of(Faraday.positive("bath temperature", kelvin, "K"));
      return this;
    }

    /** Volume of the bath. */
    public Builder bath(Volume value) {
      Faraday.positive("bath volume", value.cubicMetres(), "m3");
      bath = Optional.of(value);
      return this;
    }

    /** Clearance from part to anode. */
    public Builder gap(Length value) {
      Faraday.positive("clearance to the anode", value.metres(), "m");
      gap = Optional.of(value);
      return this;
    }

    /** Bare contact wire under the surface of the bath; it takes metal too. */
    public Builder wire(Length diameter, Length submerged) {
      wire = Optional.of(new ContactWire(diameter, submerged));
      return this;
    }

    /** This is the first metal, on this paint: the start is slow. */
    public Builder paint(ConductivePaint value) {
      paint = Optional.of(value);
      return this;
    }

    /** Brings the current up in steps over this time; on paint the paint's start goes before. */
    public Builder softStart(Time value) {
      if (!(value.seconds() >= 0)) {
        throw new IllegalArgumentException("soft start (" + value.seconds() + " s) is negative");
      }
      softStart = value;
      return this;
    }

    /** Current switched on and off; the density asked for is its mean. */
    public Builder pulse(Pulse value) {
      pulse = Optional.of(value);
      return this;
    }

    /** The step. */
    public TankStep build() {
      return new TankStep(this);
    }
  }
}
