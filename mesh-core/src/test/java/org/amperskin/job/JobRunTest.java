package org.amperskin.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import org.amperskin.geom.Progress;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.StepEstimate;
import org.amperskin.region.Region;
import org.amperskin.region.RegionKind;
import org.amperskin.report.JsonReports;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a job means, whatever way it is written down. */
class JobRunTest {
  @TempDir private Path folder;

  private static Path shipped(String name) {
    return TestMeshes.named(name).path();
  }

  private static Estimate run(Path job) throws Exception {
    return JobRun.of(JobFile.read(job, RecipeLibrary.standard()), Progress.SILENT);
  }

  private Path beside(String name, String text) throws Exception {
    for (String file : List.of("cube20.stl", "square20.svg")) {
      if (!Files.exists(folder.resolve(file))) {
        Files.copy(shipped("examples/" + file), folder.resolve(file));
      }
    }
    Path job = folder.resolve(name);
    Files.writeString(job, text);
    return job;
  }

  private static String cube() throws Exception {
    return Files.readString(shipped("examples/cube20.yaml"));
  }

  /** The answer without the names of files, which differ from folder to folder. */
  private static String answer(Path job) throws Exception {
    return JsonReports.plan(run(job)).replaceAll("\"(file|job)\" : \"[^\"]*\"", "\"$1\" : \"\"");
  }

  @Test
  void tapedCubeComesOutAsByHand() throws Exception {
    Estimate e = run(shipped("examples/cube20.yaml"));
    StepEstimate nickel = e.plan().steps().get(0);
    assertThat(nickel.openAreaMm2()).isCloseTo(2000, offset(1e-9));
    assertThat(nickel.currentA().orElseThrow()).isCloseTo(0.400, offset(1e-12));
    // 20 cm2 x 10 um x 8.90 g/cm3; Faraday's law with F = 96485.33 C/mol, M = 58.6934 g/mol
    assertThat(nickel.massG().orElseThrow()).isCloseTo(0.1780, offset(1e-9));
    assertThat(nickel.chargeAh().orElseThrow() * 3600)
        .isCloseTo(0.1780 * 2 * 96485.33 / (0.95 * 58.6934), offset(1e-2));
    assertThat(nickel.timeS().orElseThrow()).isCloseTo(1540, offset(0.5));
    assertThat(e.refused()).isFalse();
  }

  @Test
  void theSameJobTwiceGivesTheSameBytes() throws Exception {
    for (TestMeshes.Entry job : TestMeshes.group("job")) {
      assertThat(JsonReports.plan(run(job.path())))
          .as(job.file())
          .isEqualTo(JsonReports.plan(run(job.path())));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"demo/visor.yaml", "demo/shoulder-plate-wrapped.yaml", "demo/visor-draped.yaml"})
  void threadsDoNotChangeABit(String name) throws Exception {
    Path job = shipped(name);
    String here = JsonReports.plan(run(job));
    for (int threads : name.equals("demo/visor.yaml") ? new int[] {1, 2, 5} : new int[] {1}) {
      ForkJoinPool pool = new ForkJoinPool(threads);
      try {
        assertThat(pool.submit(() -> JsonReports.plan(run(job))).get())
            .as(threads + " threads")
            .isEqualTo(here);
      } finally {
        pool.shutdownNow();
      }
    }
  }

  @Test
  void commentsAndBlankLinesDoNotMatter() throws Exception {
    String bare = cube().replaceAll("(?m)#.*$", "").replaceAll("(?m)^\\s*\\R", "");
    assertThat(bare).doesNotContain("#").isNotEqualTo(cube());
    String wordy = cube().replaceAll("(?m)$", "   # said twice").replaceFirst("^", "# more\n\n");
    String expected = answer(beside("a.yaml", cube()));
    assertThat(answer(beside("b.yaml", bare))).isEqualTo(expected);
    assertThat(answer(beside("c.yaml", wordy))).isEqualTo(expected);
  }

  @Test
  void orderOfTheSectionsDoesNotMatter() throws Exception {
    // a section starts at each line that begins with a letter
    List<String> sections = new ArrayList<>(List.of(cube().split("(?m)^(?=[a-z])")));
    sections.remove(0);
    assertThat(sections).hasSize(3);
    String expected = answer(beside("a.yaml", cube()));
    for (long seed = 1; seed <= 6; seed++) {
      Collections.shuffle(sections, new Random(seed));
      assertThat(answer(beside("b.yaml", String.join("", sections))))
          .as("seed " + seed)
          .isEqualTo(expected);
    }
  }

  @Test
  void flowAndBlockStyleAreTheSame() throws Exception {
    String flow =
        """
        {part: {file: cube20.stl, unit: mm},
         film: {top: {artwork: "square20.svg", toward: '-z', use: stop-off}},
         step: [{name: nickel, recipe: nickel-watts, region: top, thickness: 10 um,
                 density: 2 A/dm2, efficiency: 95 %, metal-density: 8.90 g/cm3}]}
        """;
    assertThat(answer(beside("flow.yaml", flow))).isEqualTo(answer(beside("a.yaml", cube())));
  }

  @Test
  void byteOrderMarkAndCarriageReturnsAreRead() throws Exception {
    String windows = "\ufeff" + cube().replace("\n", "\r\n");
    assertThat(windows.getBytes(StandardCharsets.UTF_8)[0]).isEqualTo((byte) 0xef);
    assertThat(answer(beside("w.yaml", windows))).isEqualTo(answer(beside("a.yaml", cube())));
  }

  @Test
  void theSameQuantitiesInOtherUnitsAreTheSameJob() throws Exception {
    String other =
        cube()
            .replace("10 um", "0.01 mm")
            .replace("2 A/dm2", "20 mA/cm2")
            .replace("8.90 g/cm3", "8900 kg/m3");
    assertThat(other).isNotEqualTo(cube());
    StepEstimate a = run(beside("a.yaml", cube())).plan().steps().get(0);
    StepEstimate b = run(beside("b.yaml", other)).plan().steps().get(0);
    assertThat(b.currentA().orElseThrow()).isCloseTo(a.currentA().orElseThrow(), offset(1e-12));
    assertThat(b.timeS().orElseThrow()).isCloseTo(a.timeS().orElseThrow(), offset(1e-6));
    assertThat(b.massG().orElseThrow()).isCloseTo(a.massG().orElseThrow(), offset(1e-12));
  }

  @Test
  void pathsAreRelativeToTheJobFile() throws Exception {
    beside("a.yaml", cube());
    Path below = Files.createDirectories(folder.resolve("jobs/deep"));
    Path job = below.resolve("b.yaml");
    Files.writeString(
        job,
        cube().replace("cube20.stl", "../../cube20.stl").replace("square20", "../../square20"));
    assertThat(answer(job)).isEqualTo(answer(folder.resolve("a.yaml")));
    Estimate e = run(job);
    assertThat(e.part().file()).isEqualTo(below.resolve("../../cube20.stl"));
    String absolute = cube().replace("cube20.stl", folder.resolve("cube20.stl").toString());
    Files.writeString(job, absolute.replace("square20", "../../square20"));
    assertThat(answer(job)).isEqualTo(answer(folder.resolve("a.yaml")));
  }

  @Test
  void regionsAreWhatTheirWordsSay() throws Exception {
    Estimate e =
        run(
            beside(
                "r.yaml",
                """
                part: {file: cube20.stl, unit: mm}
                film:
                  light: {artwork: square20.svg, toward: +x, scale: 50 %, surround: clear}
                  tape: {artwork: square20.svg, toward: -z, use: stop-off}
                region:
                  low: {within: {plane: {point: 0 0 5 mm, normal: -z}}}
                  cap: {within: {facing: {direction: +z, within: 1 deg}}}
                  not cap: {except: {facing: {direction: +z, within: 1 deg}}}
                  corner: {within: {box: {from: -1 -1 -1 mm, to: 10 10 10 mm}}}
                  band:
                    within:
                      - plane: {point: 0 0 5 mm, normal: +z}
                      - plane: {point: 0 0 15 mm, normal: -z}
                  both: {film: [light, tape]}
                  few: {film: light, within: {plane: {point: 0 0 5 mm, normal: -z}}}
                """));
    assertThat(e.regions().keySet())
        .containsExactly(
            "all", "light", "tape", "low", "cap", "not cap", "corner", "band", "both", "few");
    assertThat(open(e, "all")).isEqualTo(2400);
    assertThat(open(e, "low")).isCloseTo(400 + 4 * 20 * 5, offset(1e-9));
    assertThat(open(e, "cap")).isCloseTo(400, offset(1e-9));
    assertThat(open(e, "not cap")).isCloseTo(2000, offset(1e-9));
    assertThat(open(e, "corner")).isCloseTo(3 * 100, offset(1e-9));
    assertThat(open(e, "band")).isCloseTo(4 * 20 * 10, offset(1e-9));
    // the square at half size shades 10 x 10 mm in the middle of one side
    assertThat(open(e, "light")).isCloseTo(400 - 100, offset(1e-9));
    assertThat(open(e, "few")).isCloseTo(20 * 5, offset(1e-9));
    assertThat(open(e, "tape")).isCloseTo(2000, offset(1e-9));
    // tape covers first, light decides the rest; what neither reaches stays under the resist
    assertThat(open(e, "both")).isCloseTo(300, offset(1e-9));
    for (Region r : e.regions().values()) {
      double sum = 0;
      for (RegionKind kind : RegionKind.values()) {
        sum += r.split().areaMm2(kind);
      }
      assertThat(sum).isCloseTo(2400, offset(1e-9));
    }
  }

  private static double open(Estimate e, String region) {
    return e.regions().get(region).openAreaMm2();
  }

  @Test
  void resistOfTheJobDecidesWhatTheFilmMeans() throws Exception {
    String film =
        "part: {file: cube20.stl, unit: mm}\nfilm:\n  f: {artwork: square20.svg, toward: -z}\n";
    Estimate positive = run(beside("p.yaml", film + "resist: {kind: positive}\n"));
    Estimate negative = run(beside("n.yaml", film + "resist: {kind: negative}\n"));
    assertThat(open(positive, "f")).isZero();
    assertThat(open(negative, "f")).isCloseTo(2400, offset(1e-9));
    assertThat(answer(beside("d.yaml", film))).isEqualTo(answer(folder.resolve("p.yaml")));
  }

  @Test
  void onlyTheFirstTankStepStartsOnPaint() throws Exception {
    Estimate e = run(shipped("demo/visor.yaml"));
    StepEstimate copper =
        e.plan().steps().stream().filter(s -> s.name().equals("copper build")).findFirst().get();
    assertThat(copper.ramp()).hasSizeGreaterThan(1);
    String twice =
        """
        part: {file: cube20.stl, unit: mm}
        paint: {sheet-resistance: 1 ohm/sq}
        step:
          - {recipe: copper-acid-high-throw, thickness: 20 um}
          - {recipe: copper-acid-decorative, thickness: 20 um}
        """;
    List<StepEstimate> steps = run(beside("two.yaml", twice)).plan().steps();
    assertThat(steps.get(0).ramp()).isNotEmpty();
    assertThat(steps.get(1).ramp()).isEmpty();
  }

  @Test
  void anUncertainSkinIsSaidAndNotHidden() throws Exception {
    Files.copy(shipped("small/v11_open_box.stl"), folder.resolve("open.stl"));
    Estimate e =
        run(
            beside(
                "o.yaml",
                "part: {file: open.stl}\nstep: [{recipe: nickel-watts, thickness: 5 um}]\n"));
    // the five sides of 100 mm2 and the lid that a slicer would put on
    assertThat(e.part().skin().areaMm2()).isCloseTo(600, offset(1e-9));
    assertThat(e.part().unitAssumed()).isTrue();
    assertThat(String.join("\n", e.warnings()))
        .contains("100.000 mm2 of the skin close holes where faces are missing");
  }

  @Test
  void aSupplyThatIsTooSmallIsSaidWithNumbers() throws Exception {
    Estimate e = run(beside("s.yaml", cube() + "supply: {current: 0.3 A, voltage: 2 V}\n"));
    assertThat(e.warnings())
        .anySatisfy(w -> assertThat(w).contains("nickel wants 0.400 A", "supply gives 0.300 A"))
        .anySatisfy(w -> assertThat(w).contains("nickel wants 2.73 V", "supply gives 2.00 V"));
  }

  @Test
  void comparisonsMatchStepsByName() throws Exception {
    Estimate a = run(shipped("examples/cube20.yaml"));
    Estimate b = run(shipped("examples/cube20-whole.yaml"));
    Comparison c = Comparison.of(List.of(a, b));
    Comparison.Row current =
        c.rows().stream()
            .filter(r -> r.label().equals("nickel: current"))
            .findFirst()
            .orElseThrow();
    assertThat(current.values().get(0).getAsDouble()).isCloseTo(0.400, offset(1e-12));
    assertThat(current.values().get(1).getAsDouble()).isCloseTo(0.480, offset(1e-12));
    assertThat(current.spread().getAsDouble()).isCloseTo(0.080, offset(1e-12));
    Comparison.Row film =
        c.rows().stream().filter(r -> r.label().equals("stopped off")).findFirst().orElseThrow();
    assertThat(film.values().get(0).getAsDouble()).isCloseTo(400, offset(1e-9));
    assertThat(film.values().get(1)).isEmpty();
    assertThat(film.spread()).isEmpty();
  }

  @Test
  void jobsBelowTestMeshesAreCountedAndAllRun() throws Exception {
    List<TestMeshes.Entry> jobs = TestMeshes.group("job");
    assertThat(jobs).hasSize(12);
    for (TestMeshes.Entry job : jobs) {
      Estimate e = run(job.path());
      assertThat(e.refused()).as(job.file()).isFalse();
      assertThat(e.plan().steps()).as(job.file()).isNotEmpty();
      assertThat(e.part().skin().wettedAreaMm2()).as(job.file()).isPresent();
    }
  }

  @Test
  void aSupplyTooCoarseForASettingIsToldWithItsStep() throws Exception {
    String job =
        """
        part: {file: cube20.stl, unit: mm}
        supply: {current: 5 A, current-step: %s}
        step:
          - {recipe: copper-acid-high-throw, thickness: 20 um, density: 1.5 A/dm2}
        """;
    // 0.24 dm2 take 0.36 A: a step of 10 mA is 2.8 % of it, 50 mA are 14 %, 0.5 A is above it
    assertThat(run(beside("fine.yaml", job.formatted("10 mA"))).warnings()).isEmpty();
    assertThat(run(beside("rough.yaml", job.formatted("50 mA"))).warnings())
        .singleElement()
        .asString()
        .contains("wants 0.360 A", "steps of 0.0500 A", "14 % a step", "dummy");
    assertThat(run(beside("blind.yaml", job.formatted("0.5 A"))).warnings())
        .singleElement()
        .asString()
        .contains("below the supply's step");
  }
}
