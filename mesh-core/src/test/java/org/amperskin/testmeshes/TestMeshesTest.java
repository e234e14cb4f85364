package org.amperskin.testmeshes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The manifest and the folder say the same. */
class TestMeshesTest {
  private static final Set<String> UNLISTED =
      Set.of(".gitattributes", "manifest.csv", "from-packages.tsv", "README.md");

  @Test
  void manifestListsExactlyTheFilesThatExist() throws Exception {
    Path folder = TestMeshes.folder();
    Set<String> present;
    try (Stream<Path> files = Files.walk(folder)) {
      present =
          files
              .filter(Files::isRegularFile)
              .map(p -> folder.relativize(p).toString().replace('\\', '/'))
              .filter(name -> !UNLISTED.contains(name))
              .collect(Collectors.toCollection(TreeSet::new));
    }
    List<String> listed = TestMeshes.all().stream().map(TestMeshes.Entry::file).toList();
    assertThat(listed).doesNotHaveDuplicates();
    assertThat(new TreeSet<>(listed)).isEqualTo(present);
  }

  @Test
  void closedMeshesHaveAllNumbers() {
    for (TestMeshes.Entry e : TestMeshes.all()) {
      boolean mesh = !Set.of("faulty", "artwork", "job").contains(e.group());
      if (mesh && e.closed()) {
        assertThat(e.triangles()).as(e.file()).isPresent();
        assertThat(e.areaMm2()).as(e.file()).isPresent();
        assertThat(e.volumeMm3()).as(e.file()).isPresent();
      }
      if (e.group().equals("faulty")) {
        assertThat(e.areaMm2()).as(e.file()).isEmpty();
        assertThat(e.note()).as(e.file()).startsWith("error");
      }
    }
  }

  @Test
  void binaryStlCountsAgreeWithTheFileSizes() throws Exception {
    int checked = 0;
    for (TestMeshes.Entry e : TestMeshes.all()) {
      if (e.format().equals("stl-binary") && e.triangles().isPresent()) {
        assertThat(Files.size(e.path()))
            .as(e.file())
            .isEqualTo(84L + 50 * e.triangles().getAsInt());
        checked++;
      }
    }
    assertThat(checked).isEqualTo(8);
  }

  @Test
  void unknownNamesAreRefused() {
    assertThatThrownBy(() -> TestMeshes.group("opne")).hasMessageContaining("opne");
    assertThatThrownBy(() -> TestMeshes.named("small/none.stl"))
        .hasMessageContaining("small/none.stl");
  }
}
