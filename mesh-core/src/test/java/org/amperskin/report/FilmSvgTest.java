package org.amperskin.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.amperskin.film.FilmLayout;
import org.amperskin.film.FilmSheets;
import org.amperskin.film.Layouts;
import org.amperskin.film.Sheet;
import org.amperskin.film.SheetOptions;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.ArtworkFile;
import org.amperskin.region.MaskKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** SVG sheets are read again and measured. */
class FilmSvgTest {
  private static final FilmLayout STRIPES =
      Layouts.sheet(Layouts.stripes(120, 80, 4), MaskKind.POSITIVE_RESIST);

  @TempDir private Path folder;

  private static List<Sheet> sheets(FilmLayout layout) {
    return FilmSheets.of(layout, SheetOptions.USUAL, Layouts.words()).sheets();
  }

  @Test
  void oneUserUnitIsOneMillimetre() {
    String svg = FilmSvg.of(sheets(STRIPES).get(0), "Test");
    assertThat(svg).contains("width=\"210mm\" height=\"297mm\" viewBox=\"0 0 210 297\"");
    assertThat(PathReader.width(PathReader.group(svg, "bar-across"))).isCloseTo(100, within(1e-6));
    double black = -PathReader.area(PathReader.group(svg, "film")); // y runs downward
    assertThat(black).isCloseTo(120 * 40, within(1e-4));
    assertThat(svg).doesNotContain("<text", "font-family", "stroke");
  }

  /** The reader of drawings, which knows nothing of sheets, sees the same black. */
  @Test
  void theReaderOfDrawingsSeesTheSameBlack() throws Exception {
    Sheet full = sheets(STRIPES).get(0);
    Sheet bare =
        new Sheet(
            full.film(),
            1,
            1,
            1,
            1,
            full.widthMm(),
            full.heightMm(),
            full.inks().stream().filter(i -> i.part() == Sheet.Part.FILM).toList(),
            List.of());
    Path file = folder.resolve("bare.svg");
    Files.writeString(file, FilmSvg.of(bare, "Test"));
    Artwork read = ArtworkFile.read(file);
    assertThat(read.widthMm()).isCloseTo(210, within(1e-9));
    assertThat(read.opaqueAreaMm2()).isCloseTo(120 * 40, within(1e-4));
    Files.writeString(file, FilmSvg.of(full, "Test"));
    double words = ArtworkFile.read(file).opaqueAreaMm2() - read.opaqueAreaMm2();
    assertThat(words).isBetween(100.0, 1500.0); // bars, crosses, lines and letters
  }

  @Test
  void severalSheetsGoIntoSeveralFiles() throws Exception {
    List<Path> written = FilmSvg.write(sheets(STRIPES), "Test", folder.resolve("film.svg"));
    assertThat(written.stream().map(p -> p.getFileName().toString()))
        .containsExactly("film-layer1.svg", "film-layer2.svg");
    FilmLayout large = Layouts.sheet(Layouts.stripes(300, 80, 4), MaskKind.POSITIVE_RESIST);
    assertThat(
            FilmSvg.write(sheets(large), "Test", folder.resolve("large.svg")).stream()
                .map(p -> p.getFileName().toString()))
        .contains("large-layer1-tile1.svg", "large-layer2-tile2.svg");
    assertThat(Files.readString(written.get(0)))
        .isEqualTo(FilmSvg.of(sheets(STRIPES).get(0), "Test"));
  }
}
