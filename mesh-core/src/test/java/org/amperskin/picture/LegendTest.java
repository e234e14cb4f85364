package org.amperskin.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import org.amperskin.region.RegionKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LegendTest {
  private static final Legend LEGEND =
      new Legend(
          List.of(
              new Legend.Entry(0xFFE69F00, Hatch.SOLID, "exposed", "0.2000 dm²"),
              new Legend.Entry(0xFF0072B2, Hatch.RISING, "masked", "0.0400 dm²")));

  private static Picture picture(int width, int height) {
    Painting cube = Painting.plain(SampleParts.box(10, 10, 10), 0xFF808080);
    Camera camera = Camera.fitting(cube.mesh(), 30, 20, (double) width / height);
    return Renderer.render(cube, camera, width, height, RenderOptions.USUAL);
  }

  @Test
  void swatchesCarryTheirColourUnshaded() {
    Picture drawn = LEGEND.drawnOn(picture(400, 300));
    assertThat(count(drawn, 0xFFE69F00)).isEqualTo(12 * 12);
    // every sixth slanted line of the 12 x 12 inside is inked
    assertThat(count(drawn, 0xFF0072B2)).isEqualTo(12 * 12 - 24);
  }

  @Test
  void writtenPngReadsBackTheSame(@TempDir Path folder) throws IOException {
    Picture drawn = LEGEND.drawnOn(picture(400, 300));
    Path file = folder.resolve("part.png");
    drawn.writePng(file);
    BufferedImage read = ImageIO.read(file.toFile());
    assertThat(read.getRGB(0, 0, 400, 300, null, 0, 400)).isEqualTo(drawn.argb());
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }

  @Test
  void refusesAPictureThatIsTooSmall() {
    assertThatThrownBy(() -> LEGEND.drawnOn(picture(60, 40)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("60 x 40 px");
  }

  @Test
  void everyRegionKindHasItsOwnColourAndHatch() {
    Set<Integer> colours = new HashSet<>();
    Set<Hatch> hatches = new HashSet<>();
    for (RegionKind kind : RegionKind.values()) {
      colours.add(RegionColour.of(kind).argb());
      hatches.add(RegionColour.of(kind).hatch());
    }
    assertThat(colours).hasSize(RegionKind.values().length);
    assertThat(hatches).hasSize(RegionKind.values().length);
  }

  @Test
  void digitsHaveEqualWidth() {
    var font = Typeface.REGULAR.at(100);
    var metrics =
        new BufferedImage(1, 1, BufferedImage.TYPE_INT_ARGB).createGraphics().getFontMetrics(font);
    for (char digit = '0'; digit <= '9'; digit++) {
      assertThat(metrics.charWidth(digit)).isEqualTo(metrics.charWidth('0'));
    }
    assertThat(font.getFamily()).isEqualTo(Typeface.FAMILY);
  }

  private static int count(Picture picture, int argb) {
    int n = 0;
    for (int pixel : picture.argb()) {
      n += pixel == argb ? 1 : 0;
    }
    return n;
  }
}
