package org.amperskin.film;

import java.util.List;

/**
 * A film as it goes on paper: mirrored if need be.
 *
 * @param black what is filled
 * @param cutLine the line beside the cut outline
 * @param flaps strips to glue
 * @param flapLines lines inside the flaps
 * @param extent all of it, flaps and lines included
 */
record PrintedFilm(
    Outline black, Outline cutLine, List<Flap> flaps, List<Outline> flapLines, Extent extent) {
  static PrintedFilm of(FilmLayout layout, boolean mirror) {
    double about = layout.outline().extent().centreX();
    Outline black = mirror ? layout.black().mirrored(about) : layout.black();
    Outline outline = mirror ? layout.outline().mirrored(about) : layout.outline();
    List<Flap> flaps = layout.flaps().stream().map(f -> mirror ? f.mirrored(about) : f).toList();
    Outline cutLine = Marks.beside(outline);
    Outline inked = outline.or(cutLine);
    List<Outline> flapLines =
        flaps.stream().map(f -> Marks.inside(f.outline()).minus(inked)).toList();
    Extent extent = outline.extent();
    for (Flap flap : flaps) {
      extent = extent.with(flap.outline().extent());
    }
    return new PrintedFilm(black, cutLine, flaps, flapLines, extent.grown(Marks.LINE_MM));
  }
}
