package org.amperskin.testmeshes;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.UnaryOperator;
import org.amperskin.geom.Vec3;
import org.amperskin.io.common.MeshBuilder;
import org.amperskin.mesh.SurfaceMesh;

/** Triangles given by their corners, as a file gives them: equal points are welded. */
public final class Patches {
  private final List<Vec3> corners = new ArrayList<>();

  /** Adds a triangle. */
  public Patches triangle(Vec3 a, Vec3 b, Vec3 c) {
    corners.addAll(List.of(a, b, c));
    return this;
  }

  /** Adds a parallelogram cut into n by m cells of two triangles, looking along {@code u x v}. */
  public Patches sheet(Vec3 o, Vec3 u, Vec3 v, int n, int m) {
    return sheet(o, u, v, n, m, (i, j) -> true);
  }

  /** Which cells a sheet has. */
  public interface Cells {
    /** True if the cell is there. */
    boolean has(int i, int j);
  }

  /** Adds the cells of a parallelogram that are there. */
  public Patches sheet(Vec3 o, Vec3 u, Vec3 v, int n, int m, Cells cells) {
    for (int j = 0; j < m; j++) {
      for (int i = 0; i < n; i++) {
        if (cells.has(i, j)) {
          Vec3 a = at(o, u, v, i, n, j, m);
          Vec3 b = at(o, u, v, i + 1, n, j, m);
          Vec3 c = at(o, u, v, i + 1, n, j + 1, m);
          Vec3 d = at(o, u, v, i, n, j + 1, m);
          triangle(a, b, c).triangle(a, c, d);
        }
      }
    }
    return this;
  }

  private static Vec3 at(Vec3 o, Vec3 u, Vec3 v, int i, int n, int j, int m) {
    // A whole edge is added last, so that its end is the same point from either side.
    Vec3 along = i == n ? u : u.times((double) i / n);
    Vec3 up = j == m ? v : v.times((double) j / m);
    return o.plus(along).plus(up);
  }

  /**
   * Adds a box at the origin whose sides are cut into cells, outward.
   *
   * @param cells cells along each direction of side 0 to 5 (below, above, then around)
   */
  public Patches box(double a, double b, double c, IntFunction<int[]> cells) {
    Vec3 o = new Vec3(0, 0, 0);
    Vec3 x = new Vec3(a, 0, 0);
    Vec3 y = new Vec3(0, b, 0);
    Vec3 z = new Vec3(0, 0, c);
    Vec3[][] sides = {{o, y, x}, {z, x, y}, {o, x, z}, {y, z, x}, {o, z, y}, {x, y, z}};
    for (int s = 0; s < 6; s++) {
      int[] n = cells.apply(s);
      sheet(sides[s][0], sides[s][1], sides[s][2], n[0], n[1]);
    }
    return this;
  }

  /** Every corner moved, each triangle's apart: what a file writes of a moved part. */
  public Patches moved(UnaryOperator<Vec3> move) {
    corners.replaceAll(move);
    return this;
  }

  /** Every coordinate rounded to a float, as in a binary STL file. */
  public static Vec3 rounded(Vec3 p) {
    return new Vec3((float) p.x(), (float) p.y(), (float) p.z());
  }

  /** Number of triangles. */
  public int count() {
    return corners.size() / 3;
  }

  /** Corner k of triangle i. */
  public Vec3 corner(int i, int k) {
    return corners.get(3 * i + k);
  }

  /** The welded mesh. */
  public SurfaceMesh mesh() {
    MeshBuilder mesh = new MeshBuilder(count());
    for (int i = 0; i < count(); i++) {
      int[] v = new int[3];
      for (int k = 0; k < 3; k++) {
        Vec3 p = corner(i, k);
        v[k] = mesh.vertex(p.x(), p.y(), p.z());
      }
      mesh.face(v[0], v[1], v[2]);
    }
    return mesh.build(1);
  }
}
