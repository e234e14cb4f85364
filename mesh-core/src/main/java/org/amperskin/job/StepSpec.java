package org.amperskin.job;

import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.plating.Already;
import org.amperskin.plating.Pulse;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.Swab;
import org.amperskin.plating.Target;
import org.amperskin.plating.WorkKind;
import org.amperskin.yaml.Place;

/**
 * One step as asked for; values in SI-coherent units where the name gives none.
 *
 * @param name name for people
 * @param region region worked on, {@link Job#WHOLE_SKIN} for all
 * @param doing what is done
 * @param place where it stands in the job
 */
public record StepSpec(String name, String region, Doing doing, Place place) {
  /** Thickness where it is thinnest over the mean (0 to 1), if it was told. */
  OptionalDouble thinnest() {
    return doing instanceof Plate plate ? plate.settings().thinnest() : OptionalDouble.empty();
  }

  /** The same plating step at another density (A/m2); work stays as it is. */
  public StepSpec at(double density) {
    return doing instanceof Plate plate ? with(plate, plate.settings().at(density)) : this;
  }

  /** The same plating step, of which something was done before; work stays as it is. */
  public StepSpec after(Already done) {
    return doing instanceof Plate plate
        ? with(plate, plate.settings().after(Optional.of(done)))
        : this;
  }

  /** The same plating step from its beginning; work stays as it is. */
  StepSpec anew() {
    return doing instanceof Plate plate
        ? with(plate, plate.settings().after(Optional.empty()))
        : this;
  }

  /** The same plating step from its beginning, to another end; work stays as it is. */
  StepSpec anew(Target target) {
    return doing instanceof Plate plate
        ? new StepSpec(
                name,
                region,
                new Plate(plate.recipe(), Optional.of(target), plate.settings(), plate.onPaint()),
                place)
            .anew()
        : this;
  }

  private StepSpec with(Plate plate, Settings settings) {
    Plate other = new Plate(plate.recipe(), plate.target(), settings, plate.onPaint());
    return new StepSpec(name, region, other, place);
  }

  /** What is done. */
  public sealed interface Doing {}

  /**
   * Work without plating current.
   *
   * @param kind which
   */
  public record Work(WorkKind kind) implements Doing {}

  /**
   * Plating.
   *
   * @param recipe the solution
   * @param target thickness, charge or coverage; empty only where a coupon is wanted first
   * @param settings what differs from the recipe
   * @param onPaint whether this is the first metal on the paint
   */
  public record Plate(Recipe recipe, Optional<Target> target, Settings settings, boolean onPaint)
      implements Doing {}

  /**
   * What differs from the recipe.
   *
   * @param density current density (A/m2)
   * @param efficiency cathode efficiency (0 to 1)
   * @param metalDensity density of the deposit (kg/m3)
   * @param temperature of the bath (K)
   * @param conductivity of the bath (S/m)
   * @param factor charge per area and thickness (C/m3)
   * @param softStart time over which the current comes up (s)
   * @param swab the brush tool
   * @param pulse current switched on and off
   * @param already what of it was done before
   * @param layer thickness of the metal there before an etch (m), where no step plates it
   * @param thinnest thickness where it is thinnest over the mean (0 to 1)
   * @param wireCovered whether resist or lacquer lies on the contact wire in an etch
   */
  public record Settings(
      OptionalDouble density,
      OptionalDouble efficiency,
      OptionalDouble metalDensity,
      OptionalDouble temperature,
      OptionalDouble conductivity,
      OptionalDouble factor,
      OptionalDouble softStart,
      Swab swab,
      Optional<Pulse> pulse,
      Optional<Already> already,
      OptionalDouble layer,
      OptionalDouble thinnest,
      boolean wireCovered) {
    /** Everything from the recipe but these, where they are present. */
    public static Settings of(
        OptionalDouble density, OptionalDouble efficiency, OptionalDouble metalDensity) {
      OptionalDouble e = OptionalDouble.empty();
      return new Settings(
          density,
          efficiency,
          metalDensity,
          e,
          e,
          e,
          e,
          Swab.unknown(),
          Optional.empty(),
          Optional.empty(),
          e,
          e,
          false);
    }

    /** The same at another density (A/m2). */
    Settings at(double other) {
      return with(OptionalDouble.of(other), already);
    }

    /** The same with this done before. */
    Settings after(Optional<Already> done) {
      return with(density, done);
    }

    private Settings with(OptionalDouble otherDensity, Optional<Already> otherAlready) {
      return new Settings(
          otherDensity,
          efficiency,
          metalDensity,
          temperature,
          conductivity,
          factor,
          softStart,
          swab,
          pulse,
          otherAlready,
          layer,
          thinnest,
          wireCovered);
    }
  }
}
