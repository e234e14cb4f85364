package org.amperskin.picture;

import org.amperskin.mesh.SurfaceMesh;

/**
 * A mesh's vertices as a camera sees them, on a grid of 1/256 sample.
 *
 * <p>{@code x[v], y[v]} are whole 1/256 samples from the upper left corner, {@code key[v]} grows
 * toward the eye and is linear on the picture; {@code x[v]} is {@link #AWAY} for a vertex behind
 * the near plane or so far out that whole-number arithmetic could run over.
 */
final class View {
  static final int AWAY = Integer.MIN_VALUE;
  static final int STEPS = 256;
  private static final double FARTHEST = 1 << 20;
  private static final double NEAR_SHARE = 1e-3;
  private static final int CHUNK = 1 << 15;

  final int[] x;
  final int[] y;
  final float[] key;
  final double nearMm;
  final int width;
  final int height;

  private final double[] p;
  private final double[] r;
  private final double[] u;
  private final double[] e;
  private final double tx;
  private final double ty;
  private final double tz;
  private final double distanceMm;
  private final boolean perspective;
  private final double scale;

  View(SurfaceMesh mesh, Camera camera, int width, int height, int threads) {
    this.width = width;
    this.height = height;
    p = mesh.positions();
    r = camera.right();
    u = camera.up();
    e = camera.eye();
    tx = camera.targetX();
    ty = camera.targetY();
    tz = camera.targetZ();
    distanceMm = camera.distanceMm();
    perspective = camera.projection() == Projection.PERSPECTIVE;
    nearMm = perspective ? NEAR_SHARE * distanceMm : Double.NEGATIVE_INFINITY;
    scale = perspective ? height * distanceMm / camera.spanMm() : height / camera.spanMm();
    int n = mesh.vertexCount();
    x = new int[n];
    y = new int[n];
    key = new float[n];
    int chunks = (n + CHUNK - 1) / CHUNK;
    Work.split(
        chunks,
        threads,
        c -> {
          double[] out = new double[3];
          for (int v = c * CHUNK; v < Math.min(n, (c + 1) * CHUNK); v++) {
            toView(v, out);
            keep(v, out);
          }
        });
  }

  private void keep(int v, double[] seen) {
    if (seen[2] < nearMm) {
      x[v] = AWAY;
      return;
    }
    project(seen);
    double px = seen[0];
    double py = seen[1];
    if (Math.abs(px) > FARTHEST || Math.abs(py) > FARTHEST) {
      x[v] = AWAY;
      return;
    }
    x[v] = (int) Math.round(px * STEPS);
    y[v] = (int) Math.round(py * STEPS);
    key[v] = (float) seen[2];
  }

  /** Right, up (mm from the target) and distance from the eye along its axis (mm). */
  void toView(int v, double[] out) {
    double dx = p[3 * v] - tx;
    double dy = p[3 * v + 1] - ty;
    double dz = p[3 * v + 2] - tz;
    out[0] = r[0] * dx + r[1] * dy + r[2] * dz;
    out[1] = u[0] * dx + u[1] * dy + u[2] * dz;
    out[2] = distanceMm - (e[0] * dx + e[1] * dy + e[2] * dz);
  }

  /** From view to samples right, samples down, depth key; in place. */
  void project(double[] seen) {
    double away = seen[2];
    double k = perspective ? scale / away : scale;
    seen[0] = 0.5 * width + seen[0] * k;
    seen[1] = 0.5 * height - seen[1] * k;
    seen[2] = perspective ? distanceMm / away : distanceMm - away;
  }
}
