package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Places of a drawing are called by what was drawn there. */
class DrawnElementTest {
  @TempDir private Path folder;

  private Artwork read(String svg) throws Exception {
    Path file = folder.resolve("a.svg");
    Files.writeString(
        file,
        "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='60mm'"
            + " viewBox='0 0 100 60'>\n"
            + svg
            + "</svg>");
    return ArtworkFile.read(file, ArtworkFile.Options.standard());
  }

  @Test
  void theInnermostElementNamesThePlace() throws Exception {
    Artwork a =
        read(
            """
            <rect id='sheet' width='100' height='60'/>
            <g transform='translate(50 30)'>
              <rect id='petal' x='-10' y='-10' width='20' height='20' fill='white'/>
              <circle r='2'/>
            </g>
            """);
    assertThat(a.drawnAt(2, 0)).contains("<circle> of line 5");
    assertThat(a.drawnAt(-10, 5)).contains("petal");
    assertThat(a.drawnAt(40, 20)).contains("sheet");
    assertThat(a.drawnAt(51, 0)).isEmpty();
  }

  @Test
  void aStrokeBelongsToItsElement() throws Exception {
    Artwork a =
        read("<path id='rib' d='M10 30 H90' stroke='black' stroke-width='4' fill='none'/>\n");
    assertThat(a.drawnAt(0, 2)).contains("rib");
    assertThat(a.drawnAt(0, -2)).contains("rib");
    assertThat(a.drawnAt(0, 2.5)).isEmpty();
  }

  @Test
  void whatIsUsedTwiceIsNamedTwice() throws Exception {
    Artwork a =
        read(
            """
            <defs><rect id='leaf' width='10' height='10'/></defs>
            <use href='#leaf' x='5' y='5'/><use href='#leaf' x='70' y='40'/>
            """);
    assertThat(a.drawnAt(-40, 20)).contains("leaf");
    assertThat(a.drawnAt(25, -15)).contains("leaf");
    assertThat(a.drawnAt(0, 0)).isEmpty();
  }
}
