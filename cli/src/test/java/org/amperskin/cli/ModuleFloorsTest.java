package org.amperskin.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import org.junit.jupiter.api.Test;

/** The terminal stands on the core and never sees the viewer or a window. */
class ModuleFloorsTest {
  private static final JavaClasses SHIPPED =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .withImportOption(location -> location.contains("/cli/"))
          .importPackages("org.amperskin");

  private static final ArchRule FLOORS =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("cli")
          .definedBy("org.amperskin.cli")
          .whereLayer("cli")
          .mayNotBeAccessedByAnyLayer()
          .ensureAllClassesAreContainedInArchitecture();

  @Test
  void allClassesOfTheModuleLieInItsOnePackage() {
    assertThat(SHIPPED.size()).isGreaterThanOrEqualTo(15);
    FLOORS.check(SHIPPED);
  }

  @Test
  void strayPackagesAreCaught() {
    JavaClasses stray = new ClassFileImporter().importPackages("org.amperskin.units");
    assertThat(stray.size()).isPositive();
    assertThatThrownBy(() -> FLOORS.check(stray)).isInstanceOf(AssertionError.class);
  }

  private static ArchRule neverSees(String... packages) {
    return noClasses().should().dependOnClassesThat().resideInAnyPackage(packages);
  }

  @Test
  void neitherViewerNorWindowsAreSeen() {
    neverSees("org.amperskin.viewer..", "javafx..", "java.awt..", "javax.swing..").check(SHIPPED);
  }

  @Test
  void theCoreDoesNotLookUp() {
    JavaClasses core =
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .withImportOption(location -> location.contains("mesh-core"))
            .importPackages("org.amperskin");
    assertThat(core.size()).isGreaterThan(100);
    neverSees("org.amperskin.cli..", "org.amperskin.viewer..", "picocli..").check(core);
  }

  @Test
  void aPlantedFaultIsCaught() {
    assertThatThrownBy(() -> neverSees("picocli..").check(SHIPPED))
        .isInstanceOf(AssertionError.class)
        .hasMessageContaining("picocli");
  }
}
