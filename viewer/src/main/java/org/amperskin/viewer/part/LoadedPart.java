package org.amperskin.viewer.part;

import java.util.List;
import java.util.Optional;
import org.amperskin.plating.Schedule;

/**
 * Everything the viewer shows of one file.
 *
 * @param title name shown above the part
 * @param surfaces the part under each mask of the job; the first is shown for the part itself
 * @param partRows figures of the whole part
 * @param steps the job in working order; empty for a mere print file
 * @param problems faults of the file or the job, each with a place
 * @param edits what may be changed; empty for a mere print file
 * @param schedule when the steps happen; empty for a mere print file
 */
public record LoadedPart(
    String title,
    List<PaintedSurface> surfaces,
    List<FigureRow> partRows,
    List<StepCard> steps,
    List<String> problems,
    Optional<JobEdits> edits,
    Optional<Schedule> schedule) {
  /** A part of which nothing can be changed. */
  public LoadedPart(
      String title,
      List<PaintedSurface> surfaces,
      List<FigureRow> partRows,
      List<StepCard> steps,
      List<String> problems) {
    this(title, surfaces, partRows, steps, problems, Optional.empty(), Optional.empty());
  }

  /** Copies the lists; every step's surface must be there. */
  public LoadedPart {
    surfaces = List.copyOf(surfaces);
    partRows = List.copyOf(partRows);
    steps = List.copyOf(steps);
    problems = List.copyOf(problems);
    if (surfaces.isEmpty()) {
      throw new IllegalArgumentException("part " + title + " has 0 surfaces");
    }
    for (StepCard step : steps) {
      if (step.surface() < 0 || step.surface() >= surfaces.size()) {
        throw new IllegalArgumentException(
            "step "
                + step.name()
                + " works on surface "
                + step.surface()
                + " of "
                + surfaces.size());
      }
    }
  }
}
