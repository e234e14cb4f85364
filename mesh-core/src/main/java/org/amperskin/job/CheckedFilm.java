package org.amperskin.job;

import java.util.List;
import java.util.Optional;
import org.amperskin.film.FilmAdvice;
import org.amperskin.film.FilmCheck;
import org.amperskin.film.FilmStock;
import org.amperskin.film.Light;
import org.amperskin.film.Resist;
import org.amperskin.region.FilmForm;
import org.amperskin.region.MaskKind;
import org.amperskin.region.OpenFractionMap;
import org.amperskin.region.Region;

/**
 * A film of a job with what is known of its print and its pattern.
 *
 * @param check whether it will print and develop
 * @param open the local open fraction; empty if nothing is crossed
 * @param warnings what will go wrong, with what helps
 * @param assumed what was not told
 */
public record CheckedFilm(
    FilmCheck check, Optional<OpenFractionMap> open, List<String> warnings, List<String> assumed) {
  /** Copies the lists. */
  public CheckedFilm {
    warnings = List.copyOf(warnings);
    assumed = List.copyOf(assumed);
  }

  /**
   * Checks the only film of a region.
   *
   * @param assumed what was not told
   * @return nothing for a stop-off, which no light passes
   * @throws IllegalArgumentException if the film lights nothing
   */
  public static Optional<CheckedFilm> of(
      Region region, Light light, FilmStock stock, Resist resist, List<String> assumed) {
    if (region.laid().size() != 1 || region.laid().get(0).film().kind() == MaskKind.STOP_OFF) {
      return Optional.empty();
    }
    FilmCheck check = FilmCheck.of(region, 0, light, stock, resist);
    Optional<OpenFractionMap> open =
        region.traversedAreaMm2() > 0
            ? Optional.of(OpenFractionMap.of(region, windowMm(region)))
            : Optional.empty();
    return Optional.of(new CheckedFilm(check, open, FilmAdvice.of(check), assumed));
  }

  /** The usual window, larger on parts where it would be lost. */
  private static double windowMm(Region region) {
    return Math.max(OpenFractionMap.USUAL_RADIUS_MM, Math.sqrt(region.traversedAreaMm2()) / 400);
  }

  /** What the job calls the film. */
  public String name() {
    return check.laid().film().name();
  }

  /** How it lies, in one word. */
  public String lies() {
    FilmForm form = check.laid().form();
    if (form instanceof FilmForm.Plane) {
      return "flat";
    }
    return form instanceof FilmForm.Bent ? "wrapped" : "draped";
  }
}
