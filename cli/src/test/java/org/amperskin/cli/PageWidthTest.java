package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Everything for people fits a terminal of 80 columns. */
class PageWidthTest {
  private static final int COLUMNS = 80;

  @TempDir private Path folder;

  private static void fits(Cli.Result shown) {
    assertThat(shown.code()).as(shown.err()).isIn(0, 1);
    assertThat(shown.out()).isNotBlank().endsWith("\n").doesNotContain("\t", "NaN", "Infinity");
    for (String line : shown.out().split("\n")) {
      // only one word that is longer than the page, such as a path, may stand out
      boolean oneWord = !line.strip().contains(" ");
      assertThat(line.length() <= COLUMNS || oneWord)
          .as("%d columns: %s", line.length(), line)
          .isTrue();
      assertThat(line).isEqualTo(line.stripTrailing());
    }
  }

  static List<Path> jobs() {
    return ExampleFilesTest.jobs();
  }

  static List<String> verbs() {
    return HelpTest.described().toList();
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void plans(Path job) {
    fits(Cli.run("plan", job.toString()));
    fits(Cli.run("plan", "--short", "--start", "23:55", job.toString()));
  }

  @Test
  void comparisonsOfTwoToSixJobs() {
    List<Path> jobs = jobs();
    assertThat(jobs).hasSize(12);
    // one row of columns, a full one, one that goes on below, and two full ones
    for (int n : new int[] {2, 3, 4, 6}) {
      List<String> words = new java.util.ArrayList<>(List.of("compare"));
      jobs.subList(0, n).forEach(job -> words.add(job.toString()));
      fits(Cli.run(words.toArray(String[]::new)));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "demo/visor.stl",
        "small/v07_cavity.stl",
        "small/v10_inverted.stl",
        "small/v11_open_box.stl",
        "small/v12_dup_faces.stl",
        "small/v17_quad_neg.obj"
      })
  void measuresAndQuickPlans(String file) {
    String part = "test-meshes/" + file;
    fits(Cli.run("measure", part));
    fits(Cli.run("measure", "--quick", part));
    fits(Cli.run("measure", "--no-overlaps", "--unit", "in", part));
    for (String scale : new String[] {"10%", "100%", "5000%"}) {
      fits(Cli.run("plan", part, "--metal", "copper", "--thickness", "60um", "--scale", scale));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"positive", "negative", "stop-off"})
  void masks(String use) {
    fits(
        Cli.run(
            "mask",
            "test-meshes/demo/visor.stl",
            "--artwork",
            "test-meshes/demo/visor-chevrons.svg",
            "--toward",
            "+y",
            "--use",
            use));
  }

  @ParameterizedTest
  @ValueSource(strings = {"visor", "visor-lattice", "shoulder-plate", "shoulder-plate-lattice"})
  void filmsAndStencils(String name) {
    String job = "test-meshes/demo/" + name + ".yaml";
    fits(Cli.run("film", job, "--paper", "Letter", "--portrait", "--measured", "99.6 x 100.2 mm"));
    fits(Cli.run("film", job, "--test-strips"));
    fits(Cli.run("film", job, "--film", name.contains("lattice") ? "lattice" : "chevrons"));
    fits(Cli.run("rack", job, job));
    fits(Cli.run("stencil", job, "--least", "2mm", "--bridges", "0.8mm"));
    fits(Cli.run("stencil", job, "--mirror", "yes"));
  }

  @Test
  void recipes() {
    Cli.Result all = Cli.run("recipes");
    fits(all);
    List<String> ids =
        all.out().lines().takeWhile(l -> !l.isBlank()).map(l -> l.split(" ")[0]).toList();
    assertThat(ids).hasSizeGreaterThanOrEqualTo(10).contains("nickel-watts", "palladium-brush");
    ids.forEach(id -> fits(Cli.run("recipes", id)));
  }

  @ParameterizedTest
  @MethodSource("verbs")
  void helpOfEveryVerb(String verb) {
    fits(Cli.run(verb, "--help"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "mix copper-acid-high-throw 2L",
        "mix copper-acid-decorative 500mL --chloride NaCl --acid 37%",
        "mix nickel-watts 1500L",
        "mix nickel-sulfamate 5mL",
        "mix developer --have \"NaOH 3.5 g\"",
        "mix copper-acid-high-throw 2L --strength \"sulfuric acid 260 g/L\"",
        "log list --log test-meshes/demo/bench-log.db",
        "log show 1 --log test-meshes/demo/bench-log.db",
        "log show 8 --log test-meshes/demo/bench-log.db",
        "log show 9 --log test-meshes/demo/bench-log.db",
        "log show 10 --log test-meshes/demo/bench-log.db",
        "log show 13 --log test-meshes/demo/bench-log.db",
        "log show \"small nickel\" --log test-meshes/demo/bench-log.db",
        "log calibrate \"big copper\" --log test-meshes/demo/bench-log.db",
        "log calibrate \"dark brush\" --log test-meshes/demo/bench-log.db"
      })
  void mixesAndTheLog(String line) {
    fits(Cli.run(Words.of(line)));
  }

  @Test
  void helpOfTheLog() {
    HelpTest.ofTheLog().forEach(verb -> fits(Cli.run("log", verb, "--help")));
  }

  @Test
  void helpOfTheProgram() {
    fits(Cli.run("--help"));
  }

  @Test
  void faultyPartsLongNamesAndRefusedSteps() throws Exception {
    Path part = folder.resolve("a-print-file-with-a-name-that-nobody-would-want-to-type-twice.stl");
    Files.copy(Cli.ROOT.resolve("test-meshes/small/v11_open_box.stl"), part);
    Path job = folder.resolve("a-job-file-with-a-name-that-nobody-would-want-to-type-twice.yaml");
    Files.writeString(
        job,
        """
        part: {file: %s}
        supply: {current: 10 mA, voltage: 1 V}
        region:
          a region with a name that is much too long for its column:
            within: {plane: {point: 0 0 5 mm, normal: +z}}
        step:
          - name: a step with a name that is much too long for its column
            recipe: nickel-watts
            thickness: 5 um
            region: a region with a name that is much too long for its column
          - {recipe: chromium-brush-dark-trivalent}
          - {work: etch}
        """
            .formatted(part.getFileName()));
    Cli.Result plan = Cli.run("plan", job.toString());
    assertThat(plan.code()).isEqualTo(1);
    fits(plan);
    assertThat(plan.out())
        .contains(" 1  a step with a name~", "!2  ", "no figure", "supply gives 0.0100 A");
    fits(Cli.run("compare", job.toString(), job.toString(), job.toString()));
    fits(Cli.run("measure", part.toString()));
  }
}
