package org.amperskin.picture;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.List;

/**
 * A legend drawn into the lower left corner of a picture: swatch with hatch, label, figure.
 *
 * <p>Guaranteed: swatches carry their colour unshaded, labels stand beside them, figures align on
 * their right. Not guaranteed: that long labels fit a small picture; {@link #drawnOn} refuses then.
 *
 * @param entries what to list, top to bottom
 */
public record Legend(List<Entry> entries) {
  private static final int SWATCH = 14;
  private static final int GAP = 8;
  private static final int ROW = 22;
  private static final double TEXT = 13;

  /** Copies the list. */
  public Legend {
    entries = List.copyOf(entries);
  }

  /**
   * One line of a legend.
   *
   * @param argb colour of the swatch
   * @param hatch pattern of the swatch
   * @param label the words
   * @param figure a number with its unit, may be empty
   */
  public record Entry(int argb, Hatch hatch, String label, String figure) {}

  /**
   * A copy of a picture with the legend on it.
   *
   * @throws IllegalArgumentException if the picture is too small for it
   */
  public Picture drawnOn(Picture picture) {
    BufferedImage image = picture.image();
    Graphics2D g = image.createGraphics();
    try {
      g.setRenderingHint(
          RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
      Font font = Typeface.REGULAR.at(TEXT);
      g.setFont(font);
      FontMetrics metrics = g.getFontMetrics();
      int labels = 0;
      int figures = 0;
      for (Entry e : entries) {
        labels = Math.max(labels, metrics.stringWidth(e.label()));
        figures = Math.max(figures, metrics.stringWidth(e.figure()));
      }
      int boxWidth = GAP + SWATCH + GAP + labels + (figures > 0 ? 2 * GAP + figures : 0) + GAP;
      int boxHeight = entries.size() * ROW + GAP;
      int left = 2 * GAP;
      int top = picture.height() - 2 * GAP - boxHeight;
      if (left + boxWidth > picture.width() || top < 0) {
        throw new IllegalArgumentException(
            "legend of "
                + boxWidth
                + " x "
                + boxHeight
                + " px on a picture of "
                + picture.width()
                + " x "
                + picture.height()
                + " px");
      }
      g.setColor(new Color(255, 255, 255, 235));
      g.fillRect(left, top, boxWidth, boxHeight);
      int y = top + GAP / 2;
      for (Entry e : entries) {
        swatch(image, left + GAP, y + (ROW - SWATCH) / 2, e);
        g.setColor(new Color(0x1B1F24));
        int base = y + (ROW + metrics.getAscent() - metrics.getDescent()) / 2;
        g.drawString(e.label(), left + GAP + SWATCH + GAP, base);
        int end = left + boxWidth - GAP;
        g.drawString(e.figure(), end - metrics.stringWidth(e.figure()), base);
        y += ROW;
      }
    } finally {
      g.dispose();
    }
    int[] argb = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    return new Picture(picture.width(), picture.height(), argb, picture.faces());
  }

  private static void swatch(BufferedImage image, int left, int top, Entry e) {
    for (int y = 0; y < SWATCH; y++) {
      for (int x = 0; x < SWATCH; x++) {
        boolean rim = x == 0 || y == 0 || x == SWATCH - 1 || y == SWATCH - 1;
        int colour = e.argb() | 0xFF000000;
        image.setRGB(left + x, top + y, rim || e.hatch().inked(x, y) ? ink(colour) : colour);
      }
    }
  }

  /** Black or white, whichever stands out more from a colour. */
  private static int ink(int argb) {
    int r = argb >> 16 & 255;
    int g = argb >> 8 & 255;
    int b = argb & 255;
    return 299 * r + 587 * g + 114 * b > 140_000 ? 0xFF1B1F24 : 0xFFFFFFFF;
  }
}
