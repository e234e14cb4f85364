package org.amperskin.report;

import java.awt.Font;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.amperskin.film.Outline;
import org.amperskin.film.Sheet;
import org.amperskin.io.common.WholeFile;
import org.amperskin.picture.Typeface;

/**
 * A film sheet as SVG at true size, one file a sheet.
 *
 * <p>Definition: one user unit is 1 mm, origin at the upper left corner. Every kind of figure is a
 * group named after it; letters are outlines of the bundled face, so no font is needed.
 *
 * <p>Guaranteed: coordinates to 1e-6 mm; the same sheet gives the same bytes.
 */
public final class FilmSvg {
  private static final double GLYPH_PX = 1000;

  private FilmSvg() {}

  /**
   * Writes the sheets: to the name itself if there is one, else to {@code NAME-layer1-tile2.svg}
   * and so on beside it, the film's name included if there are several.
   *
   * @return the files written
   */
  public static List<Path> write(List<Sheet> sheets, String title, Path target) throws IOException {
    List<Path> written = new ArrayList<>();
    for (Sheet sheet : sheets) {
      Path file = file(sheets, sheet, target);
      String text = of(sheet, title);
      WholeFile.write(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
      written.add(file);
    }
    return written;
  }

  private static Path file(List<Sheet> sheets, Sheet sheet, Path target) {
    if (sheets.size() == 1) {
      return target;
    }
    String name = target.getFileName().toString().replaceFirst("(?i)\\.svg$", "");
    boolean films = sheets.stream().map(Sheet::film).distinct().count() > 1;
    boolean layers = sheets.stream().anyMatch(s -> s.layer() > 1);
    boolean tiles = sheets.stream().anyMatch(s -> s.film().equals(sheet.film()) && s.number() > 1);
    return target.resolveSibling(
        name
            + (films ? "-" + sheet.film().replaceAll("[^A-Za-z0-9_-]+", "_") : "")
            + (layers ? "-layer" + sheet.layer() : "")
            + (tiles ? "-tile" + sheet.number() : "")
            + ".svg");
  }

  /** One sheet as text. */
  static String of(Sheet sheet, String title) {
    Glyphs glyphs = new Glyphs();
    StringBuilder body = new StringBuilder();
    Sheet.Part open = null;
    for (Sheet.Ink ink : sheet.inks()) {
      if (ink.part() != open) {
        body.append(open == null ? "" : "</g>\n");
        body.append("<g id=\"").append(ink.part().key()).append("\">\n");
        open = ink.part();
      }
      body.append("<path d=\"").append(path(ink.shape(), sheet.heightMm())).append("\"/>\n");
    }
    body.append("</g>\n<g id=\"words\">\n");
    sheet.letterings().forEach(l -> glyphs.line(l, sheet.heightMm(), body));
    body.append("</g>\n");
    String w = Decimals.of(sheet.widthMm(), 6);
    String h = Decimals.of(sheet.heightMm(), 6);
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        + "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\""
        + w
        + "mm\" height=\""
        + h
        + "mm\" viewBox=\"0 0 "
        + w
        + " "
        + h
        + "\">\n<title>"
        + escaped(title)
        + "</title>\n<defs>\n"
        + glyphs.definitions()
        + "</defs>\n"
        + body
        + "</svg>\n";
  }

  /** Closed rings as path data, y turned downward. */
  static String path(Outline shape, double heightMm) {
    StringBuilder out = new StringBuilder();
    for (double[] ring : shape.rings()) {
      for (int i = 0; i < ring.length; i += 2) {
        out.append(i == 0 ? 'M' : i == 2 ? 'L' : ' ');
        out.append(Decimals.of(ring[i], 6)).append(' ');
        out.append(Decimals.of(heightMm - ring[i + 1], 6));
      }
      out.append('Z');
    }
    return out.toString();
  }

  static String escaped(String text) {
    return text.replaceAll("\\p{Cntrl}", " ")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  /** Letters as outlines, each drawn once and used often. */
  private static final class Glyphs {
    private final FontRenderContext exact = new FontRenderContext(null, true, true);
    private final Font plain = Typeface.REGULAR.at(GLYPH_PX);
    private final Font bold = Typeface.BOLD.at(GLYPH_PX);
    private final Map<String, String> drawn = new TreeMap<>();

    /** The line, squeezed to the length it was laid out with. */
    void line(Sheet.Lettering l, double heightMm, StringBuilder out) {
      Font font = l.bold() ? bold : plain;
      double size = l.sizeMm() / GLYPH_PX;
      double own = font.getStringBounds(l.text(), exact).getWidth() * size;
      double squeeze = own > 0 ? l.lengthMm() / own : 1;
      double x = l.xMm() + (l.mirrored() ? l.lengthMm() : 0);
      String start = "translate(" + n(x) + " " + n(heightMm - l.yMm()) + ")";
      String turn = l.upward() ? " rotate(-90)" : l.mirrored() ? " scale(-1 1)" : "";
      out.append("<g transform=\"").append(start).append(turn).append(" scale(");
      out.append(Decimals.of(size * squeeze, 9)).append(' ').append(Decimals.of(size, 9));
      out.append(")\">");
      double at = 0;
      for (char c : l.text().toCharArray()) {
        String id = (l.bold() ? "b" : "p") + (int) c;
        String path =
            drawn.computeIfAbsent(
                id, k -> outline(font.createGlyphVector(exact, new char[] {c}).getOutline()));
        if (!path.isEmpty()) {
          out.append("<use href=\"#").append(id).append("\" x=\"").append(n(at)).append("\"/>");
        }
        at += font.getStringBounds(String.valueOf(c), exact).getWidth();
      }
      out.append("</g>\n");
    }

    String definitions() {
      StringBuilder out = new StringBuilder();
      drawn.forEach(
          (id, d) -> {
            if (!d.isEmpty()) {
              out.append("<path id=\"").append(id).append("\" d=\"").append(d).append("\"/>\n");
            }
          });
      return out.toString();
    }

    private static String outline(Shape shape) {
      StringBuilder out = new StringBuilder();
      double[] c = new double[6];
      for (PathIterator i = shape.getPathIterator(null); !i.isDone(); i.next()) {
        int points =
            switch (i.currentSegment(c)) {
              case PathIterator.SEG_MOVETO -> {
                out.append('M');
                yield 1;
              }
              case PathIterator.SEG_LINETO -> {
                out.append('L');
                yield 1;
              }
              case PathIterator.SEG_QUADTO -> {
                out.append('Q');
                yield 2;
              }
              case PathIterator.SEG_CUBICTO -> {
                out.append('C');
                yield 3;
              }
              default -> {
                out.append('Z');
                yield 0;
              }
            };
        for (int k = 0; k < 2 * points; k++) {
          out.append(k == 0 ? "" : " ").append(Decimals.of(c[k], 1));
        }
      }
      return out.toString();
    }

    private static String n(double value) {
      return Decimals.of(value, 3);
    }
  }
}
