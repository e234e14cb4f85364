package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.plating.Already;
import org.amperskin.plating.How;
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
    chargesAh.keySet().forEach(name -> plating(job, name));
    return job.with(
        job.steps().stream()
            .map(
                s ->
                    chargesAh.containsKey(s.name())
                        ? s.after(Already.charge(chargesAh.get(s.name())))
                        : s)
            .toList());
  }

  /**
   * Takes a bad layer off as far as the current still finds its way, plates it anew, and does what
   * comes after.
   *
   * @param name the step whose layer is bad
   * @param depthUm how much to take off (um), half of it if not told
   * @throws IllegalArgumentException if that cannot be done, with what can
   */
  public static Job redone(Job job, String name, OptionalDouble depthUm, RecipeLibrary recipes) {
    StepSpec step = plating(job, name);
    StepSpec.Plate plate = (StepSpec.Plate) step.doing();
    if (!(plate.target().orElse(null) instanceof Target.Thickness target)) {
      throw new IllegalArgumentException(
          "step '"
              + name
              + "' has no thickness, so how much is to come off is not known; scour it, activate, and"
              + " plate over");
    }
    Recipe off = solutionFor(plate.recipe(), recipes);
    double um = target.thickness().inUm();
    double deep = depthUm.orElse(HALF * um);
    if (!(deep < um)) {
      throw new IllegalArgumentException(
          "depth "
              + Quantity.plain(deep, 3)
              + " um is not less than the "
              + Quantity.plain(um, 3)
              + " um of '"
              + name
              + "': something must stay to carry the current");
    }
    StepSpec.Plate etch =
        new StepSpec.Plate(
            off,
            Optional.of(Target.um(deep)),
            StepSpec.Settings.etching(Length.ofUm(um).metres()),
            false);
    List<StepSpec> steps = new ArrayList<>();
    steps.add(new StepSpec("take off " + name, step.region(), etch, step.place()));
    steps.add(work(WorkKind.RINSE, step));
    steps.add(work(WorkKind.SAND, step));
    steps.add(work(WorkKind.ACTIVATE, step));
    steps.add(step.after(Already.reading(um - deep)));
    steps.addAll(job.steps().subList(job.steps().indexOf(step) + 1, job.steps().size()));
    return job.with(steps);
  }

  private static StepSpec work(WorkKind kind, StepSpec step) {
    return new StepSpec(kind.key(), step.region(), new StepSpec.Work(kind), step.place());
  }

  private static Recipe solutionFor(Recipe plated, RecipeLibrary recipes) {
    boolean brush = plated.how() == How.BRUSH;
    return recipes.all().stream()
        .filter(r -> r.how() == How.ETCH && r.metal() == plated.metal() && r.swabbed() == brush)
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no solution here takes "
                        + plated.metal().label()
                        + " off: scour it, activate, and plate over; or add a recipe with how: etch"));
  }

  private static StepSpec plating(Job job, String name) {
    List<StepSpec> plates =
        job.steps().stream()
            .filter(s -> s.doing() instanceof StepSpec.Plate p && p.recipe().how() != How.ETCH)
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
                        + "' plates nothing in "
                        + job.name()
                        + NearestWord.of(name, names)
                            .map(near -> ", did you mean '" + near + "'?")
                            .orElse("; these do: " + String.join(", ", names))));
  }
}
