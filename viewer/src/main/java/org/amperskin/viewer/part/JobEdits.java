package org.amperskin.viewer.part;

import java.util.List;
import org.amperskin.job.FilmHandles;
import org.amperskin.job.JobText;

/**
 * A job as it was worked out, with what of it may be changed in the viewer.
 *
 * @param text the job's text
 * @param films the films' handles
 */
public record JobEdits(JobText text, List<FilmHandles> films) {
  /** Copies the list. */
  public JobEdits {
    films = List.copyOf(films);
  }
}
