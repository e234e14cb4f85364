package org.amperskin.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.amperskin.geom.Box;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.units.NearestWord;

/**
 * Cuts pieces along the border of a {@link Selector}: old code times 2, plus 1 inside.
 *
 * <p>Guaranteed: planes and boxes cut exactly. Spheres and cylinders are cut along chords that stay
 * within {@value #CHORD_MM} mm of the border, measured square to it; the told error is the area of
 * the cut faces that lies so near.
 *
 * <p>Method: signed distance to the border, linear on a face for planes; faces near a curved border
 * are halved across their longest edge until it is as good as linear.
 */
final class SelectorCut {
  private static final double CHORD_MM = 1e-3;
  private static final int DEEPEST = 60;

  private final Partition in;
  private final PieceBuffer out = new PieceBuffer();
  private final ToDoubleFunction<double[]> distance;
  private final double radiusMm;
  private double doubtMm2;
  private int face;
  private final List<double[]> inside = new ArrayList<>();
  private final List<double[]> outside = new ArrayList<>();

  private SelectorCut(Partition in, ToDoubleFunction<double[]> distance, double radiusMm) {
    this.in = in;
    this.distance = distance;
    this.radiusMm = radiusMm;
  }

  /**
   * The outcome.
   *
   * @param pieces the finer partition
   * @param errorMm2 largest error of the area inside (mm2)
   */
  record Result(Partition pieces, double errorMm2) {}

  static Result cut(Partition in, SurfaceMesh uncut, Selector selector) {
    if (selector instanceof Selector.HalfSpace h) {
      return along(in, p -> dot(p, h.normal()) - h.point().dot(h.normal()), 0);
    }
    if (selector instanceof Selector.Ball b) {
      Vec3 c = b.centre();
      return along(
          in,
          p ->
              b.radiusMm()
                  - Math.sqrt(square(p[0] - c.x()) + square(p[1] - c.y()) + square(p[2] - c.z())),
          b.radiusMm());
    }
    if (selector instanceof Selector.Rod r) {
      return along(in, p -> r.radiusMm() - fromAxis(p, r), r.radiusMm());
    }
    if (selector instanceof Selector.InBox b) {
      return inBox(in, b.box());
    }
    if (selector instanceof Selector.Facing f) {
      double least = Math.cos(Math.toRadians(f.withinDegrees()));
      return byFace(in, parent -> cosine(uncut, parent, f.direction()) >= least - 1e-12);
    }
    if (selector instanceof Selector.Grown g) {
      boolean[] grown = Creases.grown(uncut, g.from(), g.creaseDegrees());
      return byFace(in, parent -> grown[parent]);
    }
    Selector.InGroup g = (Selector.InGroup) selector;
    int group = uncut.groupNames().indexOf(g.group());
    if (group < 0) {
      throw new IllegalArgumentException(
          "the print file has no group '"
              + g.group()
              + "'"
              + NearestWord.of(g.group(), uncut.groupNames())
                  .map(near -> ", did you mean '" + near + "'?")
                  .orElse(
                      uncut.groupNames().isEmpty()
                          ? ": it names none"
                          : "; it has " + uncut.groupNames()));
    }
    return byFace(in, parent -> uncut.group(parent) == group);
  }

  private static double square(double v) {
    return v * v;
  }

  private static double dot(double[] p, Vec3 n) {
    return p[0] * n.x() + p[1] * n.y() + p[2] * n.z();
  }

  private static double fromAxis(double[] p, Selector.Rod r) {
    Vec3 d = new Vec3(p[0], p[1], p[2]).minus(r.point());
    return d.minus(r.axis().times(d.dot(r.axis()))).length();
  }

  private static double cosine(SurfaceMesh mesh, int face, Vec3 direction) {
    Vec3 a = vertex(mesh, mesh.corner(face, 0));
    Vec3 n =
        vertex(mesh, mesh.corner(face, 1))
            .minus(a)
            .cross(vertex(mesh, mesh.corner(face, 2)).minus(a));
    double l = n.length();
    return l == 0 ? -2 : n.dot(direction) / l;
  }

  private static Vec3 vertex(SurfaceMesh mesh, int v) {
    return mesh.point(v);
  }

  private static Result byFace(Partition in, java.util.function.IntPredicate inside) {
    int[] codes = new int[in.mesh().faceCount()];
    for (int f = 0; f < codes.length; f++) {
      codes[f] = 2 * in.code(f) + (inside.test(in.parent(f)) ? 1 : 0);
    }
    return new Result(new Partition(in.mesh(), in.parents(), codes), 0);
  }

  private static Result inBox(Partition in, Box box) {
    double[][] sides = {
      {1, 0, 0, -box.minX()},
      {-1, 0, 0, box.maxX()},
      {0, 1, 0, -box.minY()},
      {0, -1, 0, box.maxY()},
      {0, 0, 1, -box.minZ()},
      {0, 0, -1, box.maxZ()}
    };
    Partition pieces = in;
    for (double[] s : sides) {
      pieces = along(pieces, p -> s[0] * p[0] + s[1] * p[1] + s[2] * p[2] + s[3], 0).pieces();
    }
    int[] codes = new int[pieces.mesh().faceCount()];
    for (int f = 0; f < codes.length; f++) {
      int six = pieces.code(f) & 63;
      codes[f] = 2 * (pieces.code(f) >> 6) + (six == 63 ? 1 : 0);
    }
    return new Result(new Partition(pieces.mesh(), pieces.parents(), codes), 0);
  }

  private static Result along(Partition in, ToDoubleFunction<double[]> distance, double radiusMm) {
    SelectorCut cut = new SelectorCut(in, distance, radiusMm);
    for (int f = 0; f < in.mesh().faceCount(); f++) {
      cut.face(f);
    }
    double error = radiusMm > 0 ? cut.doubtMm2 : 0;
    return new Result(PieceBuffer.join(in, List.of(cut.out)), error);
  }

  private void face(int f) {
    face = f;
    inside.clear();
    outside.clear();
    visit(new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1}, 0);
    int code = 2 * in.code(f);
    if (outside.isEmpty() || inside.isEmpty()) {
      out.whole(in.mesh(), f, code + (outside.isEmpty() ? 1 : 0));
      return;
    }
    for (double[] w : inside) {
      out.polygon(in.mesh(), f, w, w.length / 3, code + 1);
    }
    for (double[] w : outside) {
      out.polygon(in.mesh(), f, w, w.length / 3, code);
    }
  }

  /** Cuts the triangle with barycentric corners {@code w[3*i+k]}. */
  private void visit(double[] w, int depth) {
    double[][] p = {point(w, 0), point(w, 1), point(w, 2)};
    double[] d = new double[3];
    double longest = 0;
    int from = 0;
    for (int i = 0; i < 3; i++) {
      d[i] = distance.applyAsDouble(p[i]);
      double l = length(p[i], p[(i + 1) % 3]);
      if (l > longest) {
        longest = l;
        from = i;
      }
    }
    double least = Math.min(Math.abs(d[0]), Math.min(Math.abs(d[1]), Math.abs(d[2])));
    boolean far = radiusMm > 0 && least > longest;
    boolean flat = radiusMm == 0 || longest * longest < 8 * CHORD_MM * radiusMm / 2;
    if (!far && !flat && depth < DEEPEST) {
      int to = (from + 1) % 3;
      int apex = (from + 2) % 3;
      double[] middle = mix(w, from, to, 0.5);
      visit(join(corner(w, apex), corner(w, from), middle), depth + 1);
      visit(join(corner(w, apex), middle, corner(w, to)), depth + 1);
      return;
    }
    if (d[0] >= 0 && d[1] >= 0 && d[2] >= 0) {
      inside.add(w);
    } else if (d[0] <= 0 && d[1] <= 0 && d[2] <= 0) {
      outside.add(w);
    } else {
      inside.add(part(w, d, 1));
      outside.add(part(w, d, -1));
      double most = Math.max(d[0], Math.max(d[1], d[2]));
      double lowest = Math.min(d[0], Math.min(d[1], d[2]));
      doubtMm2 += area(p) * Math.min(1, CHORD_MM / (most - lowest));
    }
  }

  private double[] part(double[] w, double[] d, int sign) {
    double[] result = new double[12];
    int n = 0;
    for (int i = 0; i < 3; i++) {
      int j = (i + 1) % 3;
      if (sign * d[i] >= 0) {
        System.arraycopy(w, 3 * i, result, 3 * n++, 3);
      }
      if (d[i] > 0 && d[j] < 0 || d[i] < 0 && d[j] > 0) {
        System.arraycopy(mix(w, i, j, d[i] / (d[i] - d[j])), 0, result, 3 * n++, 3);
      }
    }
    return Arrays.copyOf(result, 3 * n);
  }

  private double[] point(double[] w, int i) {
    double[] p = new double[3];
    for (int k = 0; k < 3; k++) {
      int v = in.mesh().corner(face, k);
      p[0] += w[3 * i + k] * in.mesh().x(v);
      p[1] += w[3 * i + k] * in.mesh().y(v);
      p[2] += w[3 * i + k] * in.mesh().z(v);
    }
    return p;
  }

  private static double[] corner(double[] w, int i) {
    return Arrays.copyOfRange(w, 3 * i, 3 * i + 3);
  }

  private static double[] mix(double[] w, int i, int j, double t) {
    double[] m = new double[3];
    for (int k = 0; k < 3; k++) {
      m[k] = w[3 * i + k] + t * (w[3 * j + k] - w[3 * i + k]);
    }
    return m;
  }

  private static double[] join(double[] a, double[] b, double[] c) {
    double[] w = Arrays.copyOf(a, 9);
    System.arraycopy(b, 0, w, 3, 3);
    System.arraycopy(c, 0, w, 6, 3);
    return w;
  }

  private static double area(double[][] p) {
    Vec3 a = new Vec3(p[0][0], p[0][1], p[0][2]);
    Vec3 u = new Vec3(p[1][0], p[1][1], p[1][2]).minus(a);
    Vec3 v = new Vec3(p[2][0], p[2][1], p[2][2]).minus(a);
    return u.cross(v).length() / 2;
  }

  private static double length(double[] a, double[] b) {
    return Math.sqrt(square(a[0] - b[0]) + square(a[1] - b[1]) + square(a[2] - b[2]));
  }
}
