package org.amperskin.pattern;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Writes artwork as an SVG drawing of true size: one black path, sizes in mm.
 *
 * <p>Guaranteed: {@link ArtworkFile} reads the same figure back; points are written to 1e-8 mm, the
 * grid that artwork lies on. Same artwork, same text.
 *
 * <p>Source: W3C SVG 1.1 (Second Edition). Cost: linear in points.
 */
public final class ArtworkSvg {
  private static final int DECIMALS = 8;

  private ArtworkSvg() {}

  /**
   * The drawing.
   *
   * @param title its title
   * @param description what made it
   */
  public static String text(Artwork artwork, String title, String description) {
    StringBuilder out = new StringBuilder(64 + 12 * artwork.xy().length);
    String w = number(artwork.widthMm());
    String h = number(artwork.heightMm());
    out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"");
    out.append(" width=\"").append(w).append("mm\" height=\"").append(h).append("mm\"");
    out.append(" viewBox=\"0 0 ").append(w).append(' ').append(h).append("\">\n");
    out.append("  <title>").append(escaped(title)).append("</title>\n");
    out.append("  <desc>").append(escaped(description)).append("</desc>\n");
    if (artwork.ringCount() > 0) {
      out.append("  <path fill=\"black\" fill-rule=\"evenodd\" d=\"");
      int[] starts = artwork.ringStarts();
      for (int r = 0; r < artwork.ringCount(); r++) {
        for (int p = starts[r]; p < starts[r + 1]; p++) {
          out.append(p == starts[r] ? (r == 0 ? "M" : "\nM") : p % 8 == 0 ? "\nL" : "L");
          out.append(number(artwork.xy()[2 * p] + artwork.widthMm() / 2)).append(' ');
          out.append(number(artwork.heightMm() / 2 - artwork.xy()[2 * p + 1]));
        }
        out.append('Z');
      }
      out.append("\"/>\n");
    }
    return out.append("</svg>\n").toString();
  }

  private static String number(double mm) {
    BigDecimal rounded = new BigDecimal(mm).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private static String escaped(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                default -> out.appendCodePoint(c < ' ' ? ' ' : c);
              }
            });
    return out.toString();
  }
}
