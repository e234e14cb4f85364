package org.amperskin.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.amperskin.film.Fates;
import org.amperskin.film.Feature;
import org.amperskin.film.FilmCheck;
import org.amperskin.plating.StepEstimate;
import org.amperskin.region.MaskKind;
import org.amperskin.region.Region;
import org.amperskin.region.RegionKind;

/**
 * Jobs side by side.
 *
 * @param jobs the jobs, in the order asked
 * @param rows their figures, one row a quantity
 */
public record Comparison(List<Estimate> jobs, List<Row> rows) {
  /**
   * One quantity of all jobs.
   *
   * @param label what it is
   * @param unit its unit, 1 for a fraction
   * @param pattern whether it is a figure of the films' pattern
   * @param values one a job, empty where a job has none
   */
  public record Row(String label, String unit, boolean pattern, List<OptionalDouble> values) {
    /** Largest less smallest value, empty unless two jobs have one. */
    public OptionalDouble spread() {
      double[] known =
          values.stream()
              .filter(OptionalDouble::isPresent)
              .mapToDouble(v -> v.getAsDouble())
              .toArray();
      if (known.length < 2) {
        return OptionalDouble.empty();
      }
      return OptionalDouble.of(
          java.util.Arrays.stream(known).max().getAsDouble()
              - java.util.Arrays.stream(known).min().getAsDouble());
    }
  }

  /** Sets jobs side by side; steps are matched by their names. */
  public static Comparison of(List<Estimate> jobs) {
    List<Row> rows = new ArrayList<>();
    add(rows, jobs, "skin", "mm2", e -> OptionalDouble.of(e.part().skin().areaMm2()));
    pattern(rows, jobs, "exposed by film", "mm2", e -> film(e, false, kind(RegionKind.EXPOSED)));
    pattern(rows, jobs, "stopped off", "mm2", e -> film(e, true, kind(RegionKind.STOPPED_OFF)));
    pattern(rows, jobs, "open fraction under film", "1", Comparison::openFraction);
    pattern(rows, jobs, "pattern edge length", "mm", e -> film(e, false, Region::edgeLengthMm));
    pattern(rows, jobs, "smallest line", "mm", e -> narrowest(e, FilmCheck::lines));
    pattern(rows, jobs, "smallest space", "mm", e -> narrowest(e, FilmCheck::spaces));
    pattern(rows, jobs, "outline of lines that vanish", "1", e -> vanishing(e, FilmCheck::lines));
    pattern(rows, jobs, "outline of spaces that vanish", "1", e -> vanishing(e, FilmCheck::spaces));
    Map<String, String> steps = new LinkedHashMap<>();
    for (Estimate e : jobs) {
      for (StepEstimate s : e.plan().steps()) {
        if (s.recipe().isPresent()) {
          steps.putIfAbsent(s.name(), s.name());
        }
      }
    }
    for (String name : steps.keySet()) {
      add(rows, jobs, name + ": current", "A", e -> step(e, name, StepEstimate::currentA));
      add(rows, jobs, name + ": time", "s", e -> step(e, name, StepEstimate::timeS));
      add(rows, jobs, name + ": charge", "A.h", e -> step(e, name, StepEstimate::chargeAh));
      add(rows, jobs, name + ": metal", "g", e -> step(e, name, StepEstimate::massG));
    }
    add(rows, jobs, "all plating time", "s", e -> OptionalDouble.of(e.plan().timeS()));
    add(rows, jobs, "all work and waits", "s", Comparison::elapsed);
    return new Comparison(List.copyOf(jobs), List.copyOf(rows));
  }

  /** With a quantity more, such as what they cost. */
  public Comparison and(Row row) {
    List<Row> more = new ArrayList<>(rows);
    keep(more, row);
    return new Comparison(jobs, List.copyOf(more));
  }

  private static void add(
      List<Row> rows,
      List<Estimate> jobs,
      String label,
      String unit,
      Function<Estimate, OptionalDouble> value) {
    keep(rows, new Row(label, unit, false, jobs.stream().map(value).toList()));
  }

  private static void pattern(
      List<Row> rows,
      List<Estimate> jobs,
      String label,
      String unit,
      Function<Estimate, OptionalDouble> value) {
    keep(rows, new Row(label, unit, true, jobs.stream().map(value).toList()));
  }

  private static void keep(List<Row> rows, Row row) {
    if (row.values().stream().anyMatch(OptionalDouble::isPresent)) {
      rows.add(row);
    }
  }

  private static OptionalDouble elapsed(Estimate e) {
    double s = e.plan().schedule().elapsedS();
    return s > 0 ? OptionalDouble.of(s) : OptionalDouble.empty();
  }

  private static OptionalDouble openFraction(Estimate e) {
    double open = film(e, false, kind(RegionKind.EXPOSED)).orElse(0);
    double crossed = open + film(e, false, kind(RegionKind.MASKED)).orElse(0);
    return crossed > 0 ? OptionalDouble.of(open / crossed) : OptionalDouble.empty();
  }

  /** Sum over the films of one sort, each counted by itself; empty if the job has none. */
  private static OptionalDouble film(Estimate e, boolean stopOff, ToDoubleFunction<Region> figure) {
    double sum = 0;
    int films = 0;
    for (Map.Entry<String, Job.FilmSpec> film : e.job().films().entrySet()) {
      if (film.getValue().kind() == MaskKind.STOP_OFF == stopOff) {
        sum += figure.applyAsDouble(e.regions().get(film.getKey()));
        films++;
      }
    }
    return films == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum);
  }

  /** Narrowest of all films on the skin (mm), empty if nothing was measured. */
  private static OptionalDouble narrowest(Estimate e, Function<FilmCheck, Fates> fates) {
    return e.films().stream()
        .map(f -> fates.apply(f.check()).smallest())
        .flatMap(Optional::stream)
        .mapToDouble(Feature::skinMm)
        .min();
  }

  /** Share of the outline that is lost, of all films together; empty without a film for light. */
  private static OptionalDouble vanishing(Estimate e, Function<FilmCheck, Fates> fates) {
    double outline = 0;
    double lost = 0;
    for (CheckedFilm film : e.films()) {
      outline += fates.apply(film.check()).outlineMm();
      lost += fates.apply(film.check()).vanishingMm();
    }
    return outline > 0 ? OptionalDouble.of(lost / outline) : OptionalDouble.empty();
  }

  private static ToDoubleFunction<Region> kind(RegionKind kind) {
    return r -> r.split().areaMm2(kind);
  }

  private static OptionalDouble step(
      Estimate e, String name, Function<StepEstimate, OptionalDouble> figure) {
    return e.plan().steps().stream()
        .filter(s -> s.name().equals(name))
        .map(figure)
        .findFirst()
        .orElse(OptionalDouble.empty());
  }
}
