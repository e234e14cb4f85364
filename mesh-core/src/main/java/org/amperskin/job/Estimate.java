package org.amperskin.job;

import java.util.List;
import java.util.Map;
import org.amperskin.plating.PartInBath;
import org.amperskin.plating.Plan;
import org.amperskin.region.Region;

/**
 * All that was worked out for a job.
 *
 * @param job what was asked
 * @param part the part as measured
 * @param regions every region of the job by name, the whole skin first
 * @param films every film that light passes, with what is known of its print
 * @param artworkNotes what was assumed or skipped in the drawings
 * @param plan the steps
 * @param inBath what the part as a body asks of the tank
 * @param warnings what concerns the job as a whole
 */
public record Estimate(
    Job job,
    MeasuredPart part,
    Map<String, Region> regions,
    List<CheckedFilm> films,
    List<String> artworkNotes,
    Plan plan,
    PartInBath inBath,
    List<String> warnings) {
  /** True if some step has no figure. */
  public boolean refused() {
    return plan.steps().stream().anyMatch(s -> s.refused());
  }
}
