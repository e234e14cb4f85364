package org.amperskin.unroll;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.amperskin.geom.Vec3;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.util.Pair;

/**
 * The cylinder or cone that fits a patch best.
 *
 * <p>Definition: least squares of the distance of the patch's vertices, each weighted by the area
 * round it.
 *
 * <p>Method: the axis to start with is the direction in which the normals vary least; then
 * Levenberg-Marquardt (Commons Math) over axis, radius and half-angle. Not guaranteed: a global
 * best for patches that are nearly flat or nearly round in two directions; look at the deviation.
 *
 * @param cone the fit
 * @param rmsMm root mean square distance (mm)
 * @param lowestMm signed distance of the vertex nearest to the axis, from the surface (mm)
 * @param highestMm signed distance of the vertex farthest out (mm)
 */
public record ConeFit(Cone cone, double rmsMm, double lowestMm, double highestMm) {
  private static final int MOST_POINTS = 1500;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
  private static final int MOST_STEPS = 60;
  private static final double STILL = 1e-9;
  private static final double GOOD = 1e-3;
  private static final double MOST_RADII = 100;
  private static final double STEEPEST = Math.toRadians(75);
  private static final double BETTER = 1e-3;

  /** What may be fitted. */
  public enum Form {
    /** A cylinder. */
    CYLINDER,
    /** A cone. */
    CONE,
    /** A cylinder, unless a cone halves the deviation. */
    BEST
  }

  /**
   * Fits a patch.
   *
   * @throws IllegalArgumentException if the patch is too flat to bend round anything
   */
  public static ConeFit of(Patch patch, Form form) {
    return switch (form) {
      case CYLINDER -> fit(patch, false);
      case CONE -> fit(patch, true);
      case BEST -> {
        ConeFit straight = fit(patch, false);
        ConeFit tapered = fit(patch, true);
        boolean better =
            tapered.rmsMm < 0.5 * straight.rmsMm
                && straight.rmsMm > 1e-6 * straight.cone.radiusMm();
        yield better ? tapered : straight;
      }
    };
  }

  /** The fit of a cone that is given, its deviations only. */
  public static ConeFit given(Patch patch, Cone cone) {
    Samples s = Samples.of(patch);
    return measured(s, cone);
  }

  private static ConeFit fit(Patch patch, boolean tapered) {
    Samples s = Samples.of(patch);
    ConeFit best = null;
    for (Vec3 axis : s.axes(tapered)) {
      ConeFit one = fit(s, axis, tapered);
      if (one != null && (best == null || one.rmsMm < (1 - BETTER) * best.rmsMm)) {
        best = one;
      }
      if (best != null && best.rmsMm < GOOD * s.size) {
        break;
      }
    }
    if (best == null) {
      throw new IllegalArgumentException(
          String.format(
              java.util.Locale.ROOT,
              "nothing to bend a film round: no cylinder or cone of a radius below %.4g mm fits a"
                  + " patch of a size of %.4g mm; lay the film flat or draped, or name the axis",
              MOST_RADII * s.size,
              2 * s.size));
    }
    return best;
  }

  /** The fit that is found from one axis to start with; null if it is no cylinder or cone. */
  private static ConeFit fit(Samples s, Vec3 axis, boolean tapered) {
    Vec3 u = axis.cross(Math.abs(axis.x()) < 0.6 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0)).unit();
    Vec3 v = axis.cross(u);
    double[] start = s.circle(u, v);
    if (start == null) {
      return null;
    }
    double size = s.size;
    Vec3 middle = s.centroid;
    // Unknowns: centre along u, v; tilt of the axis along u, v; radius; half-angle (rad).
    double[] first = {
      start[0],
      start[1],
      0,
      0,
      start[2],
      tapered ? s.taper(axis, middle.plus(u.times(start[0])).plus(v.times(start[1]))) : 0
    };
    int unknowns = tapered ? 6 : 5;
    double[] guess = Arrays.copyOf(first, unknowns);
    LeastSquaresOptimizer.Optimum best =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(guess)
                    .model(
                        p -> {
                          double[] at = p.toArray();
                          double[] value = s.residuals(at, middle, axis, u, v);
                          double[][] jacobian = new double[value.length][unknowns];
                          for (int k = 0; k < unknowns; k++) {
                            double step = 1e-6 * (k == 2 || k == 3 || k == 5 ? 1 : size);
                            double[] more = at.clone();
                            more[k] += step;
                            double[] less = at.clone();
                            less[k] -= step;
                            double[] up = s.residuals(more, middle, axis, u, v);
                            double[] down = s.residuals(less, middle, axis, u, v);
                            for (int i = 0; i < value.length; i++) {
                              jacobian[i][k] = (up[i] - down[i]) / (2 * step);
                            }
                          }
                          return new Pair<>(
                              new ArrayRealVector(value, false),
                              new Array2DRowRealMatrix(jacobian, false));
                        })
                    .target(new double[s.count])
                    .lazyEvaluation(false)
                    .checker(
                        (step, before, now) ->
                            step >= MOST_STEPS || now.getCost() >= (1 - STILL) * before.getCost())
                    .maxEvaluations(20 * MOST_STEPS)
                    .maxIterations(20 * MOST_STEPS)
                    .build());
    double[] found = best.getPoint().toArray();
    double radius = found[4];
    if (!(radius > 0) || radius > MOST_RADII * size || tapered && Math.abs(found[5]) > STEEPEST) {
      return null;
    }
    Vec3 a = axis.plus(u.times(found[2])).plus(v.times(found[3])).unit();
    Vec3 point = middle.plus(u.times(found[0])).plus(v.times(found[1]));
    double half = tapered ? Math.toDegrees(found[5]) : 0;
    Vec3 front = s.centroid.minus(point);
    front = front.minus(a.times(front.dot(a)));
    if (front.length() < 1e-6 * radius) {
      front = u;
    }
    boolean inside = s.inward(point, a);
    return measured(s, new Cone(point, a, front, radius, half, inside));
  }

  private static ConeFit measured(Samples s, Cone cone) {
    double sum = 0;
    double weight = 0;
    for (int i = 0; i < s.count; i++) {
      double d = cone.distance(s.point[i]);
      sum += s.weight[i] * s.weight[i] * d * d;
      weight += s.weight[i] * s.weight[i];
    }
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < s.patch.size(); i++) {
      for (int k = 0; k < 3; k++) {
        double d = cone.distance(s.patch.point(s.patch.corner(i, k)));
        low = Math.min(low, d);
        high = Math.max(high, d);
      }
    }
    return new ConeFit(cone, Math.sqrt(sum / weight), low, high);
  }

  /** Points of a patch, evenly thinned, with normal and square root of area. */
  private static final class Samples {
    private final Patch patch;
    private final int count;
    private final Vec3[] point;
    private final Vec3[] normal;
    private final double[] weight;
    private final Vec3 centroid;
    private final double size;

    private Samples(Patch patch, int faces) {
      this.patch = patch;
      count = 3 * faces;
      point = new Vec3[count];
      normal = new Vec3[count];
      weight = new double[count];
      centroid = patch.centroid();
      double far = 0;
      for (int s = 0, n = 0; s < faces; s++) {
        int i = faces == patch.size() ? s : spread(s, patch.size());
        double[] u = patch.mesh().unitNormal(patch.face(i));
        for (int k = 0; k < 3; k++, n++) {
          point[n] = patch.point(patch.corner(i, k));
          normal[n] = new Vec3(u[0], u[1], u[2]);
          weight[n] = Math.sqrt(patch.mesh().faceAreaMm2(patch.face(i)) / 3);
          far = Math.max(far, point[n].minus(centroid).length());
        }
      }
      size = far;
    }

    static Samples of(Patch patch) {
      return new Samples(patch, Math.min(patch.size(), MOST_POINTS / 3));
    }

    /**
     * Face number s of an even choice: multiples of the golden ratio, for every so-manieth face
     * would be one column of a mesh made row by row.
     */
    private static int spread(int s, int faces) {
      double at = (s + 0.5) * GOLDEN;
      return (int) ((at - Math.floor(at)) * faces);
    }

    /** Axes to start from: those of the normals' spread, where they vary least first. */
    List<Vec3> axes(boolean tapered) {
      double[] mean = new double[3];
      double total = 0;
      for (int i = 0; i < count; i++) {
        double w = weight[i] * weight[i];
        total += w;
        mean[0] += w * normal[i].x();
        mean[1] += w * normal[i].y();
        mean[2] += w * normal[i].z();
      }
      double[][] spread = new double[3][3];
      for (int i = 0; i < count; i++) {
        double w = weight[i] * weight[i] / total;
        double[] d = {normal[i].x(), normal[i].y(), normal[i].z()};
        for (int r = 0; r < 3; r++) {
          for (int c = 0; c < 3; c++) {
            spread[r][c] +=
                w
                    * (d[r] - (tapered ? mean[r] / total : 0))
                    * (d[c] - (tapered ? mean[c] / total : 0));
          }
        }
      }
      EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(spread));
      Integer[] order = {0, 1, 2};
      Arrays.sort(order, Comparator.comparingDouble(eigen::getRealEigenvalue));
      List<Vec3> axes = new ArrayList<>();
      for (int i : order) {
        double[] e = eigen.getEigenvector(i).toArray();
        axes.add(new Vec3(e[0], e[1], e[2]).unit());
      }
      return axes;
    }

    /**
     * Centre (along u, v from the centroid) nearest to all normals' lines, and mean radius; null if
     * none.
     */
    double[] circle(Vec3 u, Vec3 v) {
      double[][] m = new double[2][2];
      double[] b = new double[2];
      for (int i = 0; i < count; i++) {
        double w = weight[i] * weight[i];
        double nx = normal[i].dot(u);
        double ny = normal[i].dot(v);
        double l = Math.hypot(nx, ny);
        if (l < 1e-6) {
          continue;
        }
        double tx = -ny / l;
        double ty = nx / l;
        Vec3 d = point[i].minus(centroid);
        double c = tx * d.dot(u) + ty * d.dot(v);
        m[0][0] += w * tx * tx;
        m[0][1] += w * tx * ty;
        m[1][1] += w * ty * ty;
        b[0] += w * tx * c;
        b[1] += w * ty * c;
      }
      double det = m[0][0] * m[1][1] - m[0][1] * m[0][1];
      if (!(Math.abs(det) > 1e-12 * (m[0][0] + m[1][1]) * (m[0][0] + m[1][1]))) {
        return null;
      }
      double x = (b[0] * m[1][1] - b[1] * m[0][1]) / det;
      double y = (b[1] * m[0][0] - b[0] * m[0][1]) / det;
      double r = 0;
      double total = 0;
      for (int i = 0; i < count; i++) {
        Vec3 d = point[i].minus(centroid);
        double w = weight[i] * weight[i];
        r += w * Math.hypot(d.dot(u) - x, d.dot(v) - y);
        total += w;
      }
      return new double[] {x, y, r / total};
    }

    /** Half-angle (rad) that the normals tell. */
    double taper(Vec3 axis, Vec3 onAxis) {
      double sum = 0;
      double total = 0;
      for (int i = 0; i < count; i++) {
        double w = weight[i] * weight[i];
        sum += w * normal[i].dot(axis);
        total += w;
      }
      double out = -Math.asin(Math.max(-0.98, Math.min(0.98, sum / total)));
      return inward(onAxis, axis) ? -out : out;
    }

    /** True if the normals point to the axis. */
    boolean inward(Vec3 onAxis, Vec3 axis) {
      double sum = 0;
      for (int i = 0; i < count; i++) {
        Vec3 d = point[i].minus(onAxis);
        Vec3 r = d.minus(axis.times(d.dot(axis)));
        sum += weight[i] * weight[i] * Math.signum(r.dot(normal[i]));
      }
      return sum < 0;
    }

    double[] residuals(double[] p, Vec3 middle, Vec3 axis, Vec3 u, Vec3 v) {
      Vec3 a = axis.plus(u.times(p[2])).plus(v.times(p[3])).unit();
      Vec3 c = middle.plus(u.times(p[0])).plus(v.times(p[1]));
      double half = p.length > 5 ? p[5] : 0;
      double cos = Math.cos(half);
      double sin = Math.sin(half);
      double[] r = new double[count];
      for (int i = 0; i < count; i++) {
        Vec3 d = point[i].minus(c);
        double z = d.dot(a);
        double out = d.minus(a.times(z)).length();
        r[i] = weight[i] * ((out - p[4]) * cos - z * sin);
      }
      return r;
    }
  }
}
