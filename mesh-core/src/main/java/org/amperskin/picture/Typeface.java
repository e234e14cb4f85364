package org.amperskin.picture;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/**
 * The bundled typeface, so that lettering does not depend on the machine.
 *
 * <p>Two weights under the SIL Open Font License, made from Inter; digits have equal width. See
 * {@code FACES.md} beside the files.
 */
public enum Typeface {
  /** Regular weight. */
  REGULAR("AmperskinSans-Regular.otf"),
  /** Bold weight. */
  BOLD("AmperskinSans-Bold.otf");

  /** Name under which programs find both weights once they are loaded. */
  public static final String FAMILY = "Amperskin Sans";

  private final String file;

  Typeface(String file) {
    this.file = file;
  }

  /** The font file's bytes. The caller closes the stream. */
  public InputStream open() {
    InputStream in = Typeface.class.getResourceAsStream(file);
    if (in == null) {
      throw new IllegalStateException("typeface " + file + " is missing from the program");
    }
    return in;
  }

  /** The face at a size (px). */
  public Font at(double sizePx) {
    try (InputStream in = open()) {
      return Font.createFont(Font.TRUETYPE_FONT, in).deriveFont((float) sizePx);
    } catch (FontFormatException e) {
      throw new IllegalStateException("typeface " + file + ": " + e.getMessage(), e);
    } catch (IOException e) {
      throw new UncheckedIOException("typeface " + file, e);
    }
  }
}
