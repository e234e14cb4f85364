package org.amperskin.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.amperskin.film.Extent;
import org.amperskin.film.FilmLayout;
import org.amperskin.film.FilmSheets;
import org.amperskin.film.Flap;
import org.amperskin.film.Layouts;
import org.amperskin.film.Outline;
import org.amperskin.film.Paper;
import org.amperskin.film.ScaleCorrection;
import org.amperskin.film.SheetOptions;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.ArtworkFile;
import org.amperskin.region.MaskKind;
import org.amperskin.testmeshes.TestMeshes;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** PDFs are opened again and measured. 1 mm is 72 / 25.4 pt (ISO 32000-1, 8.3.2.3). */
class FilmPdfTest {
  private static final double PT = 72 / 25.4;

  /** PDFBox reads numbers in single precision: 6e-8 of 800 pt. */
  private static final double READING_PT = 1e-4;

  /** Black in the lower left corner only. */
  private static final FilmLayout CORNER =
      Layouts.sheet(
          Layouts.rectangles(120, 80, new double[] {-60, -40, -40, -30}), MaskKind.POSITIVE_RESIST);

  private static SheetOptions options(boolean mirror, ScaleCorrection correction) {
    return new SheetOptions(Paper.A4, SheetOptions.Turn.PORTRAIT, 2, correction, mirror, 10);
  }

  private static byte[] bytes(FilmSheets sheets) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FilmPdf.write(sheets.sheets(), "Test", out);
    return out.toByteArray();
  }

  private static List<PdfFigures> pages(FilmSheets sheets) throws Exception {
    List<PdfFigures> pages = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(bytes(sheets))) {
      for (PDPage page : document.getPages()) {
        pages.add(PdfFigures.of(page));
      }
    }
    return pages;
  }

  private static FilmSheets made(FilmLayout layout, SheetOptions options) {
    return FilmSheets.of(layout, options, Layouts.words());
  }

  /** 100 mm are 283.4646 pt. */
  @Test
  void bothScaleBarsAreAHundredMillimetres() throws Exception {
    for (PdfFigures page : pages(made(CORNER, SheetOptions.USUAL))) {
      assertThat(page.width("bar-across")).isCloseTo(283.465, within(0.001));
      assertThat(page.height("bar-along")).isCloseTo(283.465, within(0.001));
      assertThat(page.text()).contains("100 mm across", "100 mm along");
    }
  }

  @Test
  void aMeasuredBarIsMadeUpForInBothDirections() throws Exception {
    FilmSheets plain = made(CORNER, options(true, ScaleCorrection.NONE));
    FilmSheets corrected = made(CORNER, options(true, new ScaleCorrection(99.6, 100.2)));
    assertThat(corrected.options().correction().factorX()).isCloseTo(1.004016, within(1e-6));
    PdfFigures before = pages(plain).get(0);
    PdfFigures after = pages(corrected).get(0);
    // 100 / 99.6 = 100.4016 %, 100 / 100.2 = 99.8004 %
    for (String mark : List.of("bar-across", "film", "cut")) {
      assertThat(after.width(mark) / before.width(mark)).isCloseTo(1.004016, within(2e-6));
      assertThat(after.height(mark) / before.height(mark)).isCloseTo(0.998004, within(1e-5));
    }
    // what the printer then makes of it
    assertThat(after.width("bar-across") / PT * 0.996).isCloseTo(100, within(1e-4));
    assertThat(after.height("bar-along") / PT * 1.002).isCloseTo(100, within(1e-4));
    assertThat(after.text()).contains("100.402 % across", "99.800 % along");
  }

  @Test
  void correctedSheetsStayWithinTheSameMargins() throws Exception {
    for (double bar : new double[] {97, 100, 103}) {
      PdfFigures page = pages(made(CORNER, options(true, new ScaleCorrection(bar, bar)))).get(0);
      for (String mark : List.of("film", "cross", "pin", "bar-across", "bar-along", "cut")) {
        double[] box = page.box(mark);
        assertThat(box[0] / PT).as(mark).isGreaterThan(5.9);
        assertThat(box[1] / PT).as(mark).isGreaterThan(5.9);
        assertThat(box[2] / PT).as(mark).isLessThan(210 - 5.9);
        assertThat(box[3] / PT).as(mark).isLessThan(297 - 5.9);
      }
    }
  }

  @Test
  void layersRegisterAndAreMarked() throws Exception {
    List<PdfFigures> pages = pages(made(CORNER, SheetOptions.USUAL));
    assertThat(pages).hasSize(2);
    for (String mark : List.of("film", "cut", "cross", "pin")) {
      List<double[]> one = pages.get(0).rings(mark);
      List<double[]> two = pages.get(1).rings(mark);
      assertThat(one).as(mark).isNotEmpty().hasSameSizeAs(two);
      for (int r = 0; r < one.size(); r++) {
        for (int i = 0; i < one.get(r).length; i++) {
          assertThat(one.get(r)[i] / PT).isCloseTo(two.get(r)[i] / PT, within(0.01));
        }
      }
    }
    assertThat(pages.get(0).rings("cross")).hasSize(4);
    assertThat(pages.get(0).text()).contains("layer 1 of 2").doesNotContain("layer 2 of 2");
    assertThat(pages.get(1).text()).contains("layer 2 of 2").doesNotContain("layer 1 of 2");
    assertThat(pages.get(0).text()).contains("printed alike");
  }

  /** Turned by half a turn, the pins of one layer must not fit the other's. */
  @Test
  void pinsDoNotFitTurnedRound() throws Exception {
    double[] box = pages(made(CORNER, SheetOptions.USUAL)).get(0).box("pin");
    List<double[]> crosses =
        pages(made(CORNER, SheetOptions.USUAL)).get(0).rings("pin").stream()
            .filter(r -> r.length == 24)
            .toList();
    assertThat(crosses).hasSize(2);
    double left = crosses.get(0)[1];
    double right = crosses.get(1)[1];
    assertThat(Math.abs(left - right) / PT).isGreaterThan(20);
    assertThat(box[2] - box[0]).isGreaterThan(100 * PT);
  }

  @Test
  void blackIsTheArtworksAreaAndNothingIsStroked() throws Exception {
    Path drawings = TestMeshes.folder().resolve("demo");
    for (String name : List.of("visor-chevrons.svg", "shoulder-lattice.svg")) {
      Artwork artwork = ArtworkFile.read(drawings.resolve(name));
      FilmLayout layout = Layouts.sheet(artwork, MaskKind.POSITIVE_RESIST);
      SheetOptions a3 =
          new SheetOptions(Paper.A3, SheetOptions.Turn.AUTO, 1, ScaleCorrection.NONE, true, 10);
      List<PdfFigures> pages = pages(made(layout, a3));
      assertThat(pages).hasSize(1);
      double expected = artwork.opaqueAreaMm2() * PT * PT;
      assertThat(pages.get(0).area("film") / expected).isCloseTo(1, within(1e-6));
      assertThat(pages.get(0).strokes()).isZero();
    }
  }

  @Test
  void mirroredIsMirroredAndSaysSo() throws Exception {
    PdfFigures mirrored = pages(made(CORNER, options(true, ScaleCorrection.NONE))).get(0);
    PdfFigures seen = pages(made(CORNER, options(false, ScaleCorrection.NONE))).get(0);
    double[] cut = seen.box("cut");
    double middle = (cut[0] + cut[2]) / 2;
    assertThat(seen.box("film")[2]).isLessThan(middle);
    assertThat(mirrored.box("film")[0]).isGreaterThan(middle);
    assertThat(mirrored.box("film")[0] - middle)
        .isCloseTo(middle - seen.box("film")[2], within(READING_PT));
    assertThat(mirrored.box("film")[1]).isCloseTo(seen.box("film")[1], within(READING_PT));
    assertThat(mirrored.area("film")).isCloseTo(seen.area("film"), within(0.01));
    assertThat(mirrored.text()).contains("Printed mirrored", "toner toward the part");
    assertThat(seen.text()).contains("Printed as seen");
    int reads = mirrored.words().indexOf("film lies right when this reads right");
    assertThat(mirrored.scaleX(reads)).isEqualTo(-1);
    assertThat(seen.scaleX(reads)).isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource({"A4,PORTRAIT,10", "LETTER,LANDSCAPE,0", "A4,AUTO,15"})
  void tilesShowEverythingAndTheirCoresShowItOnce(
      Paper paper, SheetOptions.Turn turn, double overlapMm) throws Exception {
    Artwork stripes = Layouts.stripes(700, 520, 13);
    FilmLayout layout = Layouts.sheet(stripes, MaskKind.POSITIVE_RESIST);
    SheetOptions options = new SheetOptions(paper, turn, 1, ScaleCorrection.NONE, true, overlapMm);
    FilmSheets sheets = made(layout, options);
    List<PdfFigures> pages = pages(sheets);
    assertThat(pages).hasSize(sheets.grid().tiles()).hasSizeGreaterThan(5);
    double cores = 0;
    double windows = 0;
    for (int t = 0; t < pages.size(); t++) {
      int column = t % sheets.grid().columns() + 1;
      int row = t / sheets.grid().columns() + 1;
      PdfFigures page = pages.get(t);
      assertThat(page.text())
          .contains("tile %d of %d, column %d row %d".formatted(t + 1, pages.size(), column, row));
      // from the page back to the film: crosses stand 4 mm outside the window's corners
      Extent window = sheets.grid().window(column, row);
      double[] cross = page.rings("cross").get(0);
      double x0 = cross[1 * 2 - 2] / PT - 0.075 + 4 - window.minX();
      double y0 = cross[1] / PT + 3 + 4 - window.minY();
      List<double[]> onFilm = new ArrayList<>();
      for (double[] r : page.rings("film")) {
        double[] ring = new double[r.length];
        for (int i = 0; i < r.length; i += 2) {
          ring[i] = r[i] / PT - x0;
          ring[i + 1] = r[i + 1] / PT - y0;
        }
        onFilm.add(ring);
      }
      Outline black = Outline.of(onFilm);
      windows += black.areaMm2();
      cores += black.within(sheets.grid().core(column, row)).areaMm2();
      boolean several = sheets.grid().tiles() > 1;
      assertThat(page.rings("map").isEmpty()).isEqualTo(!several);
      int joins = 0;
      joins += column > 1 ? 2 : 0;
      joins += column < sheets.grid().columns() ? 2 : 0;
      joins += row > 1 ? 2 : 0;
      joins += row < sheets.grid().rows() ? 2 : 0;
      assertThat(page.rings("join")).hasSize(joins);
    }
    assertThat(cores / stripes.opaqueAreaMm2()).isCloseTo(1, within(1e-6));
    if (overlapMm > 0) {
      assertThat(windows).isGreaterThan(1.03 * cores);
    } else {
      assertThat(windows / cores).isCloseTo(1, within(1e-6));
    }
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  void pagesHaveThePapersSizeAndAskForNoScaling(Paper paper) throws Exception {
    SheetOptions options =
        new SheetOptions(paper, SheetOptions.Turn.LANDSCAPE, 1, ScaleCorrection.NONE, true, 10);
    try (PDDocument document = Loader.loadPDF(bytes(made(CORNER, options)))) {
      assertThat(document.getPage(0).getMediaBox().getWidth())
          .isCloseTo((float) (paper.heightMm() * PT), within(1e-3f));
      assertThat(document.getPage(0).getMediaBox().getHeight())
          .isCloseTo((float) (paper.widthMm() * PT), within(1e-3f));
      assertThat(document.getDocumentCatalog().getViewerPreferences().getPrintScaling())
          .isEqualTo("None");
      assertThat(document.getDocumentInformation().getCreationDate()).isNull();
    }
  }

  @Test
  void paperTurnsToTakeFewerSheets() {
    FilmLayout wide = Layouts.sheet(Layouts.stripes(250, 120, 5), MaskKind.POSITIVE_RESIST);
    FilmSheets sheets = made(wide, SheetOptions.USUAL);
    assertThat(sheets.landscape()).isTrue();
    assertThat(sheets.tilesPerLayer()).isEqualTo(1);
    assertThat(made(CORNER, SheetOptions.USUAL).landscape()).isFalse();
  }

  @Test
  void sameInputGivesTheSameBytes() throws Exception {
    assertThat(bytes(made(CORNER, SheetOptions.USUAL)))
        .isEqualTo(bytes(made(CORNER, SheetOptions.USUAL)));
  }

  @Test
  void flapsAreDrawnOutsideTheOutlineAndNamed() throws Exception {
    FilmLayout flat = CORNER;
    FilmLayout glued =
        new FilmLayout(
            flat.name(),
            flat.artwork(),
            flat.outline(),
            List.of(new Flap(60, -40, 60, 40, 8, "opposite edge")),
            flat.kind(),
            true,
            List.of());
    PdfFigures page = pages(made(glued, options(false, ScaleCorrection.NONE))).get(0);
    assertThat(page.box("flap")[0]).isGreaterThan(page.box("film")[0] + 120 * PT - 0.01);
    assertThat(page.width("flap") / PT).isCloseTo(8 - 0.15, within(1e-3)); // beside the cut line
    assertThat(page.height("flap") / PT).isCloseTo(80, within(0.5));
    assertThat(page.text()).contains("glue under opposite edge");
    PdfFigures mirrored = pages(made(glued, options(true, ScaleCorrection.NONE))).get(0);
    assertThat(mirrored.box("flap")[2]).isLessThan(mirrored.box("film")[2] - 119 * PT);
  }

  /** The line beside the outline shades nothing of the film. */
  @Test
  void theCutLineStandsBesideTheOutline() throws Exception {
    PdfFigures page = pages(made(CORNER, SheetOptions.USUAL)).get(0);
    assertThat(page.width("cut") / PT).isCloseTo(120 + 0.3, within(1e-3));
    assertThat(page.area("cut") / PT / PT).isCloseTo(120.3 * 80.3 - 120 * 80, within(0.01));
  }

  @Test
  void cautionsPolarityAndDateStandOnEverySheet() throws Exception {
    FilmSheets sheets = made(CORNER, SheetOptions.USUAL);
    for (PdfFigures page : pages(sheets)) {
      assertThat(page.text())
          .contains("ultraviolet light", "local rules", "black stays bare palladium barrier")
          .contains("part.stl", "film test", "one tile")
          .doesNotContain("20");
    }
  }

  @Test
  void faultsAreRefusedWithTheirValue() {
    assertThatThrownBy(() -> new ScaleCorrection(94, 100))
        .hasMessageContaining("94.0 mm is no printer's error");
    FilmLayout huge = Layouts.sheet(Layouts.stripes(4000, 3000, 3), MaskKind.POSITIVE_RESIST);
    assertThatThrownBy(() -> made(huge, SheetOptions.USUAL))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("4000 x 3000 mm")
        .hasMessageContaining("200 fit");
  }

  @Test
  void aWholeFileIsWrittenOrNone(@org.junit.jupiter.api.io.TempDir Path folder) throws Exception {
    Path target = folder.resolve("film.pdf");
    FilmPdf.write(made(CORNER, SheetOptions.USUAL).sheets(), "Test", target);
    assertThat(Files.readAllBytes(target)).isEqualTo(bytes(made(CORNER, SheetOptions.USUAL)));
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(target);
    }
  }
}
