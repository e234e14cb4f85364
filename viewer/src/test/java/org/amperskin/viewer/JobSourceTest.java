package org.amperskin.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.amperskin.viewer.part.FigureRow;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.ProblemException;
import org.amperskin.viewer.part.RegionEntry;
import org.amperskin.viewer.part.StepCard;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobSourceTest {
  private static final Path DEMO = Path.of("..", "test-meshes", "demo");

  @TempDir private Path folder;

  @Test
  void paintedAreasAreTheCountedAreas() throws ProblemException {
    LoadedPart part = new JobSource().load(DEMO.resolve("visor.yaml"), p -> {});
    assertThat(part.steps()).isNotEmpty();
    for (PaintedSurface surface : part.surfaces()) {
      double[] painted = new double[surface.regions().size()];
      for (int f = 0; f < surface.mesh().faceCount(); f++) {
        painted[surface.region(f)] += surface.mesh().faceAreaMm2(f);
      }
      for (int r = 0; r < painted.length; r++) {
        double counted = surface.regions().get(r).areaMm2();
        assertThat(painted[r]).as(surface.name()).isCloseTo(counted, within(1e-9 * counted));
      }
    }
  }

  @Test
  void filmsCanBePaintedByWhatIsKnownOfTheirPrint() throws ProblemException {
    LoadedPart part = new JobSource().load(DEMO.resolve("visor.yaml"), p -> {});
    PaintedSurface chevrons = part.surfaces().get(0);
    assertThat(chevrons.name()).isEqualTo("chevrons");
    assertThat(chevrons.fields())
        .extracting(PaintedSurface::name)
        .containsExactly(
            "vanishing lines", "gap", "edge blur", "light", "stretch", "open fraction");
    double skin = chevrons.regions().stream().mapToDouble(RegionEntry::areaMm2).sum();
    for (PaintedSurface field : chevrons.fields()) {
      double[] painted = new double[field.regions().size()];
      for (int f = 0; f < field.mesh().faceCount(); f++) {
        painted[field.region(f)] += field.mesh().faceAreaMm2(f);
      }
      double all = 0;
      for (int r = 0; r < painted.length; r++) {
        all += painted[r];
        assertThat(painted[r])
            .as("%s, %s", field.name(), field.regions().get(r).label())
            .isCloseTo(field.regions().get(r).areaMm2(), within(1e-6));
      }
      assertThat(all).as(field.name()).isCloseTo(skin, within(1e-6 * skin));
    }
    assertThat(part.problems()).anyMatch(p -> p.startsWith("film chevrons: "));
  }

  @Test
  void everyStepOfTheDemosShowsItsOpenAreaAndItsCautions() throws ProblemException {
    for (String name : List.of("visor.yaml", "shoulder-plate.yaml")) {
      LoadedPart part = new JobSource().load(DEMO.resolve(name), p -> {});
      for (StepCard step : part.steps()) {
        assertThat(step.cautions()).as("%s, %s", name, step.name()).isNotEmpty();
        for (FigureRow row : step.more()) {
          if (row.label().equals("Open area")) {
            double open =
                part.surfaces().get(step.surface()).regions().stream()
                    .filter(RegionEntry::open)
                    .mapToDouble(RegionEntry::areaMm2)
                    .sum();
            assertThat(Double.parseDouble(row.value()))
                .as("%s, %s", name, step.name())
                .isCloseTo(open / 1e4, within(1e-3 * open / 1e4 + 1e-9));
          }
        }
      }
    }
  }

  @Test
  void faultOfAJobIsToldWithLineAndColumn() throws IOException {
    Path file = Files.writeString(folder.resolve("a.yaml"), "part:\n  file: a.stl\n  colour: 3\n");
    assertThatThrownBy(() -> new JobSource().load(file, p -> {}))
        .isInstanceOfSatisfying(
            ProblemException.class,
            e -> {
              assertThat(e.where()).contains("a.yaml:3:");
              assertThat(e.what()).contains("colour");
            });
  }
}
