package org.amperskin.testmeshes;

import java.util.ArrayList;
import java.util.List;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;

/** Surfaces with known measures, made in memory. */
public final class Shapes {
  private Shapes() {}

  /** A closed box of twelve faces, looking outward. */
  public static SurfaceMesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    double[] p = {
      x0, y0, z0, x1, y0, z0, x1, y1, z0, x0, y1, z0, x0, y0, z1, x1, y0, z1, x1, y1, z1, x0, y1, z1
    };
    int[] c = {
      0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3,
      0, 4, 3, 4, 7
    };
    return SurfaceMesh.of(p, c);
  }

  /** Several surfaces as one mesh, vertices kept apart. */
  public static SurfaceMesh together(SurfaceMesh... parts) {
    int vertices = 0;
    int faces = 0;
    for (SurfaceMesh m : parts) {
      vertices += m.vertexCount();
      faces += m.faceCount();
    }
    double[] p = new double[3 * vertices];
    int[] c = new int[3 * faces];
    int v = 0;
    int f = 0;
    for (SurfaceMesh m : parts) {
      System.arraycopy(m.positions(), 0, p, 3 * v, 3 * m.vertexCount());
      for (int i = 0; i < 3 * m.faceCount(); i++) {
        c[3 * f + i] = m.corners()[i] + v;
      }
      v += m.vertexCount();
      f += m.faceCount();
    }
    return SurfaceMesh.of(p, c);
  }

  /** The same surface looking the other way. */
  public static SurfaceMesh turned(SurfaceMesh mesh) {
    int[] c = mesh.corners().clone();
    for (int i = 0; i < c.length; i += 3) {
      int k = c[i + 1];
      c[i + 1] = c[i + 2];
      c[i + 2] = k;
    }
    return SurfaceMesh.of(mesh.positions(), c);
  }

  /** A sphere of 8 times 4 to the power {@code depth} faces, corners on the sphere. */
  public static SurfaceMesh sphere(Vec3 centre, double radius, int depth) {
    List<Vec3> points =
        new ArrayList<>(
            List.of(
                new Vec3(1, 0, 0),
                new Vec3(-1, 0, 0),
                new Vec3(0, 1, 0),
                new Vec3(0, -1, 0),
                new Vec3(0, 0, 1),
                new Vec3(0, 0, -1)));
    int[] faces = {0, 2, 4, 2, 1, 4, 1, 3, 4, 3, 0, 4, 2, 0, 5, 1, 2, 5, 3, 1, 5, 0, 3, 5};
    for (int d = 0; d < depth; d++) {
      java.util.Map<Long, Integer> middles = new java.util.HashMap<>();
      int[] finer = new int[4 * faces.length];
      for (int i = 0; i < faces.length; i += 3) {
        int a = faces[i];
        int b = faces[i + 1];
        int c = faces[i + 2];
        int ab = middle(points, middles, a, b);
        int bc = middle(points, middles, b, c);
        int ca = middle(points, middles, c, a);
        int[] four = {a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca};
        System.arraycopy(four, 0, finer, 4 * i, 12);
      }
      faces = finer;
    }
    double[] p = new double[3 * points.size()];
    for (int i = 0; i < points.size(); i++) {
      Vec3 q = points.get(i).times(radius).plus(centre);
      p[3 * i] = q.x();
      p[3 * i + 1] = q.y();
      p[3 * i + 2] = q.z();
    }
    return SurfaceMesh.of(p, faces);
  }

  private static int middle(List<Vec3> points, java.util.Map<Long, Integer> middles, int a, int b) {
    long key = (long) Math.min(a, b) << 32 | Math.max(a, b);
    return middles.computeIfAbsent(
        key,
        k -> {
          points.add(points.get(a).plus(points.get(b)).unit());
          return points.size() - 1;
        });
  }

  /** A flat rectangle cut into n by n squares of two faces, spanned by two edges. */
  public static SurfaceMesh sheet(Vec3 corner, Vec3 along, Vec3 up, int n) {
    double[] p = new double[3 * (n + 1) * (n + 1)];
    int[] c = new int[6 * n * n];
    for (int j = 0; j <= n; j++) {
      for (int i = 0; i <= n; i++) {
        Vec3 q = corner.plus(along.times((double) i / n)).plus(up.times((double) j / n));
        int v = j * (n + 1) + i;
        p[3 * v] = q.x();
        p[3 * v + 1] = q.y();
        p[3 * v + 2] = q.z();
      }
    }
    int to = 0;
    for (int j = 0; j < n; j++) {
      for (int i = 0; i < n; i++) {
        int v = j * (n + 1) + i;
        int[] two = {v, v + 1, v + n + 2, v, v + n + 2, v + n + 1};
        System.arraycopy(two, 0, c, to, 6);
        to += 6;
      }
    }
    return SurfaceMesh.of(p, c);
  }

  /**
   * A hollow ball with a round hole through its wall at the top: one closed surface of rings.
   *
   * @param outer outer radius
   * @param inner radius of the hollow
   * @param hole radius of the hole
   * @param fineness rings double with each step
   */
  public static SurfaceMesh drainedBall(double outer, double inner, double hole, int fineness) {
    int around = 12 << Math.max(0, fineness - 3);
    int rings = around;
    List<double[]> profile = new ArrayList<>();
    // The profile runs from the bottom up the outside, down through the hole, down the inside.
    double a = Math.asin(hole / outer);
    double b = Math.asin(hole / inner);
    for (int i = 1; i <= rings; i++) {
      double t = Math.PI - (Math.PI - a) * i / rings;
      profile.add(new double[] {outer * Math.sin(t), outer * Math.cos(t)});
    }
    for (int i = 0; i < rings; i++) {
      double t = b + (Math.PI - b) * i / rings;
      profile.add(new double[] {inner * Math.sin(t), inner * Math.cos(t)});
    }
    return turnedProfile(profile, around, -outer, -inner);
  }

  /**
   * A round block with a round well sunk into its top, which lies at z = 0.
   *
   * @param radius radius of the well; the block's is half as much again
   * @param depth depth of the well; the block is a quarter deeper
   * @param around corners around
   */
  public static SurfaceMesh well(double radius, double depth, int around) {
    int rings = 16;
    List<double[]> profile = new ArrayList<>();
    double outer = 1.5 * radius;
    double bottom = -1.25 * depth;
    for (int i = 1; i <= rings; i++) {
      profile.add(new double[] {outer * i / rings, bottom});
    }
    for (int i = 1; i <= rings; i++) {
      profile.add(new double[] {outer, bottom - bottom * i / rings});
    }
    for (int i = 1; i <= rings; i++) {
      profile.add(new double[] {outer + (radius - outer) * i / rings, 0});
    }
    for (int i = 1; i <= rings; i++) {
      profile.add(new double[] {radius, -depth * i / rings});
    }
    for (int i = rings - 1; i >= 1; i--) {
      profile.add(new double[] {radius * i / rings, -depth});
    }
    return turnedProfile(profile, around, bottom, -depth);
  }

  private static SurfaceMesh turnedProfile(
      List<double[]> profile, int around, double startZ, double endZ) {
    int n = profile.size();
    double[] p = new double[3 * (n * around + 2)];
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < around; k++) {
        double u = 2 * Math.PI * k / around;
        int v = 3 * (i * around + k);
        p[v] = profile.get(i)[0] * Math.cos(u);
        p[v + 1] = profile.get(i)[0] * Math.sin(u);
        p[v + 2] = profile.get(i)[1];
      }
    }
    int start = n * around;
    p[3 * start + 2] = startZ;
    p[3 * start + 5] = endZ;
    List<Integer> c = new ArrayList<>();
    for (int k = 0; k < around; k++) {
      int m = (k + 1) % around;
      c.addAll(List.of(start, m, k));
      for (int i = 0; i + 1 < n; i++) {
        int q = i * around;
        c.addAll(List.of(q + k, q + m, q + around + m, q + k, q + around + m, q + around + k));
      }
      int last = (n - 1) * around;
      c.addAll(List.of(last + k, last + m, start + 1));
    }
    return SurfaceMesh.of(p, c.stream().mapToInt(Integer::intValue).toArray());
  }

  /**
   * A solid of revolution about z, from the axis at its first point's height to that of its last.
   *
   * @param around corners around
   * @param radiusAndZ radius and height of each point of the profile, bottom to top
   */
  public static SurfaceMesh turnedSolid(int around, double... radiusAndZ) {
    List<double[]> profile = new ArrayList<>();
    for (int i = 0; i < radiusAndZ.length; i += 2) {
      profile.add(new double[] {radiusAndZ[i], radiusAndZ[i + 1]});
    }
    return turnedProfile(profile, around, radiusAndZ[1], radiusAndZ[radiusAndZ.length - 1]);
  }

  /** A torus about z; its faces start a little off the plane y = 0. */
  public static SurfaceMesh torus(double big, double small, int around, int across) {
    double[] p = new double[3 * around * across];
    int[] c = new int[6 * around * across];
    for (int i = 0; i < around; i++) {
      for (int j = 0; j < across; j++) {
        double u = 2 * Math.PI * (i + 0.37) / around;
        double v = 2 * Math.PI * (j + 0.21) / across;
        int k = i * across + j;
        p[3 * k] = (big + small * Math.cos(v)) * Math.cos(u);
        p[3 * k + 1] = (big + small * Math.cos(v)) * Math.sin(u);
        p[3 * k + 2] = small * Math.sin(v);
        int right = (i + 1) % around * across + j;
        int up = i * across + (j + 1) % across;
        int both = (i + 1) % around * across + (j + 1) % across;
        int[] two = {k, right, both, k, both, up};
        System.arraycopy(two, 0, c, 6 * k, 6);
      }
    }
    return SurfaceMesh.of(p, c);
  }
}
