package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.amperskin.plating.Already;
import org.amperskin.plating.Claim;
import org.amperskin.plating.How;
import org.amperskin.plating.Metal;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.Target;
import org.amperskin.plating.WorkKind;
import org.amperskin.units.Quantity;

/** Jobs that were broken off or went wrong, and are taken up again. */
public final class Again {
  /** Share of a layer that is taken off unless another depth is asked (rule of thumb). */
  private static final double HALF = 0.5;

  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final StepSpec.Settings AS_THE_RECIPE = StepSpec.Settings.of(NONE, NONE, NONE);

  private Again() {}

  /**
   * Goes on from logged charges: steps without any stay whole.
   *
   * @param chargesAh charge by name of step (A.h)
   * @throws IllegalArgumentException if a step is not in the job or passes no charge
   */
  public static Job continued(Job job, Map<String, Double> chargesAh) {
    chargesAh.keySet().forEach(name -> plate(job, name, p -> true, "passes no current"));
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
   * @param step name or number of the step whose layer is bad
   * @param depthUm how much to take off with current (um), half of it if not told
   * @param resistOff whether the resist that the layer was plated through is off already
   */
  public record Redo(String step, OptionalDouble depthUm, boolean resistOff) {}

  /**
   * Takes a bad layer off, plates it anew, and does what comes after.
   *
   * <p>With current where a recipe takes that metal off and the layer has a thickness, and then
   * only part of it, since what stays carries the current. Chromium comes off whole in acid without
   * current: on plus it would turn hexavalent. Anything else is scoured off. A mask that does not
   * live through that, or is off already, is laid again as the job lays it; without its mask a
   * layer is scoured off, since a bath would eat all that is bare.
   *
   * @throws IllegalArgumentException if that cannot be done, with what can
   */
  public static Job redone(Job job, Redo asked, RecipeLibrary recipes) {
    int number = plate(job, asked.step(), p -> p.recipe().how() != How.ETCH, "plates nothing");
    StepSpec step = job.steps().get(number - 1);
    StepSpec.Plate plate = (StepSpec.Plate) step.doing();
    Optional<Recipe> off =
        layerUm(plate).isPresent() || charged(plate) && asked.depthUm().isPresent()
            ? solutionFor(plate, recipes)
            : Optional.empty();
    Way way =
        plate.recipe().metal() == Metal.CHROMIUM
            ? Way.CHROMIUM_OFF
            : off.isPresent() && !asked.resistOff() ? Way.CURRENT : Way.SCOUR;
    if (asked.depthUm().isPresent() && way != Way.CURRENT) {
      throw new IllegalArgumentException(
          "depth "
              + Quantity.plain(asked.depthUm().getAsDouble(), 3)
              + " um: "
              + plate.recipe().metal().label()
              + (way == Way.SCOUR ? " is scoured off by hand" : " comes off whole in acid")
              + ", not to a depth; leave it out");
    }
    List<StepSpec> before = job.steps().subList(0, number - 1);
    int resist = lastResist(before);
    boolean masked = resist >= 0;
    if (asked.resistOff() && !masked) {
      throw new IllegalArgumentException(
          "step '" + step.name() + "' has 0 steps 'resist' before it: leave --resist-off out");
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
        OptionalDouble um = layerUm(plate);
        double deep = depth(asked, um, step.name());
        StepSpec.Plate etch =
            new StepSpec.Plate(
                off.orElseThrow(), Optional.of(Target.um(deep)), AS_THE_RECIPE, false);
        steps.add(new StepSpec("take off " + step.name(), step.region(), etch, step.place()));
        again =
            um.isPresent()
                ? step.after(Already.reading(um.getAsDouble() - deep))
                : step.anew(Target.um(deep));
      }
      case CHROMIUM_OFF -> steps.add(work("take off " + step.name(), WorkKind.CHROMIUM_OFF, step));
      case SCOUR -> steps.add(work("scour off " + step.name(), WorkKind.SCOUR_OFF, step));
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
    List<StepSpec> done = new ArrayList<>(job.steps().subList(0, number));
    if (asked.resistOff()) {
      done.add(work(WorkKind.STRIP, before.get(resist)));
    }
    return job.with(done, steps);
  }

  /** Thickness that the step was to reach (um), if that is how it ends. */
  private static OptionalDouble layerUm(StepSpec.Plate plate) {
    return plate.target().orElse(null) instanceof Target.Thickness t
        ? OptionalDouble.of(t.thickness().inUm())
        : NONE;
  }

  /** Whether it ends by a charge that stands for a thickness. */
  private static boolean charged(StepSpec.Plate plate) {
    return plate.target().orElse(null) instanceof Target.Passed
        && plate.recipe().claim() == Claim.FARADAY;
  }

  private static double depth(Redo asked, OptionalDouble um, String name) {
    double deep = asked.depthUm().orElseGet(() -> HALF * um.orElseThrow());
    if (um.isPresent() && !(deep < um.getAsDouble())) {
      throw new IllegalArgumentException(
          "depth "
              + Quantity.plain(deep, 3)
              + " um is not less than the "
              + Quantity.plain(um.getAsDouble(), 3)
              + " um of '"
              + name
              + "': something must stay to carry the current");
    }
    return deep;
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

  /** What takes this metal off with current, worked as it was plated if there is a choice. */
  private static Optional<Recipe> solutionFor(StepSpec.Plate plate, RecipeLibrary recipes) {
    boolean brush = plate.recipe().how() == How.BRUSH;
    List<Recipe> off =
        recipes.all().stream()
            .filter(r -> r.how() == How.ETCH && r.metal() == plate.recipe().metal())
            .toList();
    return off.stream()
        .filter(r -> r.swabbed() == brush)
        .findFirst()
        .or(() -> off.stream().findFirst());
  }

  /** Number of a step with current, told by name or number. */
  private static int plate(Job job, String told, Predicate<StepSpec.Plate> fits, String otherwise) {
    int number = job.numberOf(told);
    StepSpec step = job.steps().get(number - 1);
    if (step.doing() instanceof StepSpec.Plate p) {
      if (fits.test(p)) {
        return number;
      }
      throw new IllegalArgumentException(
          "step "
              + number
              + " '"
              + step.name()
              + "' takes metal off: what it took comes back when the step that plated it is redone");
    }
    throw new IllegalArgumentException(
        "step "
            + number
            + " '"
            + step.name()
            + "' "
            + otherwise
            + " in "
            + job.name()
            + "; these do: "
            + String.join(
                ", ",
                job.steps().stream()
                    .filter(s -> s.doing() instanceof StepSpec.Plate p && fits.test(p))
                    .map(StepSpec::name)
                    .distinct()
                    .toList()));
  }
}
