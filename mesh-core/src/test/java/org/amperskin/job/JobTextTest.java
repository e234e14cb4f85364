package org.amperskin.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.region.Placement;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Placements changed in a job's text. */
class JobTextTest {
  private static final RecipeLibrary RECIPES = RecipeLibrary.standard();

  @TempDir private Path folder;

  static Stream<Path> jobs() throws IOException {
    List<Path> jobs = new ArrayList<>();
    for (String part : new String[] {"demo", "examples"}) {
      try (Stream<Path> files = Files.list(TestMeshes.folder().resolve(part))) {
        files.filter(f -> f.toString().endsWith(".yaml")).sorted().forEach(jobs::add);
      }
    }
    return jobs.stream();
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void everyHandleOfEveryJobChangesItsLineOnly(Path file) throws Exception {
    JobText text = JobText.read(file);
    Job job = text.job(RECIPES);
    for (String film : job.films().keySet()) {
      Placement p =
          changed(text, film, "turn", "12.5 deg").job(RECIPES).films().get(film).placement();
      assertThat(p.turnDegrees()).isCloseTo(12.5, within(1e-9));
      p = changed(text, film, "scale", "95 %").job(RECIPES).films().get(film).placement();
      assertThat(p.scale()).isCloseTo(0.95, within(1e-12));
      p = changed(text, film, "centre", "1.5 -2 3 mm").job(RECIPES).films().get(film).placement();
      assertThat(p.centre()).isEqualTo(new Vec3(1.5, -2, 3));
      p = changed(text, film, "mirror", "true").job(RECIPES).films().get(film).placement();
      assertThat(p.mirror()).isTrue();
    }
  }

  private static JobText changed(JobText text, String film, String key, String value) {
    JobText now = text.withFilm(film, key, value);
    List<String> before = new ArrayList<>(text.yaml().text().lines().toList());
    List<String> after = new ArrayList<>(now.yaml().text().lines().toList());
    int same = 0;
    while (same < before.size() && before.get(same).equals(after.get(same))) {
      same++;
    }
    assertThat(after.get(same)).contains(key + ": " + value);
    boolean added = after.size() > before.size();
    assertThat(after.subList(same + 1, after.size()))
        .isEqualTo(before.subList(added ? same : same + 1, before.size()));
    return now;
  }

  @Test
  void whatIsSavedKeepsMarkAndLineEnds() throws Exception {
    Path file = folder.resolve("job.yaml");
    String text = "\ufeffpart: {file: a.stl}\r\nfilm:\r\n  f:\r\n    turn: 1 deg # t\r\n";
    Files.writeString(file, text);
    JobText read = JobText.read(file);
    assertThat(read.isOnDisk()).isTrue();
    JobText now = read.withFilm("f", "turn", "2 deg");
    assertThat(now.isOnDisk()).isFalse();
    now.save();
    assertThat(new String(Files.readAllBytes(file), StandardCharsets.UTF_8))
        .isEqualTo(text.replace("1 deg", "2 deg"));
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).hasSize(1);
    }
  }

  @Test
  void aFilmMovesAlongItself() throws Exception {
    Path examples = TestMeshes.folder().resolve("examples");
    Path file = folder.resolve("job.yaml");
    Files.writeString(
        file,
        """
        part: {file: %s, unit: mm}
        film:
          square: {artwork: %s, toward: -z, up: +y, turn: 90 deg, centre: 10 10 20 mm}
        """
            .formatted(examples.resolve("cube20.stl"), examples.resolve("square20.svg")));
    JobText text = JobText.read(file);
    Estimate e = JobRun.of(text.job(RECIPES), Progress.SILENT);
    FilmHandles film = FilmHandles.of(text, e).get(0);
    // seen along -z with +y up, x runs right; a quarter turn counter-clockwise takes right to up
    assertThat(film.centreMovedBy(2, 0)).contains("10 12 20 mm");
    assertThat(film.centreMovedBy(0, 1.5)).contains("8.5 10 20 mm");
    assertThat(film.centreMovedBy(40, 0)).isEmpty();
    assertThat(film.turnedBy(-1)).isEqualTo("89 deg");
    assertThat(film.turnedBy(0.5)).isEqualTo("90.5 deg");
    assertThat(film.lies()).isEqualTo("flat");
    assertThat(film.handles().get(0).text()).isEqualTo("10 10 20 mm");
  }
}
