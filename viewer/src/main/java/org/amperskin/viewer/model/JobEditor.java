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

  /** Of undo and redo, which no field asked for. */
  private static final Fault NOWHERE = new Fault("", "", "", "");

  private final Consumer<JobText> work;
  private final ReadOnlyBooleanWrapper unsaved = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Fault> fault = new ReadOnlyObjectWrapper<>();
  private final StringProperty active = new SimpleStringProperty("");
  private JobEdits shown;
  private JobText saved;
  private History history = History.NONE;

  /** What is being worked out, with the history that will then hold and who hears a refusal. */
  private Change wanted;

  /** Where the film stood when its nudges began, and how far they have gone. */
  private FilmHandles nudged;

  private double across;
  private double upward;

  /** Texts to go back to and forward to, the nearest last. */
  private record History(List<JobText> past, List<JobText> future) {
    private static final History NONE = new History(List.of(), List.of());

    private static <T> List<T> with(List<T> list, T last) {
      List<T> longer = new ArrayList<>(list);
      longer.add(last);
      return List.copyOf(longer);
    }

    private static <T> List<T> withoutLast(List<T> list) {
      return List.copyOf(list.subList(0, list.size() - 1));
    }
  }

  private record Change(JobText text, History then, Fault ifRefused) {}

  JobEditor(Consumer<JobText> work) {
    this.work = work;
  }

  /** A file was opened: nothing is changed yet. */
  void opened(LoadedPart part) {
    history = History.NONE;
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
    history = wanted.then();
    wanted = null;
    nudged = null;
    fault.set(null);
    tellUnsaved();
  }

  /** The wanted change was refused; the job stays as it is shown. */
  void refused(ProblemException why) {
    Fault f = wanted.ifRefused();
    wanted = null;
    nudged = null;
    fault.set(new Fault(f.film(), f.key(), f.text(), why.what()));
    tellUnsaved();
  }

  /** The work was given up. */
  void cancelled() {
    if (wanted != null) {
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
    Optional<String> centre = nudged.centreMovedBy(across + byAcross, upward + byUpward);
    if (centre.isEmpty()) {
      fault.set(
          new Fault(film, "centre", "", "no skin lies behind the film there; it stays as it is"));
      return;
    }
    across += byAcross;
    upward += byUpward;
    change(film, "centre", centre.get());
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
    return wanted != null ? wanted.text() : shown.text();
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
    // several changes before one is worked out are one step back
    History then = new History(History.with(history.past(), shown.text()), List.of());
    want(new Change(next, then, new Fault(film, key, text, "")));
  }

  private void want(Change next) {
    wanted = next;
    tellUnsaved();
    work.accept(next.text());
  }

  /** Takes the last change back. */
  public void undo() {
    List<JobText> past = history.past();
    if (!past.isEmpty() && !working()) {
      History then =
          new History(History.withoutLast(past), History.with(history.future(), shown.text()));
      want(new Change(past.get(past.size() - 1), then, NOWHERE));
    }
  }

  /** Makes the change that was taken back. */
  public void redo() {
    List<JobText> future = history.future();
    if (!future.isEmpty() && !working()) {
      History then =
          new History(History.with(history.past(), shown.text()), History.withoutLast(future));
      want(new Change(future.get(future.size() - 1), then, NOWHERE));
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
