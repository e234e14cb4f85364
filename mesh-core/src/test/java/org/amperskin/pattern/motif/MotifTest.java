package org.amperskin.pattern.motif;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.ArtworkFile;
import org.amperskin.pattern.ArtworkSvg;
import org.amperskin.pattern.Sheets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Motifs tile without seams, have the areas of their closed forms and read back as drawn. */
class MotifTest {
  static Stream<LinedMotif> lined() {
    return Stream.of(
        new Bands(4, 1),
        new Bands(3.7, 3.1),
        new Chevrons(6, 2, 40, 24),
        new Chevrons(3, 2.9, 65, 7),
        new Hexagons(5, 0.8),
        new Waves(4, 1.2, 24, 4),
        new Waves(5, 0.9, 12, 4.8),
        new Woven(6, 4, 0.5),
        new Woven(4, 1, 0.2),
        new Rosettes(20, 0.8, 8, 18, 3.4, 0.2),
        new Rosettes(24, 0.5, 6, 20, 4, 0.3),
        new Dots(2, 1.1, 14, 7),
        new Dots(3, 2.9, 9, 8));
  }

  /** Whole tiles have exactly the closed form's share; curves keep their area when flattened. */
  @ParameterizedTest
  @MethodSource("lined")
  void wholeTilesHaveTheAreaOfTheClosedForm(LinedMotif motif) {
    Motif.Tile tile = motif.tile().orElseThrow();
    Artwork sheet = new MotifDesign(motif, 0, false).sheet(tile.widthMm(), 3 * tile.heightMm());
    if (motif.coverage().isPresent()) {
      assertThat(sheet.opaqueFraction())
          .isCloseTo(motif.coverage().getAsDouble(), within(cutsCurves(motif) ? 2e-5 : 1e-7));
    } else {
      assertThat(motif).isInstanceOf(Rosettes.class);
      assertThat(sheet.opaqueFraction()).isBetween(0.01, 0.5);
    }
    assertThat(sheet.flatteningMm()).isBetween(0.0, MotifDesign.FLATTENING_MM);
  }

  /** Where the border cuts a flattened curve, what it gains and loses does not cancel. */
  private static boolean cutsCurves(Motif motif) {
    return motif instanceof Dots || motif instanceof Waves;
  }

  @ParameterizedTest
  @MethodSource("lined")
  void sheetShiftedByATileEqualsItself(LinedMotif motif) {
    Motif.Tile tile = motif.tile().orElseThrow();
    double w = 1.6 * tile.widthMm();
    double h = 1.4 * tile.heightMm();
    Artwork sheet = new MotifDesign(motif, 0, false).sheet(w, h);
    for (int[] step : new int[][] {{1, 0}, {0, 1}, {1, 1}}) {
      double dx = step[0] * tile.widthMm();
      double dy = step[1] * tile.heightMm();
      Motif.Window shared = new Motif.Window(dx - w / 2, dy - h / 2, w / 2, h / 2);
      double differs =
          Figures.differenceMm2(Figures.of(sheet, 0, 0), Figures.of(sheet, dx, dy), shared);
      assertThat(differs).as(motif + " shifted by " + dx + ", " + dy).isLessThan(1e-4);
    }
    // and half a tile is not a tile
    Motif.Window shared = new Motif.Window(tile.widthMm() / 2 - w / 2, -h / 2, w / 2, h / 2);
    double half =
        Figures.differenceMm2(
            Figures.of(sheet, 0, 0), Figures.of(sheet, tile.widthMm() / 2, 0.31 * h), shared);
    assertThat(half).isGreaterThan(0.01);
  }

  @ParameterizedTest
  @MethodSource("lined")
  void tilesJoinWithoutASeam(LinedMotif motif) {
    Motif.Tile tile = motif.tile().orElseThrow();
    MotifDesign design = new MotifDesign(motif, 0, false);
    assertThat(design.seamless(tile.widthMm(), tile.heightMm())).isTrue();
    assertThat(design.seamless(1.5 * tile.widthMm(), tile.heightMm())).isFalse();
    Artwork joined = Sheets.repeated(design.sheet(tile.widthMm(), tile.heightMm()), 3, 1);
    Artwork whole = design.sheet(3 * tile.widthMm(), tile.heightMm());
    Motif.Window all =
        new Motif.Window(
            -whole.widthMm() / 2, -whole.heightMm() / 2, whole.widthMm() / 2, whole.heightMm() / 2);
    assertThat(Figures.differenceMm2(Figures.of(joined, 0, 0), Figures.of(whole, 0, 0), all))
        .isLessThan(1e-4);
    assertThat(joined.edgeLengthMm()).isCloseTo(whole.edgeLengthMm(), within(1e-4));
  }

  /** The quick way of cutting to the sheet against cleaning everything. */
  @ParameterizedTest
  @MethodSource("lined")
  void turnedSheetsEqualTheFigureCleanedAsAWhole(LinedMotif motif) {
    for (double angle : new double[] {0, 17, 90, -133}) {
      MotifDesign design = new MotifDesign(motif, angle, false);
      Artwork quick = design.sheet(31, 22);
      Artwork slow = Artwork.cleaned(31, 22, quick.xy(), quick.ringStarts(), 0, List.of());
      assertThat(quick.opaqueAreaMm2()).isCloseTo(slow.opaqueAreaMm2(), within(1e-5));
      assertThat(quick.edgeLengthMm()).isCloseTo(slow.edgeLengthMm(), within(1e-4));
      Artwork clear = new MotifDesign(motif, angle, true).sheet(31, 22);
      assertThat(clear.opaqueAreaMm2() + quick.opaqueAreaMm2())
          .as(motif + " at " + angle)
          .isCloseTo(31 * 22, within(1e-4));
      assertThat(quick).isEqualTo(design.sheet(31, 22));
    }
  }

  /** Turning moves the pattern about the middle: random places keep their cover. */
  @Test
  void angleTurnsCounterClockwise() {
    Artwork sheet = new MotifDesign(new Bands(10, 1), 30, false).sheet(40, 40);
    double x = 15 * Math.cos(Math.toRadians(30));
    double y = 15 * Math.sin(Math.toRadians(30));
    Motif.Window there = new Motif.Window(x - 0.1, y - 0.1, x + 0.1, y + 0.1);
    Artwork empty = Artwork.of(40, 40, new double[0], new int[] {0}, 0, List.of());
    assertThat(Figures.differenceMm2(Figures.of(sheet, 0, 0), Figures.of(empty, 0, 0), there))
        .isCloseTo(0.04, within(1e-9));
  }

  @ParameterizedTest
  @MethodSource("lined")
  void drawingReadsBackWithTheSameArea(LinedMotif motif) throws Exception {
    for (boolean clear : new boolean[] {false, true}) {
      MotifDesign design = new MotifDesign(motif, 12, clear);
      Artwork drawn = design.sheet(33.5, 27.25);
      String svg = ArtworkSvg.text(drawn, "a < b & c", design.told());
      assertThat(svg).contains("width=\"33.5mm\" height=\"27.25mm\"", "a &lt; b &amp; c");
      assertThat(svg).contains("<desc>" + design.told() + "</desc>");
      Artwork read =
          ArtworkFile.read(
              svg.getBytes(StandardCharsets.UTF_8),
              Path.of("own.svg"),
              ArtworkFile.Options.standard());
      assertThat(read.notes()).isEmpty();
      assertThat(read.widthMm()).isCloseTo(33.5, within(1e-9));
      assertThat(read.opaqueAreaMm2()).isCloseTo(drawn.opaqueAreaMm2(), within(1e-5));
      assertThat(read.edgeLengthMm()).isCloseTo(drawn.edgeLengthMm(), within(1e-4));
    }
  }

  @ParameterizedTest
  @MethodSource("lined")
  void areaGrowsWithTheLine(LinedMotif motif) {
    double last = 0;
    for (int i = 1; i < 10; i++) {
      LinedMotif wider = motif.withLine(0.1 * i * motif.widestLineMm());
      assertThat(wider.widestLineMm()).isEqualTo(motif.widestLineMm());
      double now = new MotifDesign(wider, 0, false).sheet(41, 37).opaqueAreaMm2();
      assertThat(now).as(wider.toString()).isGreaterThan(last);
      last = now;
    }
  }

  @Test
  void wovenBandsPassOverAndUnderByTurns() {
    Artwork sheet = new MotifDesign(new Woven(6, 4, 0.5), 0, false).sheet(36, 36);
    Random random = new Random(5);
    for (int i = -2; i <= 2; i++) {
      for (int j = -2; j <= 2; j++) {
        // beside each crossing lies the gap of the band that is under there
        boolean uprightUnder = (i + j) % 2 == 0;
        double along = 2.01 + 0.48 * random.nextDouble();
        double across = 1.9 * (2 * random.nextDouble() - 1);
        double x = 6 * i + (uprightUnder ? across : along);
        double y = 6 * j + (uprightUnder ? along : across);
        assertThat(covers(sheet, x, y)).as(i + ", " + j).isFalse();
        assertThat(
                covers(
                    sheet,
                    6 * i + (uprightUnder ? along : across),
                    6 * j + (uprightUnder ? across : along)))
            .as(i + ", " + j)
            .isTrue();
      }
    }
  }

  private static boolean covers(Artwork a, double x, double y) {
    boolean inside = false;
    for (int r = 0; r < a.ringCount(); r++) {
      int last = a.ringStarts()[r + 1] - 1;
      for (int p = a.ringStarts()[r], q = last; p <= last; q = p++) {
        double y0 = a.xy()[2 * q + 1];
        double y1 = a.xy()[2 * p + 1];
        double x0 = a.xy()[2 * q];
        if ((y0 > y) != (y1 > y) && x < x0 + (y - y0) / (y1 - y0) * (a.xy()[2 * p] - x0)) {
          inside = !inside;
        }
      }
    }
    return inside;
  }

  @Test
  void ringsOfEveryRosettePassOverAndUnderByTurns() {
    for (int n = Rosettes.FEWEST; n <= Rosettes.MOST; n++) {
      for (double away : new double[] {0.6, 0.9, 1.05, 1.31}) {
        if (away * Math.sin(Math.PI / n) < 0.99) {
          assertThat(new Lacing(n, 3 * away, 3).alternates()).as(n + " at " + away).isTrue();
        }
      }
      LinedMotif usual =
          (LinedMotif)
              MotifKind.ROSETTES.of(
                  new MotifValues(Map.of(MotifParameter.RINGS, String.valueOf(n))));
      assertThat(usual.lineMm()).isGreaterThan(0.15);
    }
  }

  /** Each place asked by itself: in a ring's band, and not under another nor in its gap. */
  @Test
  void rosetteCoversWhatTheRuleSaysPlaceByPlace() {
    Rosettes rosettes = new Rosettes(20, 0.9, 8, 18, 3.4, 0.25);
    Artwork sheet = new MotifDesign(rosettes, 0, false).sheet(18.9, 18.9);
    double away = 9 - 3.4;
    List<Lacing.Crossing> crossings = rosettes.crossings();
    assertThat(crossings).hasSize(16);
    long seed = 11;
    Random random = new Random(seed);
    int asked = 0;
    for (int i = 0; i < 20_000; i++) {
      double x = 18 * (random.nextDouble() - 0.5);
      double y = 18 * (random.nextDouble() - 0.5);
      boolean[] band = new boolean[8];
      boolean doubtful = false;
      double[] off = new double[8];
      for (int k = 0; k < 8; k++) {
        double a = Math.PI / 2 + k * Math.PI / 4;
        off[k] = Math.abs(Math.hypot(x - away * Math.cos(a), y - away * Math.sin(a)) - 3.4);
        band[k] = off[k] < 0.45;
        doubtful |= Math.abs(off[k] - 0.45) < 0.01 || Math.abs(off[k] - 0.7) < 0.01;
      }
      boolean covered = false;
      for (int k = 0; k < 8; k++) {
        boolean hidden = false;
        for (Lacing.Crossing c : crossings) {
          boolean near = Math.hypot(c.x() - x, c.y() - y) < 1.6;
          hidden |= near && c.under() == k && off[c.over()] < 0.7;
        }
        covered |= band[k] && !hidden;
      }
      if (!doubtful && Math.hypot(x, y) < 9.9) {
        asked++;
        assertThat(covers(sheet, x, y))
            .as("seed " + seed + ", place " + x + ", " + y)
            .isEqualTo(covered);
      }
    }
    assertThat(asked).isGreaterThan(13_000);
  }

  @Test
  void dotsKeepTheirDistanceAcrossBordersAndFollowTheSeed() {
    for (long seed = 1; seed <= 20; seed++) {
      double side = 10 + seed;
      double[] p = ScatteredPoints.of(side, 2, seed);
      double nearest = Double.POSITIVE_INFINITY;
      for (int i = 0; i < p.length; i += 2) {
        for (int j = 0; j < i; j += 2) {
          double dx = Math.abs(p[i] - p[j]);
          double dy = Math.abs(p[i + 1] - p[j + 1]);
          nearest = Math.min(nearest, Math.hypot(Math.min(dx, side - dx), Math.min(dy, side - dy)));
        }
      }
      assertThat(nearest).as("seed " + seed).isBetween(2.0, 2.2);
      // random sequential packing of discs jams at a share of 0.547 (Feder 1980, from memory)
      double share = p.length / 2 * Math.PI / (side * side);
      assertThat(share).as("seed " + seed).isBetween(0.44, 0.60);
      assertThat(ScatteredPoints.of(side, 2, seed)).containsExactly(p);
      assertThat(ScatteredPoints.of(side, 2, seed + 1000)).isNotEqualTo(p);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "bands|pitch=4 mm,line=4 mm|line 4 mm does not fit: above 0 mm, below 4 mm",
        "bands|pitch=4|'4' has no unit",
        "bands|pitch=4 A|A is not a unit of length",
        "bands|pitch=0.01 mm|pitch 0.01 mm does not fit: 0.05 to 1000 mm do",
        "bands|slope=30 deg|'slope' is not for bands, which take pitch, line",
        "chevrons|slope=85 deg|slope 85 deg does not fit: 1 to 80 deg do",
        "chevrons|length=0 mm|length 0 mm does not fit",
        "hexagons|line=-1 mm|line -1 mm does not fit",
        "waves|pitch=4 mm,line=3.9 mm|line 3.9 mm does not fit: above 0 mm, below 3.2 mm",
        "waves|height=20 mm|height 20 mm does not fit",
        "woven|pitch=6 mm,gap=0.5 mm,line=5 mm|below 5 mm, pitch less two gaps",
        "woven|gap=3 mm|gap 3 mm does not fit",
        "rosettes|rings=2|rings 2 does not fit: 3 to 12 do",
        "rosettes|rings=2.5|rings '2.5' is not a whole number",
        "rosettes|line=3 mm|what the crossings, the gap and the next rosette leave",
        "dots|pitch=4 mm,tile=5 mm|tile 5 mm does not fit: 12 to 800 mm do",
        "dots|seed=many|seed 'many' is not a whole number",
        "lettering|height=5 mm|lettering wants words",
        "lettering|text=Act 1,font=No Such Face|font 'No Such Face' is not installed",
        "lettering|text=Act 1,font=none.ttf|font 'none.ttf' cannot be read",
      })
  void valuesThatDoNotFitAreRefusedWithTheirUnit(String word, String typed, String told) {
    Map<MotifParameter, String> values = new java.util.EnumMap<>(MotifParameter.class);
    for (String pair : typed.split(",")) {
      values.put(
          MotifParameter.valueOf(pair.split("=")[0].toUpperCase(java.util.Locale.ROOT)),
          pair.split("=")[1]);
    }
    MotifKind kind = MotifKind.find(word).orElseThrow();
    assertThatThrownBy(
            () -> new MotifDesign(kind.of(new MotifValues(values)), 0, false).sheet(80, 20))
        .isInstanceOf(MotifFault.class)
        .hasMessageContaining(told);
  }

  @Test
  void sheetsThatAreTooLargeOrTooFineAreRefused() {
    MotifDesign fine = new MotifDesign(new Hexagons(0.05, 0.01), 0, false);
    assertThatThrownBy(() -> fine.sheet(100, 100))
        .hasMessageContaining("pitch 0.05 mm")
        .hasMessageContaining("1000000 fit");
    assertThatThrownBy(() -> fine.sheet(5000, 1)).hasMessageContaining("5000 x 1 mm");
    assertThatThrownBy(() -> new MotifDesign(new Bands(4, 1), Double.NaN, false))
        .hasMessageContaining("NaN deg");
    assertThatThrownBy(() -> new MotifDesign(new Lettering("A", "Serif", 5), 0, false).withLine(1))
        .hasMessageContaining("lettering has no line");
  }

  @Test
  void everyMotifMakesSomethingUsualWithoutValues() {
    List<String> made = new ArrayList<>();
    for (MotifKind kind : MotifKind.values()) {
      Map<MotifParameter, String> values =
          kind == MotifKind.LETTERING ? Map.of(MotifParameter.TEXT, "Act 1") : Map.of();
      Motif motif = kind.of(new MotifValues(values));
      assertThat(motif.kind()).isEqualTo(kind);
      Artwork sheet = new MotifDesign(motif, 0, false).sheet(60, 40);
      assertThat(sheet.opaqueFraction()).as(kind.word()).isBetween(0.02, 0.7);
      made.add(kind.word());
    }
    assertThat(made).isEqualTo(MotifKind.words()).hasSize(8);
    assertThat(Arrays.stream(MotifParameter.values()).map(MotifParameter::meaning))
        .doesNotHaveDuplicates();
  }
}
