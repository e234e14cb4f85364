package org.amperskin.pattern.motif;

import java.awt.AWTError;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.io.File;
import java.io.IOException;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * A line of text as outlines, its box on the middle of the sheet.
 *
 * <p>Definition: the height is that of the capital H; letters stand as the font sets them, with its
 * kerning.
 *
 * <p>Guaranteed: a font that is not there, or lacks a letter of the text, is refused rather than
 * replaced. Not guaranteed: the same outlines on another machine; fonts differ. It has no line
 * whose width could be solved.
 *
 * @param text what is written, one line
 * @param font an installed font, a {@code .ttf} or {@code .otf} file, or {@link #ANY_FONT}
 * @param heightMm height of capitals (mm)
 */
public record Lettering(String text, String font, double heightMm) implements Motif {
  /** Takes the plain font without serifs that the system has. */
  public static final String ANY_FONT = Font.SANS_SERIF;

  private static final float POINTS = 1000;
  private static final int LONGEST = 500;

  /** Checks the values; the font is looked for when it is drawn. */
  public Lettering {
    if (text.isBlank()) {
      throw new MotifFault(MotifParameter.TEXT, "text is '" + text + "': lettering wants words");
    }
    if (text.length() > LONGEST || text.chars().anyMatch(c -> c < ' ')) {
      throw new MotifFault(
          MotifParameter.TEXT,
          "text of " + text.length() + " letters: one line of up to " + LONGEST + " fits");
    }
    MotifParameter.HEIGHT.check(heightMm);
  }

  @Override
  public MotifKind kind() {
    return MotifKind.LETTERING;
  }

  @Override
  public Optional<Tile> tile() {
    return Optional.empty();
  }

  @Override
  public double edgesOn(double areaMm2) {
    return 100.0 * text.length();
  }

  @Override
  public void draw(Window w, Pencil pencil) {
    try {
      Font face = face();
      FontRenderContext flat = new FontRenderContext(null, true, true);
      double capital = face.createGlyphVector(flat, "H").getOutline().getBounds2D().getHeight();
      if (!(capital > 0)) {
        throw new MotifFault(
            MotifParameter.FONT, "font '" + font + "' has no outlines, H is 0 high");
      }
      char[] letters = text.toCharArray();
      GlyphVector line =
          face.layoutGlyphVector(flat, letters, 0, letters.length, Font.LAYOUT_LEFT_TO_RIGHT);
      Shape outline = line.getOutline();
      Rectangle2D box = outline.getBounds2D();
      double scale = heightMm / capital;
      AffineTransform toSheet = AffineTransform.getScaleInstance(scale, -scale);
      toSheet.translate(-box.getCenterX(), -box.getCenterY());
      trace(outline, toSheet, pencil);
      pencil.note("lettering in " + face.getFontName(Locale.ROOT));
      double longMm = box.getWidth() * scale;
      double highMm = box.getHeight() * scale;
      pencil.spans(longMm, highMm);
    } catch (InternalError | LinkageError | AWTError | NullPointerException noFonts) {
      // a Java without fonts or font libraries says so in many ways
      throw new MotifFault(
          MotifParameter.FONT, "font '" + font + "': this system has no fonts (" + noFonts + ")");
    }
  }

  private static void trace(Shape outline, AffineTransform toSheet, Pencil pencil) {
    double[] xy = new double[64];
    int size = 0;
    double[] at = new double[6];
    PathIterator path = outline.getPathIterator(toSheet, pencil.toleranceMm());
    for (; !path.isDone(); path.next()) {
      int kind = path.currentSegment(at);
      if (kind != PathIterator.SEG_LINETO) {
        close(xy, size, pencil);
        size = 0;
      }
      if (kind != PathIterator.SEG_CLOSE) {
        if (size + 2 > xy.length) {
          xy = Arrays.copyOf(xy, 2 * xy.length);
        }
        xy[size++] = at[0];
        xy[size++] = at[1];
      }
    }
    close(xy, size, pencil);
    pencil.strayed(pencil.toleranceMm());
  }

  private static void close(double[] xy, int size, Pencil pencil) {
    if (size >= 6) {
      pencil.ring(Arrays.copyOf(xy, size));
    }
  }

  private Font face() {
    Font face;
    String ending = font.toLowerCase(Locale.ROOT);
    if (ending.endsWith(".ttf") || ending.endsWith(".otf")) {
      try {
        face = Font.createFont(Font.TRUETYPE_FONT, new File(font)).deriveFont(POINTS);
      } catch (FontFormatException | IOException bad) {
        throw new MotifFault(
            MotifParameter.FONT, "font '" + font + "' cannot be read: " + bad.getMessage());
      }
    } else {
      face = new Font(font, Font.PLAIN, 1).deriveFont(POINTS);
      boolean found =
          face.getFamily(Locale.ROOT).equalsIgnoreCase(font)
              || face.getFontName(Locale.ROOT).equalsIgnoreCase(font);
      if (!found) {
        throw new MotifFault(
            MotifParameter.FONT,
            "font '" + font + "' is not installed; a .ttf or .otf file fits too");
      }
    }
    int missing = face.canDisplayUpTo(text);
    if (missing >= 0) {
      throw new MotifFault(
          MotifParameter.TEXT,
          "letter '"
              + text.substring(missing, text.offsetByCodePoints(missing, 1))
              + "' of '"
              + text
              + "' is not in font "
              + face.getFontName(Locale.ROOT));
    }
    return face.deriveFont(
        java.util.Map.of(
            java.awt.font.TextAttribute.KERNING, java.awt.font.TextAttribute.KERNING_ON));
  }

  @Override
  public String told() {
    return "text '%s', font %s, height %s mm".formatted(text, font, Pencil.number(heightMm));
  }
}
