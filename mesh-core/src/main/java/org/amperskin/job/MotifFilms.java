package org.amperskin.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.amperskin.geom.Progress;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.motif.Motif;
import org.amperskin.pattern.motif.MotifDesign;
import org.amperskin.region.FilmShapes;
import org.amperskin.region.LaidFilm;
import org.amperskin.region.MaskFilm;
import org.amperskin.region.Region;
import org.amperskin.region.RegionRule;
import org.amperskin.skin.SprayReach;
import org.amperskin.yaml.YamlFault;

/**
 * Draws the motifs of a job's films, some of which depend on the part: a sheet of no given size is
 * made to cover what the film faces, and a line is solved for a wanted open share.
 */
final class MotifFilms {
  private static final Artwork BLANK = Artwork.of(1, 1, new double[0], new int[] {0}, 0, List.of());

  private final Job job;
  private final FilmShapes shapes;
  private final SprayReach paint;
  private final Progress progress;
  private final Map<String, MaskFilm> films;
  private final Map<String, OpenFit> fits = new LinkedHashMap<>();

  /**
   * @param films films made so far by name; those made here are added
   */
  MotifFilms(
      Job job,
      FilmShapes shapes,
      SprayReach paint,
      Map<String, MaskFilm> films,
      Progress progress) {
    this.job = job;
    this.shapes = shapes;
    this.paint = paint;
    this.films = films;
    this.progress = progress;
  }

  /** Makes a film once all that it depends on is there; tells notes. */
  List<String> add(String name, MaskFilm blank, Job.MotifSpec spec) throws YamlFault {
    try {
      double[] size = size(blank, spec);
      if (spec.open().isEmpty()) {
        Artwork sheet = spec.design().sheet(size[0], size[1]);
        films.put(name, with(blank, sheet));
      } else {
        OpenFit fit = fit(name, blank, spec);
        films.put(name, with(blank, fit.artwork()));
        fits.put(name, fit);
      }
      return notes(name, blank, spec, size);
    } catch (IllegalArgumentException bad) {
      throw new YamlFault(spec.place(), "film " + name + ": " + bad.getMessage());
    }
  }

  /** A film's motif on the part, its line solved if a share is wanted. */
  OpenFit fit(String name, MaskFilm blank, Job.MotifSpec spec) {
    String regionName = spec.region().orElse(name);
    Job.RegionSpec region = job.regions().get(regionName);
    for (String other : region.films()) {
      if (!other.equals(name) && !films.containsKey(other)) {
        throw new IllegalArgumentException(
            "region '"
                + regionName
                + "' has film '"
                + other
                + "' too, whose motif is not drawn yet:"
                + " only one film of a region can wait for 'open'; write it before, without 'open'");
      }
    }
    double[] size = size(blank, spec);
    Function<Artwork, OpenFit.Share> cut =
        artwork -> {
          List<MaskFilm> used = new ArrayList<>();
          for (String film : region.films()) {
            used.add(film.equals(name) ? with(blank, artwork) : films.get(film));
          }
          RegionRule rule = new RegionRule(regionName, used, region.within(), region.except());
          return OpenFit.Share.of(Region.of(rule, shapes, paint, progress));
        };
    return spec.open().isPresent()
        ? OpenFit.solve(spec.design(), size[0], size[1], spec.open().getAsDouble(), cut)
        : OpenFit.asGiven(spec.design(), size[0], size[1], cut);
  }

  /** The size told, else one in whole mm that covers all skin facing the film. */
  private double[] size(MaskFilm blank, Job.MotifSpec spec) {
    if (spec.widthMm().isPresent()) {
      return new double[] {spec.widthMm().getAsDouble(), spec.heightMm().getAsDouble()};
    }
    RegionRule rule = new RegionRule("size", List.of(blank), List.of(), List.of());
    LaidFilm laid = Region.of(rule, shapes, paint, progress).laid().get(0);
    double x = 0;
    double y = 0;
    for (int piece = 0; piece < laid.pieceCount(); piece++) {
      for (int k = 0; k < 3 && laid.faces(piece); k++) {
        x = Math.max(x, Math.abs(laid.x(piece, k)));
        y = Math.max(y, Math.abs(laid.y(piece, k)));
      }
    }
    int columns = blank.placement().columns();
    int rows = blank.placement().rows();
    return new double[] {
      Math.max(1, Math.ceil(2 * x / columns - 1e-9)), Math.max(1, Math.ceil(2 * y / rows - 1e-9))
    };
  }

  private static MaskFilm with(MaskFilm film, Artwork artwork) {
    return new MaskFilm(
        film.name(), artwork, film.placement(), film.kind(), film.surroundClear(), film.patch());
  }

  /** A film whose artwork is still to come. */
  static Artwork blank() {
    return BLANK;
  }

  private List<String> notes(String name, MaskFilm blank, Job.MotifSpec spec, double[] size) {
    List<String> notes = new ArrayList<>();
    OpenFit fit = fits.get(name);
    String made = (fit == null ? spec.design() : fit.design()).told();
    String sheet =
        "film %s: %s, on %s x %s mm"
            .formatted(name, made, MotifDesign.number(size[0]), MotifDesign.number(size[1]));
    notes.add(sheet + (spec.widthMm().isPresent() ? "" : ", made to cover what it faces"));
    if (fit != null) {
      notes.add(
          String.format(
              Locale.ROOT,
              "film %s: line %.4f mm solved so that %s %% of region %s are open; reached %.4f %%"
                  + " +- %.2g points, by %d cuts",
              name,
              fit.design().lined().lineMm(),
              MotifDesign.number(100 * spec.open().getAsDouble()),
              spec.region().orElse(name),
              100 * fit.share().open(),
              100 * fit.share().error(),
              fit.tries()));
    }
    films.get(name).artwork().notes().forEach(n -> notes.add("film " + name + ": " + n));
    boolean repeated = blank.placement().columns() * blank.placement().rows() > 1;
    if (repeated && !spec.design().seamless(size[0], size[1])) {
      String tile =
          spec.design().tile().map(MotifFilms::told).orElse("there is none at this angle");
      notes.add("film " + name + ": repeats show a seam; whole tiles would not, one tile: " + tile);
    }
    return notes;
  }

  private static String told(Motif.Tile tile) {
    return MotifDesign.number(tile.widthMm()) + " x " + MotifDesign.number(tile.heightMm()) + " mm";
  }
}
