package org.amperskin.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import org.amperskin.film.Layouts;
import org.amperskin.film.Stencil;
import org.amperskin.film.StencilOptions;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.ArtworkFile;
import org.amperskin.region.MaskKind;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Cut files are read again and measured. */
class StencilFileTest {
  @TempDir private Path folder;

  private static Stencil stencil(String drawing, double bridgeMm) throws Exception {
    Artwork artwork = ArtworkFile.read(TestMeshes.folder().resolve("demo").resolve(drawing));
    return Stencil.of(
        Layouts.sheet(artwork, MaskKind.POSITIVE_RESIST),
        new StencilOptions(0.5, 6, bridgeMm, false));
  }

  @ParameterizedTest
  @ValueSource(strings = {"visor-chevrons.svg", "visor-lattice.svg", "shoulder-lattice.svg"})
  void everyLineIsClosedAndEnclosesTheArtwork(String drawing) throws Exception {
    Artwork artwork = ArtworkFile.read(TestMeshes.folder().resolve("demo").resolve(drawing));
    Stencil stencil = stencil(drawing, 0);
    DxfReader dxf = new DxfReader(StencilFile.dxf(stencil));
    String svg = StencilFile.svg(stencil, "Test");
    assertThat(dxf.openLines()).isZero();
    assertThat(PathReader.area(dxf.closed("CUT")) / artwork.opaqueAreaMm2())
        .isCloseTo(1, within(1e-6));
    assertThat(-PathReader.area(PathReader.group(svg, "cut")) / artwork.opaqueAreaMm2())
        .isCloseTo(1, within(1e-6));
    assertThat(dxf.closed("CUT")).hasSameSizeAs(PathReader.group(svg, "cut"));
    assertThat(dxf.closed("MARKS")).hasSize(2);
    assertThat(PathReader.width(dxf.closed("BORDER")))
        .isCloseTo(artwork.widthMm() + 12, within(1e-6));
  }

  @Test
  void dxfIsInMillimetres() throws Exception {
    DxfReader dxf = new DxfReader(StencilFile.dxf(stencil("visor-chevrons.svg", 0)));
    assertThat(dxf.header("$INSUNITS")).isEqualTo("4");
    assertThat(dxf.header("$ACADVER")).isEqualTo("AC1009");
  }

  @Test
  void bridgesChangeTheAreaByWhatIsTold() throws Exception {
    Stencil plain = stencil("shoulder-lattice.svg", 0);
    Stencil tied = stencil("shoulder-lattice.svg", 0.8);
    double before = PathReader.area(new DxfReader(StencilFile.dxf(plain)).closed("CUT"));
    double after = PathReader.area(new DxfReader(StencilFile.dxf(tied)).closed("CUT"));
    assertThat(after - before).isCloseTo(tied.bridgedAreaMm2(), within(1e-3)).isPositive();
    assertThat(tied.bridges()).isEqualTo(plain.islands().size()).isPositive();
  }

  @Test
  void filesAreWrittenByTheirName() throws Exception {
    Stencil stencil = stencil("visor-chevrons.svg", 0);
    for (String name : new String[] {"a.dxf", "b.SVG"}) {
      StencilFile.write(stencil, "Test & more", folder.resolve(name));
    }
    assertThat(Files.readString(folder.resolve("a.dxf"))).isEqualTo(StencilFile.dxf(stencil));
    assertThat(Files.readString(folder.resolve("b.SVG"))).contains("Test &amp; more");
  }
}
