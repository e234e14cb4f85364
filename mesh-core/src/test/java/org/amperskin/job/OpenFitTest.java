package org.amperskin.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.geom.Progress;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.ArtworkFile;
import org.amperskin.pattern.ArtworkSvg;
import org.amperskin.pattern.motif.Bands;
import org.amperskin.pattern.motif.Chevrons;
import org.amperskin.pattern.motif.Dots;
import org.amperskin.pattern.motif.Hexagons;
import org.amperskin.pattern.motif.LinedMotif;
import org.amperskin.pattern.motif.MotifDesign;
import org.amperskin.pattern.motif.Rosettes;
import org.amperskin.pattern.motif.Waves;
import org.amperskin.pattern.motif.Woven;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.region.Region;
import org.amperskin.region.RegionKind;
import org.amperskin.testmeshes.TestMeshes;
import org.amperskin.yaml.Place;
import org.amperskin.yaml.YamlFault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A wanted open share is met on the part, and one that cannot be had is refused with its range. */
class OpenFitTest {
  private static final Map<String, MeasuredPart> PARTS = new HashMap<>();

  @TempDir private Path folder;

  private static Job demo(String name) throws Exception {
    Path visor = TestMeshes.named("demo/visor.stl").path();
    return JobFile.read(visor.resolveSibling(name + ".yaml"), RecipeLibrary.standard());
  }

  private static MeasuredPart part(Job job) throws Exception {
    MeasuredPart known = PARTS.get(job.name());
    if (known == null) {
      known = MeasuredPart.of(job.part(), MeshDiagnosis.Search.ALL, true, Progress.SILENT);
      PARTS.put(job.name(), known);
    }
    return known;
  }

  private static MotifDesign design(String word) {
    LinedMotif motif =
        switch (word) {
          case "bands" -> new Bands(5, 1);
          case "chevrons" -> new Chevrons(6, 1, 40, 24);
          case "hexagons" -> new Hexagons(7, 1);
          case "waves" -> new Waves(6, 1, 36, 6);
          case "woven" -> new Woven(8, 4, 0.6);
          case "rosettes" -> new Rosettes(24, 0.5, 8, 22, 4.2, 0.2);
          default -> new Dots(4, 1, 48, 3);
        };
    // dots and rosettes cannot cover 65 %, but clear ones can open 35 %
    boolean clear = word.equals("dots");
    return new MotifDesign(motif, word.equals("woven") ? 30 : 0, clear);
  }

  private static Job.MotifSpec spec(MotifDesign design, double open) {
    return new Job.MotifSpec(
        design,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.of(open),
        Optional.empty(),
        new Place("test", 1, 1));
  }

  /**
   * The line found, written as a drawing, read back and laid on the part by a job that knows
   * nothing of motifs, opens the share asked for.
   */
  @ParameterizedTest
  @CsvSource({
    "visor, chevrons, chevrons, 0.35",
    "visor, chevrons, hexagons, 0.35",
    "visor, chevrons, waves, 0.35",
    "visor, chevrons, woven, 0.35",
    "visor, chevrons, dots, 0.35",
    "shoulder-plate, chevrons, chevrons, 0.35",
    "shoulder-plate, chevrons, bands, 0.35",
    "shoulder-plate, chevrons, woven, 0.35",
    "shoulder-plate, chevrons, dots, 0.35",
    "shoulder-plate, chevrons, rosettes, 0.86",
  })
  void shareIsMetOnTheDemoParts(String name, String film, String word, double open)
      throws Exception {
    Job job = demo(name);
    MeasuredPart part = part(job);
    Job.FilmSpec plain = job.films().get(film);
    OpenFit fit =
        JobRun.motif(
            job.with(film, plain.with(spec(design(word), open))), film, part, Progress.SILENT);
    assertThat(fit.share().open()).isCloseTo(open, within(0.00001));
    assertThat(fit.tries()).isBetween(3, 14);
    Path svg = folder.resolve("found.svg");
    Files.writeString(svg, ArtworkSvg.text(fit.artwork(), word, fit.design().told()));
    String text =
        "part: {file: '%s', unit: mm}\nfilm:\n  f: {artwork: '%s', toward: +y, up: +z, centre: 0 0 0 mm}\n"
            .formatted(job.part().file().toAbsolutePath(), svg);
    Files.writeString(folder.resolve("job.yaml"), text);
    Job other = JobFile.read(folder.resolve("job.yaml"), RecipeLibrary.standard());
    Region region = JobRun.of(other, part, Progress.SILENT).regions().get("f");
    double exposed = region.split().areaMm2(RegionKind.EXPOSED);
    double masked = region.split().areaMm2(RegionKind.MASKED);
    assertThat(exposed / (exposed + masked)).isCloseTo(open, within(0.001));
    assertThat(exposed + masked).isGreaterThan(5000);
  }

  /** The film bends round the front; the share is counted on the same skin again. */
  @Test
  void shareIsMetUnderAFilmThatIsWrapped() throws Exception {
    Job visor = demo("visor");
    String text =
        "part: {file: '%s', unit: mm}\n".formatted(visor.part().file().toAbsolutePath())
            + "film:\n  f:\n    lies: wrapped\n    up: +z\n"
            + "    patch: [{facing: {direction: -y, within: 70 deg}}]\n"
            + "    motif: {bands: {pitch: 12 mm, open: 35 %}}\n";
    Files.writeString(folder.resolve("bent.yaml"), text);
    Job bent = JobFile.read(folder.resolve("bent.yaml"), RecipeLibrary.standard());
    Region region = JobRun.of(bent, part(visor), Progress.SILENT).regions().get("f");
    double exposed = region.split().areaMm2(RegionKind.EXPOSED);
    double masked = region.split().areaMm2(RegionKind.MASKED);
    assertThat(exposed / (exposed + masked)).isCloseTo(0.35, within(0.0001));
    assertThat(exposed + masked).isGreaterThan(10_000);
  }

  /** On a sheet that lies flat the closed form of the bands is the answer. */
  @Test
  void flatSheetGivesTheClosedForm() {
    OpenFit fit =
        OpenFit.solve(new MotifDesign(new Bands(6, 1), 0, false), 60, 60, 0.35, OpenFit.Share::of);
    assertThat(fit.design().lined().lineMm()).isCloseTo(6 * 0.65, within(1e-4));
    OpenFit clear =
        OpenFit.solve(new MotifDesign(new Bands(6, 1), 0, true), 60, 60, 0.35, OpenFit.Share::of);
    assertThat(clear.design().lined().lineMm()).isCloseTo(6 * 0.35, within(1e-4));
    // (1 - (p - w)^2 / p^2) covered, so w = p (1 - sqrt(open))
    double side = 7 * 8;
    OpenFit cells =
        OpenFit.solve(
            new MotifDesign(new Hexagons(7, 1), 0, false),
            side,
            7 * Math.sqrt(3) * 5,
            0.35,
            OpenFit.Share::of);
    assertThat(cells.design().lined().lineMm()).isCloseTo(7 * (1 - Math.sqrt(0.35)), within(1e-4));
  }

  @Test
  void shareThatCannotBeHadIsRefusedWithItsRange() {
    MotifDesign dots = design("dots");
    MotifDesign opaque = new MotifDesign(dots.motif(), 0, false);
    assertThatThrownBy(() -> OpenFit.solve(opaque, 96, 96, 0.35, OpenFit.Share::of))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageMatching(
            "open 35 % cannot be had with dots: it runs from 100.00 % \\(line 0.01 mm\\)"
                + " to 4\\d\\.\\d\\d % \\(line 3.99 mm\\)");
    assertThatThrownBy(() -> OpenFit.solve(opaque, 96, 96, 1.2, OpenFit.Share::of))
        .hasMessageContaining("open 120 % does not fit");
    assertThatThrownBy(
            () -> OpenFit.solve(opaque, 96, 96, 0.35, sheet -> new OpenFit.Share(0, 0, 0)))
        .hasMessageContaining("reaches 0 mm2");
  }

  private Estimate run(String film) throws Exception {
    String text =
        "part: {file: '%s', unit: mm}\n".formatted(TestMeshes.named("examples/cube20.stl").path())
            + "film:\n  f:\n    toward: -z\n"
            + film;
    Files.writeString(folder.resolve("cube.yaml"), text);
    return JobRun.of(
        JobFile.read(folder.resolve("cube.yaml"), RecipeLibrary.standard()), Progress.SILENT);
  }

  /** The top of a cube lies flat: 400 mm2, bands of 4 mm pitch, so 35 % are open by hand. */
  @Test
  void jobSolvesTheLineAndTellsIt() throws Exception {
    Estimate e = run("    motif: {bands: {pitch: 4 mm, open: 35 %}}\n");
    Region region = e.regions().get("f");
    assertThat(region.openAreaMm2()).isCloseTo(140, within(0.001));
    assertThat(region.split().areaMm2(RegionKind.MASKED)).isCloseTo(260, within(0.001));
    assertThat(e.artworkNotes())
        .satisfiesExactly(
            n -> assertThat(n).contains("film f: bands, pitch 4 mm, line 2.6 mm", "20 x 20 mm"),
            n ->
                assertThat(n)
                    .contains("line 2.6000 mm solved so that 35 % of region f", "35.0000 %"));
  }

  /** Half the top is in the region: bands along x, the region's border on a band's edge. */
  @Test
  void shareCountsInTheRegionThatIsNamed() throws Exception {
    Estimate e =
        run(
            "    motif: {bands: {pitch: 4 mm, open: 25 %, region: half, size: 20 x 20 mm}}\n"
                + "region:\n  half:\n    film: f\n"
                + "    within: {plane: {point: 0 10 0 mm, normal: +y}}\n");
    Region half = e.regions().get("half");
    double open = half.split().areaMm2(RegionKind.EXPOSED);
    double masked = half.split().areaMm2(RegionKind.MASKED);
    assertThat(open + masked).isCloseTo(200, within(1e-6));
    assertThat(open).isCloseTo(50, within(0.001));
  }

  @Test
  void motifOfAGivenLineIsDrawnAsASheet() throws Exception {
    Estimate e =
        run(
            "    motif: {hexagons: {pitch: 5 mm, line: 1 mm, size: 10 x 10 mm, lines: clear}}\n"
                + "    repeat: 2 x 2\n");
    Artwork one = new MotifDesign(new Hexagons(5, 1), 0, true).sheet(10, 10);
    assertThat(e.regions().get("f").openAreaMm2())
        .isCloseTo(4 * (100 - one.opaqueAreaMm2()), within(1e-5));
    assertThat(e.artworkNotes())
        .anySatisfy(n -> assertThat(n).contains("repeats show a seam", "5 x 8.66025 mm"));
  }

  @Test
  void whatCannotBeSolvedIsToldAtItsPlace() {
    assertThatThrownBy(() -> run("    motif:\n      dots: {pitch: 4 mm, open: 5 %}\n"))
        .isInstanceOf(YamlFault.class)
        .hasMessageContaining(":6:")
        .hasMessageContaining("film f: open 5 % cannot be had with dots");
    assertThatThrownBy(
            () ->
                run(
                    "    motif: {dots: {open: 70 %, region: both}}\n"
                        + "  g: {toward: -z, motif: {bands: {open: 50 %}}}\n"
                        + "region: {both: {film: [f, g]}}\n"))
        .hasMessageContaining("region 'both' has film 'g' too");
  }

  @Test
  void drawingReadByNameStillHasItsNotes() throws Exception {
    Artwork read =
        ArtworkFile.read(
            ArtworkSvg.text(new MotifDesign(new Bands(4, 1), 0, false).sheet(8, 8), "t", "d")
                .getBytes(StandardCharsets.UTF_8),
            Path.of("t.svg"),
            ArtworkFile.Options.standard());
    assertThat(read.notes()).isEqualTo(List.of());
  }
}
