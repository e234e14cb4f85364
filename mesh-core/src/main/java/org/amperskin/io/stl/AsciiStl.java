package org.amperskin.io.stl;

import java.io.IOException;
import java.io.InputStream;
import org.amperskin.io.common.MeshBuilder;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.io.common.TextScanner;

/**
 * Reads ASCII STL, in any case and with any line ends; several solids become groups.
 *
 * <p>Guaranteed: each loop has three vertices and each block its end, or the line is named. Normals
 * are passed over.
 *
 * <p>Cost: about 0.5 us a facet.
 */
public final class AsciiStl {
  private final TextScanner text;
  private final MeshBuilder mesh = new MeshBuilder(1024);

  private AsciiStl(InputStream in) {
    this.text = new TextScanner(in, false);
  }

  /** Reads all solids. */
  public static MeshBuilder read(InputStream in) throws IOException, PrintFileException {
    return new AsciiStl(in).solids();
  }

  private MeshBuilder solids() throws IOException, PrintFileException {
    boolean any = false;
    while (text.nextLine()) {
      text.nextWord();
      expect("solid");
      any = true;
      mesh.group(text.rest());
      solid();
    }
    if (!any || mesh.faceCount() == 0) {
      throw PrintFileException.whole("no facet found: nothing to measure");
    }
    return mesh;
  }

  private void solid() throws IOException, PrintFileException {
    while (true) {
      line("\"facet\" or \"endsolid\"");
      if (text.is("endsolid")) {
        return;
      }
      expect("facet");
      facet();
    }
  }

  private void facet() throws IOException, PrintFileException {
    line("\"outer loop\"");
    expect("outer");
    int[] v = new int[3];
    for (int k = 0; k < 3; k++) {
      line("\"vertex\"");
      expect("vertex");
      double x = text.coordinate("x");
      double y = text.coordinate("y");
      double z = text.coordinate("z");
      v[k] = mesh.vertex(x, y, z);
    }
    line("\"endloop\"");
    expect("endloop");
    line("\"endfacet\"");
    expect("endfacet");
    mesh.face(v[0], v[1], v[2]);
  }

  private void line(String wanted) throws IOException, PrintFileException {
    long last = text.lineNumber();
    if (!text.nextLine()) {
      throw PrintFileException.atLine(
          last, "the file ends inside a facet or solid, expected %s", wanted);
    }
    text.nextWord();
  }

  private void expect(String word) throws PrintFileException {
    if (!text.is(word)) {
      throw PrintFileException.atLine(
          text.lineNumber(), "expected \"%s\", found \"%s\"", word, text.word());
    }
  }
}
