package org.amperskin.film;

import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.afm.FontMetrics;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;

/**
 * Widths of text in the PDF's standard sans-serif face.
 *
 * <p>Source: Adobe's Core 14 font metrics, as PDFBox carries them.
 */
public final class LetterWidth {
  private static final double PER_EM = 1000;

  private final FontMetrics metrics;

  private LetterWidth(FontMetrics metrics) {
    this.metrics = metrics;
  }

  /** The widths of a weight. */
  static LetterWidth of(boolean bold) {
    return new LetterWidth(Standard14Fonts.getAFM(bold ? "Helvetica-Bold" : "Helvetica"));
  }

  /** Text with every letter that the face lacks replaced. */
  public static String printable(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints().forEach(c -> out.append(c >= 32 && c < 127 ? (char) c : '?'));
    return out.toString();
  }

  /** Length of a line (mm). */
  double mm(String text, double sizeMm) {
    double sum = 0;
    for (char c : text.toCharArray()) {
      sum += metrics.getCharacterWidth(glyph(c));
    }
    return sum / PER_EM * sizeMm;
  }

  /** Breaks a text into lines that fit; a single word may stand out. */
  List<String> wrapped(String text, double sizeMm, double widthMm) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : text.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && mm(longer, sizeMm) > widthMm) {
        lines.add(line);
        line = word;
      } else {
        line = longer;
      }
    }
    lines.add(line);
    return lines;
  }

  private static String glyph(char c) {
    if (c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z') {
      return String.valueOf(c);
    }
    int at = SYMBOLS.indexOf(c);
    return at < 0 ? "question" : NAMES[at];
  }

  private static final String SYMBOLS = " !\"#$%&'()*+,-./0123456789:;<=>?@[\\]^_`{|}~";
  private static final String[] NAMES = {
    "space",
    "exclam",
    "quotedbl",
    "numbersign",
    "dollar",
    "percent",
    "ampersand",
    "quotesingle",
    "parenleft",
    "parenright",
    "asterisk",
    "plus",
    "comma",
    "hyphen",
    "period",
    "slash",
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "colon",
    "semicolon",
    "less",
    "equal",
    "greater",
    "question",
    "at",
    "bracketleft",
    "backslash",
    "bracketright",
    "asciicircum",
    "underscore",
    "grave",
    "braceleft",
    "bar",
    "braceright",
    "asciitilde"
  };
}
