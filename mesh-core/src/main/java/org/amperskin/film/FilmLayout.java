package org.amperskin.film;

import java.util.List;
import org.amperskin.pattern.Artwork;
import org.amperskin.region.MaskKind;

/**
 * A film laid out in the plane: what goes onto a sheet, whatever way it will lie on the part.
 *
 * <p>Definition: film millimetres, seen from the side the light comes from, the film lying on the
 * part; x to the right, y up. Nothing is mirrored for printing yet.
 *
 * @param name what the job calls the film
 * @param artwork the figure as laid: scaled, turned, repeated, with all that is opaque beside the
 *     drawing; what lies off its sheet is clear
 * @param outline where the film is cut; one piece or several
 * @param flaps strips to glue, where the film closes round the part
 * @param kind what covering means
 * @param surroundClear whether light passes beside the film
 * @param notes what to know when laying it
 */
public record FilmLayout(
    String name,
    Artwork artwork,
    Outline outline,
    List<Flap> flaps,
    MaskKind kind,
    boolean surroundClear,
    List<String> notes) {
  /** Copies the lists. */
  public FilmLayout {
    flaps = List.copyOf(flaps);
    notes = List.copyOf(notes);
    if (outline.isEmpty()) {
      throw new IllegalArgumentException("film " + name + " has a cut outline of 0 rings");
    }
  }

  /** What is printed black: the artwork within the outline. */
  public Outline black() {
    Outline figure = Outline.ofArtwork(artwork);
    if (figure.isEmpty()) {
      return figure;
    }
    boolean all = outline.rings().size() == 1 && isBox() && outline.extent().holds(figure.extent());
    return all ? figure : figure.and(outline);
  }

  /** What stays covered on the part: under tape, or under resist that does not wash away. */
  public Outline covered() {
    Outline black = black();
    return kind == MaskKind.NEGATIVE_RESIST ? outline.minus(black) : black;
  }

  private boolean isBox() {
    Extent e = outline.extent();
    return Math.abs(outline.areaMm2() - e.areaMm2()) <= 1e-12 * e.areaMm2();
  }
}
