package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every job, drawing and part that is shipped below test-meshes does what it is there for. */
class ExampleFilesTest {
  private static List<Path> files(String... endings) {
    try (Stream<Path> found =
        Stream.of("demo", "examples")
            .flatMap(
                folder -> {
                  try {
                    return Files.list(Cli.ROOT.resolve("test-meshes").resolve(folder));
                  } catch (IOException e) {
                    throw new UncheckedIOException(e);
                  }
                })) {
      return found
          .filter(p -> Stream.of(endings).anyMatch(e -> p.toString().endsWith(e)))
          .sorted()
          .toList();
    }
  }

  static List<Path> jobs() {
    return files(".yaml");
  }

  static List<Path> parts() {
    return files(".stl", ".obj");
  }

  static List<Path> drawings() {
    return files(".svg", ".png");
  }

  @Test
  void noneIsForgotten() {
    assertThat(jobs()).hasSize(12);
    assertThat(parts()).hasSize(3);
    assertThat(drawings()).hasSize(5);
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void jobsGiveFigures(Path job) {
    Cli.Result shown = Cli.run("plan", job.toString());
    assertThat(shown.code()).as(shown.err()).isZero();
    assertThat(shown.err()).isEmpty();
    assertThat(shown.out()).contains("Steps", "Regions", "Cautions").doesNotContain("NO FIGURE");
  }

  @ParameterizedTest
  @MethodSource("parts")
  void partsAreSound(Path part) {
    Cli.Result shown = Cli.run("measure", part.toString());
    assertThat(shown.code()).as(shown.err()).isZero();
    assertThat(shown.out()).contains("surface closed", "problems      none found");
  }

  @ParameterizedTest
  @MethodSource("drawings")
  void drawingsMaskTheirPart(Path drawing) {
    String name = drawing.getFileName().toString();
    String part =
        name.startsWith("square20")
            ? "examples/cube20.stl"
            : name.startsWith("visor") ? "demo/visor.stl" : "demo/shoulder-plate.obj";
    Cli.Result shown =
        Cli.run(
            "mask",
            "test-meshes/" + part,
            "--artwork",
            drawing.toString(),
            "--toward",
            name.startsWith("square20") ? "-z" : "+y");
    assertThat(shown.code()).as(shown.err()).isZero();
    assertThat(shown.out()).contains("open", "closed", "unreached");
  }
}
