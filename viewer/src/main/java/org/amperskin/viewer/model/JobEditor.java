package org.amperskin.viewer.model;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.amperskin.job.FilmHandles;
import org.amperskin.job.JobText;
import org.amperskin.viewer.part.JobEdits;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.ProblemException;

/**
 * Changes to an open job: films moved, undone, redone, saved.
 *
 * <p>A change is worked out before it counts: one that cannot be leaves the job as it was and is
 * told beside its field. Changes may follow each other faster than they are worked out; the last
 * counts. Used on the user interface's thread only.
 */
public final class JobEditor {
  /**
   * A change that was refused, or a file that was not written.
   *
   * @param film its film, "" for the file
   * @param key its value's key
   * @param text what was asked for
   * @param why in words for people
   */
  public record Fault(String film, String key, String text, String why) {}

  private final Consumer<JobText> work;
  private final List<JobText> past = new ArrayList<>();
  private final List<JobText> future = new ArrayList<>();
  private final ReadOnlyBooleanWrapper unsaved = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Fault> fault = new ReadOnlyObjectWrapper<>();
  private final StringProperty active = new SimpleStringProperty("");
  private JobEdits shown;
  private JobText saved;
  private JobText wanted;
  private Fault ifRefused;

  /** Where the film stood when its nudges began, and how far they have gone. */
  private FilmHandles nudged;

  private double across;
  private double upward;

  JobEditor(Consumer<JobText> work) {
    this.work = work;
  }

  /** A file was opened: nothing is changed yet. */
  void opened(LoadedPart part) {
    past.clear();
    future.clear();
    wanted = null;
    nudged = null;
    fault.set(null);
    shown = part.edits().orElse(null);
    saved = shown == null ? null : shown.text();
    active.set(films().isEmpty() ? "" : films().get(0).film());
    unsaved.set(false);
  }

  /** The wanted change was worked out. */
  void accepted(LoadedPart part) {
    shown = part.edits().orElseThrow();
    wanted = null;
    nudged = null;
    fault.set(null);
    tellUnsaved();
  }

  /** The wanted change was refused; the job stays as it is shown. */
  void refused(ProblemException why) {
    if (wanted != null && !past.isEmpty() && past.get(past.size() - 1) == shown.text()) {
      past.remove(past.size() - 1);
    }
    wanted = null;
    nudged = null;
    Fault f = ifRefused == null ? new Fault("", "", "", "") : ifRefused;
    fault.set(new Fault(f.film(), f.key(), f.text(), why.what()));
    tellUnsaved();
  }

  /** The work was given up. */
  void cancelled() {
    if (wanted != null) {
      past.remove(shown.text());
      wanted = null;
      nudged = null;
      tellUnsaved();
    }
  }

  /** The film that the keys move: the one last touched, else the first; "" without films. */
  public StringProperty active() {
    return active;
  }

  /** Moves the active film along itself (mm). */
  public void nudge(double byAcross, double byUpward) {
    nudge(active.get(), byAcross, byUpward);
  }

  /** Turns the active film counter-clockwise (degrees). */
  public void turn(double byDegrees) {
    turn(active.get(), byDegrees);
  }

  /** True while a change is being worked out. */
  boolean working() {
    return wanted != null;
  }

  /** The films' handles as shown; none for a mere print file. */
  public List<FilmHandles> films() {
    return shown == null ? List.of() : shown.films();
  }

  /**
   * Wants another value of a film.
   *
   * @param text as it would stand in the job file, with its unit
   */
  public void set(String film, String key, String text) {
    if (shown == null || text.strip().equals(now().film(film, key).orElse(""))) {
      return;
    }
    nudged = null;
    change(film, key, text.strip());
  }

  /** Moves a film along itself (mm). */
  public void nudge(String film, double byAcross, double byUpward) {
    FilmHandles handles = handles(film);
    if (handles == null) {
      return;
    }
    if (nudged == null || !nudged.film().equals(film)) {
      nudged = handles;
      across = 0;
      upward = 0;
    }
    FilmHandles from = nudged;
    Optional<String> centre = from.centreMovedBy(across + byAcross, upward + byUpward);
    if (centre.isEmpty()) {
      fault.set(
          new Fault(film, "centre", "", "no skin lies behind the film there; it stays as it is"));
      return;
    }
    across += byAcross;
    upward += byUpward;
    double goneAcross = across;
    double goneUpward = upward;
    change(film, "centre", centre.get());
    nudged = from;
    across = goneAcross;
    upward = goneUpward;
  }

  /** Turns a film counter-clockwise (degrees). */
  public void turn(String film, double byDegrees) {
    FilmHandles handles = handles(film);
    if (handles != null && !working()) {
      change(film, "turn", handles.turnedBy(byDegrees));
    }
  }

  private FilmHandles handles(String film) {
    return films().stream().filter(h -> h.film().equals(film)).findFirst().orElse(null);
  }

  private JobText now() {
    return wanted != null ? wanted : shown.text();
  }

  private void change(String film, String key, String text) {
    fault.set(null);
    JobText next;
    try {
      next = now().withFilm(film, key, text);
    } catch (IllegalArgumentException refused) {
      fault.set(new Fault(film, key, text, refused.getMessage()));
      return;
    }
    if (wanted == null) {
      past.add(shown.text());
    }
    future.clear();
    ifRefused = new Fault(film, key, text, "");
    want(next);
  }

  private void want(JobText next) {
    wanted = next;
    tellUnsaved();
    work.accept(next);
  }

  /** Takes the last change back. */
  public void undo() {
    if (!past.isEmpty() && !working()) {
      future.add(shown.text());
      ifRefused = null;
      want(past.remove(past.size() - 1));
    }
  }

  /** Makes the change that was taken back. */
  public void redo() {
    if (!future.isEmpty() && !working()) {
      past.add(shown.text());
      ifRefused = null;
      want(future.remove(future.size() - 1));
    }
  }

  /** Writes the job as shown; false, with a fault, if that was not possible. */
  public boolean save() {
    if (shown == null || working()) {
      return false;
    }
    JobText text = shown.text();
    try {
      if (!saved.isOnDisk()) {
        throw new IOException("the file was changed by another program; open it again first");
      }
      text.save();
      saved = text;
      fault.set(null);
      tellUnsaved();
      return true;
    } catch (IOException failed) {
      fault.set(new Fault("", "", "", "Not saved: " + failed.getMessage()));
      return false;
    }
  }

  private void tellUnsaved() {
    unsaved.set(saved != null && !now().yaml().equals(saved.yaml()));
  }

  /** True while the job differs from its file. */
  public ReadOnlyBooleanProperty unsaved() {
    return unsaved.getReadOnlyProperty();
  }

  /** What was refused last, null if nothing. */
  public ReadOnlyObjectProperty<Fault> fault() {
    return fault.getReadOnlyProperty();
  }
}
