package org.amperskin.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.plating.FigureKey;
import org.amperskin.plating.How;
import org.amperskin.plating.Rack;
import org.amperskin.plating.Recipe;
import org.amperskin.units.Unit;
import org.amperskin.yaml.Place;
import org.amperskin.yaml.YamlFault;

/**
 * Parts of several jobs in one tank: which step of each, and at which density.
 *
 * @param recipe the bath
 * @param densityADm2 the density of all (A/dm2)
 * @param toldADm2 densities that jobs asked for and do not get, by job (A/dm2)
 * @param rack how they share
 * @param warnings what does not fit, with numbers and a remedy
 */
public record RackJobs(
    Recipe recipe,
    double densityADm2,
    Map<String, Double> toldADm2,
    Rack rack,
    List<String> warnings) {

  private static final Unit A_PER_DM2 = Unit.of("A/dm2");

  /** Works one job out. */
  @FunctionalInterface
  public interface Worker {
    /** The estimate of a job. */
    Estimate of(Job job) throws Exception;
  }

  /** A job and the step that is to hang. */
  private record Hanging(Job job, StepSpec step, StepSpec.Plate plate) {
    double densityAm2() {
      return plate
          .settings()
          .density()
          .orElse(plate.recipe().figure(FigureKey.DENSITY).orElseThrow().typicalSi());
    }
  }

  /**
   * Hangs the jobs' parts together.
   *
   * @param jobs a job for each part; the same job twice is two parts
   * @param stepName name of the step, else the first tank step of the first job and its bath
   * @param worker works a job out
   */
  public static RackJobs of(List<Job> jobs, Optional<String> stepName, Worker worker)
      throws Exception {
    Recipe recipe = null;
    List<Hanging> hanging = new ArrayList<>();
    for (Job job : jobs) {
      Hanging found = pick(job, stepName, Optional.ofNullable(recipe));
      recipe = found.plate().recipe();
      hanging.add(found);
    }
    double density = hanging.stream().mapToDouble(Hanging::densityAm2).min().orElseThrow();
    Map<Job, Estimate> worked = new HashMap<>();
    Map<String, Integer> seen = new HashMap<>();
    Map<String, Double> told = new LinkedHashMap<>();
    List<Rack.Hung> parts = new ArrayList<>();
    for (Hanging h : hanging) {
      Estimate e = worked.get(h.job());
      if (e == null) {
        e = worker.of(h.job().alone(h.step().at(density)));
        worked.put(h.job(), e);
      }
      var step = e.plan().steps().get(0);
      if (step.refused()) {
        throw new YamlFault(h.step().place(), step.refusal().orElseThrow());
      }
      int nth = seen.merge(h.job().name(), 1, Integer::sum);
      parts.add(Rack.Hung.of(h.job().name() + (nth == 1 ? "" : " " + nth), step));
      if (h.densityAm2() > density * (1 + 1e-9)) {
        told.put(h.job().name(), h.densityAm2() / 100);
      }
    }
    Rack rack = Rack.of(recipe, parts, bathL(jobs));
    List<String> warnings = new ArrayList<>(rack.warnings());
    double least = recipe.figure(FigureKey.DENSITY).orElseThrow().window(A_PER_DM2).low();
    jobs.stream()
        .map(j -> j.supply().currentA())
        .filter(OptionalDouble::isPresent)
        .findFirst()
        .flatMap(a -> rack.shortOf(a.getAsDouble(), least))
        .ifPresent(warnings::add);
    return new RackJobs(recipe, density / 100, told, rack, List.copyOf(warnings));
  }

  private static OptionalDouble bathL(List<Job> jobs) {
    return jobs.stream()
        .map(j -> j.tank().volumeM3())
        .filter(OptionalDouble::isPresent)
        .mapToDouble(v -> 1000 * v.getAsDouble())
        .findFirst();
  }

  private static Hanging pick(Job job, Optional<String> name, Optional<Recipe> bath)
      throws YamlFault {
    for (StepSpec step : job.steps()) {
      if (step.doing() instanceof StepSpec.Plate plate
          && plate.recipe().how() == How.TANK
          && plate.target().isPresent()
          && name.map(step.name()::equals).orElse(true)
          && bath.map(b -> b.id().equals(plate.recipe().id())).orElse(true)) {
        return new Hanging(job, step, plate);
      }
    }
    String wanted =
        "a tank step"
            + name.map(n -> " named '" + n + "'").orElse("")
            + bath.map(b -> " in " + b.id()).orElse("");
    String has =
        job.steps().stream()
            .filter(s -> s.doing() instanceof StepSpec.Plate p && p.recipe().how() == How.TANK)
            .map(s -> "'" + s.name() + "' in " + ((StepSpec.Plate) s.doing()).recipe().id())
            .reduce((a, b) -> a + ", " + b)
            .map(all -> "; it has " + all)
            .orElse("; it has none in a tank");
    throw new YamlFault(
        job.part().place().orElse(new Place(job.name(), 1, 1)),
        "job " + job.name() + " has not " + wanted + has);
  }
}
