package org.amperskin.film;

import java.util.List;
import java.util.Optional;

/**
 * What is written on every sheet of a film.
 *
 * @param job name of the job
 * @param part name of the part
 * @param polarity what becomes of black and of clear
 * @param lying how the film lies on the part
 * @param cautions what can hurt in working with it; never left out
 * @param date as the user gave it
 */
public record SheetWords(
    String job,
    String part,
    String polarity,
    String lying,
    List<String> cautions,
    Optional<String> date) {
  /** Copies the list and refuses sheets without a caution. */
  public SheetWords {
    cautions = List.copyOf(cautions);
    if (cautions.isEmpty()) {
      throw new IllegalArgumentException("0 cautions for the sheets of job " + job);
    }
  }
}
