package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The shape of the JSON answers: what the schema says, what is printed, what was promised. */
class SchemaTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String CUBE = "test-meshes/examples/cube20.stl";
  private static final String SQUARE = "test-meshes/examples/square20.svg";

  @TempDir private Path folder;

  private static JsonNode schemaText(String verb) throws Exception {
    Cli.Result shown = Cli.run("schema", verb);
    assertThat(shown.code()).isZero();
    return JSON.readTree(shown.out());
  }

  private static JsonSchema schema(String verb) throws Exception {
    return JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(schemaText(verb));
  }

  private static JsonNode valid(String verb, String text) throws Exception {
    JsonNode answer = JSON.readTree(text);
    Set<ValidationMessage> faults = schema(verb).validate(answer);
    assertThat(faults).as(verb + ": " + text).isEmpty();
    return answer;
  }

  private String job(String steps) throws Exception {
    Path file = folder.resolve("job.yaml");
    Files.writeString(file, "part: {file: '" + Cli.ROOT.resolve(CUBE) + "'}\n" + steps);
    return file.toString();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "measure", "mask", "pattern", "plan", "compare", "rack", "film", "stencil", "recipes",
        "mix", "log", "run"
      })
  void schemasAreThemselvesValid(String verb) throws Exception {
    JsonSchema meta =
        JsonSchemaFactory.getInstance(VersionFlag.V202012)
            .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
    JsonNode text = schemaText(verb);
    assertThat(meta.validate(text)).isEmpty();
    assertThat(text.get("$schema").asText())
        .isEqualTo("https://json-schema.org/draft/2020-12/schema");
    assertThat(text.get("$id").asText()).isEqualTo("urn:amperskin:" + verb + ":1");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "measure", "mask", "pattern", "plan", "compare", "rack", "film", "stencil", "recipes",
        "mix", "log", "run"
      })
  void everyKeyIsDescribedRequiredAndClosed(String verb) throws Exception {
    List<String> faults = new ArrayList<>();
    int properties = look(schemaText(verb), "#", faults);
    assertThat(faults).isEmpty();
    assertThat(properties).isGreaterThan(10);
  }

  /** Counts properties and notes those without a description, unit or null rule. */
  private static int look(JsonNode node, String at, List<String> faults) {
    int count = 0;
    if (node.has("properties")) {
      JsonNode props = node.get("properties");
      if (!node.path("additionalProperties").isBoolean()
          || node.path("additionalProperties").asBoolean()) {
        faults.add(at + " is open");
      }
      if (node.path("required").size() != props.size()) {
        faults.add(at + " does not require all its keys");
      }
      for (var entry : props.properties()) {
        count++;
        String description = entry.getValue().path("description").asText();
        if (description.isBlank() && !entry.getValue().has("$ref")) {
          faults.add(at + "/" + entry.getKey() + " has no description");
        }
        if (entry.getValue().path("type").toString().contains("null")
            && !description.contains("null")) {
          faults.add(at + "/" + entry.getKey() + " does not say when it is null");
        }
        String unit = unitOf(entry.getKey());
        if (!unit.isEmpty() && !description.contains(unit)) {
          faults.add(at + "/" + entry.getKey() + " does not name its unit " + unit);
        }
      }
    }
    for (var entry : node.properties()) {
      if (entry.getValue().isObject()) {
        count += look(entry.getValue(), at + "/" + entry.getKey(), faults);
      }
    }
    return count;
  }

  private static String unitOf(String key) {
    String[][] units = {
      {"Dm2PerL", "dm2/L"},
      {"APerL", "A/L"},
      {"UmPerH", "um/h"},
      {"MPerMin", "m/min"},
      {"ADm2", "A/dm2"},
      {"Mm2", "mm2"},
      {"Mm3", "mm3"},
      {"Mm", "mm"},
      {"Um", "um"},
      {"Ah", "A.h"},
    };
    for (String[] unit : units) {
      if (key.endsWith(unit[0])) {
        return unit[1];
      }
    }
    return key.matches(".*[a-z][ASVGL]")
        ? switch (key.charAt(key.length() - 1)) {
          case 'A' -> "(A)";
          case 'S' -> "(s)";
          case 'V' -> "(V)";
          case 'G' -> "(g)";
          default -> "L";
        }
        : "";
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "test-meshes/demo/visor.stl",
        "test-meshes/demo/shoulder-plate.obj",
        "test-meshes/examples/cube20.stl",
        "test-meshes/small/v07_cavity.stl",
        "test-meshes/small/v11_open_box.stl",
        "test-meshes/small/v10_inverted.stl",
        "test-meshes/small/v12_dup_faces.stl",
        "test-meshes/small/v17_quad_neg.obj"
      })
  void measuresValidate(String file) throws Exception {
    JsonNode full = valid("measure", Cli.run("measure", "--json", file).out());
    assertThat(full.get("file").asText()).isEqualTo(file);
    assertThat(full.get("vertices").isNumber()).isTrue();
    JsonNode quick = valid("measure", Cli.run("measure", "--json", "--quick", file).out());
    assertThat(quick.get("vertices").isNull()).isTrue();
    assertThat(quick.get("areaMm2").asDouble())
        .isCloseTo(
            full.get("areaMm2").asDouble(), org.assertj.core.data.Percentage.withPercentage(1e-9));
    JsonNode several = valid("measure", Cli.run("measure", "--json", file, CUBE).out());
    assertThat(several.isArray()).isTrue();
    assertThat(several.size()).isEqualTo(2);
  }

  @Test
  void bodiesAreListedWithTheirFigures() throws Exception {
    String file = "test-meshes/small/v07_cavity.stl";
    JsonNode without = valid("measure", Cli.run("measure", "--json", file).out());
    assertThat(without.get("parts").isNull()).isTrue();
    JsonNode answer = valid("measure", Cli.run("measure", "--list", "--json", file).out());
    JsonNode bodies = answer.at("/parts/bodies");
    // A cube of 10 mm and, turned inward, one of 4 mm: 6 a^2 and a^3.
    assertThat(bodies.findValuesAsText("number")).containsExactly("1", "2");
    assertThat(bodies.findValues("triangles").stream().mapToInt(JsonNode::asInt))
        .containsExactly(12, 12);
    assertThat(bodies.at("/0/areaMm2").asDouble()).isEqualTo(600);
    assertThat(bodies.at("/1/areaMm2").asDouble()).isEqualTo(96);
    assertThat(bodies.at("/0/volumeMm3").asDouble()).isCloseTo(1000, within(1e-9));
    assertThat(bodies.at("/1/volumeMm3").asDouble()).isCloseTo(-64, within(1e-9));
    assertThat(bodies.at("/1/boundsMm").toString())
        .isEqualTo("{\"min\":[3.0,3.0,3.0],\"max\":[7.0,7.0,7.0]}");
    assertThat(bodies.findValuesAsText("inner")).containsExactly("false", "true");
    assertThat(answer.at("/parts/groups").size()).isZero();
    assertThat(answer.get("volumeMm3").asDouble()).isCloseTo(936, within(1e-9));
    assertThat(answer.get("displacedVolumeMm3").asDouble()).isCloseTo(1000, within(1e-9));
    String open = Cli.run("measure", "--json", "test-meshes/small/v11_open_box.stl").out();
    assertThat(valid("measure", open).get("displacedVolumeMm3").isNull()).isTrue();
  }

  @Test
  void groupsAreListedAndAddUpToTheWhole() throws Exception {
    Path file = folder.resolve("two.obj");
    Files.writeString(
        file,
        """
        v 0 0 0
        v 3 0 0
        v 0 4 0
        v 0 0 5
        g base
        f 1 3 2
        g side
        f 1 2 4
        """);
    JsonNode answer =
        valid("measure", Cli.run("measure", "--list", "--json", file.toString()).out());
    JsonNode groups = answer.at("/parts/groups");
    assertThat(groups.findValuesAsText("name")).containsExactly("base", "side");
    assertThat(groups.at("/0/areaMm2").asDouble()).isCloseTo(6, within(1e-12));
    assertThat(groups.at("/1/areaMm2").asDouble()).isCloseTo(7.5, within(1e-12));
    assertThat(groups.at("/1/boundsMm").toString())
        .isEqualTo("{\"min\":[0.0,0.0,0.0],\"max\":[3.0,0.0,5.0]}");
    assertThat(answer.at("/parts/bodies/0/volumeMm3").isNull()).isTrue();
    String text = Cli.run("measure", "--list", file.toString()).out();
    assertThat(text).contains("group 'side': 1 faces, 7.50000 mm2, box 3 x 0 x 5 mm");
  }

  @Test
  void scaleIsTold() throws Exception {
    for (String how : List.of("--quick", "--no-spray")) {
      Cli.Result text = Cli.run("measure", how, "--scale", "102.5 %", CUBE);
      assertThat(text.out()).contains("scale         102.5 % of the file's size");
      JsonNode answer =
          valid("measure", Cli.run("measure", "--json", how, "--scale", "102.5 %", CUBE).out());
      assertThat(answer.get("scale").asDouble()).isCloseTo(1.025, within(1e-12));
      assertThat(answer.get("areaMm2").asDouble()).isCloseTo(2400 * 1.025 * 1.025, within(1e-3));
    }
    assertThat(Cli.run("measure", "--quick", CUBE).out()).doesNotContain("scale");
  }

  @ParameterizedTest
  @ValueSource(strings = {"positive", "negative", "stop-off"})
  void masksValidate(String use) throws Exception {
    Cli.Result shown =
        Cli.run("mask", "--json", CUBE, "--artwork", SQUARE, "--toward", "0.2 0 -1", "--use", use);
    assertThat(valid("mask", shown.out()).get("skinAreaMm2").asDouble()).isEqualTo(2400);
  }

  @Test
  void plansOfAllJobsValidate() throws Exception {
    for (Path job : ExampleFilesTest.jobs()) {
      valid("plan", Cli.run("plan", "--json", job.toString()).out());
    }
  }

  @Test
  void plansWithFaultyPartsAndRefusedStepsValidate() throws Exception {
    for (String part : List.of("v11_open_box.stl", "v10_inverted.stl", "v07_cavity.stl")) {
      Cli.Result shown =
          Cli.run(
              "plan",
              "--json",
              "test-meshes/small/" + part,
              "--metal",
              "nickel",
              "--thickness",
              "10um");
      valid("plan", shown.out());
    }
    Cli.Result refused =
        Cli.run("plan", "--json", job("step: [{recipe: chromium-brush-dark-trivalent}]\n"));
    assertThat(refused.code()).isEqualTo(1);
    JsonNode step = valid("plan", refused.out()).get("steps").get(0);
    assertThat(step.get("refusal").asText()).contains("coupon");
    assertThat(step.get("currentA").isNull()).isTrue();
    assertThat(step.get("cautions")).isNotEmpty();
  }

  @Test
  void plansWithEveryKindOfRegionAndStepValidate() throws Exception {
    Cli.Result shown =
        Cli.run(
            "plan",
            "--json",
            job(
                """
                film:
                  light: {artwork: '%1$s', toward: -z}
                  tape: {artwork: '%1$s', toward: +x, use: stop-off}
                region:
                  both: {film: [light, tape]}
                  low: {within: {plane: {point: 0 0 10 mm, normal: -z}}}
                step:
                  - {recipe: nickel-brush-high-speed, thickness: 5 um, region: low,
                     swab: {contact: 4 cm2}}
                  - {work: etch, region: tape}
                  - {recipe: copper-acid-decorative, charge: 0.5 A.h}
                """
                    .formatted(Cli.ROOT.resolve(SQUARE))));
    JsonNode answer = valid("plan", shown.out());
    assertThat(answer.get("regions").findValuesAsText("kind"))
        .containsExactly("skin", "film-positive", "stop-off", "film-and-stop-off", "selection");
    assertThat(answer.get("steps").findValuesAsText("how"))
        .containsExactly("brush", "etch", "tank");
  }

  @Test
  void filmsAndStencilsOfAllJobsValidate() throws Exception {
    int made = 0;
    for (Path job : ExampleFilesTest.jobs()) {
      Cli.Result shown = Cli.run("film", "--json", job.toString());
      if (shown.code() == 0) {
        JsonNode film = valid("film", shown.out()).at("/films/0");
        made++;
        double black = film.get("blackAreaMm2").asDouble();
        String name = film.get("name").asText();
        JsonNode cut =
            valid(
                "stencil",
                Cli.run("stencil", "--json", job.toString(), "--film", name, "--bridges", "1mm")
                    .out());
        assertThat(cut.get("coveredAreaMm2").asDouble() - cut.get("bridgedAreaMm2").asDouble())
            .isCloseTo(black, org.assertj.core.data.Percentage.withPercentage(1e-6));
      }
    }
    assertThat(made).isEqualTo(10); // all but the job without a film and the one with tape only
  }

  @Test
  void comparisonsAndRecipesValidate() throws Exception {
    List<String> words = new ArrayList<>(List.of("compare", "--json"));
    ExampleFilesTest.jobs().forEach(job -> words.add(job.toString()));
    JsonNode compared = valid("compare", Cli.run(words.toArray(String[]::new)).out());
    assertThat(compared.get("jobs").size()).isEqualTo(ExampleFilesTest.jobs().size());
    compared
        .get("differences")
        .forEach(row -> assertThat(row.get("values").size()).isEqualTo(words.size() - 2));
    JsonNode all = valid("recipes", Cli.run("recipes", "--json").out());
    assertThat(all.get("recipes").size()).isGreaterThanOrEqualTo(10);
    for (JsonNode recipe : all.get("recipes")) {
      valid("recipes", Cli.run("recipes", "--json", recipe.get("id").asText()).out());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "copper-acid-high-throw 2L",
        "copper-acid-decorative 500mL --chloride NaCl --acid 37%",
        "nickel-watts 1L",
        "nickel-sulfamate 1L",
        "developer 500mL"
      })
  void mixesValidate(String line) throws Exception {
    Cli.Result shown = Cli.run(Words.of("mix --json " + line));
    assertThat(valid("mix", shown.out()).get("items")).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "list",
        "show 1",
        "show 8",
        "show 9",
        "show \"small nickel\"",
        "calibrate \"dark brush\"",
        "bath \"big copper\""
      })
  void answersOfTheLogValidate(String line) throws Exception {
    String log = " --json --log test-meshes/demo/bench-log.db";
    JsonNode answer = valid("log", Cli.run(Words.of("log " + line + log)).out());
    assertThat(answer.get("entries").size() + answer.get("baths").size()).isPositive();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "measure", "mask", "pattern", "plan", "compare", "rack", "film", "stencil", "recipes",
        "mix", "log", "run"
      })
  void samplesAreTheAnswerOfTheCommandTheyName(String verb) throws Exception {
    String comment = schemaText(verb).get("$comment").asText();
    List<String> commands = Words.commands(comment.replace("answer of: ", "answer of:\n"));
    assertThat(commands).hasSize(1);
    String[] words = Words.of(commands.get(0));
    assertThat(words[1]).isEqualTo(verb);
    Cli.Result shown = Cli.run(java.util.Arrays.copyOfRange(words, 1, words.length));
    Cli.Result sample = Cli.run("schema", verb, "--sample");
    assertThat(shown.code()).isZero();
    assertThat(shown.out()).isEqualTo(sample.out());
    valid(verb, sample.out());
  }

  /** The keys that scripts are promised; a new version of the shape may add, never drop. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "measure| |schema file format unit unitAssumed triangles vertices closed bodies areaMm2"
            + " wettedAreaMm2 wettedAreaErrorMm2 paintedAreaMm2 volumeMm3 boundsMm problems scale parts",
        "measure|/problems/0|kind count where message",
        "mask| |schema skinAreaMm2 openAreaMm2 closedAreaMm2 exposedAreaMm2 maskedAreaMm2"
            + " unreachedAreaMm2 stoppedOffAreaMm2 errorMm2 openFraction edgeLengthMm",
        "plan| |schema part regions steps materials warnings",
        "plan|/part|file format unit unitAssumed triangles vertices closed bodies areaMm2"
            + " wettedAreaMm2 wettedAreaErrorMm2 paintedAreaMm2 volumeMm3 boundsMm problems",
        "plan|/regions/0|name kind areaMm2 errorMm2",
        "plan|/steps/0|name recipe metal how region openAreaMm2 openFraction densityADm2"
            + " densityWindowADm2 currentA voltageV timeS timeBandS chargeAh massG massBandG"
            + " thicknessUm rateUmPerH anodeAreaMm2 contactAreaMm2 dwellS passes speedMPerMin"
            + " solutionL ramp warnings cautions",
        "plan|/steps/0/densityWindowADm2|low high",
        "plan|/steps/0/timeBandS|low high",
        "plan|/steps/0/massBandG|low high",
        "compare| |schema jobs differences",
        "film| |schema job films files",
        "film|/films/0|name use widthMm heightMm blackAreaMm2 layers sheets mirrored polarity"
            + " factorAcross factorAlong cautions",
        "film|/films/0/sheets/0|layer tile column row paperWidthMm paperHeightMm",
        "stencil| |schema film coveredAreaMm2 openAreaMm2 cutLengthMm islands bridges"
            + " bridgedAreaMm2 narrowLines narrowSpaces cautions file",
        "recipes| |schema recipes",
        "mix| |schema solution volumeL waterL items metal metalGPerL steps notes cautions",
        "mix|/items/0|name formula massG volumeMl strengthGPerL inRange mark source",
        "log| |schema file entries baths calibrations files",
        "log|/baths/0|name recipe volumeL metalGPerL chargeAh additives notes",
        "log|/calibrations/0|bath efficiency standardError interval weighings coverageAhPerDm2",
      })
  void samplesHaveTheKeysThatWerePromised(String verb, String pointer, String keys)
      throws Exception {
    JsonNode sample = JSON.readTree(Cli.run("schema", verb, "--sample").out());
    JsonNode at = sample.at(pointer == null ? "" : pointer);
    assertThat(at.isObject()).isTrue();
    List<String> present = new ArrayList<>();
    at.fieldNames().forEachRemaining(present::add);
    assertThat(present).contains(keys.split(" "));
  }

  @Test
  void rampsHaveTheirKeys() throws Exception {
    JsonNode answer = JSON.readTree(Cli.run("plan", "--json", "test-meshes/demo/visor.yaml").out());
    JsonNode ramp = answer.at("/steps/5/ramp");
    assertThat(ramp.size()).isGreaterThanOrEqualTo(2);
    assertThat(ramp.get(0).has("atS") && ramp.get(0).has("currentA")).isTrue();
  }

  @Test
  void aChangedAnswerIsCaught() throws Exception {
    String sample = Cli.run("schema", "plan", "--sample").out();
    JsonSchema schema = schema("plan");
    assertThat(schema.validate(JSON.readTree(sample.replace("\"currentA\"", "\"current\""))))
        .isNotEmpty();
    assertThat(schema.validate(JSON.readTree(sample.replace("amperskin.plan/1", "plan/2"))))
        .isNotEmpty();
    assertThat(schema.validate(JSON.readTree(sample.replace("\"tank\"", "\"bucket\""))))
        .isNotEmpty();
  }
}
