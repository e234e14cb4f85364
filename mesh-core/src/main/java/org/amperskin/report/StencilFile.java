package org.amperskin.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.amperskin.film.Extent;
import org.amperskin.film.Outline;
import org.amperskin.film.Stencil;
import org.amperskin.io.common.WholeFile;

/**
 * A stencil as closed outlines for a cutting plotter: SVG, or DXF of release 12.
 *
 * <p>Definition: three groups or layers, {@code CUT} (what stays), {@code BORDER} (weeding border)
 * and {@code MARKS} (orientation). SVG: one user unit is 1 mm, y downward. DXF: closed POLYLINE
 * entities, unit mm ({@code $INSUNITS} 4), y upward (DXF Reference, from memory).
 *
 * <p>Guaranteed: coordinates to 1e-6 mm; every line is closed; the same stencil gives the same
 * bytes; the file is written as a whole or not at all.
 */
public final class StencilFile {
  private static final int PLACES = 6;

  private StencilFile() {}

  /** Writes or replaces a file named .svg or .dxf. */
  public static void write(Stencil stencil, String title, Path target) throws IOException {
    String name = target.toString().toLowerCase(Locale.ROOT);
    if (!name.endsWith(".dxf") && !name.endsWith(".svg")) {
      throw new IllegalArgumentException(
          "cannot write \"" + target + "\": the name must end in .svg or .dxf");
    }
    String text = name.endsWith(".dxf") ? dxf(stencil) : svg(stencil, title);
    WholeFile.write(target, out -> out.write(text.getBytes(StandardCharsets.US_ASCII)));
  }

  private static Map<String, Outline> layers(Stencil stencil) {
    Map<String, Outline> layers = new LinkedHashMap<>();
    layers.put("CUT", stencil.covered());
    layers.put("MARKS", stencil.marks());
    layers.put("BORDER", stencil.border()); // last, so that the sheet holds while the rest is cut
    return layers;
  }

  /** As SVG. */
  static String svg(Stencil stencil, String title) {
    Extent e = stencil.border().extent();
    String w = Decimals.of(e.width(), PLACES);
    String h = Decimals.of(e.height(), PLACES);
    StringBuilder out = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").append(w);
    out.append("mm\" height=\"").append(h).append("mm\" viewBox=\"0 0 ").append(w).append(' ');
    out.append(h).append("\">\n<title>");
    out.append(FilmSvg.escaped(title).replaceAll("[^ -~]", "?")).append("</title>\n");
    layers(stencil)
        .forEach(
            (name, outline) -> {
              out.append("<g id=\"").append(name.toLowerCase(Locale.ROOT));
              out.append("\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0.1\">\n");
              for (double[] ring : outline.rings()) {
                Outline one = Outline.of(java.util.List.of(ring));
                out.append("<path d=\"").append(FilmSvg.path(one, e.maxY())).append("\"/>\n");
              }
              out.append("</g>\n");
            });
    return out.append("</svg>\n").toString();
  }

  /** As DXF of release 12, which every reader knows. */
  static String dxf(Stencil stencil) {
    Extent e = stencil.border().extent();
    StringBuilder out = new StringBuilder();
    tags(out, "0", "SECTION", "2", "HEADER", "9", "$ACADVER", "1", "AC1009");
    tags(out, "9", "$INSUNITS", "70", "4", "9", "$MEASUREMENT", "70", "1");
    tags(out, "9", "$EXTMIN", "10", n(e.minX()), "20", n(e.minY()), "30", "0");
    tags(out, "9", "$EXTMAX", "10", n(e.maxX()), "20", n(e.maxY()), "30", "0", "0", "ENDSEC");
    Map<String, Outline> layers = layers(stencil);
    tags(out, "0", "SECTION", "2", "TABLES", "0", "TABLE", "2", "LTYPE", "70", "1");
    tags(out, "0", "LTYPE", "2", "CONTINUOUS", "70", "0", "3", "Solid line", "72", "65");
    tags(out, "73", "0", "40", "0", "0", "ENDTAB");
    tags(out, "0", "TABLE", "2", "LAYER", "70", String.valueOf(layers.size()));
    int colour = 1;
    for (String layer : layers.keySet()) {
      tags(out, "0", "LAYER", "2", layer, "70", "0", "62", String.valueOf(colour++));
      tags(out, "6", "CONTINUOUS");
    }
    tags(out, "0", "ENDTAB", "0", "ENDSEC", "0", "SECTION", "2", "ENTITIES");
    layers.forEach(
        (layer, outline) -> {
          for (double[] ring : outline.rings()) {
            tags(out, "0", "POLYLINE", "8", layer, "66", "1", "10", "0", "20", "0", "30", "0");
            tags(out, "70", "1");
            for (int i = 0; i < ring.length; i += 2) {
              tags(out, "0", "VERTEX", "8", layer, "10", n(ring[i]), "20", n(ring[i + 1]));
              tags(out, "30", "0");
            }
            tags(out, "0", "SEQEND", "8", layer);
          }
        });
    tags(out, "0", "ENDSEC", "0", "EOF");
    return out.toString();
  }

  private static void tags(StringBuilder out, String... codesAndValues) {
    for (int i = 0; i < codesAndValues.length; i += 2) {
      String code = codesAndValues[i];
      out.append(" ".repeat(3 - code.length())).append(code).append('\n');
      out.append(codesAndValues[i + 1]).append('\n');
    }
  }

  private static String n(double mm) {
    String text = Decimals.of(mm, PLACES);
    return text.contains(".") ? text : text + ".0";
  }
}
