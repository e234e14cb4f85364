package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.amperskin.film.FilmLayout;
import org.amperskin.film.LaidLayout;
import org.amperskin.film.SheetWords;
import org.amperskin.film.StepTest;
import org.amperskin.geom.Vec3;
import org.amperskin.plating.Caution;
import org.amperskin.plating.Hazard;
import org.amperskin.plating.How;
import org.amperskin.plating.Mark;
import org.amperskin.plating.Note;
import org.amperskin.plating.WorkKind;
import org.amperskin.region.FilmForm;
import org.amperskin.region.FlatPlacement;
import org.amperskin.region.LaidFilm;
import org.amperskin.region.MaskKind;
import org.amperskin.units.NearestWord;
import org.amperskin.unroll.Cone;

/**
 * A film of a job, laid out, with what its steps make of black and clear.
 *
 * @param layout the film in the plane
 * @param under what stays where the part is covered
 * @param over what becomes of the part where it is bare, with its verb
 * @param lying how it lies on the part, in a sentence
 */
public record JobFilm(FilmLayout layout, String under, String over, String lying) {
  private static final String UNTOLD = "";
  private static final String PRACTICE = "common practice, no source";

  /**
   * The films of a worked-out job.
   *
   * @param name one of them, a stop-off too; empty for all films that light goes through
   * @throws IllegalArgumentException if there is none, or none of that name
   */
  public static List<JobFilm> of(Estimate estimate, Optional<String> name) {
    Job job = estimate.job();
    if (job.films().isEmpty()) {
      throw new IllegalArgumentException("job " + job.name() + " has 0 films");
    }
    if (name.isPresent() && !job.films().containsKey(name.get())) {
      throw new IllegalArgumentException(
          "film '"
              + name.get()
              + "' is not in job "
              + job.name()
              + NearestWord.of(name.get(), job.films().keySet())
                  .map(near -> ", did you mean '" + near + "'?")
                  .orElse("; there are " + job.films().keySet()));
    }
    List<JobFilm> films = new ArrayList<>();
    for (String film : job.films().keySet()) {
      boolean wanted =
          name.map(film::equals).orElse(job.films().get(film).kind() != MaskKind.STOP_OFF);
      if (wanted) {
        films.add(of(estimate, film));
      }
    }
    if (films.isEmpty()) {
      throw new IllegalArgumentException(
          "job "
              + job.name()
              + " has 0 films for light, only the stop-offs "
              + job.films().keySet()
              + ": name one, or cut it as a stencil");
    }
    return films;
  }

  private static JobFilm of(Estimate estimate, String name) {
    LaidFilm laid =
        estimate.regions().get(name).laid().stream()
            .filter(l -> l.film().name().equals(name))
            .findFirst()
            .orElseThrow();
    FilmLayout layout = LaidLayout.of(laid);
    Outcome outcome = Outcome.of(estimate.job(), name);
    return new JobFilm(layout, outcome.under, outcome.over, lying(laid));
  }

  /**
   * Strips to find a film's exposure by trial, to print instead of it.
   *
   * @throws IllegalArgumentException if light does not pass the film or lights nothing
   */
  public JobFilm testStrips(Estimate estimate) {
    String name = layout.name();
    if (layout.kind() == MaskKind.STOP_OFF) {
      throw new IllegalArgumentException(
          "film " + name + " is a stop-off, which no light passes: 0 strips to expose");
    }
    StepTest test =
        estimate.films().stream()
            .filter(f -> f.name().equals(name))
            .findFirst()
            .map(f -> StepTest.of(f.check()))
            .orElseThrow(
                () -> new IllegalArgumentException("film " + name + " lights 0 mm2: no strips"));
    return new JobFilm(test.layout(), under, over, test.method());
  }

  /** The step that works through the film, and the metal it lands on. */
  private record Outcome(String under, String over) {
    static Outcome of(Job job, String film) {
      String under = UNTOLD;
      for (StepSpec step : job.steps()) {
        boolean through =
            step.region().equals(film)
                || Optional.ofNullable(job.regions().get(step.region()))
                    .map(r -> r.films().contains(film))
                    .orElse(false);
        if (step.doing() instanceof StepSpec.Plate plate) {
          boolean off = plate.recipe().how() == How.ETCH;
          if (through) {
            return new Outcome(under, off ? "is etched" : "becomes " + step.name());
          }
          under = off ? under : step.name();
        } else if (through
            && step.doing() instanceof StepSpec.Work work
            && work.kind() == WorkKind.ETCH) {
          return new Outcome(under, "is etched");
        }
      }
      return new Outcome(UNTOLD, "is laid bare");
    }
  }

  /** What becomes of black and of clear, in a sentence. */
  public String polarity() {
    String kept = kept();
    return switch (layout.kind()) {
      case POSITIVE_RESIST -> "Positive resist: black " + kept + ", clear " + over + ".";
      case NEGATIVE_RESIST -> "Negative resist: clear " + kept + ", black " + over + ".";
      case STOP_OFF -> "Stop-off: black is covered and " + kept + ", the rest " + over + ".";
    };
  }

  private String kept() {
    return under.isEmpty() ? "stays as it is" : "stays bare " + under;
  }

  /** What becomes of covered and of cut-out places, in a sentence. */
  public String stencilPolarity() {
    return "What the stencil covers " + kept() + ", what is cut out " + over + ".";
  }

  private static String lying(LaidFilm laid) {
    if (laid.form() instanceof FilmForm.Bent bent) {
      Cone cone = bent.film();
      String where = cone.inside() ? "inside" : "round";
      return cone.isCylinder()
          ? String.format(
              Locale.ROOT, "Bent %s a cylinder of radius %.4g mm.", where, cone.radiusMm())
          : String.format(
              Locale.ROOT,
              "Bent %s a cone of half-angle %.4g deg.",
              where,
              Math.abs(cone.halfAngleDegrees()));
    }
    if (laid.form() instanceof FilmForm.Cut cut) {
      return String.format(
          Locale.ROOT,
          "Cut out and laid on the skin; it is %.3f to %.3f times as long as the skin under it.",
          cut.flat().least(),
          cut.flat().most());
    }
    FlatPlacement p = (FlatPlacement) laid.film().placement();
    return String.format(
        Locale.ROOT,
        "Lies flat before the part, light along %s, top of the film along %s.",
        shown(p.toward()),
        shown(p.up()));
  }

  private static String shown(Vec3 v) {
    double[] c = {v.x(), v.y(), v.z()};
    for (int k = 0; k < 3; k++) {
      if (Math.abs(c[k]) > 1 - 1e-12) {
        return (c[k] > 0 ? "+" : "-") + "xyz".charAt(k);
      }
    }
    return String.format(Locale.ROOT, "(%.3g, %.3g, %.3g)", c[0] + 0.0, c[1] + 0.0, c[2] + 0.0);
  }

  /** What can hurt in making and using the film. */
  public List<Caution> cautions() {
    return layout.kind() == MaskKind.STOP_OFF
        ? Caution.of(List.of(Hazard.SOLVENT))
        : Caution.of(List.of(Hazard.UV, Hazard.SOLVENT, Hazard.CAUSTIC));
  }

  /** What can hurt in cutting and using a stencil. */
  public List<Caution> stencilCautions() {
    return Caution.of(List.of(Hazard.BLADE, Hazard.SOLVENT));
  }

  /** What to print on and what to look at; rules of thumb. */
  public List<Note> advice() {
    return List.of(
        practice(
            "Clear film made for the printer; black only, highest quality, no toner saving. Thin"
                + " film (0.1 mm) bends round a part."),
        practice(
            "Hold it against a lamp: black must look even; touch up pinholes with an opaque pen."),
        practice(
            "Let the film cool for 10 min before measuring the bars: heat from a laser printer"
                + " changes its length by 0.1 to 0.5 %."),
        new Note(
            "Densities of stacked layers add: black that leaks 1 % leaks 0.01 % doubled.",
            Mark.COMPUTED, "D = -log10 of what is let through"));
  }

  private static Note practice(String text) {
    return new Note(text, Mark.COMMON, PRACTICE);
  }

  /**
   * What is written on its sheets.
   *
   * @param estimate the job
   * @param date as the user gave it
   */
  public SheetWords words(Estimate estimate, Optional<String> date) {
    return new SheetWords(
        estimate.job().name(),
        estimate.part().file().getFileName().toString(),
        polarity(),
        lying,
        cautions().stream().map(c -> c.hazard() + ": " + c.text()).toList(),
        date);
  }
}
