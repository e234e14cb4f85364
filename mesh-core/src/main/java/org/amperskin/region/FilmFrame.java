package org.amperskin.region;

import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;

/**
 * A part as the light sees it: artwork coordinates and depth of every vertex.
 *
 * <p>Definition: {@code xy[2*v], xy[2*v+1]} are artwork millimetres from the artwork's centre,
 * {@code depth[v]} is the distance (mm) along the light, larger farther from the lamp. A face is
 * turned to the light if its corners run counter-clockwise here.
 */
final class FilmFrame {
  private final double[] xy;
  private final double[] depth;
  private final double scale;

  private FilmFrame(double[] xy, double[] depth, double scale) {
    this.xy = xy;
    this.depth = depth;
    this.scale = scale;
  }

  /**
   * Sees a mesh through a placement.
   *
   * @param centre where the artwork's centre lies (mm)
   */
  static FilmFrame of(SurfaceMesh mesh, FlatPlacement placement, Vec3 centre) {
    Axes axes = Axes.of(placement);
    int n = mesh.vertexCount();
    double[] xyz = new double[3 * n];
    for (int v = 0; v < n; v++) {
      double dx = mesh.x(v) - centre.x();
      double dy = mesh.y(v) - centre.y();
      double dz = mesh.z(v) - centre.z();
      xyz[3 * v] = dx * axes.right.x() + dy * axes.right.y() + dz * axes.right.z();
      xyz[3 * v + 1] = dx * axes.up.x() + dy * axes.up.y() + dz * axes.up.z();
      xyz[3 * v + 2] = dx * axes.ahead.x() + dy * axes.ahead.y() + dz * axes.ahead.z();
    }
    return of(xyz, Lay.of(placement), 0, 0);
  }

  /**
   * Takes film coordinates to artwork coordinates.
   *
   * @param xyz {@code xyz[3*v..]}: across, upward, depth (film mm)
   * @param x0 where the artwork's centre lies across (film mm)
   * @param y0 where it lies upward (film mm)
   */
  static FilmFrame of(double[] xyz, Lay lay, double x0, double y0) {
    int n = xyz.length / 3;
    double[] xy = new double[2 * n];
    double[] depth = new double[n];
    for (int v = 0; v < n; v++) {
      double r = xyz[3 * v] - x0;
      double u = xyz[3 * v + 1] - y0;
      xy[2 * v] = lay.x(r, u);
      xy[2 * v + 1] = lay.y(r, u);
      depth[v] = xyz[3 * v + 2];
    }
    return new FilmFrame(xy, depth, lay.scale());
  }

  /** Centre of the box, seen along the light, around all faces turned to it (mm); null for any. */
  static Vec3 centreOfFacing(SurfaceMesh mesh, FlatPlacement placement, boolean[] behind) {
    Axes axes = Axes.of(placement);
    Vec3 origin = new Vec3(0, 0, 0);
    FilmFrame frame =
        of(mesh, FlatPlacement.toward(placement.toward()).withUp(placement.up()), origin);
    double x0 = Double.POSITIVE_INFINITY;
    double y0 = x0;
    double x1 = Double.NEGATIVE_INFINITY;
    double y1 = x1;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if ((behind == null || behind[f]) && frame.doubledArea(mesh, f) > 0) {
        for (int k = 0; k < 3; k++) {
          int v = mesh.corner(f, k);
          x0 = Math.min(x0, frame.xy[2 * v]);
          x1 = Math.max(x1, frame.xy[2 * v]);
          y0 = Math.min(y0, frame.xy[2 * v + 1]);
          y1 = Math.max(y1, frame.xy[2 * v + 1]);
        }
      }
    }
    if (x0 > x1) {
      return origin;
    }
    return axes.right.times((x0 + x1) / 2).plus(axes.up.times((y0 + y1) / 2));
  }

  double x(int vertex) {
    return xy[2 * vertex];
  }

  double y(int vertex) {
    return xy[2 * vertex + 1];
  }

  /** Largest artwork coordinate of any vertex, across or upward, without its sign (mm). */
  double reach() {
    double reach = 0;
    for (double c : xy) {
      reach = Math.max(reach, Math.abs(c));
    }
    return reach;
  }

  double depth(int vertex) {
    return depth[vertex];
  }

  /** Doubled area (artwork mm2) of a face seen along the light, positive if turned to it. */
  double doubledArea(SurfaceMesh mesh, int face) {
    int a = mesh.corner(face, 0);
    int b = mesh.corner(face, 1);
    int c = mesh.corner(face, 2);
    double seen = (x(b) - x(a)) * (y(c) - y(a)) - (y(b) - y(a)) * (x(c) - x(a));
    return scale < 0 ? -seen : seen;
  }

  /** True if artwork coordinates are mirrored against the eye's. */
  boolean mirrored() {
    return scale < 0;
  }

  /** The axes of the film. */
  private record Axes(Vec3 right, Vec3 up, Vec3 ahead) {
    static Axes of(FlatPlacement placement) {
      Vec3 ahead = placement.toward();
      Vec3 right = ahead.cross(placement.up()).unit();
      return new Axes(clean(right), clean(right.cross(ahead).unit()), ahead);
    }

    /** Takes rounding noise off axes that lie along the coordinate axes. */
    private static Vec3 clean(Vec3 v) {
      return new Vec3(clean(v.x()), clean(v.y()), clean(v.z()));
    }

    private static double clean(double c) {
      double nearest = Math.rint(c);
      return Math.abs(c - nearest) < 1e-15 ? nearest : c;
    }
  }
}
