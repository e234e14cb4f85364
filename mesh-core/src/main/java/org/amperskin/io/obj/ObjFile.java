package org.amperskin.io.obj;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.amperskin.geom.Polygons;
import org.amperskin.io.common.MeshBuilder;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.io.common.TextScanner;

/**
 * Reads Wavefront OBJ: vertices, faces of any number of corners, groups and objects.
 *
 * <p>Definition: {@code v x y z} with anything after z passed over, {@code f} with indices from 1
 * or, negative, from the last vertex read; {@code g} and {@code o} name groups; lines may be
 * continued with a backslash. Polygons are triangulated without crossing, also when concave.
 *
 * <p>Not read, and told: curves and free-form surfaces. Passed over as of no effect on the surface:
 * normals, texture coordinates, materials, smoothing, points and lines.
 *
 * <p>Source: Alias|Wavefront, Object Files (.obj), Advanced Visualizer manual appendix B1 (from
 * memory). Cost: about 0.3 us a face.
 */
public final class ObjFile {
  private static final List<String> NO_EFFECT =
      List.of(
          "vn",
          "vt",
          "vp",
          "s",
          "mtllib",
          "usemtl",
          "maplib",
          "usemap",
          "mg",
          "p",
          "l",
          "bevel",
          "c_interp",
          "d_interp",
          "lod",
          "shadow_obj",
          "trace_obj");
  private static final List<String> FREE_FORM =
      List.of(
          "cstype", "deg", "bmat", "step", "curv", "curv2", "surf", "parm", "trim", "hole", "scrv",
          "sp", "end", "con", "ctech", "stech", "call", "csh");

  private static final int NOT_USED = -1;

  private final TextScanner text;
  private final MeshBuilder mesh = new MeshBuilder(1024);
  private final List<String> notes = new ArrayList<>();
  private double[] positions = new double[3 * 1024];

  /** Vertex of the mesh for vertex v of the file, once a face has used it. */
  private int[] welded = new int[1024];

  private int vertices;
  private int[] corner = new int[16];

  private ObjFile(InputStream in) {
    this.text = new TextScanner(in, true);
  }

  /**
   * What was read.
   *
   * @param mesh the faces
   * @param storedVertices number of v lines that a face uses
   * @param notes what was left out
   */
  public record Content(MeshBuilder mesh, int storedVertices, List<String> notes) {}

  /** Reads the whole stream. */
  public static Content read(InputStream in) throws IOException, PrintFileException {
    ObjFile file = new ObjFile(in);
    file.lines();
    if (file.mesh.faceCount() == 0) {
      throw PrintFileException.whole("%d vertices and no face: nothing to measure", file.vertices);
    }
    int unused = 0;
    for (int v = 0; v < file.vertices; v++) {
      unused += file.welded[v] == NOT_USED ? 1 : 0;
    }
    if (unused > 0) {
      file.notes.add(unused + " vertices on no face passed over");
    }
    return new Content(file.mesh, file.vertices - unused, List.copyOf(file.notes));
  }

  private void lines() throws IOException, PrintFileException {
    long freeForm = 0;
    while (text.nextLine()) {
      text.nextWord();
      if (text.first() == '#') {
        continue;
      }
      if (text.is("v")) {
        vertex();
      } else if (text.is("f") || text.is("fo")) {
        face();
      } else if (text.is("g") || text.is("o")) {
        mesh.group(text.rest());
      } else if (known(FREE_FORM)) {
        freeForm++;
        if (freeForm == 1) {
          notes.add("free-form curves or surfaces left out, from line " + text.lineNumber());
        }
      } else if (!known(NO_EFFECT)) {
        throw PrintFileException.atLine(
            text.lineNumber(), "expected a statement of an OBJ file, found \"%s\"", text.word());
      }
    }
  }

  private boolean known(List<String> words) {
    for (String w : words) {
      if (text.is(w)) {
        return true;
      }
    }
    return false;
  }

  private void vertex() throws PrintFileException {
    if (3 * vertices == positions.length) {
      positions = Arrays.copyOf(positions, 2 * positions.length);
      welded = Arrays.copyOf(welded, 2 * welded.length);
    }
    int p = 3 * vertices;
    positions[p] = text.coordinate("x");
    positions[p + 1] = text.coordinate("y");
    positions[p + 2] = text.coordinate("z");
    welded[vertices++] = NOT_USED;
  }

  private void face() throws PrintFileException {
    int n = 0;
    while (text.nextWord() && text.first() != '#') {
      long index = text.leadingInteger("a vertex index");
      long v = index < 0 ? vertices + index : index - 1;
      if (index == 0) {
        throw PrintFileException.atLine(
            text.lineNumber(), "vertex index 0; indices start at 1, or at -1 from the end");
      }
      if (v < 0 || v >= vertices) {
        throw PrintFileException.atLine(
            text.lineNumber(), "vertex index %d of %d vertices read so far", index, vertices);
      }
      if (n == corner.length) {
        corner = Arrays.copyOf(corner, 2 * n);
      }
      corner[n++] = (int) v;
    }
    if (n < 3) {
      throw PrintFileException.atLine(
          text.lineNumber(), "a face has at least 3 corners, found %d", n);
    }
    int[] triangles = n == 3 ? null : Polygons.triangulate(positions, corner, n);
    if (triangles == null) {
      mesh.face(welded(0), welded(1), welded(2));
    } else {
      for (int i = 0; i < triangles.length; i += 3) {
        mesh.face(welded(triangles[i]), welded(triangles[i + 1]), welded(triangles[i + 2]));
      }
    }
  }

  private int welded(int k) {
    int v = corner[k];
    if (welded[v] == NOT_USED) {
      welded[v] = mesh.vertex(positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]);
    }
    return welded[v];
  }
}
