package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.amperskin.geom.Progress;
import org.amperskin.io.PrintFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The main job from the outside, against arithmetic anyone can do by hand. */
class MustShowTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String CUBE = "test-meshes/examples/cube20.stl";
  private static final String SQUARE = "test-meshes/examples/square20.svg";

  private static JsonNode json(String line) throws Exception {
    Cli.Result shown = Cli.run(Words.of(line));
    assertThat(shown.code()).as(shown.err()).isZero();
    return JSON.readTree(shown.out());
  }

  /**
   * Cube of 20 mm, top taped, 10 um nickel at 2 A/dm2 and 95 %: m = A t rho = 20 cm2 x 0.001 cm x
   * 8.90 g/cm3; Q = m n F / (eta M) with F = 96485.33212 C/mol (CODATA 2018, exact) and M = 58.6934
   * g/mol (IUPAC standard atomic weights 2021); t = Q / I.
   */
  @Test
  void tapedCubeComesOutAsByHand() throws Exception {
    JsonNode plan = json("plan --json test-meshes/examples/cube20.yaml");
    JsonNode step = plan.at("/steps/0");
    double mass = 20 * 0.001 * 8.90;
    double charge = mass * 2 * 96485.33212 / (0.95 * 58.6934);
    assertThat(step.get("openAreaMm2").asDouble() / 10_000).isCloseTo(0.2000, offset(1e-12));
    assertThat(step.get("currentA").asDouble()).isCloseTo(0.400, offset(1e-12));
    assertThat(step.get("massG").asDouble()).isCloseTo(0.1780, offset(1e-12));
    assertThat(step.get("chargeAh").asDouble() * 3600).isCloseTo(charge, offset(1e-3));
    assertThat(charge).isCloseTo(616.0, offset(0.05));
    assertThat(step.get("timeS").asDouble()).isCloseTo(1540, offset(0.5));
    assertThat(step.get("timeS").asDouble()).isCloseTo(charge / 0.4, offset(1e-2));
  }

  @Test
  void tapedCubeReadsTheSameInText() {
    String text = Cli.run("plan", "test-meshes/examples/cube20.yaml").out();
    assertThat(text)
        .contains("open area     0.2000 dm2")
        .contains("set           0.400 A = 2 A/dm2")
        .contains("25 min 40 s = 1540 s")
        .contains("(616.0 C)")
        .contains("metal         0.1780 g Ni");
    // the same once more on the one screen at the top
    assertThat(text.lines().filter(l -> l.contains("0.400 A") && l.contains("0.1780 g Ni")))
        .hasSize(1);
  }

  /** A value by its pointer, or a step's by the step's name. */
  private static JsonNode at(JsonNode plan, String where) {
    if (where.startsWith("/")) {
      return plan.at(where);
    }
    String[] parts = where.split("/");
    for (JsonNode step : plan.get("steps")) {
      if (step.get("name").asText().equals(parts[0])) {
        return step.get(parts[1]);
      }
    }
    throw new IllegalArgumentException("no step " + parts[0]);
  }

  @Test
  void visorsStandSideBySide() throws Exception {
    String files = "test-meshes/demo/visor.yaml test-meshes/demo/visor-lattice.yaml";
    List<String> lines = Cli.run(Words.of("compare " + files)).out().lines().toList();
    assertThat(lines.get(0).strip().split("\\s+")).containsExactly("visor", "visor-lattice");
    JsonNode compared = json("compare --json " + files);
    JsonNode chevrons = json("plan --json test-meshes/demo/visor.yaml");
    JsonNode lattice = json("plan --json test-meshes/demo/visor-lattice.yaml");
    String[][] rows = {
      {"exposed by film", "mm2", "/regions/1/areaMm2"},
      {"copper build: current", "A", "copper build/currentA"},
      {"copper build: time", "s", "copper build/timeS"},
      {"copper build: metal", "g", "copper build/massG"},
      {"dark chromium: current", "A", "dark chromium/currentA"},
      {"dark chromium: time", "s", "dark chromium/timeS"},
      {"all plating time", "s", "/timeS"},
    };
    for (String[] row : rows) {
      JsonNode found = null;
      for (JsonNode candidate : compared.get("differences")) {
        found = candidate.get("quantity").asText().equals(row[0]) ? candidate : found;
      }
      assertThat(found).as(row[0]).isNotNull();
      assertThat(found.get("unit").asText()).isEqualTo(row[1]);
      double a = found.get("values").get(0).asDouble();
      double b = found.get("values").get(1).asDouble();
      assertThat(a).isPositive().isEqualTo(at(chevrons, row[2]).asDouble());
      assertThat(b).isPositive().isEqualTo(at(lattice, row[2]).asDouble());
      assertThat(found.get("spread").asDouble()).isEqualTo(Math.abs(a - b));
      assertThat(lines.stream().filter(l -> l.startsWith(row[0]))).as(row[0]).hasSize(1);
    }
    // a brush's time does not follow the open fraction, its current does
    assertThat(
            at(chevrons, "dark chromium/currentA").asDouble()
                / at(lattice, "dark chromium/currentA").asDouble())
        .isCloseTo(
            at(chevrons, "dark chromium/openFraction").asDouble()
                / at(lattice, "dark chromium/openFraction").asDouble(),
            offset(1e-9));
  }

  @Test
  void jobsWithLongNamesKeepThemApart() {
    String head =
        Cli.run(
                "compare",
                "test-meshes/demo/shoulder-plate.yaml",
                "test-meshes/demo/shoulder-plate-lattice.yaml",
                "test-meshes/demo/visor.yaml",
                "test-meshes/demo/visor-lattice.yaml")
            .out();
    assertThat(head.lines().limit(2).toList().toString()).contains("shoulder-plate", "-lattice");
    assertThat(head).contains("visor-lattice");
  }

  /** m = 24 cm2 x 60 um x 8.96 g/cm3; density of wrought copper from the CRC Handbook. */
  @Test
  void quickPlanWorksWithoutAJob() throws Exception {
    JsonNode plan =
        json("plan " + CUBE + " --metal copper --thickness 60um --density 1.5A/dm2 --json");
    JsonNode step = plan.at("/steps/0");
    assertThat(plan.get("steps").size()).isEqualTo(1);
    assertThat(step.get("currentA").asDouble()).isCloseTo(0.24 * 1.5, offset(1e-12));
    assertThat(step.get("massG").asDouble()).isCloseTo(24 * 60e-4 * 8.96, offset(1e-6));
    assertThat(step.get("thicknessUm").asDouble()).isCloseTo(60, offset(1e-9));
    assertThat(plan.at("/part/unitAssumed").asBoolean()).isTrue();
    assertThat(step.get("assumptions").findValuesAsText("what"))
        .contains("cathode efficiency", "density of the deposit", "bath temperature");
  }

  @Test
  void quickPlanInOtherUnitsIsTheSamePlan() throws Exception {
    JsonNode metric =
        json("plan --json " + CUBE + " --recipe nickel-watts --thickness 25.4um --density 2A/dm2");
    JsonNode inch =
        json(
            "plan --json "
                + CUBE
                + " --recipe nickel-watts --thickness 0.001in --density 0.02A/cm2");
    for (String key : List.of("currentA", "timeS", "massG", "chargeAh")) {
      double value = metric.at("/steps/0").get(key).asDouble();
      assertThat(inch.at("/steps/0").get(key).asDouble()).isCloseTo(value, offset(1e-9 * value));
    }
    JsonNode charged =
        json(
            "plan --json "
                + CUBE
                + " --recipe nickel-watts --density 2A/dm2 --charge "
                + metric.at("/steps/0/chargeAh").asText()
                + "A.h");
    assertThat(charged.at("/steps/0/massG").asDouble())
        .isCloseTo(metric.at("/steps/0/massG").asDouble(), offset(1e-9));
  }

  @Test
  void chargeGrowsWithTheSquareOfTheScaleAndWithInches() throws Exception {
    String line = "plan --json " + CUBE + " --metal nickel --thickness 10um ";
    double once = json(line).at("/steps/0/chargeAh").asDouble();
    assertThat(json(line + "--scale 300%").at("/steps/0/chargeAh").asDouble())
        .isCloseTo(9 * once, offset(1e-9 * once));
    assertThat(json(line + "--unit in").at("/steps/0/chargeAh").asDouble())
        .isCloseTo(25.4 * 25.4 * once, offset(1e-9 * once * 645));
  }

  @ParameterizedTest
  @ValueSource(strings = {"positive", "negative", "stop-off"})
  void maskAreasAddUp(String use) throws Exception {
    for (String part :
        List.of(
            CUBE + " --artwork " + SQUARE + " --toward \"0.2 0 -1\"",
            "test-meshes/demo/visor.stl --artwork test-meshes/demo/visor-lattice.svg --toward +y")) {
      JsonNode m = json("mask --json " + part + " --use " + use);
      double skin = m.get("skinAreaMm2").asDouble();
      double open = m.get("openAreaMm2").asDouble();
      double closed = m.get("closedAreaMm2").asDouble();
      double exposed = m.get("exposedAreaMm2").asDouble();
      double masked = m.get("maskedAreaMm2").asDouble();
      double unreached = m.get("unreachedAreaMm2").asDouble();
      double stopped = m.get("stoppedOffAreaMm2").asDouble();
      assertThat(open + closed).isCloseTo(skin, offset(1e-9 * skin));
      assertThat(exposed + masked + unreached + stopped).isCloseTo(skin, offset(1e-9 * skin));
      boolean unreachedIsOpen = !use.equals("positive");
      assertThat(open).isCloseTo(exposed + (unreachedIsOpen ? unreached : 0), offset(1e-9 * skin));
      assertThat(use.equals("stop-off") ? masked : stopped).isZero();
      assertThat(unreached).isPositive();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "--toward -z",
    "--toward=-z",
    "--toward=-Z",
    "'--toward \"0 0 -1\"'",
    "'--toward=\"0,0,-2\"'"
  })
  void directionsWithAMinusAreValues(String words) throws Exception {
    JsonNode m =
        json(
            "mask --json "
                + CUBE
                + " --artwork "
                + SQUARE
                + " --use stop-off "
                + words.replace("=\"", "= \"").replace("= ", " "));
    assertThat(m.get("stoppedOffAreaMm2").asDouble()).isCloseTo(400, offset(1e-9));
    assertThat(m.get("openAreaMm2").asDouble()).isCloseTo(2000, offset(1e-9));
  }

  @Test
  void splitMeshIsWrittenWithAGroupForEachRegion(@TempDir Path folder) throws Exception {
    Path out = folder.resolve("split.obj");
    JsonNode m =
        json(
            "mask --json test-meshes/demo/visor.stl"
                + " --artwork test-meshes/demo/visor-chevrons.svg --toward +y --out "
                + out);
    PrintFile read = PrintFile.read(out, 1, Progress.SILENT);
    Map<String, Double> areas = new TreeMap<>();
    for (int f = 0; f < read.mesh().faceCount(); f++) {
      areas.merge(
          read.mesh().groupNames().get(read.mesh().group(f)),
          read.mesh().faceAreaMm2(f),
          Double::sum);
    }
    assertThat(areas.keySet()).containsExactly("exposed", "masked", "unreached");
    areas.forEach(
        (group, area) ->
            assertThat(area)
                .as(group)
                .isCloseTo(m.get(group + "AreaMm2").asDouble(), offset(1e-6 * area)));
    Cli.Result stl =
        Cli.run(Words.of("mask " + CUBE + " --artwork " + SQUARE + " --toward -z --out x.stl"));
    assertThat(stl.code()).isEqualTo(2);
    assertThat(stl.err()).contains("x.stl: a name ending in .obj fits");
    Cli.Result nowhere =
        Cli.run(
            Words.of(
                "mask "
                    + CUBE
                    + " --artwork "
                    + SQUARE
                    + " --toward -z --out "
                    + folder.resolve("no/such/folder.obj")));
    assertThat(nowhere.code()).isEqualTo(2);
    assertThat(nowhere.out()).isEmpty();
    assertThat(nowhere.err()).contains("folder.obj: there is no folder ");
  }

  @Test
  void obliqueLightCountsAreaOnTheSurface() throws Exception {
    // Along (0.2, 0, -1) the square lies 20 mm wide in a plane tilted against the top by
    // atan(0.2): it covers the top and a strip of the side that the light also sees.
    JsonNode m =
        json(
            "mask --json "
                + CUBE
                + " --artwork "
                + SQUARE
                + " --use stop-off --toward \"0.2 0 -1\"");
    assertThat(m.get("unreachedAreaMm2").asDouble()).isCloseTo(4 * 400, offset(1e-9));
    double seen = m.get("exposedAreaMm2").asDouble() + m.get("stoppedOffAreaMm2").asDouble();
    assertThat(seen).isCloseTo(2 * 400, offset(1e-9));
    // film plane: top projects to 20 cos, side to 20 sin across, together wider than the square
    double tilt = Math.atan(0.2);
    double across = 20 * Math.cos(tilt) + 20 * Math.sin(tilt);
    double beside = (across - 20) / 2;
    double exposed = 20 * beside / Math.cos(tilt) + 20 * beside / Math.sin(tilt);
    assertThat(m.get("exposedAreaMm2").asDouble()).isCloseTo(exposed, offset(1e-6));
  }

  /** Each layout's cost is what its own plan says, with the ends of its band. */
  @Test
  void comparisonsTellTheCost() {
    String prices = "test-meshes/shop/prices.yaml";
    String one = "test-meshes/demo/visor.yaml";
    String other = "test-meshes/demo/visor-etched.yaml";
    Cli.Result compared = Cli.run("compare", one, other, "--prices", prices);
    assertThat(compared.code()).isZero();
    String cost = line(compared.out(), "cost ");
    for (String job : List.of(one, other)) {
      String plan = Cli.run("plan", job, "--prices", prices).out();
      String sum = line(plan, "crowns in all").strip().split(" ")[0];
      double exact = Double.parseDouble(sum);
      assertThat(
              java.util.Arrays.stream(
                      cost.replace("cost", "").replace("crowns", " ").strip().split("\\s+"))
                  .mapToDouble(Double::parseDouble)
                  .anyMatch(c -> Math.abs(c - exact) < 0.006 + 1e-3 * exact))
          .as("%s in '%s'", sum, cost)
          .isTrue();
    }
    assertThat(compared.out()).contains("cost, P10", "cost, P90");
  }

  private static String line(String text, String with) {
    return text.lines().filter(l -> l.contains(with)).findFirst().orElseThrow();
  }
}
