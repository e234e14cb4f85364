package org.amperskin.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import org.amperskin.geom.Progress;
import org.amperskin.io.PrintFileWriter;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.region.RegionKind;
import org.amperskin.testmeshes.Shapes;
import org.amperskin.yaml.YamlFault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PaintAndPartsTest {
  @TempDir private Path folder;

  private Estimate run(SurfaceMesh mesh, String job) throws Exception {
    PrintFileWriter.write(mesh, folder.resolve("part.obj"), "test");
    Path file = Files.writeString(folder.resolve("job.yaml"), job);
    return JobRun.of(JobFile.read(file, RecipeLibrary.standard()), Progress.SILENT);
  }

  private static double open(Estimate e) {
    return e.regions().get(Job.WHOLE_SKIN).openAreaMm2();
  }

  @Test
  void currentFlowsOnlyWherePaintReaches() throws Exception {
    SurfaceMesh ball = Shapes.drainedBall(125, 120, 1, 4);
    Estimate e = run(ball, "part: {file: part.obj, unit: mm}\n");
    double outside = 4 * Math.PI * 125 * 125;
    assertThat(open(e)).isCloseTo(outside, within(0.02 * outside));
    assertThat(e.regions().get(Job.WHOLE_SKIN).split().areaMm2(RegionKind.UNPAINTED))
        .isGreaterThan(0.9 * 4 * Math.PI * 120 * 120);
    assertThat(e.warnings()).anyMatch(w -> w.contains("out of a spray's reach"));
  }

  @Test
  void paintCanBeBroughtEverywhereAlsoSomewhereAndKeptAway() throws Exception {
    SurfaceMesh ball = Shapes.drainedBall(125, 120, 1, 4);
    String part = "part: {file: part.obj, unit: mm}\n";
    double sprayed = open(run(ball, part));
    double all = open(run(ball, part + "paint: {reach: everywhere}\n"));
    double lowerInside =
        open(
            run(
                ball,
                part
                    + "paint: {also: {sphere: {centre: 0 0 0 mm, radius: 122 mm}},"
                    + " not: {plane: {point: 0 0 0 mm, normal: +z}}}\n"));
    assertThat(all).isGreaterThan(1.9 * sprayed);
    assertThat(lowerInside).isCloseTo(all / 2, within(0.02 * all));
  }

  @Test
  void partsArePickedByNumberAndByName() throws Exception {
    SurfaceMesh two =
        Shapes.together(Shapes.box(0, 0, 0, 10, 10, 10), Shapes.box(20, 0, 0, 25, 5, 5));
    int[] groups = new int[24];
    java.util.Arrays.fill(groups, 12, 24, 1);
    SurfaceMesh named =
        SurfaceMesh.of(two.positions(), two.corners(), groups, java.util.List.of("large", "small"));
    assertThat(open(run(named, "part: {file: part.obj, unit: mm}\n"))).isCloseTo(750, within(1e-6));
    assertThat(open(run(named, "part: {file: part.obj, unit: mm, pick: 2}\n")))
        .isCloseTo(150, within(1e-6));
    assertThat(open(run(named, "part: {file: part.obj, unit: mm, pick: large}\n")))
        .isCloseTo(600, within(1e-6));
    assertThatThrownBy(() -> run(named, "part: {file: part.obj, unit: mm, pick: lagre}\n"))
        .isInstanceOf(YamlFault.class)
        .hasMessageContaining(":1:")
        .hasMessageContaining("did you mean 'large'?")
        .hasMessageContaining("1 to 2");
  }

  @Test
  void unlikelySizesAreAskedAbout() throws Exception {
    assertThat(question(Shapes.box(0, 0, 0, 0.1, 0.05, 0.05)))
        .contains("are its numbers m (100.0 mm)");
    assertThat(question(Shapes.box(0, 0, 0, 1, 1, 1))).contains("are its numbers in (25.40 mm)");
    assertThat(question(Shapes.box(0, 0, 0, 50_000, 9_000, 9_000)))
        .contains("are its numbers um (50.00 mm)");
    assertThat(question(Shapes.box(0, 0, 0, 3_000, 9, 9))).contains("3000 mm long");
    assertThat(question(Shapes.box(0, 0, 0, 80, 9, 9))).isEmpty();
  }

  private String question(SurfaceMesh mesh) throws Exception {
    Path file = folder.resolve("size.obj");
    PrintFileWriter.write(mesh, file, "test");
    return MeasuredPart.of(Job.PartSpec.of(file), MeshDiagnosis.Search.ALL, false, Progress.SILENT)
        .sizeQuestion()
        .orElse("");
  }
}
