package org.amperskin;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.EvaluationResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.amperskin.floorfault.Stray;
import org.amperskin.floorfault.geom.LooksUp;
import org.amperskin.floorfault.io.obj.KnowsSibling;
import org.amperskin.floorfault.io.stl.Format;
import org.amperskin.floorfault.mesh.BringsRing;
import org.amperskin.floorfault.plating.KnowsFile;
import org.amperskin.floorfault.plating.KnowsMesh;
import org.amperskin.floorfault.region.Upstairs;
import org.amperskin.floorfault.units.Unsteady;
import org.amperskin.mesh.SurfaceMesh;
import org.junit.jupiter.api.Test;

/** The rooms of the house import downwards only; each rule is also shown a class that breaks it. */
class FloorsTest {
  private static final String ROOT = "org.amperskin";
  private static final String FAULTY = "org.amperskin.floorfault";

  /** The classes beside {@code SurfaceMesh}, so never a test's. */
  private static final JavaClasses MAIN =
      new ClassFileImporter()
          .importUrl(SurfaceMesh.class.getProtectionDomain().getCodeSource().getLocation());

  @Test
  void mainClassesAreFound() {
    assertThat(MAIN.contain("org.amperskin.mesh.SurfaceMesh")).isTrue();
    assertThat(MAIN.contain("org.amperskin.io.PrintFile")).isTrue();
    assertThat(MAIN.contain("org.amperskin.FloorsTest")).isFalse();
    assertThat(MAIN.contain(Stray.class)).isFalse();
  }

  @Test
  void lowerRoomsNeverImportHigherOnes() {
    Floors.floors(ROOT).check(MAIN);
  }

  @Test
  void packagesFormNoRing() {
    Floors.noRings(ROOT).check(MAIN);
  }

  @Test
  void platingKnowsNoMeshAndNoFile() {
    Floors.platingKnowsNoMeshAndNoFile(ROOT).check(MAIN);
  }

  @Test
  void nothingReadsTheClock() {
    Floors.noClock().check(MAIN);
  }

  @Test
  void nothingRollsDiceWithoutASeed() {
    Floors.noUnseededChance().check(MAIN);
  }

  @Test
  void staticsDoNotChange() {
    Floors.staticsAreFinal().check(MAIN);
  }

  @Test
  void everyRoomOfTheTableSaysWhatItIs() throws Exception {
    Path source = Path.of("src/main/java/org/amperskin").toAbsolutePath();
    Set<String> described;
    try (Stream<Path> files = Files.walk(source)) {
      described =
          files
              .filter(p -> p.endsWith("package-info.java"))
              .map(p -> source.relativize(p.getParent()).toString().replace('\\', '/'))
              .map(p -> p.replace('/', '.'))
              .collect(Collectors.toCollection(TreeSet::new));
    }
    assertThat(described).isEqualTo(new TreeSet<>(Floors.rooms()));
  }

  @Test
  void tableIsClosedDownwards() {
    assertThat(Floors.below("mesh")).containsExactlyInAnyOrder("geom", "units");
    assertThat(Floors.below("io.obj")).contains("io.common", "mesh").doesNotContain("io.stl", "io");
    assertThat(Floors.below("plating")).containsExactly("units", "yaml");
    assertThat(Floors.below("job")).hasSize(Floors.rooms().size() - 2).doesNotContain("report");
  }

  @Test
  void aLowerRoomThatLooksUpIsCaught() {
    assertThat(faults(Floors.floors(FAULTY), LooksUp.class, Upstairs.class))
        .singleElement()
        .asString()
        .contains(LooksUp.class.getName(), Upstairs.class.getName());
  }

  @Test
  void lookingDownIsAllowed() {
    assertThat(faults(Floors.floors(FAULTY), Upstairs.class, BringsRing.class)).isEmpty();
  }

  @Test
  void aFormatThatKnowsAnotherFormatIsCaught() {
    assertThat(faults(Floors.floors(FAULTY), KnowsSibling.class, Format.class))
        .singleElement()
        .asString()
        .contains(KnowsSibling.class.getName());
  }

  @Test
  void aClassOutsideAllRoomsIsCaught() {
    assertThat(faults(Floors.floors(FAULTY), Stray.class))
        .singleElement()
        .asString()
        .contains(Stray.class.getName());
  }

  @Test
  void aRingIsCaught() {
    assertThat(faults(Floors.noRings(FAULTY), BringsRing.class, Upstairs.class, LooksUp.class))
        .isNotEmpty();
    assertThat(faults(Floors.noRings(FAULTY), LooksUp.class)).isEmpty();
  }

  @Test
  void platingThatKnowsMeshOrFileIsCaught() {
    assertThat(faults(Floors.platingKnowsNoMeshAndNoFile(FAULTY), KnowsMesh.class)).isNotEmpty();
    assertThat(faults(Floors.platingKnowsNoMeshAndNoFile(FAULTY), KnowsFile.class)).isNotEmpty();
    assertThat(faults(Floors.platingKnowsNoMeshAndNoFile(FAULTY), LooksUp.class)).isEmpty();
  }

  @Test
  void clockDiceAndChangingStaticsAreCaught() {
    assertThat(faults(Floors.noClock(), Unsteady.class)).hasSize(3);
    assertThat(faults(Floors.noUnseededChance(), Unsteady.class)).hasSize(3);
    assertThat(faults(Floors.staticsAreFinal(), Unsteady.class)).hasSize(1);
  }

  private static List<String> faults(ArchRule rule, Class<?>... classes) {
    JavaClasses shown = new ClassFileImporter().importClasses(Arrays.asList(classes));
    EvaluationResult result = rule.allowEmptyShould(true).evaluate(shown);
    return result.getFailureReport().getDetails();
  }
}
