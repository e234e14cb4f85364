package org.amperskin.film;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/**
 * A stencil for a cutting plotter, made from the same layout as the film.
 *
 * <p>Definition: closed outlines of what stays on the part, overlapping shapes united; a
 * rectangular weeding border around the film's outline; in the margin between them two orientation
 * marks, a triangle that points to the top and a square at the left end of the top. Stencil
 * millimetres count from the lower left corner of the weeding border.
 *
 * <p>The main piece is the one with the largest box; every other piece is an island, which comes
 * off alone unless transfer tape or a bridge holds it.
 *
 * <p>Guaranteed: without bridges the enclosed area is the layout's covered area; with bridges
 * {@link #bridgedAreaMm2} tells what they add.
 *
 * @param layout the film
 * @param options how it is cut
 * @param covered what stays on the part, bridges included
 * @param border the weeding border
 * @param marks orientation marks
 * @param islands pieces that do not hang on the main piece, before bridging, smallest first
 * @param bridges how many bridges were added
 * @param loose how many islands are left loose: all without bridges, else those that no straight
 *     way within the outline reaches
 * @param bridgedAreaMm2 area of openings that bridges take (mm2)
 * @param openAreaMm2 area of the openings within the film's outline that are left (mm2)
 * @param narrowLines where what stays is narrower than a blade cuts, narrowest first
 * @param narrowSpaces where openings are narrower, narrowest first
 */
public record Stencil(
    FilmLayout layout,
    StencilOptions options,
    Outline covered,
    Outline border,
    Outline marks,
    List<Island> islands,
    int bridges,
    int loose,
    double bridgedAreaMm2,
    double openAreaMm2,
    List<Narrow> narrowLines,
    List<Narrow> narrowSpaces) {
  private static final double MARK_MM = 3;

  /** Copies the lists. */
  public Stencil {
    islands = List.copyOf(islands);
    narrowLines = List.copyOf(narrowLines);
    narrowSpaces = List.copyOf(narrowSpaces);
  }

  /**
   * A piece that does not hang on the main one.
   *
   * @param areaMm2 its area (mm2)
   * @param xMm a point in it (stencil mm)
   * @param yMm its other coordinate (stencil mm)
   */
  public record Island(double areaMm2, double xMm, double yMm) {}

  /**
   * A place narrower than a blade cuts.
   *
   * @param widthMm width there (mm)
   * @param xMm a point in it (stencil mm)
   * @param yMm its other coordinate (stencil mm)
   */
  public record Narrow(double widthMm, double xMm, double yMm) {}

  /**
   * Makes the stencil of a layout.
   *
   * @throws IllegalArgumentException if nothing is covered, or islands cannot be bridged
   */
  public static Stencil of(FilmLayout layout, StencilOptions options) {
    Extent film = layout.outline().extent();
    double dx = options.borderMm() - film.minX();
    double dy = options.borderMm() - film.minY();
    Outline drawn = layout.covered();
    if (drawn.isEmpty()) {
      throw new IllegalArgumentException(
          "film " + layout.name() + " covers 0 mm2: there is nothing to cut");
    }
    double about = film.centreX();
    Outline placed = (options.mirror() ? drawn.mirrored(about) : drawn).moved(1, 1, dx, dy);
    Outline outline =
        (options.mirror() ? layout.outline().mirrored(about) : layout.outline())
            .moved(1, 1, dx, dy);
    Extent border =
        new Extent(
            0, 0, film.width() + 2 * options.borderMm(), film.height() + 2 * options.borderMm());
    // united once more: pieces that only touch in a point are apart for the blade
    Geometry figure = placed.geometry();
    List<Polygon> pieces = Polygonal.polygons(figure);
    int main = main(pieces);
    List<Island> islands = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      if (i != main) {
        Point inside = pieces.get(i).getInteriorPoint();
        islands.add(new Island(pieces.get(i).getArea(), inside.getX(), inside.getY()));
      }
    }
    islands.sort(
        Comparator.comparingDouble(Island::areaMm2)
            .thenComparingDouble(Island::xMm)
            .thenComparingDouble(Island::yMm));
    Outline covered = placed;
    int bridges = 0;
    int loose = islands.size();
    if (options.bridgeMm() > 0 && !islands.isEmpty()) {
      List<Bridges.Bridge> ways = Bridges.between(pieces, main, options.bridgeMm());
      bridges = ways.size();
      figure = Bridges.with(figure, ways, options.bridgeMm(), outline.geometry());
      covered = Polygonal.outline(figure);
      loose = Polygonal.polygons(figure).size() - 1;
    }
    Geometry spaces = Outline.box(border).geometry().difference(figure);
    return new Stencil(
        layout,
        options,
        covered,
        Outline.box(border),
        marks(border, options),
        islands,
        bridges,
        loose,
        covered.areaMm2() - placed.areaMm2(),
        outline.areaMm2() - covered.and(outline).areaMm2(),
        narrow(figure, options.leastMm()),
        narrow(spaces, options.leastMm()));
  }

  private static int main(List<Polygon> pieces) {
    int main = 0;
    for (int i = 1; i < pieces.size(); i++) {
      if (pieces.get(i).getEnvelope().getArea() > pieces.get(main).getEnvelope().getArea()) {
        main = i;
      }
    }
    return main;
  }

  private static List<Narrow> narrow(Geometry figure, double leastMm) {
    return NarrowPlaces.of(figure, leastMm).stream()
        .map(p -> new Narrow(p.widthMm(), p.xMm(), p.yMm()))
        .toList();
  }

  private static Outline marks(Extent border, StencilOptions options) {
    double middle = border.centreX();
    double low = border.maxY() - (options.borderMm() + MARK_MM) / 2;
    double left = (options.borderMm() - MARK_MM) / 2;
    double x = options.mirror() ? border.maxX() - left - MARK_MM : left;
    return Outline.of(
        List.of(
            new double[] {
              middle - MARK_MM / 2, low, middle + MARK_MM / 2, low, middle, low + MARK_MM
            },
            Marks.bar(x, low, x + MARK_MM, low + MARK_MM)));
  }

  /** Length the blade travels cutting (mm). */
  public double cutLengthMm() {
    return covered.lengthMm() + border.lengthMm() + marks.lengthMm();
  }

  /** Number of closed lines the blade cuts. */
  public int cuts() {
    return covered.rings().size() + border.rings().size() + marks.rings().size();
  }
}
