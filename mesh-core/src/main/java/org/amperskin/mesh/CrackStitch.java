package org.amperskin.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import org.amperskin.geom.Vec3;

/**
 * Closes cracks: open edges whose corners lie inside other open edges, or nearly meet.
 *
 * <p>Definition: see {@link OpenBoundary} for what lies on what, within the rounding of a file, and
 * {@link CrackPairs} for what belongs together. Faces are cut at the corners on their edges; of
 * corners that nearly meet, the first stands for all.
 *
 * <p>Guaranteed: every piece looks the way its face did; only open edges are touched; an edge that
 * finds no other stays. A face keeps its index (its first piece), further pieces stand behind all
 * faces. Not guaranteed: gaps wider than the tolerance are closed; they are not.
 *
 * <p>Cost: that of the open edges, and one copy of the faces.
 */
final class CrackStitch {
  private static final int MOST_TRIES = 8;
  private static final int[] NONE = {};

  private final SurfaceMesh mesh;
  private final OpenBoundary boundary;
  private final int[] duplicateOf;
  private final boolean[] leftOut;
  private final CrackPairs pairs;
  private int[][] piecesOf;
  private SurfaceMesh stitched;
  private boolean[] stitchedLeftOut;
  private int[] parents;
  private final BitSet touched = new BitSet();
  private MeshProblem problem;

  private CrackStitch(
      SurfaceMesh mesh, boolean[] leftOut, int[] duplicateOf, OpenBoundary boundary) {
    this.mesh = mesh;
    this.leftOut = leftOut;
    this.duplicateOf = duplicateOf;
    this.boundary = boundary;
    this.pairs = new CrackPairs(mesh, boundary);
  }

  /**
   * Stitches what can be stitched.
   *
   * @param leftOut degenerate faces and repeats
   * @param duplicateOf for a repeat, the face it repeats
   * @return null if there is nothing to stitch
   */
  static CrackStitch of(
      SurfaceMesh mesh, boolean[] leftOut, int[] duplicateOf, OpenBoundary boundary) {
    CrackStitch stitch = new CrackStitch(mesh, leftOut, duplicateOf, boundary);
    return stitch.pair() ? stitch.build() : null;
  }

  /** Pairs edges until no face comes out turned over; false if nothing is left. */
  private boolean pair() {
    for (int attempt = 0; attempt < MOST_TRIES; attempt++) {
      pairs.run();
      if (!pairs.any()) {
        return false;
      }
      cutFaces();
      boolean sound = true;
      for (int f = 0; f < piecesOf.length; f++) {
        if (piecesOf[f] != null && !sameSense(f)) {
          pairs.refuse(f);
          sound = false;
        }
      }
      if (sound) {
        return true;
      }
    }
    return false;
  }

  private void cutFaces() {
    piecesOf = new int[mesh.faceCount()][];
    int[] edgeOf = new int[3];
    int e = 0;
    for (int f = 0; f < piecesOf.length; f++) {
      boolean cut = false;
      Arrays.fill(edgeOf, -1);
      for (; e < boundary.count() && boundary.halfEdge(e) / 3 == f; e++) {
        edgeOf[boundary.halfEdge(e) % 3] = e;
        cut |= pairs.inside(e).length > 0;
      }
      if (leftOut[f]) {
        continue;
      }
      int[] corner = new int[3];
      boolean moved = false;
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(f, k);
        corner[k] = pairs.joined(v);
        moved |= corner[k] != v;
      }
      if (cut || moved) {
        piecesOf[f] = SplitFace.of(corner, insides(edgeOf));
      }
    }
  }

  private int[][] insides(int[] edgeOf) {
    int[][] inside = {NONE, NONE, NONE};
    for (int k = 0; k < 3; k++) {
      if (edgeOf[k] >= 0) {
        inside[k] = Arrays.stream(pairs.inside(edgeOf[k])).map(pairs::joined).toArray();
      }
    }
    return inside;
  }

  private boolean sameSense(int f) {
    double[] was = normal(mesh.corner(f, 0), mesh.corner(f, 1), mesh.corner(f, 2));
    int[] p = piecesOf[f];
    for (int i = 0; i < p.length; i += 3) {
      double[] is = normal(p[i], p[i + 1], p[i + 2]);
      if (!(was[0] * is[0] + was[1] * is[1] + was[2] * is[2] > 0)) {
        return false;
      }
    }
    return true;
  }

  /** Twice the area along the normal. */
  private double[] normal(int a, int b, int c) {
    double ux = mesh.x(b) - mesh.x(a);
    double uy = mesh.y(b) - mesh.y(a);
    double uz = mesh.z(b) - mesh.z(a);
    double vx = mesh.x(c) - mesh.x(a);
    double vy = mesh.y(c) - mesh.y(a);
    double vz = mesh.z(c) - mesh.z(a);
    return new double[] {uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx};
  }

  private CrackStitch build() {
    int faces = mesh.faceCount();
    int further = 0;
    for (int f = 0; f < faces; f++) {
      if (leftOut[f] && duplicateOf[f] >= 0) {
        piecesOf[f] = piecesOf[duplicateOf[f]]; // a repeat stays one
      }
      further += piecesOf[f] == null ? 0 : piecesOf[f].length / 3 - 1;
    }
    int[] corners = Arrays.copyOf(mesh.corners(), 3 * (faces + further));
    stitchedLeftOut = Arrays.copyOf(leftOut, faces + further);
    parents = new int[further];
    int n = faces;
    for (int f = 0; f < faces; f++) {
      int[] p = piecesOf[f];
      if (p == null) {
        continue;
      }
      touched.set(f);
      System.arraycopy(p, 0, corners, 3 * f, 3);
      System.arraycopy(p, 3, corners, 3 * n, p.length - 3);
      for (int i = 3; i < p.length; i += 3) {
        touched.set(n);
        stitchedLeftOut[n] = leftOut[f];
        parents[n++ - faces] = f;
      }
    }
    stitched = withGroups(corners);
    problem = tell();
    return this;
  }

  private SurfaceMesh withGroups(int[] corners) {
    if (mesh.groupNames().isEmpty()) {
      return SurfaceMesh.of(mesh.positions(), corners);
    }
    int[] groups = new int[corners.length / 3];
    for (int f = 0; f < groups.length; f++) {
      groups[f] = mesh.group(f < mesh.faceCount() ? f : parents[f - mesh.faceCount()]);
    }
    return SurfaceMesh.of(mesh.positions(), corners, groups, mesh.groupNames());
  }

  private MeshProblem tell() {
    long cuts = 0;
    int where = -1;
    for (int e = 0; e < boundary.count(); e++) {
      cuts += pairs.inside(e).length;
      where = where < 0 && pairs.inside(e).length > 0 ? pairs.inside(e)[0] : where;
    }
    long joins = 0;
    double farthest = 0;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      int w = pairs.joined(v);
      if (w != v) {
        joins++;
        farthest = Math.max(farthest, distance(v, w));
        where = where < 0 ? w : where;
      }
    }
    double change = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (piecesOf[f] != null && !leftOut[f]) {
        change -= mesh.faceAreaMm2(f);
        for (int i = 0; i < piecesOf[f].length; i += 3) {
          change += area(piecesOf[f], i);
        }
      }
    }
    List<String> what = new ArrayList<>();
    if (cuts > 0) {
      what.add(String.format(Locale.ROOT, "%,d corner%s inside open edges", cuts, s(cuts)));
    }
    if (joins > 0) {
      what.add(
          String.format(
              Locale.ROOT,
              "%,d corner%s of open edges up to %.2g mm beside another",
              joins,
              s(joins),
              farthest));
    }
    String message =
        String.format(
            Locale.ROOT,
            "%s stitched, as a slicer would (tolerance %.2g mm, the file's rounding); that changes"
                + " the area by %.2g mm2",
            String.join(" and ", what),
            boundary.toleranceMm(),
            change + 0.0);
    Vec3 place = mesh.point(where);
    return new MeshProblem(
        MeshProblem.Kind.STITCHED, cuts + joins, place, Math.abs(change), message);
  }

  private double area(int[] p, int i) {
    double[] n = normal(p[i], p[i + 1], p[i + 2]);
    return 0.5 * Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
  }

  private double distance(int v, int w) {
    return mesh.point(v).minus(mesh.point(w)).length();
  }

  private static String s(long count) {
    return count == 1 ? "" : "s";
  }

  /** The mesh without the cracks. */
  SurfaceMesh mesh() {
    return stitched;
  }

  /** Degenerate faces and repeats of the stitched mesh. */
  boolean[] leftOut() {
    return stitchedLeftOut;
  }

  /** The faces that the pieces behind all faces come from. */
  int[] parents() {
    return parents;
  }

  /** Faces that were cut or had a corner moved. */
  BitSet touched() {
    return touched;
  }

  /** What was done, for people. */
  MeshProblem problem() {
    return problem;
  }
}
