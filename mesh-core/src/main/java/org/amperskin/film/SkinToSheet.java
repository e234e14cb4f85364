package org.amperskin.film;

import org.amperskin.geom.Barycentric;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.region.LaidFilm;
import org.amperskin.region.SplitMesh;

/** Takes points of the skin to the sheet. */
final class SkinToSheet {
  private final LaidFilm laid;
  private final int[] starts;
  private final int[] pieces;

  SkinToSheet(LaidFilm laid) {
    this.laid = laid;
    int parents = 0;
    for (int f = 0; f < laid.pieceCount(); f++) {
      parents = Math.max(parents, laid.parent(f) + 1);
    }
    starts = new int[parents + 1];
    for (int f = 0; f < laid.pieceCount(); f++) {
      starts[laid.parent(f) + 1] += laid.faces(f) ? 1 : 0;
    }
    for (int p = 0; p < parents; p++) {
      starts[p + 1] += starts[p];
    }
    pieces = new int[starts[parents]];
    int[] next = starts.clone();
    for (int f = 0; f < laid.pieceCount(); f++) {
      if (laid.faces(f)) {
        pieces[next[laid.parent(f)]++] = f;
      }
    }
  }

  /**
   * Where the middle of a piece of a split mesh lies on the sheet (artwork mm).
   *
   * @return false if the film does not face it
   */
  boolean middle(SplitMesh split, int face, double[] xy) {
    Vec3 p = new Vec3(0, 0, 0);
    for (int k = 0; k < 3; k++) {
      p = p.plus(corner(split.mesh(), face, k));
    }
    p = p.times(1 / 3.0);
    int parent = split.parent(face);
    if (parent + 1 >= starts.length) {
      return false;
    }
    double best = -1e-3;
    boolean found = false;
    for (int i = starts[parent]; i < starts[parent + 1]; i++) {
      int f = pieces[i];
      SurfaceMesh mesh = laid.mesh();
      Barycentric w = Barycentric.of(corner(mesh, f, 0), corner(mesh, f, 1), corner(mesh, f, 2), p);
      if (w.smallest() > best) {
        best = w.smallest();
        found = true;
        xy[0] = w.first() * laid.x(f, 0) + w.second() * laid.x(f, 1) + w.third() * laid.x(f, 2);
        xy[1] = w.first() * laid.y(f, 0) + w.second() * laid.y(f, 1) + w.third() * laid.y(f, 2);
      }
    }
    return found;
  }

  private static Vec3 corner(SurfaceMesh mesh, int f, int k) {
    int v = mesh.corner(f, k);
    return mesh.point(v);
  }
}
