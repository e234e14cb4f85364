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
    double turn = Math.toRadians(placement.turnDegrees());
    // Exact for quarter turns, so that square artwork on a square part stays exact.
    boolean quarter = placement.turnDegrees() % 90 == 0;
    double cos = quarter ? Math.rint(Math.cos(turn)) : Math.cos(turn);
    double sin = quarter ? Math.rint(Math.sin(turn)) : Math.sin(turn);
    double flip = placement.mirror() ? -1 : 1;
    int n = mesh.vertexCount();
    double[] xy = new double[2 * n];
    double[] depth = new double[n];
    for (int v = 0; v < n; v++) {
      double dx = mesh.x(v) - centre.x();
      double dy = mesh.y(v) - centre.y();
      double dz = mesh.z(v) - centre.z();
      double r = dx * axes.right.x() + dy * axes.right.y() + dz * axes.right.z();
      double u = dx * axes.up.x() + dy * axes.up.y() + dz * axes.up.z();
      xy[2 * v] = flip * (cos * r + sin * u) / placement.scale();
      xy[2 * v + 1] = (cos * u - sin * r) / placement.scale();
      depth[v] = dx * axes.ahead.x() + dy * axes.ahead.y() + dz * axes.ahead.z();
    }
    return new FilmFrame(xy, depth, flip * placement.scale());
  }

  /** Centre of the box, seen along the light, around all faces turned to it (mm). */
  static Vec3 centreOfFacing(SurfaceMesh mesh, FlatPlacement placement) {
    Axes axes = Axes.of(placement);
    Vec3 origin = new Vec3(0, 0, 0);
    FilmFrame frame =
        of(mesh, FlatPlacement.toward(placement.toward()).withUp(placement.up()), origin);
    double x0 = Double.POSITIVE_INFINITY;
    double y0 = x0;
    double x1 = Double.NEGATIVE_INFINITY;
    double y1 = x1;
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (frame.doubledArea(mesh, f) > 0) {
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
