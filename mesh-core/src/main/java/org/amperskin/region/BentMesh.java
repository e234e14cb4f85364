package org.amperskin.region;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.unroll.Cone;

/**
 * Pieces of skin cut so fine that unrolling round an axis is as good as linear on each.
 *
 * <p>Guaranteed: no edge spans more than {@value #WIDEST_DEGREES} degrees round the axis, save
 * within {@value #CORE} of the radius, where no film can lie; pieces end where the film's two ends
 * meet, opposite the front. Neighbours are cut alike.
 */
final class BentMesh {
  /** Largest angle round the axis of an edge (deg). */
  static final double WIDEST_DEGREES = 2.5;

  /** Nearer to the axis than this part of the radius nothing is cut or covered. */
  static final double CORE = 0.03;

  private static final int DEEPEST = 30;

  private final Cone cone;
  private final Partition in;
  private double[] positions;
  private double[] turns;
  private boolean[] onSeam;
  private int vertices;
  private int[] corners;
  private int[] sources;
  private int faces;
  private Partition pieces;
  private double[] xyz;

  private BentMesh(Partition in, Cone cone) {
    this.in = in;
    this.cone = cone;
    SurfaceMesh mesh = in.mesh();
    vertices = mesh.vertexCount();
    positions = mesh.positions().clone();
    turns = new double[vertices];
    onSeam = new boolean[vertices];
    for (int v = 0; v < vertices; v++) {
      look(v);
    }
    corners = mesh.corners().clone();
    faces = mesh.faceCount();
    sources = new int[faces];
    for (int f = 0; f < faces; f++) {
      sources[f] = f;
    }
  }

  static BentMesh of(Partition in, Cone cone) {
    BentMesh mesh = new BentMesh(in, cone);
    for (int depth = 0; depth < DEEPEST && mesh.split(false); depth++) {
      continue;
    }
    mesh.split(true);
    mesh.finish();
    return mesh;
  }

  /** How much nearer to the lamp a face must lie to hide another, for a film of a radius (mm). */
  static double gapMm(double radiusMm) {
    double half = Math.toRadians(WIDEST_DEGREES) / 2;
    return radiusMm * half * half;
  }

  /** How far artwork can lie beside its place, since a chord is not an arc (mm). */
  static double shiftMm(double radiusMm) {
    double widest = Math.toRadians(WIDEST_DEGREES);
    return radiusMm * widest * widest * widest * Math.sqrt(3) / 216;
  }

  Partition pieces() {
    return pieces;
  }

  /**
   * Artwork coordinates of the pieces.
   *
   * @param height where the artwork's centre lies on the unrolled film (mm)
   */
  FilmFrame frame(Cone film, Placement placement, double height) {
    return FilmFrame.of(xyz, Lay.of(placement), 0, height);
  }

  private Vec3 point(int v) {
    return new Vec3(positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]);
  }

  private void look(int v) {
    turns[v] = cone.turn(point(v));
    onSeam[v] = Math.PI - Math.abs(turns[v]) < 1e-9;
  }

  private double fromAxis(int v) {
    Vec3 d = point(v).minus(cone.point());
    return d.minus(cone.axis().times(d.dot(cone.axis()))).length();
  }

  private boolean nearAxis(int v) {
    return fromAxis(v) < CORE * cone.radiusMm();
  }

  /** Angle from a to b the short way (rad). */
  private double span(int a, int b) {
    return Math.IEEEremainder(turns[b] - turns[a], 2 * Math.PI);
  }

  /** Where an edge is to be cut, 0 to 1 from a to b; NaN if not. */
  private double cutAt(int a, int b, boolean seam) {
    if (seam) {
      boolean crosses =
          !onSeam[a]
              && !onSeam[b]
              && turns[a] * turns[b] < 0
              && Math.abs(turns[a] - turns[b]) > Math.PI;
      if (!crosses) {
        return Double.NaN;
      }
      double da = fromAxis(a) * Math.sin(turns[a]);
      double db = fromAxis(b) * Math.sin(turns[b]);
      return da / (da - db);
    }
    boolean wide = Math.abs(span(a, b)) > Math.toRadians(WIDEST_DEGREES);
    return wide
            && !(nearAxis(a) && nearAxis(b))
            && point(a).minus(point(b)).length() > CORE * cone.radiusMm()
        ? 0.5
        : Double.NaN;
  }

  /** Cuts all edges that need it once; false if none did. */
  private boolean split(boolean seam) {
    Map<Long, Integer> middles = new HashMap<>();
    int before = faces;
    int[] middle = new int[3];
    for (int f = 0; f < before; f++) {
      int count = 0;
      for (int k = 0; k < 3; k++) {
        int a = corners[3 * f + k];
        int b = corners[3 * f + (k + 1) % 3];
        middle[k] = middle(a, b, seam, middles);
        count += middle[k] >= 0 ? 1 : 0;
      }
      if (count > 0) {
        divide(f, middle, count);
      }
    }
    return !middles.isEmpty() && faces > before;
  }

  private int middle(int a, int b, boolean seam, Map<Long, Integer> middles) {
    int low = Math.min(a, b);
    int high = Math.max(a, b);
    double t = cutAt(low, high, seam);
    if (Double.isNaN(t)) {
      return -1;
    }
    return middles.computeIfAbsent((long) low << 32 | high, key -> vertex(low, high, t, seam));
  }

  private int vertex(int a, int b, double t, boolean seam) {
    if (vertices == turns.length) {
      int more = 2 * vertices + 16;
      positions = Arrays.copyOf(positions, 3 * more);
      turns = Arrays.copyOf(turns, more);
      onSeam = Arrays.copyOf(onSeam, more);
    }
    int v = vertices++;
    for (int k = 0; k < 3; k++) {
      double p = positions[3 * a + k];
      positions[3 * v + k] = p + t * (positions[3 * b + k] - p);
    }
    look(v);
    if (seam) {
      onSeam[v] = true;
    }
    return v;
  }

  private void divide(int f, int[] m, int count) {
    int a = corners[3 * f];
    int b = corners[3 * f + 1];
    int c = corners[3 * f + 2];
    int source = sources[f];
    if (count == 3) {
      set(f, a, m[0], m[2]);
      add(m[0], b, m[1], source);
      add(m[2], m[1], c, source);
      add(m[0], m[1], m[2], source);
      return;
    }
    int k = 0;
    if (count == 1) {
      while (m[k] < 0) {
        k++;
      }
    } else {
      while (m[k] >= 0) {
        k++;
      }
    }
    int p = corners[3 * f + k];
    int q = corners[3 * f + (k + 1) % 3];
    int r = corners[3 * f + (k + 2) % 3];
    if (count == 1) {
      set(f, p, m[k], r);
      add(m[k], q, r, source);
      return;
    }
    int qr = m[(k + 1) % 3];
    int rp = m[(k + 2) % 3];
    set(f, qr, r, rp);
    add(p, q, qr, source);
    add(p, qr, rp, source);
  }

  private void set(int f, int a, int b, int c) {
    corners[3 * f] = a;
    corners[3 * f + 1] = b;
    corners[3 * f + 2] = c;
  }

  private void add(int a, int b, int c, int source) {
    if (3 * faces == corners.length) {
      corners = Arrays.copyOf(corners, 6 * faces);
      sources = Arrays.copyOf(sources, 2 * faces);
    }
    set(faces, a, b, c);
    sources[faces++] = source;
  }

  /** Parts the two ends of the film and unrolls all vertices. */
  private void finish() {
    Map<Integer, Integer> other = new HashMap<>();
    double[] angle = Arrays.copyOf(turns, vertices);
    for (int v = 0; v < vertices; v++) {
      if (onSeam[v]) {
        angle[v] = Math.PI;
      }
    }
    int first = vertices;
    int[] parents = new int[faces];
    int[] codes = new int[faces];
    double[] at = new double[3];
    java.util.List<Integer> copies = new java.util.ArrayList<>();
    java.util.List<Double> copyAngles = new java.util.ArrayList<>();
    for (int f = 0; f < faces; f++) {
      parents[f] = in.parent(sources[f]);
      codes[f] = in.code(sources[f]);
      double side = 0;
      boolean core = false;
      for (int k = 0; k < 3; k++) {
        int v = corners[3 * f + k];
        side += onSeam[v] ? 0 : turns[v];
        core |= Math.abs(span(v, corners[3 * f + (k + 1) % 3])) > Math.PI / 3 || nearAxis(v);
      }
      for (int k = 0; k < 3; k++) {
        int v = corners[3 * f + k];
        if (core) {
          // No film can lie here: the face is laid on a point.
          copies.add(v);
          copyAngles.add(Double.NaN);
          corners[3 * f + k] = first + copies.size() - 1;
        } else if (onSeam[v] && side < 0) {
          int copy =
              other.computeIfAbsent(
                  v,
                  key -> {
                    copies.add(key);
                    copyAngles.add(-Math.PI);
                    return first + copies.size() - 1;
                  });
          corners[3 * f + k] = copy;
        }
      }
    }
    int all = first + copies.size();
    double[] p = Arrays.copyOf(positions, 3 * all);
    xyz = new double[3 * all];
    for (int v = 0; v < all; v++) {
      int original = v < first ? v : copies.get(v - first);
      if (v >= first) {
        System.arraycopy(positions, 3 * original, p, 3 * v, 3);
      }
      double turn = v < first ? angle[v] : copyAngles.get(v - first);
      if (!Double.isNaN(turn)) {
        cone.unroll(point(original), turn, at);
        System.arraycopy(at, 0, xyz, 3 * v, 3);
      }
    }
    pieces = new Partition(SurfaceMesh.of(p, Arrays.copyOf(corners, 3 * faces)), parents, codes);
  }
}
