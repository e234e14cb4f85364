package org.amperskin.region;

import org.amperskin.mesh.SurfaceMesh;

/**
 * What of a face the light reaches past the other faces, cut exactly.
 *
 * <p>Definition: a point of a face is hidden if another face lies nearer to the lamp on its ray, by
 * more than {@link #gapMm()}.
 *
 * <p>Guaranteed: visible and hidden polygons add up to the face, less slivers that are added up and
 * told. Faces that touch or repeat each other do not hide each other.
 *
 * <p>Method: the faces are sorted into a grid over the film plane; a face is cut in halves until
 * few others lie over a part, which are then subtracted one convex polygon after the other, each
 * first cut to where it is nearer to the lamp. In the spirit of K. Weiler and P. Atherton, Hidden
 * surface removal using polygon area sorting, SIGGRAPH 1977 (from memory); no depth buffer, so no
 * sampling error.
 *
 * <p>Cost: about 2 us a face of a shell; more where many small faces shade a large one.
 */
final class Shadows {
  private static final double FACES_PER_CELL = 2;
  private static final int MOST_CELLS = 1 << 24;

  private final SurfaceMesh mesh;
  private final FilmFrame frame;
  private final double gapMm;
  private final double x0;
  private final double y0;
  private final double cell;
  private final int columns;
  private final int rows;
  private final int[] cellStart;
  private final int[] inCell;

  private Shadows(SurfaceMesh mesh, FilmFrame frame, boolean frontOnly, double gapMm) {
    this.mesh = mesh;
    this.frame = frame;
    this.gapMm = gapMm;
    double minX = Double.POSITIVE_INFINITY;
    double minY = minX;
    double maxX = Double.NEGATIVE_INFINITY;
    double maxY = maxX;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      minX = Math.min(minX, frame.x(v));
      maxX = Math.max(maxX, frame.x(v));
      minY = Math.min(minY, frame.y(v));
      maxY = Math.max(maxY, frame.y(v));
    }
    x0 = minX;
    y0 = minY;
    double w = Math.max(maxX - minX, 1e-9);
    double h = Math.max(maxY - minY, 1e-9);
    double cells = Math.min(MOST_CELLS, Math.max(1, mesh.faceCount() / FACES_PER_CELL));
    cell = Math.max(Math.sqrt(w * h / cells), Math.max(w, h) / MOST_CELLS * 4);
    columns = (int) (w / cell) + 1;
    rows = (int) (h / cell) + 1;
    cellStart = new int[columns * rows + 1];
    int[] range = new int[4];
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (occludes(f, frontOnly)) {
        cellsOf(f, range);
        for (int r = range[2]; r <= range[3]; r++) {
          for (int c = range[0]; c <= range[1]; c++) {
            cellStart[r * columns + c + 1]++;
          }
        }
      }
    }
    for (int i = 0; i < columns * rows; i++) {
      cellStart[i + 1] = Math.addExact(cellStart[i + 1], cellStart[i]);
    }
    inCell = new int[cellStart[columns * rows]];
    int[] next = cellStart.clone();
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (occludes(f, frontOnly)) {
        cellsOf(f, range);
        for (int r = range[2]; r <= range[3]; r++) {
          for (int c = range[0]; c <= range[1]; c++) {
            inCell[next[r * columns + c]++] = f;
          }
        }
      }
    }
  }

  /**
   * Prepares the shadows of a mesh.
   *
   * @param frontOnly true if only faces turned to the light need be looked at, as for a closed
   *     surface whose faces agree on which side is out
   * @param gapMm how much nearer to the lamp a face must lie to hide another (mm)
   */
  static Shadows of(SurfaceMesh mesh, FilmFrame frame, boolean frontOnly, double gapMm) {
    return new Shadows(mesh, frame, frontOnly, gapMm);
  }

  double gapMm() {
    return gapMm;
  }

  private boolean occludes(int f, boolean frontOnly) {
    double seen = frame.doubledArea(mesh, f);
    return frontOnly ? seen > 0 : seen != 0;
  }

  private int column(double x) {
    return Math.max(0, Math.min(columns - 1, (int) ((x - x0) / cell)));
  }

  private int row(double y) {
    return Math.max(0, Math.min(rows - 1, (int) ((y - y0) / cell)));
  }

  private void cellsOf(int f, int[] range) {
    int a = mesh.corner(f, 0);
    int b = mesh.corner(f, 1);
    int c = mesh.corner(f, 2);
    range[0] = column(Math.min(frame.x(a), Math.min(frame.x(b), frame.x(c))));
    range[1] = column(Math.max(frame.x(a), Math.max(frame.x(b), frame.x(c))));
    range[2] = row(Math.min(frame.y(a), Math.min(frame.y(b), frame.y(c))));
    range[3] = row(Math.max(frame.y(a), Math.max(frame.y(b), frame.y(c))));
  }

  /** A worker with its own buffers; one for each thread. */
  Cutter cutter() {
    return new Cutter(this);
  }

  SurfaceMesh mesh() {
    return mesh;
  }

  FilmFrame frame() {
    return frame;
  }

  int columnAt(double x) {
    return column(x);
  }

  int rowAt(double y) {
    return row(y);
  }

  int cellBegin(int column, int row) {
    return cellStart[row * columns + column];
  }

  int cellEnd(int column, int row) {
    return cellStart[row * columns + column + 1];
  }

  int faceAt(int index) {
    return inCell[index];
  }
}
