package org.amperskin.region;

import java.util.Random;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;

/** A slow second way: random rays along the light, first hit, artwork looked up at the point. */
final class RaySampling {
  private final SurfaceMesh mesh;
  private final Artwork artwork;
  private final Vec3 centre;
  private final Vec3 right;
  private final Vec3 up;
  private final Vec3 ahead;
  private final FlatPlacement place;
  private final Random random;

  RaySampling(SurfaceMesh mesh, Artwork artwork, FlatPlacement place, Random random) {
    this.mesh = mesh;
    this.artwork = artwork;
    this.place = place;
    this.random = random;
    ahead = place.toward();
    right = ahead.cross(place.up()).unit();
    up = right.cross(ahead);
    double[] b = bounds();
    centre = right.times((b[0] + b[1]) / 2).plus(up.times((b[2] + b[3]) / 2));
  }

  private double[] bounds() {
    double[] b = {1e9, -1e9, 1e9, -1e9};
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 p = new Vec3(mesh.x(v), mesh.y(v), mesh.z(v));
      b[0] = Math.min(b[0], p.dot(right));
      b[1] = Math.max(b[1], p.dot(right));
      b[2] = Math.min(b[2], p.dot(up));
      b[3] = Math.max(b[3], p.dot(up));
    }
    return b;
  }

  /** Area (mm2) of the rectangle that the rays are spread over. */
  double flatAreaMm2() {
    double[] b = bounds();
    return (b[1] - b[0]) * (b[3] - b[2]);
  }

  /** Fractions of the rectangle that are lit and shaded skin. */
  double[] fractions(int rays) {
    double[] b = bounds();
    int lit = 0;
    int shaded = 0;
    for (int i = 0; i < rays; i++) {
      double x = b[0] + random.nextDouble() * (b[1] - b[0]);
      double y = b[2] + random.nextDouble() * (b[3] - b[2]);
      if (!hits(x, y)) {
        continue;
      }
      double dx = x - centre.dot(right);
      double dy = y - centre.dot(up);
      double t = Math.toRadians(-place.turnDegrees());
      double ax = (dx * Math.cos(t) - dy * Math.sin(t)) / place.scale();
      double ay = (dx * Math.sin(t) + dy * Math.cos(t)) / place.scale();
      if (opaque(place.mirror() ? -ax : ax, ay)) {
        shaded++;
      } else {
        lit++;
      }
    }
    return new double[] {(double) lit / rays, (double) shaded / rays};
  }

  private boolean hits(double x, double y) {
    for (int f = 0; f < mesh.faceCount(); f++) {
      Vec3 a = seen(f, 0);
      Vec3 b = seen(f, 1);
      Vec3 c = seen(f, 2);
      double s0 = turn(a, b, x, y);
      double s1 = turn(b, c, x, y);
      double s2 = turn(c, a, x, y);
      if (s0 > 0 && s1 > 0 && s2 > 0 || s0 < 0 && s1 < 0 && s2 < 0) {
        return true;
      }
    }
    return false;
  }

  private Vec3 seen(int f, int k) {
    int v = mesh.corner(f, k);
    Vec3 p = new Vec3(mesh.x(v), mesh.y(v), mesh.z(v));
    return new Vec3(p.dot(right), p.dot(up), 0);
  }

  private static double turn(Vec3 a, Vec3 b, double x, double y) {
    return (b.x() - a.x()) * (y - a.y()) - (b.y() - a.y()) * (x - a.x());
  }

  private boolean opaque(double x, double y) {
    if (Math.abs(x) > artwork.widthMm() / 2 || Math.abs(y) > artwork.heightMm() / 2) {
      return true;
    }
    boolean odd = false;
    double[] xy = artwork.xy();
    int[] starts = artwork.ringStarts();
    for (int r = 0; r < artwork.ringCount(); r++) {
      for (int i = starts[r], j = starts[r + 1] - 1; i < starts[r + 1]; j = i++) {
        if (xy[2 * i + 1] > y != xy[2 * j + 1] > y
            && x
                < (xy[2 * j] - xy[2 * i]) * (y - xy[2 * i + 1]) / (xy[2 * j + 1] - xy[2 * i + 1])
                    + xy[2 * i]) {
          odd = !odd;
        }
      }
    }
    return odd;
  }

  /** Area (mm2) of a face seen along a direction. */
  static double flatArea(SurfaceMesh m, int f, Vec3 along) {
    Vec3 a = new Vec3(m.x(m.corner(f, 0)), m.y(m.corner(f, 0)), m.z(m.corner(f, 0)));
    Vec3 b = new Vec3(m.x(m.corner(f, 1)), m.y(m.corner(f, 1)), m.z(m.corner(f, 1)));
    Vec3 c = new Vec3(m.x(m.corner(f, 2)), m.y(m.corner(f, 2)), m.z(m.corner(f, 2)));
    return Math.abs(b.minus(a).cross(c.minus(a)).dot(along)) / 2;
  }

  /** True if a face, seen along z, holds a point. */
  static boolean holds(SurfaceMesh m, int f, double x, double y) {
    double[] s = new double[3];
    for (int k = 0; k < 3; k++) {
      int a = m.corner(f, k);
      int b = m.corner(f, (k + 1) % 3);
      s[k] = (m.x(b) - m.x(a)) * (y - m.y(a)) - (m.y(b) - m.y(a)) * (x - m.x(a));
    }
    return s[0] > 0 && s[1] > 0 && s[2] > 0 || s[0] < 0 && s[1] < 0 && s[2] < 0;
  }
}
