package org.amperskin.job;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.amperskin.plating.BrushStep;
import org.amperskin.plating.ConductivePaint;
import org.amperskin.plating.CurrentStep;
import org.amperskin.plating.EtchStep;
import org.amperskin.plating.How;
import org.amperskin.plating.PlatedSurface;
import org.amperskin.plating.Step;
import org.amperskin.plating.TankStep;
import org.amperskin.plating.Target;
import org.amperskin.plating.WorkConditions;
import org.amperskin.plating.WorkStep;
import org.amperskin.units.CurrentDensity;
import org.amperskin.units.Length;
import org.amperskin.units.MassDensity;
import org.amperskin.units.Time;
import org.amperskin.units.Unit;
import org.amperskin.units.Volume;
import org.amperskin.yaml.YamlFault;

/** Makes the step of a job, once its surface is known. */
final class StepMaker {
  /** Stands in where a coupon is wanted first; the step refuses and never uses it. */
  private static final Target NO_TARGET = Target.um(1);

  private StepMaker() {}

  static Step make(StepSpec spec, Job job, PlatedSurface surface, List<CheckedFilm> films)
      throws YamlFault {
    try {
      if (spec.doing() instanceof StepSpec.Work work) {
        return new WorkStep(
            spec.name(), spec.region(), surface, work.kind(), conditions(spec, job, films));
      }
      StepSpec.Plate plate = (StepSpec.Plate) spec.doing();
      return switch (plate.recipe().how()) {
        case TANK -> tank(spec, plate, job, surface);
        case ETCH -> etch(spec, plate, job, surface);
        case BRUSH, PREPARE -> brush(spec, plate, surface);
      };
    } catch (IllegalArgumentException bad) {
      throw new YamlFault(spec.place(), bad.getMessage());
    }
  }

  private static WorkConditions conditions(StepSpec spec, Job job, List<CheckedFilm> films) {
    Set<String> through =
        job.regions().containsKey(spec.region())
            ? Set.copyOf(job.regions().get(spec.region()).films())
            : Set.of();
    OptionalDouble longest = OptionalDouble.empty();
    OptionalDouble latest = OptionalDouble.empty();
    for (CheckedFilm film : films) {
      if (through.contains(film.name())) {
        OptionalDouble needs = film.check().exposure().shortestS();
        OptionalDouble bears = film.check().exposure().longestS();
        if (needs.isPresent()) {
          longest = OptionalDouble.of(Math.max(longest.orElse(0), needs.getAsDouble()));
          latest =
              OptionalDouble.of(
                  Math.min(latest.orElse(Double.POSITIVE_INFINITY), bears.getAsDouble()));
        }
      }
    }
    return new WorkConditions(
        job.part().print(),
        job.paint().map(Job.PaintSpec::sheetResistanceOhm).orElse(OptionalDouble.empty()),
        job.contacts().wire(),
        job.resistUm(),
        longest,
        latest);
  }

  /** What steps with current share. */
  private static <B extends CurrentStep.Builder<B>> B common(
      B step, StepSpec spec, StepSpec.Settings s) {
    s.density().ifPresent(v -> step.density(new CurrentDensity(v)));
    s.metalDensity().ifPresent(v -> step.metalDensity(new MassDensity(v)));
    s.already().ifPresent(step::already);
    return step.region(spec.region());
  }

  private static Step tank(StepSpec spec, StepSpec.Plate plate, Job job, PlatedSurface surface) {
    StepSpec.Settings s = plate.settings();
    TankStep.Builder step =
        common(
            TankStep.of(spec.name(), plate.recipe(), surface, plate.target().orElse(NO_TARGET)),
            spec,
            s);
    s.efficiency().ifPresent(step::efficiency);
    s.temperature().ifPresent(step::temperature);
    s.conductivity().ifPresent(step::conductivity);
    s.softStart().ifPresent(v -> step.softStart(new Time(v)));
    s.pulse().ifPresent(step::pulse);
    job.tank().volumeM3().ifPresent(v -> step.bath(new Volume(v)));
    job.tank().spacingM().ifPresent(v -> step.gap(new Length(v)));
    job.contacts().wire().ifPresent(w -> step.wire(w.diameter(), w.submerged()));
    if (plate.onPaint()) {
      job.paint()
          .map(Job.PaintSpec::sheetResistanceOhm)
          .orElse(OptionalDouble.empty())
          .ifPresent(ohm -> step.paint(new ConductivePaint(ohm, job.contacts().farthestMm())));
    }
    return step.build();
  }

  private static Step brush(StepSpec spec, StepSpec.Plate plate, PlatedSurface surface) {
    StepSpec.Settings s = plate.settings();
    BrushStep.Builder step =
        common(
                BrushStep.of(
                    spec.name(), plate.recipe(), surface, plate.target().orElse(NO_TARGET)),
                spec,
                s)
            .swab(s.swab());
    s.pulse().ifPresent(step::pulse);
    s.factor().ifPresent(v -> step.factor(Unit.of("A.h/(dm2.um)").fromSi(v)));
    return step.build();
  }

  private static Step etch(StepSpec spec, StepSpec.Plate plate, Job job, PlatedSurface surface) {
    StepSpec.Settings s = plate.settings();
    EtchStep.Builder step =
        common(
                EtchStep.of(spec.name(), plate.recipe(), surface, plate.target().orElse(NO_TARGET)),
                spec,
                s)
            .swab(s.swab());
    s.efficiency().ifPresent(step::efficiency);
    s.layer().ifPresent(v -> step.layer(new Length(v)));
    job.tank().volumeM3().ifPresent(v -> step.bath(new Volume(v)));
    job.contacts()
        .wire()
        .filter(w -> !s.wireCovered())
        .ifPresent(w -> step.wire(w.diameter(), w.submerged(), onTheWire(spec, job)));
    return step.build();
  }

  /** What the steps in the tank before this one left on the contact wire. */
  private static Length onTheWire(StepSpec spec, Job job) {
    double metres = 0;
    for (StepSpec before : Stream.concat(job.done().stream(), job.steps().stream()).toList()) {
      if (before == spec) {
        break;
      }
      if (before.doing() instanceof StepSpec.Plate plate
          && plate.target().orElse(null) instanceof Target.Thickness t) {
        boolean tank = plate.recipe().how() == How.TANK;
        boolean off = plate.recipe().how() == How.ETCH && !plate.recipe().swabbed();
        double um = t.thickness().metres();
        metres += tank ? um : off && !plate.settings().wireCovered() ? -um : 0;
      }
    }
    return new Length(Math.max(0, metres));
  }
}
