package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.amperskin.plating.Already;
import org.amperskin.plating.How;
import org.amperskin.plating.Metal;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.Target;
import org.amperskin.plating.WorkKind;
import org.amperskin.units.Length;
import org.amperskin.units.NearestWord;
import org.amperskin.units.Quantity;

/** Jobs that were broken off or went wrong, and are taken up again. */
public final class Again {
  /** Share of a layer that is taken off unless another depth is asked (rule of thumb). */
  private static final double HALF = 0.5;

  private Again() {}

  /**
   * Goes on from logged charges: steps without any stay whole.
   *
   * @param chargesAh charge by name of step (A.h)
   * @throws IllegalArgumentException if a step is not in the job or passes no charge
   */
  public static Job continued(Job job, Map<String, Double> chargesAh) {
    chargesAh.keySet().forEach(name -> step(job, name, p -> true, "passes no current"));
    return job.with(
        job.steps().stream()
            .map(
                s ->
                    chargesAh.containsKey(s.name())
                        ? s.after(Already.charge(chargesAh.get(s.name())))
                        : s)
            .toList());
  }

  /** How a bad layer comes off. */
  private enum Way {
    /** The part on plus, as deep as current still finds its way on what stays. */
    CURRENT,
    /** All of a thin chromium in acid that leaves what is below. */
    CHROMIUM_OFF,
    /** By hand, all of it. */
    SCOUR
  }

  /**
   * What is asked of a layer to be done again.
   *
   * @param name the step whose layer is bad
   * @param depthUm how much to take off with current (um), half of it if not told
   * @param resistOff whether the resist that the layer was plated through is off already
   */
  public record Redo(String name, OptionalDouble depthUm, boolean resistOff) {}

  /**
   * Takes a bad layer off, plates it anew, and does what comes after.
   *
   * <p>With current where a recipe takes that metal off and the layer has a thickness, and then
   * only part of it, since what stays carries the current. Chromium comes off whole in acid without
   * current: on plus it would turn hexavalent. Anything else is scoured off. A mask that does not
   * live through that, or is off already, is laid again as the job lays it.
   *
   * @throws IllegalArgumentException if that cannot be done, with what can
   */
  public static Job redone(Job job, Redo asked, RecipeLibrary recipes) {
    StepSpec step = step(job, asked.name(), p -> p.recipe().how() != How.ETCH, "plates nothing");
    StepSpec.Plate plate = (StepSpec.Plate) step.doing();
    Optional<Recipe> off = solutionFor(plate, recipes);
    Way way =
        plate.recipe().metal() == Metal.CHROMIUM
            ? Way.CHROMIUM_OFF
            : off.isPresent() ? Way.CURRENT : Way.SCOUR;
    if (asked.depthUm().isPresent() && way != Way.CURRENT) {
      throw new IllegalArgumentException(
          "depth "
              + Quantity.plain(asked.depthUm().getAsDouble(), 3)
              + " um: "
              + plate.recipe().metal().label()
              + (way == Way.SCOUR ? " is scoured off by hand" : " comes off whole in acid")
              + ", not to a depth; leave it out");
    }
    List<StepSpec> before = job.steps().subList(0, job.steps().indexOf(step));
    int resist = lastResist(before);
    boolean masked = resist >= 0;
    if (asked.resistOff() && !masked) {
      throw new IllegalArgumentException(
          "step '" + asked.name() + "' has 0 steps 'resist' before it: none is to be laid again");
    }
    boolean spoilt =
        masked
            && (way == Way.SCOUR || way == Way.CURRENT && off.map(Recipe::alkaline).orElse(false));
    List<StepSpec> steps = new ArrayList<>();
    if (spoilt && !asked.resistOff()) {
      StepSpec laid = before.get(resist);
      steps.add(work(WorkKind.RINSE, laid));
      steps.add(work(WorkKind.DRY, laid));
      steps.add(work(WorkKind.STRIP, laid));
    }
    StepSpec again = step.anew();
    switch (way) {
      case CURRENT -> {
        double um = ((Target.Thickness) plate.target().orElseThrow()).thickness().inUm();
        double deep = depth(asked, um);
        steps.add(
            new StepSpec(
                "take off " + step.name(),
                step.region(),
                etch(off.orElseThrow(), deep, um),
                step.place()));
        again = step.after(Already.reading(um - deep));
      }
      case CHROMIUM_OFF -> steps.add(work("take off " + step.name(), WorkKind.CHROMIUM_OFF, step));
      case SCOUR -> steps.add(work("scour off " + step.name(), WorkKind.SAND, step));
    }
    steps.add(work(WorkKind.RINSE, step));
    boolean relay = spoilt || asked.resistOff();
    if (way == Way.CURRENT && (relay || !masked)) {
      steps.add(work(WorkKind.SAND, step));
    }
    if (relay) {
      steps.add(work(WorkKind.DRY, step));
      before.subList(resist, before.size()).stream()
          .filter(s -> s.doing() instanceof StepSpec.Work)
          .forEach(steps::add);
    } else {
      steps.add(work(WorkKind.ACTIVATE, step));
    }
    steps.add(again);
    steps.addAll(job.steps().subList(before.size() + 1, job.steps().size()));
    return job.with(steps);
  }

  private static double depth(Redo asked, double um) {
    double deep = asked.depthUm().orElse(HALF * um);
    if (!(deep < um)) {
      throw new IllegalArgumentException(
          "depth "
              + Quantity.plain(deep, 3)
              + " um is not less than the "
              + Quantity.plain(um, 3)
              + " um of '"
              + asked.name()
              + "': something must stay to carry the current");
    }
    return deep;
  }

  private static StepSpec.Plate etch(Recipe off, double deepUm, double layerUm) {
    return new StepSpec.Plate(
        off,
        Optional.of(Target.um(deepUm)),
        StepSpec.Settings.etching(Length.ofUm(layerUm).metres()),
        false);
  }

  /** The step that laid the resist that is still on at the end of these, or -1. */
  private static int lastResist(List<StepSpec> before) {
    int last = -1;
    for (int i = 0; i < before.size(); i++) {
      if (before.get(i).doing() instanceof StepSpec.Work work) {
        last = work.kind() == WorkKind.RESIST ? i : work.kind() == WorkKind.STRIP ? -1 : last;
      }
    }
    return last;
  }

  private static StepSpec work(WorkKind kind, StepSpec step) {
    return work(kind.key(), kind, step);
  }

  private static StepSpec work(String name, WorkKind kind, StepSpec step) {
    return new StepSpec(name, step.region(), new StepSpec.Work(kind), step.place());
  }

  /** What takes a layer of known thickness off with current, worked as it was plated if it can. */
  private static Optional<Recipe> solutionFor(StepSpec.Plate plate, RecipeLibrary recipes) {
    boolean brush = plate.recipe().how() == How.BRUSH;
    List<Recipe> off =
        recipes.all().stream()
            .filter(r -> r.how() == How.ETCH && r.metal() == plate.recipe().metal())
            .toList();
    return plate.target().filter(t -> t instanceof Target.Thickness).isEmpty()
        ? Optional.empty()
        : off.stream()
            .filter(r -> r.swabbed() == brush)
            .findFirst()
            .or(() -> off.stream().findFirst());
  }

  private static StepSpec step(
      Job job, String name, Predicate<StepSpec.Plate> fits, String otherwise) {
    List<StepSpec> plates =
        job.steps().stream()
            .filter(s -> s.doing() instanceof StepSpec.Plate p && fits.test(p))
            .toList();
    List<String> names = plates.stream().map(StepSpec::name).toList();
    return plates.stream()
        .filter(s -> s.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "step '"
                        + name
                        + "' "
                        + otherwise
                        + " in "
                        + job.name()
                        + NearestWord.of(name, names)
                            .map(near -> ", did you mean '" + near + "'?")
                            .orElse("; these do: " + String.join(", ", names))));
  }
}
