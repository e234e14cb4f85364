package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.amperskin.plating.FigureKey;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeReader;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bench log through the whole program: a bath begun, used, weighed, calibrated. */
class LogCommandTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;

  @AfterEach
  void takeTheRecipeAway() throws Exception {
    Files.deleteIfExists(Cli.HOME.resolve("recipes/my-nickel.yaml"));
  }

  private Cli.Result log(String line) {
    List<String> words = new ArrayList<>(List.of(Words.of("log " + line)));
    words.addAll(List.of("--log", folder.resolve("log.db").toString()));
    return Cli.run(words.toArray(String[]::new));
  }

  private Cli.Result kept(String line) {
    Cli.Result shown = log(line);
    assertThat(shown.code()).as(line + ": " + shown.err()).isZero();
    return shown;
  }

  @Test
  void aBathIsBegunUsedWeighedAndCalibratedIntoARecipe() throws Exception {
    Cli.Result first =
        kept("bath tub --recipe nickel-watts --anode insoluble --volume 2L --metal 72g/L");
    assertThat(first.err()).contains("a new bench log begins: ");
    // nickel: 1.0950 g/A.h; at 95 % 0.2 A.h lay down 0.20805 g
    kept("weigh s1 --before 10.000g --after 10.208g --charge 0.2A.h --bath tub --date 2026-03-01");
    kept("weigh s2 --before 10.000g --after 10.2090g --charge 0.2A.h --bath tub --date 2026-03-02");
    Cli.Result two = log("calibrate tub --as \"my nickel\"");
    assertThat(two.code()).isEqualTo(1);
    assertThat(two.out()).contains("no interval: that takes 3 weighings or more");
    assertThat(two.err()).contains("2 weighed with a charge: a recipe needs 3");
    kept("weigh s3 --before 10000mg --after 10104mg --charge 0.1A.h --bath tub --date 2026-03-03");
    JsonNode list = JSON.readTree(kept("list --kind weighing --json").out()).get("entries");
    assertThat(list.findValuesAsText("balanceG")).containsExactly("0.001", "1.0E-4", "0.001");
    Cli.Result three = kept("calibrate tub --as \"My nickel\"");
    Path file = Cli.HOME.resolve("recipes/my-nickel.yaml");
    assertThat(three.out()).contains("recipe written:", "my-nickel.yaml");
    Recipe recipe = RecipeReader.read(Files.readString(file), "my-nickel.yaml");
    assertThat(recipe.name()).isEqualTo("My nickel");
    assertThat(recipe.figure(FigureKey.EFFICIENCY).orElseThrow().typicalSi())
        .isCloseTo(0.9543, within(0.003));
    // a plan takes the calibrated efficiency: 2400 mm2 x 10 um of nickel by Faraday's law
    Path job = folder.resolve("job.yaml");
    Files.writeString(
        job,
        "part: {file: '%s'}\nstep: [{recipe: my nickel, thickness: 10 um}]\n"
            .formatted(Cli.ROOT.resolve("test-meshes/examples/cube20.stl")));
    double chargeAh =
        JSON.readTree(Cli.run("plan", "--json", job.toString()).out()).get("chargeAh").asDouble();
    double efficiency = recipe.figure(FigureKey.EFFICIENCY).orElseThrow().typicalSi();
    assertThat(chargeAh).isCloseTo(0.024 * 8.9 / 1.09495 / efficiency, within(1e-4));
    assertThat(Cli.run("recipes", "my nickel").out().replaceAll("\\s+", " "))
        .contains("bench log, 3 coupons, 2026-03-01 to 2026-03-03");
    try (Stream<Path> files = Files.list(file.getParent())) {
      assertThat(files.map(f -> f.getFileName().toString())).noneMatch(n -> n.endsWith(".part"));
    }
  }

  @Test
  void metalNowAndAdditiveDueFollowTheCharge() throws Exception {
    kept(
        "bath tub --recipe copper-acid-high-throw --anode insoluble --volume 5L --metal 17g/L"
            + " --dose \"brightener, 150 mL/(kA.h)\" --date 2026-01-01");
    kept("counter tub --add 10A.h --date 2026-01-02");
    kept("bath tub --add \"copper sulfate, 20 g\" --add \"brightener, 1 mL\" --date 2026-01-03");
    JsonNode bath = JSON.readTree(kept("show tub --json").out()).at("/baths/0");
    // by hand: 85 g + 20 x 63.546/249.68 - 10 x 1.1855 x 0.995, in 5 L
    assertThat(bath.get("metalGPerL").asDouble())
        .isCloseTo((85 + 5.090 - 11.796) / 5, within(0.001));
    assertThat(bath.at("/additives/0/dueMl").asDouble()).isCloseTo(0.5, within(1e-9));
    assertThat(kept("show tub").out()).contains("brightener: 0.5 mL due (150 mL/(kA.h)");
  }

  @Test
  void aJobIsCheckedAgainstItsFileAndCountsInItsBath() throws Exception {
    kept("bath tub --recipe copper-acid-high-throw");
    String job = "job test-meshes/demo/visor.yaml --date 2026-03-01 --step ";
    Cli.Result wrong = log(job + "\"coper build, 20 A.h\"");
    assertThat(wrong.code()).isEqualTo(2);
    assertThat(wrong.err()).contains("did you mean 'copper build'?");
    assertThat(log(job + "\"copper build, 20 A.h, tubb\"").err()).contains("did you mean 'tub'?");
    kept(job + "\"copper build, 20 A.h, tub\" --note \"first one\"");
    assertThat(kept("list").out()).contains("job       visor.yaml, 20 A.h, copper build");
    // a weighing of the same job does not count its charge twice
    kept("weigh visor --before 90.1g --after 113.6g --charge 20A.h --bath tub --job 1");
    assertThat(kept("show tub").out()).contains("20 A.h in all");
    assertThat(log("weigh visor --before 90.1g --after 113.6g --job 2").code()).isEqualTo(2);
  }

  @Test
  void aMistypedBathBeginsNone() {
    kept("bath tub --recipe nickel-watts");
    Cli.Result wrong = log("bath tup --volume 3L");
    assertThat(wrong.code()).isEqualTo(2);
    assertThat(wrong.err()).contains("did you mean 'tub'?");
    assertThat(log("bath tup").code()).isEqualTo(2);
  }

  @Test
  void aStruckEntryStaysAndCountsNoMore() {
    kept("bath tub --recipe nickel-watts --anode insoluble --volume 2L --metal 72g/L");
    kept("counter tub --add 100A.h");
    assertThat(kept("strike 2 --why \"wrong bath\"").out()).contains("STRUCK OUT", "wrong bath");
    assertThat(kept("list").out()).contains("struck out: tub, + 100 A.h");
    assertThat(kept("show tub").out()).contains("metal now     72 g/L", "0 A.h in all");
    assertThat(log("strike 2 --why again").code()).isEqualTo(2);
  }

  @Test
  void backupAndExportAreWrittenOnceAndNeverOverOthers() throws Exception {
    kept("bath tub --recipe nickel-watts");
    Path copy = folder.resolve("copy.db");
    assertThat(kept("backup " + copy).out()).contains("copied and checked:");
    Cli.Result again = log("backup " + copy);
    assertThat(again.code()).isEqualTo(3);
    assertThat(again.err()).contains("a backup never replaces one");
    assertThat(Cli.run("log", "show", "tub", "--log", copy.toString()).code()).isZero();
    Path tables = folder.resolve("tables");
    JsonNode files = JSON.readTree(kept("export --json " + tables).out()).get("files");
    assertThat(files).hasSize(10);
    assertThat(Files.readString(tables.resolve("bath.csv"))).contains("tub,nickel-watts");
    assertThat(log("export " + tables).code()).isEqualTo(3);
    kept("export --replace " + tables);
  }

  @Test
  void nothingToCalibrateIsARefusalWithTheWayOn() {
    kept("bath tub --recipe nickel-watts");
    Cli.Result none = log("calibrate tub");
    assertThat(none.code()).isEqualTo(1);
    assertThat(none.out()).contains("NO FIGURE: 0 weighings");
    kept("bath other --anode soluble");
    kept("weigh s --before 1.00g --after 1.10g --charge 0.1A.h --bath other");
    assertThat(log("calibrate other").out()).contains("recipe is not told");
  }

  @Test
  void aPlanWithPricesTellsItsCostAndItsPreciousMetal() throws Exception {
    String[] words =
        Words.of("plan test-meshes/demo/visor.yaml --json --prices test-meshes/shop/prices.yaml");
    JsonNode plan = JSON.readTree(Cli.run(words).out());
    JsonNode bill = plan.at("/costs/0");
    double sum = 0;
    for (JsonNode m : plan.get("materials")) {
      String name = m.get("name").asText();
      // prices of the file over the unit that the plan tells: per g or per L
      Map<String, Double> each =
          Map.of(
              "copper anode", 0.028,
              "conductive paint", 95.0,
              "resist", 140.0,
              "sodium hydroxide", 0.018,
              "solvent", 12.0);
      double price = name.startsWith("Palladium") ? 1450 : each.getOrDefault(name, 0.0);
      price = name.startsWith("Dark chromium") && name.contains("trivalent") ? 190 : price;
      price = name.startsWith("Dark chromium") && name.contains("hexavalent") ? 160 : price;
      sum += price * m.get("amount").asDouble();
    }
    assertThat(bill.get("total").asDouble()).isCloseTo(sum, within(1e-9)).isPositive();
    assertThat(bill.at("/precious/0/metal").asText()).isEqualTo("palladium");
    Cli.Result text =
        Cli.run(Words.of("plan test-meshes/demo/visor.yaml --prices test-meshes/shop/prices.yaml"));
    assertThat(text.out()).contains("Cost", "crowns in all", "mg of palladium laid down");
    assertThat(text.out().lines().filter(l -> l.length() > 80)).isEmpty();
  }

  @Test
  void whatIsNotMixedHereIsARefusalThatNamesTheSaferWay() {
    Cli.Result shown = Cli.run("mix", "chromium-brush-dark-hexavalent", "1L");
    assertThat(shown.code()).isEqualTo(1);
    assertThat(shown.out()).isEmpty();
    assertThat(shown.err()).contains("ready-made", "cancer", "trivalent");
    assertThat(Cli.run("mix", "palladium-brush", "1L").code()).isEqualTo(1);
  }

  /**
   * What the log has of a job is taken off its steps; struck entries and other jobs do not count.
   */
  @Test
  void aPlanGoesOnFromTheLog() throws Exception {
    Path job = folder.resolve("job.yaml");
    Files.writeString(
        job,
        "part: {file: '%s'}\nstep: [{name: ni, recipe: nickel-watts, thickness: 10 um}]\n"
            .formatted(Cli.ROOT.resolve("test-meshes/examples/cube20.stl")));
    Path other = Files.copy(job, folder.resolve("other.yaml"));
    String db = folder.resolve("log.db").toString();
    kept("job " + other + " --step \"ni, 0.02 A.h\"");
    Cli.Result nothing = Cli.run("plan", job.toString(), "--continue", "--log", db);
    assertThat(nothing.code()).isEqualTo(2);
    assertThat(nothing.err()).contains("has no charge for", "amperskin log job");
    kept("job " + job + " --step \"ni, 0.05 A.h\"");
    kept("job " + job + " --step \"ni, 0.03 A.h\"");
    kept("job " + job + " --step \"ni, 0.11 A.h\"");
    kept("strike 4 --why typo");
    double whole =
        JSON.readTree(Cli.run("plan", "--json", job.toString()).out()).get("chargeAh").asDouble();
    Cli.Result rest = Cli.run("plan", "--json", job.toString(), "--continue", "--log", db);
    assertThat(JSON.readTree(rest.out()).get("chargeAh").asDouble())
        .isCloseTo(whole - 0.08, within(1e-9));
    kept("job " + job + " --step \"ni, 5 A.h\"");
    Cli.Result done = Cli.run("plan", job.toString(), "--continue", "--log", db);
    assertThat(done.code()).isEqualTo(1);
    assertThat(done.out()).contains("nothing is left to plate");
    assertThat(Cli.run("plan", job.toString(), "--redo", "ni").out())
        .contains("take off ni", "Nickel salts sensitise");
    assertThat(Cli.run("plan", job.toString(), "--resist-off").code()).isEqualTo(2);
    assertThat(Cli.run("plan", job.toString(), "--redo", "ni", "--resist-off").err())
        .contains("0 steps 'resist'");
    assertThat(Cli.run("plan", job.toString(), "--depth", "3um").code()).isEqualTo(2);
    assertThat(Cli.run("plan", job.toString(), "--continue", "--redo", "ni").code()).isEqualTo(2);
  }
}
