package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the program's end tells the shell, one code after the other. */
class ExitCodeTest {
  private static final String CUBE = "test-meshes/examples/cube20.stl";
  private static final String SQUARE = "test-meshes/examples/square20.svg";
  private static final String CUBE_JOB = "test-meshes/examples/cube20.yaml";

  @TempDir private Path folder;

  private String job(String text) throws Exception {
    Path file = folder.resolve("job.yaml");
    Files.writeString(file, text.replace("CUBE", Cli.ROOT.resolve(CUBE).toString()));
    return file.toString();
  }

  private static void complains(Cli.Result shown, int code, String... words) {
    assertThat(shown.code()).as(shown.err()).isEqualTo(code);
    assertThat(shown.out()).isEmpty();
    assertThat(shown.err()).startsWith("amperskin: ").contains(words).doesNotContain("\tat ");
  }

  @Test
  void volumeOfOverlappingBodiesIsToldToCountTheOverlapTwice() throws Exception {
    Path file = folder.resolve("two.obj");
    StringBuilder two = new StringBuilder();
    for (int x = 0; x <= 5; x += 5) {
      for (int v = 0; v < 8; v++) {
        two.append("v " + (x + 10 * (v & 1)) + " " + 5 * (v & 2) + " " + 2.5 * (v & 4) + "\n");
      }
      two.append("f -8 -6 -5 -7\nf -4 -3 -1 -2\nf -8 -7 -3 -4\n");
      two.append("f -6 -2 -1 -5\nf -8 -4 -2 -6\nf -7 -5 -1 -3\n");
    }
    Files.writeString(file, two);
    Cli.Result shown = Cli.run("measure", file.toString());
    assertThat(shown.out()).contains("2.000 cm3, what bodies share counted twice");
    assertThat(Cli.run("measure", CUBE).out()).contains("8.000 cm3\n");
  }

  @Test
  void noTileAtAllIsToldWithWhatFits() {
    Cli.Result shown =
        Cli.run(Words.of("mask " + CUBE + " --artwork " + SQUARE + " --toward -z --repeat 0x3"));
    complains(shown, 2, "repeat 0x3", "at least one column and one row");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--help",
        "--version",
        "measure " + CUBE,
        "measure --quick " + CUBE,
        "mask " + CUBE + " --artwork " + SQUARE + " --toward -z",
        "plan " + CUBE_JOB,
        "plan " + CUBE + " --metal nickel --thickness 10um",
        "plan " + CUBE + " --recipe nickel-watts --charge 3A.h",
        "compare " + CUBE_JOB + " " + CUBE_JOB,
        "recipes",
        "film test-meshes/examples/every-key.yaml --layers 1 --mirror no",
        "film test-meshes/demo/shoulder-plate-wrapped.yaml --test-strips",
        "film " + CUBE_JOB + " --film top",
        "stencil " + CUBE_JOB,
        "recipes nickel-watts",
        "mix nickel-watts 2L",
        "mix nickel-watts --have \"nickel chloride 100 g\"",
        "mix copper-acid-high-throw --have \"battery acid 200 mL\" --acid 37%",
        "log list --log test-meshes/demo/bench-log.db",
        "log show 3 --log test-meshes/demo/bench-log.db",
        "log calibrate \"big copper\" --log test-meshes/demo/bench-log.db",
        "schema plan",
        "completion"
      })
  void anAnswerIsZero(String line) {
    Cli.Result shown = Cli.run(Words.of(line));
    assertThat(shown.code()).as(shown.err()).isZero();
    assertThat(shown.out()).isNotBlank();
    assertThat(shown.err()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"plan", "plan --json", "compare"})
  void aStepWithoutAFigureIsOneAndStillTellsHazardsAndTheCoupon(String verb) throws Exception {
    String file =
        job(
            """
            part: {file: CUBE}
            step:
              - {name: plain, recipe: nickel-watts, thickness: 5 um}
              - {name: dark, recipe: chromium-brush-dark-trivalent}
            """);
    String line = verb + " " + file + (verb.equals("compare") ? " " + CUBE_JOB : "");
    Cli.Result shown = Cli.run(Words.of(line));
    assertThat(shown.code()).isEqualTo(1);
    if (verb.equals("plan")) {
      String flat = shown.out().replaceAll("\\s+", " ");
      assertThat(flat)
          .contains("NO FIGURE", "Cut a coupon of known area", "Do it three times")
          .contains("trivalent chromium:", "hydrogen:", "waste:", "local rules:")
          .contains("1 step without a figure not included");
      // refused means refused: the second step shows no current, time or metal
      String second = shown.out().substring(shown.out().indexOf("\n2  dark"));
      assertThat(second.substring(0, second.indexOf("Materials")))
          .doesNotContain("  set ", "  time ", "  metal ", "  thickness ");
    } else if (verb.equals("plan --json")) {
      JsonNode dark = new ObjectMapper().readTree(shown.out()).at("/steps/1");
      assertThat(dark.get("refusal").asText()).contains("Cut a coupon");
      for (String key : new String[] {"currentA", "timeS", "chargeAh", "massG", "thicknessUm"}) {
        assertThat(dark.get(key).isNull()).as(key).isTrue();
      }
      assertThat(dark.findValuesAsText("hazard")).contains("trivalent chromium");
    }
  }

  @Test
  void aRegionWithoutOpenSkinIsOne() throws Exception {
    Cli.Result shown =
        Cli.run(
            "plan",
            job(
                """
                part: {file: CUBE}
                film:
                  f: {artwork: 'SQ', toward: -z}
                step:
                  - {recipe: nickel-watts, thickness: 5 um, region: f}
                """
                    .replace("SQ", Cli.ROOT.resolve(SQUARE).toString())));
    assertThat(shown.code()).isEqualTo(1);
    assertThat(shown.out()).contains("NO FIGURE: region 'f' has no open area (0 mm2)");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "``|which verb?",
        "measur x|'measur' is not known, did you mean 'measure'?",
        "xyzzy x|there are measure, mask, pattern, plan, run, compare",
        "measure|FILE",
        "measure --quik f.stl|--quick",
        "measure --unit foo f.stl|'foo' is not a unit of length; mm, cm",
        "measure --unit kg f.stl|'kg' is not a unit of length; mm, cm",
        "measure --scale 2 f.stl|--scale: '2' has no unit; fraction takes %",
        "measure --scale 0% f.stl|--scale 0% is not above zero",
        "measure --scale -5% f.stl|--scale -5% is not above zero",
        "plan|JOB",
        "plan f.stl --thickness 5um|--metal or --recipe",
        "plan f.stl --metal nickel --recipe nickel-watts --thickness 5um|one of them",
        "plan f.stl --metal nickel|--thickness or --charge",
        "plan f.stl --metal nickel --thickness 5um --charge 1A.h|one of them",
        "plan f.stl --metal nickle --thickness 5um|did you mean 'nickel'?",
        "plan f.stl --metal silver --thickness 5um|copper and nickel have",
        "plan f.stl --recipe nickel-wats --thickness 5um|did you mean 'nickel-watts'?",
        "plan f.stl --recipe palladium-brush --thickness 5um|a brush step wants a job file",
        "plan f.stl --metal nickel --thickness 60|'60' has no unit; length takes um, mm",
        "plan f.stl --metal nickel --thickness 60A|A is not a unit of length; length takes um",
        "plan f.stl --metal nickel --thickness -5um|--thickness -5um is not above zero",
        "plan f.stl --metal nickel --thickness thick|length takes um, mm",
        "plan f.stl --metal nickel --charge 60um|takes C, A.s, A.min, A.h",
        "plan f.stl --metal nickel --thickness 5um --density 2|takes A/dm2, A/cm2",
        "plan f.stl --metal nickel --thickness 5um --density 2A|takes A/dm2, A/cm2",
        "plan f.stl --metal nickel --thickness 5um --efficiency 0.95|has no unit; fraction takes %",
        "plan f.stl --metal nickel --thickness 5um --efficiency 120%|above 100 %",
        "plan f.stl --metal nickel --thickness 5um --metal-density 8.9|takes g/cm3, kg/m3",
        "plan test-meshes/examples/cube20.yaml --thickness 5um|a job file tells everything; '5um'",
        "compare a.yaml|requires at least 2",
        "compare a.yaml b.stl|b.stl is not named as a job file",
        "recipes silver-brush|is not known",
        "recipes paladium-brush|did you mean 'palladium-brush'?",
        "schema view|these have: measure, mask, pattern, plan, compare, rack, film, stencil, recipes, mix, log",
        "schema|of which verb? These have a JSON answer: measure, mask, pattern, plan, compare, rack, film, stencil, recipes, mix, log",
        "film|JOB",
        "film f.yaml --out film.png|--out film.png: a name ending in .pdf or .svg fits",
        "film f.yaml --out nowhere/film.pdf|there is no folder",
        "film f.yaml --paper A44|--paper A44 is not known, did you mean 'A4'?",
        "film f.yaml --portrait --landscape|one of them fits",
        "film f.yaml --layers 9|9 layers: 1 to 4 fit",
        "film f.yaml --measured 99.6|'99.6' has no unit; length takes um, mm",
        "film f.yaml --measured 94mm|94.0 mm is no printer's error: 97 to 103 mm fit",
        "film f.yaml --measured \"1 x 2 x 3 mm\"|one length or two fit",
        "film f.yaml --mirror maybe|--mirror maybe: yes or no fits",
        "film f.yaml --overlap 80mm|overlap 80.0 mm: 0 to 50 mm fit",
        "plan test-meshes/examples/cube20.yaml --start 24:00|00:00 to 23:59 fits",
        "compare test-meshes/examples/cube20.yaml test-meshes/examples/cube20.yaml --picture a.gif"
            + "|--picture a.gif: a name ending in .png fits",
        "compare test-meshes/examples/cube20.yaml test-meshes/examples/cube20.yaml --picture no/a.png"
            + "|there is no folder",
        "film test-meshes/examples/cube20-whole.yaml|has 0 films",
        "film test-meshes/examples/cube20.yaml|0 films for light, only the stop-offs [top]",
        "film test-meshes/demo/visor.yaml --film chevron|did you mean 'chevrons'?",
        "film test-meshes/examples/cube20.yaml --film top --test-strips|0 strips to expose",
        "stencil f.yaml --out cut.pdf|--out cut.pdf: a name ending in .svg or .dxf fits",
        "stencil f.yaml --least 0mm|--least 0mm is not above zero",
        "stencil f.yaml --bridges 90mm|bridges of 90.0 mm: 0.05 to 50 mm fit",
        "stencil f.yaml --border 1mm|weeding border 1.0 mm: 5 to 100 mm fit",
        "stencil test-meshes/examples/cube20-whole.yaml|has 0 films",
        "mix developer|an AMOUNT, as 2L, or --have",
        "mix developer 2|'2' has no unit; volume takes mL, L",
        "mix developer -2L|-2L",
        "mix develper 2L|did you mean 'developer'?",
        "mix nickel-wats 2L|did you mean 'nickel-watts'?",
        "mix developer 1L --strength \"NaOH 50 g/L\"|stronger caustic takes unexposed resist",
        "mix developer --have \"salt 5 g\"|made of sodium hydroxide",
        "mix developer --have NaOH|has not the shape 'NaOH 10 g'",
        "mix nickel-watts --have \"nickle sulfate 5 g\"|did you mean 'nickel sulfate'?",
        "mix copper-acid-high-throw 1L --acid 15%|sulfuric acid 15 % is too weak: 1.209 L of it would have to go into 1 L",
        "mix copper-acid-high-throw 1L --acid 99.9%|99.9 % is not from 1 to 98 %",
        "mix copper-acid-high-throw 1L --chloride KCl|--chloride KCl is not HCl or NaCl",
        "log|log what? job, weigh, coupon",
        "log weight x|verb 'weight' is not known, did you mean 'weigh'?",
        "log weigh x --before 3 --after 4g|--before: '3' has no unit; mass takes mg, g",
        "log weigh x --before 3g --after 4A|--after: '4A'",
        "log weigh x --before 3g --after 4g --date 1.3.2026|'1.3.2026' is no date; year-month-day",
        "log weigh x --before 3g --after 4g --date 2126-03-01|lies after today",
        "log coupon x --area 1dm2|wants --coverage, or --area and --charge",
        "log coupon x --area 1dm2 --charge 1A.h --coverage 2A.h/dm2|which is 1 A.h/dm2",
        "log bath b --recipe nickel-wats|did you mean 'nickel-watts'?",
        "log bath b --recipe nickel-watts --anode soft|not one of [soluble, insoluble]",
        "log bath b --recipe nickel-watts --add salt|has not the shape 'NAME, AMOUNT, METAL'",
        "log bath b --recipe nickel-watts --add \"salt, 5 A\"|mass takes mg, g",
        "log counter b|--add or --reading, one of them",
        "log list --kind photo|is not one of [job, weighing, coupon, bath, counter]",
        "log list --bath \"big coper\" --log test-meshes/demo/bench-log.db|did you mean 'big copper'?",
        "log show 99 --log test-meshes/demo/bench-log.db|entry 99 is not in the log; it has 14",
        "log calibrate x --log test-meshes/demo/bench-log.db|bath 'x' is not known",
        "mask f.stl --toward -z|--artwork",
        "mask f.stl --artwork a.svg|--toward",
        "mask f.stl --artwork a.svg --toward up|-z, +y or three numbers",
        "mask f.stl --artwork a.svg --toward \"0 0 0\"|points nowhere",
        "mask f.stl --artwork a.svg --toward \"0 NaN 1\"|'NaN' in '0 NaN 1' is not a number",
        "mask f.stl --artwork a.svg --toward -z --up -z|lies along the light",
        "mask f.stl --artwork a.svg --toward -z --centre \"0 0 0\"|three numbers and a unit fit",
        "mask f.stl --artwork a.svg --toward -z --centre \"0 0 0 kg\"|'kg' is not a unit of length",
        "mask f.stl --artwork a.svg --toward -z --turn 30|angle takes deg",
        "mask f.stl --artwork a.svg --toward -z --repeat 3|columns x rows fit",
        "mask f.stl --artwork a.svg --toward -z --repeat 0x3|at least one column and one row fit",
        "mask f.stl --artwork a.svg --toward -z --use tape|[positive, negative, stop-off]",
        "mask f.stl --artwork a.svg --toward -z --surround dark|[clear, opaque]",
        "mask f.stl --artwork a.svg --toward -z --dpi many|'many' is not a number of dots",
        "mask f.stl --artwork a.svg --toward -z --dpi 0|0",
        "mask f.stl --artwork a.svg --toward -z --threshold 0.5|has no unit; fraction takes %",
        "mask f.stl --artwork a.svg --toward -z --threshold 300%|300",
        "mask f.stl --artwork a.svg --toward -z --smooth 0.1|length takes",
        "mask f.stl --artwork a.svg --toward -z --smooth 2m|smoothing (mm) cannot be 2000",
        "pattern|MOTIF",
        "pattern wovn|did you mean 'woven'?",
        "pattern fish|there are bands, chevrons",
        "pattern bands --pitch 4|pitch: '4' has no unit",
        "pattern bands --pitch 4mm --line 4mm|line 4 mm does not fit: above 0 mm, below 4 mm",
        "pattern bands --seed 3|'seed' is not for bands, which take pitch, line",
        "pattern bands --lines black|[opaque, clear]",
        "pattern bands --size 80mm|--size '80mm': width x height fit",
        "pattern bands --line 1mm --open 30%|--open solves the line",
        "pattern bands --open 120%|--open 120%: above 0 %, below 100 % fits",
        "pattern lettering --text Act --open 30%|lettering has no line",
        "pattern bands --on f.stl|wants --toward",
        "pattern bands --toward -z|there is no --on",
        "pattern bands --film f|there is no --job",
        "pattern bands --job test-meshes/examples/cube20.yaml --film f|It has [",
        "pattern bands --out f.png|a name ending in .svg fits",
      })
  void usageIsTwoAndSaysWhatFits(String line, String words) {
    complains(Cli.run(Words.of(line)), 2, words);
  }

  @Test
  void aFaultInAJobIsTwoWithFileLineAndColumn() throws Exception {
    String file = job("part:\n  file: CUBE\nstep:\n  - recipe: nickel-watts\n    thicknes: 5 um\n");
    String told = file + ":5:5: key 'thicknes' is not known, did you mean 'thickness'?";
    complains(Cli.run("plan", file), 2, told);
    complains(Cli.run("plan", "--json", file), 2, told);
    complains(Cli.run("compare", CUBE_JOB, file), 2, told);
  }

  @Test
  void aGroupTheFileDoesNotHaveIsTwo() throws Exception {
    String file = job("part: {file: CUBE}\nregion:\n  nose: {within: {group: nose}}\n");
    complains(Cli.run("plan", file), 2, ":3:9: ", "no group 'nose': it names none");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "measure nowhere.stl|nowhere.stl: there is no such file",
        "measure --quick nowhere.stl|nowhere.stl: there is no such file",
        "measure test-meshes|test-meshes: this is a folder, a print file was expected",
        "measure --quick test-meshes|test-meshes: this is a folder",
        "measure test-meshes/faulty/m08_nan.stl|m08_nan.stl: byte 220: ",
        "measure test-meshes/faulty/m15_index0.obj|m15_index0.obj: line ",
        "measure test-meshes/faulty/m01_zero.stl|m01_zero.stl: ",
        "mask nowhere.stl --artwork test-meshes/examples/square20.svg --toward -z|nowhere.stl: there",
        "mask test-meshes/faulty/m08_nan.stl --artwork test-meshes/examples/square20.svg --toward -z"
            + "|m08_nan.stl: byte 220: ",
        "mask test-meshes/examples/cube20.stl --artwork nowhere.svg --toward -z|nowhere.svg: there",
        "mask test-meshes/examples/cube20.stl --artwork test-meshes/README.md --toward -z|README.md",
        "mask test-meshes/examples/cube20.stl --artwork test-meshes --toward -z"
            + "|test-meshes: this is a folder",
        "plan nowhere.yaml|nowhere.yaml: there is no such file",
        "plan nowhere.stl --metal nickel --thickness 5um|nowhere.stl: there is no such file",
        "plan test-meshes/faulty/m08_nan.stl --metal nickel --thickness 5um|m08_nan.stl: byte 220: ",
        "compare nowhere.yaml test-meshes/examples/cube20.yaml|nowhere.yaml: there is no such file",
        "log list --log nowhere.db|nowhere.db: there is none yet; 'log job'",
        "log list --log test-meshes|test-meshes: this is a folder",
        "log list --log test-meshes/README.md|this is no SQLite database",
        "log weigh x --before 3g --after 4g --log test-meshes/README.md|this is no SQLite database",
        "log coupon x --coverage 1A.h/dm2 --photo gone.jpg|gone.jpg: there is no such file",
        "log job nowhere.yaml --step \"a, 1 A.h\"|nowhere.yaml: there is no such file",
      })
  void aFileThatCannotBeReadIsThree(String line, String words) {
    complains(Cli.run(Words.of(line)), 3, words);
  }

  @Test
  void whatAJobNamesAndCannotBeReadIsThree() throws Exception {
    complains(Cli.run("plan", job("part: {file: gone.stl}\n")), 3, "gone.stl: there is no such");
    Files.writeString(folder.resolve("broken.stl"), "solid x\nfacet normal 0 0 1\n");
    complains(Cli.run("plan", job("part: {file: broken.stl}\n")), 3, "broken.stl: line ");
    String film = "part: {file: CUBE}\nfilm:\n  f: {artwork: %s, toward: -z}\n";
    complains(Cli.run("plan", job(film.formatted("gone.svg"))), 3, "gone.svg: there is no such");
    Files.writeString(folder.resolve("broken.svg"), "<svg><path d='M 0 0'");
    complains(Cli.run("plan", job(film.formatted("broken.svg"))), 3, "broken.svg");
    Files.write(folder.resolve("broken.png"), new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10});
    complains(Cli.run("plan", job(film.formatted("broken.png"))), 3, "broken.png");
    Files.createDirectory(folder.resolve("part"));
    complains(Cli.run("plan", job("part: {file: part}\n")), 3, "part: this is a folder");
  }

  @Test
  void severalFilesAreMeasuredPastABadOne() throws Exception {
    String bad = "test-meshes/faulty/m08_nan.stl";
    Cli.Result text = Cli.run("measure", CUBE, bad, "test-meshes/small/v01_cube10.stl");
    assertThat(text.code()).isEqualTo(3);
    assertThat(text.out()).contains("cube20.stl", "v01_cube10.stl").doesNotContain("nan");
    assertThat(text.err()).contains("m08_nan.stl: byte 220").hasLineCount(1);
    Cli.Result json = Cli.run("measure", "--json", CUBE, bad, "test-meshes/small/v01_cube10.stl");
    assertThat(json.code()).isEqualTo(3);
    JsonNode answers = new ObjectMapper().readTree(json.out());
    assertThat(answers.findValuesAsText("file"))
        .containsExactly(CUBE, "test-meshes/small/v01_cube10.stl");
    Cli.Result none = Cli.run("measure", "--json", bad, bad);
    assertThat(none.code()).isEqualTo(3);
    assertThat(new ObjectMapper().readTree(none.out())).isEmpty();
  }

  @Test
  void ourOwnFaultIsSeventyAndSaysSo() {
    StringWriter err = new StringWriter();
    picocli.CommandLine line = new picocli.CommandLine(new Main());
    line.setErr(new PrintWriter(err, true));
    int code = Faults.execution(new IllegalStateException("planted 42"), line, null);
    assertThat(code).isEqualTo(70);
    assertThat(err.toString()).contains("a fault of our own", "planted 42", "\tat ");
  }
}
