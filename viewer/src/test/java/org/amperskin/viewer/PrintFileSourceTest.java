package org.amperskin.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.amperskin.io.PrintFileWriter;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Patches;
import org.amperskin.testmeshes.Shapes;
import org.amperskin.viewer.part.FigureRow;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.ProblemException;
import org.amperskin.viewer.part.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PrintFileSourceTest {
  @TempDir private Path folder;

  @Test
  void tetrahedronComesWithItsAreaAndVolume() throws Exception {
    // corner of a cube of side 6: three legs of 18 mm2 and a face of 36 sqrt(3) / 2 mm2; volume 36
    Path file = write("v 0 0 0\nv 6 0 0\nv 0 6 0\nv 0 0 6\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n");
    List<Progress> told = new ArrayList<>();
    LoadedPart part = new PrintFileSource().load(file, told::add);
    assertThat(part.surfaces().get(0).mesh().faceCount()).isEqualTo(4);
    assertThat(part.surfaces().get(0).regions().get(0).areaMm2()).isEqualTo(54 + 18 * Math.sqrt(3));
    assertThat(part.partRows())
        .contains(
            new FigureRow("Surface as stored", "0.0085", "dm²"),
            new FigureRow("Volume", "0.036", "cm³"),
            new FigureRow("Closed", "yes", ""));
    assertThat(told).isNotEmpty();
  }

  @Test
  void brokenFileIsToldWithItsLine() throws Exception {
    Path file = write("v 0 0 0\nv 6 0 0\nv 0 6 0\nf 1 2 9\n");
    assertThatThrownBy(() -> new PrintFileSource().load(file, p -> {}))
        .isInstanceOfSatisfying(
            ProblemException.class, e -> assertThat(e.where()).contains("line 4"));
  }

  @Test
  void missingFileIsTold() {
    Path file = folder.resolve("not-there.stl");
    assertThatThrownBy(() -> new PrintFileSource().load(file, p -> {}))
        .isInstanceOfSatisfying(
            ProblemException.class, e -> assertThat(e.where()).isEqualTo(file.toString()));
  }

  private Path write(String text) throws IOException {
    return Files.writeString(folder.resolve("part.obj"), text);
  }

  @Test
  void faultsArePaintedWhereTheyAre() throws Exception {
    SurfaceMesh lid = Shapes.box(70, 0, 0, 90, 20, 20);
    SurfaceMesh dirty =
        Shapes.together(
            Shapes.box(0, 0, 0, 40, 30, 20),
            Shapes.box(30, 5, 5, 60, 25, 15),
            Shapes.box(5, 5, 5, 15, 15, 15),
            SurfaceMesh.of(lid.positions(), java.util.Arrays.copyOf(lid.corners(), 30)));
    Path file = folder.resolve("dirty.obj");
    PrintFileWriter.write(dirty, file, "test");
    LoadedPart part = new PrintFileSource().load(file, p -> {});
    assertThat(part.surfaces()).hasSize(2);
    assertThat(part.steps()).hasSize(1);
    Map<String, Double> areas = new HashMap<>();
    part.surfaces().get(1).regions().forEach(r -> areas.put(r.label(), r.areaMm2()));
    // The shell inside is 6 x 100; the missing side leaves four faces with an open edge.
    assertThat(areas.get("inner-shell")).isCloseTo(600, within(1e-9));
    assertThat(areas.get("open-edge")).isCloseTo(800, within(1e-9));
    assertThat(areas).containsKeys("overlap", "sound");
    assertThat(areas.values().stream().mapToDouble(a -> a).sum()).isCloseTo(10_000, within(1e-6));
    assertThat(part.surfaces().get(0).regions()).anyMatch(r -> r.label().equals("assumed"));
  }

  @Test
  void crackedFileIsShownStitched() throws Exception {
    Patches box =
        new Patches().box(50, 30, 20, side -> side == 1 ? new int[] {4, 4} : new int[] {1, 1});
    Path file = folder.resolve("cracked.obj");
    PrintFileWriter.write(box.mesh(), file, "test");
    LoadedPart part = new PrintFileSource().load(file, p -> {});
    assertThat(part.partRows()).anyMatch(r -> r.label().equals("Wetted"));
    assertThat(part.partRows())
        .anyMatch(r -> r.label().equals("Closed") && r.value().equals("yes"));
    Map<String, Double> areas = new HashMap<>();
    part.surfaces().get(1).regions().forEach(r -> areas.put(r.label(), r.areaMm2()));
    // Of each of the four sides, the one face that has an edge in the top.
    assertThat(areas.get("stitched")).isCloseTo(20 * (50 + 30), within(1e-9));
    assertThat(part.surfaces().get(0).regions().get(0).areaMm2()).isCloseTo(6200, within(1e-8));
  }
}
