package org.amperskin.picture;

import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.Locale;

/**
 * The colours of a field with their numbers, drawn into the lower left corner of a picture.
 *
 * <p>Guaranteed: numbers with their unit at both ends and at three places between; "or more" where
 * some lie above.
 *
 * @param scale the colours
 */
public record ScaleLegend(FieldScale scale) {
  private static final int GAP = 8;
  private static final int BAR_WIDTH = 16;
  private static final int BAR_HEIGHT = 2 * FieldScale.STEPS;
  private static final double TEXT = 13;
  private static final int TICKS = 5;

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
      g.setFont(Typeface.REGULAR.at(TEXT));
      FontMetrics metrics = g.getFontMetrics();
      String title = scale.label();
      int words = metrics.stringWidth(title) - BAR_WIDTH - GAP;
      for (int i = 0; i < TICKS; i++) {
        words = Math.max(words, metrics.stringWidth(figure(i)));
      }
      int line = metrics.getHeight();
      int boxWidth = GAP + BAR_WIDTH + GAP + words + GAP;
      int boxHeight = GAP + line + GAP + BAR_HEIGHT + line / 2 + GAP;
      int left = 2 * GAP;
      int top = picture.height() - 2 * GAP - boxHeight;
      if (left + boxWidth > picture.width() || top < 0) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "scale of %d x %d px on a picture of %d x %d px",
                boxWidth,
                boxHeight,
                picture.width(),
                picture.height()));
      }
      g.setColor(new Color(255, 255, 255, 235));
      g.fillRect(left, top, boxWidth, boxHeight);
      g.setColor(new Color(0x1B1F24));
      g.drawString(title, left + GAP, top + GAP + metrics.getAscent());
      int barTop = top + GAP + line + GAP;
      int[] palette = FieldScale.palette();
      for (int y = 0; y < BAR_HEIGHT; y++) {
        int colour = palette[FieldScale.STEPS - 1 - y / 2];
        for (int x = 0; x < BAR_WIDTH; x++) {
          image.setRGB(left + GAP + x, barTop + y, colour);
        }
      }
      for (int i = 0; i < TICKS; i++) {
        int y = barTop + BAR_HEIGHT - (int) Math.round(i * BAR_HEIGHT / (TICKS - 1.0));
        g.drawLine(left + GAP + BAR_WIDTH, y, left + GAP + BAR_WIDTH + 3, y);
        int base = y + (metrics.getAscent() - metrics.getDescent()) / 2;
        g.drawString(figure(i), left + GAP + BAR_WIDTH + GAP, base);
      }
    } finally {
      g.dispose();
    }
    int[] argb = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    return new Picture(picture.width(), picture.height(), argb, picture.faces());
  }

  /** The number at a tick, from low to high. */
  String figure(int tick) {
    double value = scale.low() + tick * (scale.high() - scale.low()) / (TICKS - 1);
    double size = Math.max(Math.abs(scale.low()), Math.abs(scale.high()));
    String text =
        String.format(Locale.ROOT, size >= 100 ? "%.0f" : size >= 1 ? "%.2f" : "%.3f", value);
    String unit = scale.unit().isEmpty() ? "" : " " + scale.unit();
    return text + unit + (tick == TICKS - 1 && scale.clipped() ? " or more" : "");
  }
}
