package org.amperskin.film;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.amperskin.pattern.LineWidths;
import org.amperskin.region.FaceField;
import org.amperskin.region.LaidFilm;
import org.amperskin.region.MaskKind;
import org.amperskin.region.RegionKind;
import org.amperskin.region.SplitMesh;

/** Follows the samples of an artwork's edges onto the skin and tells what becomes of each. */
final class LineFates {
  private static final int MOST_PLACES = 5;

  private final FilmCheck check;
  private final LaidFilm laid;
  private final PieceFinder finder;
  private final LineWidths widths;
  private final double scale;
  private final double placeMm;
  private final Side line = new Side();
  private final Side space = new Side();

  /** What is gathered for lines, or for spaces. */
  private static final class Side {
    private double outline;
    private double vanishing;
    private double risk;
    private Feature smallest;
    private Feature worst;
    private final Map<Long, Fates.Place> places = new LinkedHashMap<>();

    /** Doomed samples: x, y, reach, fate (2 or 1), four numbers each. */
    private final List<double[]> doomed = new ArrayList<>();

    private double reach;

    Fates fates() {
      List<Fates.Place> sorted = new ArrayList<>(places.values());
      sorted.sort(Comparator.comparingDouble(p -> -p.lengthMm()));
      return new Fates(
          outline,
          vanishing,
          risk,
          Optional.ofNullable(smallest),
          Optional.ofNullable(worst),
          sorted.subList(0, Math.min(MOST_PLACES, sorted.size())));
    }
  }

  LineFates(FilmCheck check, PieceFinder finder, LineWidths widths) {
    this.check = check;
    this.laid = check.laid();
    this.finder = finder;
    this.widths = widths;
    this.scale = laid.film().placement().scale();
    double across = laid.film().artwork().widthMm() * laid.film().placement().columns();
    double up = laid.film().artwork().heightMm() * laid.film().placement().rows();
    this.placeMm = Math.max(across, up) / 8;
    double[] w = new double[3];
    for (int i = 0; i < widths.count(); i++) {
      int f = finder.at(widths.x(i), widths.y(i), w);
      if (f >= 0) {
        sample(i, f, w);
      }
    }
  }

  private void sample(int i, int f, double[] w) {
    double gap = w[0] * laid.gapMm(f, 0) + w[1] * laid.gapMm(f, 1) + w[2] * laid.gapMm(f, 2);
    double skin = laid.widthOnSkin(f, widths.normalX(i), widths.normalY(i));
    side(line, widths.lineMm(i), widths.lineTapers(i), i, f, w, gap, skin);
    side(space, widths.spaceMm(i), widths.spaceTapers(i), i, f, w, gap, skin);
  }

  /**
   * One side of an edge.
   *
   * @param tapers true at a sharp tip, which is told in what vanishes, not as the smallest
   * @param skin millimetres on the skin, square to the edge, of one millimetre of film
   */
  private void side(
      Side side,
      double artworkMm,
      boolean tapers,
      int i,
      int f,
      double[] w,
      double gap,
      double skin) {
    double length = widths.lengthMm(i) * scale;
    side.outline += length;
    if (Double.isNaN(artworkMm)) {
      return;
    }
    Feature found =
        new Feature(
            artworkMm * scale,
            artworkMm * scale * skin,
            check.stock().edgeShiftMm(gap, check.light()) * skin,
            Light.diffractionMm(gap, check.resist().thicknessMm()) * skin,
            gap,
            finder.point(f, w),
            widths.x(i),
            widths.y(i),
            widths.ring(i));
    if (!tapers) {
      if (side.smallest == null || found.skinMm() < side.smallest.skinMm()) {
        side.smallest = found;
      }
      side.worst = worse(side.worst, found);
    }
    if (found.fate() == Feature.Fate.HOLDS) {
      return;
    }
    boolean gone = found.fate() == Feature.Fate.VANISHES;
    if (gone) {
      side.vanishing += length;
      long column = (long) Math.floor(widths.x(i) / placeMm);
      long row = (long) Math.floor(widths.y(i) / placeMm);
      side.places.merge(
          column * 1_000_003 + row,
          new Fates.Place(found, length),
          (a, b) ->
              new Fates.Place(worse(a.narrowest(), b.narrowest()), a.lengthMm() + b.lengthMm()));
    } else {
      side.risk += length;
    }
    double reach = Math.hypot(artworkMm / 2, widths.spacingMm() / 2) * 1.01;
    side.reach = Math.max(side.reach, reach);
    side.doomed.add(new double[] {widths.x(i), widths.y(i), reach, gone ? 2 : 1});
  }

  private static Feature worse(Feature a, Feature b) {
    return a == null || b.leftOnFilmMm() < a.leftOnFilmMm() ? b : a;
  }

  Fates lines() {
    return line.fates();
  }

  Fates spaces() {
    return space.fates();
  }

  /** The fate of each piece of the split mesh, by the doomed samples beside its middle. */
  FaceField field() {
    SplitMesh split = check.region().split();
    boolean positive = laid.film().kind() == MaskKind.POSITIVE_RESIST;
    RegionKind dark = positive ? RegionKind.MASKED : RegionKind.EXPOSED;
    RegionKind bright = positive ? RegionKind.EXPOSED : RegionKind.MASKED;
    Near lines = new Near(line);
    Near spaces = new Near(space);
    SkinToSheet sheet = new SkinToSheet(laid);
    double[] values = new double[split.mesh().faceCount()];
    double[] xy = new double[2];
    for (int f = 0; f < values.length; f++) {
      RegionKind kind = split.kind(f);
      boolean decided = kind == dark || kind == bright;
      if (decided && sheet.middle(split, f, xy)) {
        values[f] = (kind == dark ? lines : spaces).fate(xy[0], xy[1]);
      } else {
        values[f] = Double.NaN;
      }
    }
    return FaceField.of(split.mesh(), "lines and spaces", "", values);
  }

  /** Doomed samples sorted into cells. */
  private static final class Near {
    private final double cell;
    private final Map<Long, List<double[]>> cells = new HashMap<>();

    Near(Side side) {
      cell = Math.max(side.reach, 1e-9);
      for (double[] d : side.doomed) {
        cells.computeIfAbsent(key(d[0], d[1], 0, 0), k -> new ArrayList<>()).add(d);
      }
    }

    private Long key(double x, double y, int dx, int dy) {
      long column = (long) Math.floor(x / cell) + dx;
      long row = (long) Math.floor(y / cell) + dy;
      return column << 32 ^ row & 0xFFFFFFFFL;
    }

    double fate(double x, double y) {
      double fate = 0;
      for (int dx = -1; dx <= 1 && fate < 2 && !cells.isEmpty(); dx++) {
        for (int dy = -1; dy <= 1 && fate < 2; dy++) {
          for (double[] d : cells.getOrDefault(key(x, y, dx, dy), List.of())) {
            if (d[3] > fate && Math.hypot(d[0] - x, d[1] - y) <= d[2]) {
              fate = d[3];
            }
          }
        }
      }
      return fate;
    }
  }
}
