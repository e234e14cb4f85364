package org.amperskin.pattern.motif;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import org.amperskin.pattern.Artwork;
import org.junit.jupiter.api.Test;

/** Lettering stands on the sheet's middle, as high as asked and as black as the font draws it. */
class LetteringTest {
  private static Artwork sheet(String text, double heightMm, boolean clear) {
    return new MotifDesign(new Lettering(text, Lettering.ANY_FONT, heightMm), 0, clear)
        .sheet(120, 30);
  }

  private static double[] box(Artwork a) {
    double[] box = {1e9, 1e9, -1e9, -1e9};
    for (int p = 0; p < a.edgeCount(); p++) {
      box[0] = Math.min(box[0], a.xy()[2 * p]);
      box[1] = Math.min(box[1], a.xy()[2 * p + 1]);
      box[2] = Math.max(box[2], a.xy()[2 * p]);
      box[3] = Math.max(box[3], a.xy()[2 * p + 1]);
    }
    return box;
  }

  @Test
  void capitalIsAsHighAsAskedAndStandsInTheMiddle() {
    double[] box = box(sheet("H", 12.5, false));
    assertThat(box[3] - box[1]).isCloseTo(12.5, within(1e-4));
    assertThat(box[0] + box[2]).isCloseTo(0, within(1e-4));
    assertThat(box[1] + box[3]).isCloseTo(0, within(1e-4));
  }

  /** Painted by the graphics library at 60 pixels a mm and counted. */
  @Test
  void areaIsThatOfThePaintedText() {
    String text = "Boo & Qi 8%";
    Artwork drawn = sheet(text, 10, false);
    Font big = new Font(Lettering.ANY_FONT, Font.PLAIN, 1).deriveFont(1000f);
    BufferedImage image = new BufferedImage(8000, 1600, BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    g.setColor(Color.WHITE);
    g.setFont(big);
    double capital =
        big.createGlyphVector(g.getFontRenderContext(), "H").getOutline().getBounds2D().getHeight();
    g.drawString(text, 100, 1200);
    g.dispose();
    long white = 0;
    byte[] row = new byte[8000];
    for (int y = 0; y < 1600; y++) {
      image.getRaster().getDataElements(0, y, 8000, 1, row);
      for (byte b : row) {
        white += b < 0 ? 1 : 0;
      }
    }
    double mmPerPixel = 10 / capital;
    assertThat(drawn.opaqueAreaMm2())
        .isCloseTo(white * mmPerPixel * mmPerPixel, within(0.01 * drawn.opaqueAreaMm2()));
    assertThat(sheet(text, 10, true).opaqueAreaMm2() + drawn.opaqueAreaMm2())
        .isCloseTo(120 * 30, within(1e-4));
  }

  @Test
  void textThatDoesNotFitTheSheetIsTold() {
    assertThat(sheet("Lantern Lane Theatre Workshop", 12, false).notes())
        .anySatisfy(n -> assertThat(n).contains("120 x 30 mm cuts it off"));
    assertThat(sheet("Act 1", 12, false).notes())
        .singleElement()
        .asString()
        .startsWith("lettering in ");
  }

  @Test
  void aLetterThatTheFontLacksIsRefused() {
    assertThatThrownBy(() -> sheet("a\uFDD0b", 10, false))
        .isInstanceOf(MotifFault.class)
        .hasMessageContaining("is not in font");
  }
}
