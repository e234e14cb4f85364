package org.amperskin.skin;

import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.amperskin.geom.Box;
import org.amperskin.geom.Progress;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Which faces of a skin sprayed paint reaches.
 *
 * <p>Definition: paint flies straight. A face's share is the cosine-weighted part of the directions
 * before it from which the outside sees it; it is painted from {@link #LEAST_SHARE} on.
 *
 * <p>Guaranteed: the same bytes on any number of threads. Not guaranteed: how thick the paint lies;
 * the least share is a rule of thumb (common practice, no source). The error is the area of faces
 * whose share lies within two standard errors of it.
 *
 * <p>Method: depth maps of the skin from {@value #DIRECTIONS} directions spread evenly (spherical
 * Fibonacci lattice; A. Gonzalez, Mathematical Geosciences 42, 2010, from memory), two opposite
 * ones a pass.
 *
 * <p>Cost: about 2 s a million faces on two threads.
 */
public final class SprayReach {
  /** True if it is not sure whether a face is painted. */
  public boolean doubtful(int face) {
    return doubtful[face];
  }

  /** Share of the directions before a face from which it must be seen to be painted. */
  public static final double LEAST_SHARE = 0.05;

  /** Directions looked from. */
  public static final int DIRECTIONS = 96;

  private static final int SMALLEST_MAP = 256;
  private static final int LARGEST_MAP = 1024;
  private static final double GRAZING = 0.05;
  private static final float LARGE_FACE = 6;

  /** Places looked at on a face, as weights of its second and third corner: its middle first. */
  private static final double[] PLACES = {
    1 / 3.0, 1 / 3.0, 0.2, 0.2, 0.6, 0.2, 0.2, 0.6, 0.45, 0.45, 0.1, 0.45, 0.45, 0.1
  };

  private final boolean[] painted;
  private final float[] shares;
  private final boolean[] doubtful;
  private final double areaMm2;
  private final double errorMm2;

  private SprayReach(
      boolean[] painted, float[] shares, boolean[] doubtful, double areaMm2, double errorMm2) {
    this.doubtful = doubtful;
    this.painted = painted;
    this.shares = shares;
    this.areaMm2 = areaMm2;
    this.errorMm2 = errorMm2;
  }

  /** Looks at a skin from all around. */
  public static SprayReach of(Skin skin, Progress progress) {
    SurfaceMesh mesh = skin.mesh();
    int faces = mesh.faceCount();
    int passes = DIRECTIONS / 2;
    int side =
        Math.max(SMALLEST_MAP, Math.min(LARGEST_MAP, (int) Math.sqrt(4.0 * Math.max(1, faces))));
    int lanes = Math.max(1, Math.min(passes, 2));
    float[][] seen = new float[lanes][faces];
    float[][] all = new float[lanes][faces];
    Box box = Box.around(mesh.positions());
    float[] normals = normals(mesh);
    // A fixed number of lanes, each with its own sums: the same bytes whatever runs them.
    IntStream.range(0, lanes)
        .parallel()
        .forEach(
            lane -> {
              DepthPass pass = new DepthPass(mesh, normals, box, side);
              for (int p = lane; p < passes; p += lanes) {
                pass.look(direction(p, passes), seen[lane], all[lane]);
                progress.at("spraying", (double) p / passes);
              }
            });
    boolean[] painted = new boolean[faces];
    float[] shares = new float[faces];
    boolean[] doubtful = new boolean[faces];
    double area = 0;
    double error = 0;
    for (int f = 0; f < faces; f++) {
      double hits = 0;
      double total = 0;
      for (int lane = 0; lane < lanes; lane++) {
        hits += seen[lane][f];
        total += all[lane][f];
      }
      double share = total > 0 ? hits / total : 0;
      shares[f] = (float) share;
      painted[f] = share >= LEAST_SHARE;
      double face = mesh.faceAreaMm2(f);
      area += painted[f] ? face : 0;
      // About a quarter of all directions carry the cosine-weighted sum.
      double deviation = Math.sqrt(Math.max(share * (1 - share), 1e-4) / (DIRECTIONS / 4.0));
      doubtful[f] = Math.abs(share - LEAST_SHARE) < 2 * deviation && share > 0;
      error += doubtful[f] ? face : 0;
    }
    return new SprayReach(painted, shares, doubtful, area, error);
  }

  /** Unit normals, {@code n[3*f+k]}: every direction asks for all of them. */
  private static float[] normals(SurfaceMesh mesh) {
    float[] normals = new float[3 * mesh.faceCount()];
    for (int f = 0; f < mesh.faceCount(); f++) {
      double[] n = mesh.unitNormal(f);
      for (int k = 0; k < 3; k++) {
        normals[3 * f + k] = (float) n[k];
      }
    }
    return normals;
  }

  /** Paints every face, as with a brush or by dipping. */
  public static SprayReach everything(Skin skin) {
    boolean[] painted = new boolean[skin.mesh().faceCount()];
    float[] shares = new float[painted.length];
    java.util.Arrays.fill(painted, true);
    java.util.Arrays.fill(shares, 1);
    return new SprayReach(painted, shares, new boolean[painted.length], skin.areaMm2(), 0);
  }

  /**
   * The same, with some faces painted or left bare by hand.
   *
   * @param also faces painted besides
   * @param not faces left bare
   */
  public SprayReach changed(Skin skin, IntPredicate also, IntPredicate not) {
    boolean[] now = painted.clone();
    boolean[] unsure = doubtful.clone();
    double area = 0;
    double error = 0;
    for (int f = 0; f < now.length; f++) {
      boolean told = also.test(f) || not.test(f);
      now[f] = (now[f] || also.test(f)) && !not.test(f);
      unsure[f] &= !told;
      double face = skin.mesh().faceAreaMm2(f);
      area += now[f] ? face : 0;
      error += unsure[f] ? face : 0;
    }
    return new SprayReach(now, shares, unsure, area, error);
  }

  /** Direction number {@code i} of a half-sphere's lattice; its opposite is looked along too. */
  private static double[] direction(int i, int count) {
    double z = (i + 0.5) / count;
    double r = Math.sqrt(1 - z * z);
    double u = 2 * Math.PI * i * 0.6180339887498949;
    return new double[] {r * Math.cos(u), r * Math.sin(u), z};
  }

  /** True if paint reaches a face of the skin. */
  public boolean painted(int face) {
    return painted[face];
  }

  /** Share of the directions before a face from which it is seen, cosine-weighted, 0 to 1. */
  public double share(int face) {
    return shares[face];
  }

  /** Area that paint reaches (mm2). */
  public double areaMm2() {
    return areaMm2;
  }

  /** Area of which it is not sure (mm2). */
  public double errorMm2() {
    return errorMm2;
  }

  /** Nearest and farthest depth of the skin along one direction. */
  private static final class DepthPass {
    private final SurfaceMesh mesh;
    private final float[] normals;
    private final Box box;
    private final int side;
    private final float[] near;
    private final float[] far;

    /** {@code at[3*v+k]}: across, along and depth of each corner, side by side in memory. */
    private final float[] at;

    DepthPass(SurfaceMesh mesh, float[] normals, Box box, int side) {
      this.mesh = mesh;
      this.normals = normals;
      this.box = box;
      this.side = side;
      this.near = new float[side * side];
      this.far = new float[side * side];
      this.at = new float[3 * mesh.vertexCount()];
    }

    void look(double[] d, float[] seen, float[] all) {
      double pixel = Math.max(box.diagonal(), 1e-9) / (side - 2);
      project(d, pixel);
      java.util.Arrays.fill(near, Float.POSITIVE_INFINITY);
      java.util.Arrays.fill(far, Float.NEGATIVE_INFINITY);
      int faces = mesh.faceCount();
      for (int f = 0; f < faces; f++) {
        draw(f);
      }
      for (int f = 0; f < faces; f++) {
        judge(f, d, seen, all);
      }
    }

    /** Everything in pixels, depth too. */
    private void project(double[] d, double pixel) {
      double sign = Math.copySign(1.0, d[2]);
      double a = -1 / (sign + d[2]);
      double b = d[0] * d[1] * a;
      double ux = 1 + sign * d[0] * d[0] * a;
      double uy = sign * b;
      double uz = -sign * d[0];
      double vx = b;
      double vy = sign + d[1] * d[1] * a;
      double vz = -d[1];
      double cx = box.centre().x();
      double cy = box.centre().y();
      double cz = box.centre().z();
      double middle = side / 2.0;
      for (int i = 0; i < at.length / 3; i++) {
        double px = mesh.x(i) - cx;
        double py = mesh.y(i) - cy;
        double pz = mesh.z(i) - cz;
        at[3 * i] = (float) ((ux * px + uy * py + uz * pz) / pixel + middle);
        at[3 * i + 1] = (float) ((vx * px + vy * py + vz * pz) / pixel + middle);
        at[3 * i + 2] = (float) ((d[0] * px + d[1] * py + d[2] * pz) / pixel);
      }
    }

    private void draw(int f) {
      int a = 3 * mesh.corner(f, 0);
      int b = 3 * mesh.corner(f, 1);
      int c = 3 * mesh.corner(f, 2);
      float ax = at[a];
      float ay = at[a + 1];
      int x0 = Math.max(0, (int) Math.ceil(Math.min(ax, Math.min(at[b], at[c])) - 0.5f));
      int x1 = Math.min(side - 1, (int) Math.floor(Math.max(ax, Math.max(at[b], at[c])) - 0.5f));
      int y0 = Math.max(0, (int) Math.ceil(Math.min(ay, Math.min(at[b + 1], at[c + 1])) - 0.5f));
      int y1 =
          Math.min(side - 1, (int) Math.floor(Math.max(ay, Math.max(at[b + 1], at[c + 1])) - 0.5f));
      if (x0 > x1 || y0 > y1) {
        // between the pixels' middles, as most faces of a fine mesh are
        return;
      }
      float det = (at[b] - ax) * (at[c + 1] - ay) - (at[b + 1] - ay) * (at[c] - ax);
      if (det == 0) {
        return;
      }
      float ux = (at[c + 1] - ay) / det;
      float uy = -(at[c] - ax) / det;
      float vx = -(at[b + 1] - ay) / det;
      float vy = (at[b] - ax) / det;
      float db = at[b + 2] - at[a + 2];
      float dc = at[c + 2] - at[a + 2];
      for (int j = y0; j <= y1; j++) {
        float py = j + 0.5f - ay;
        for (int i = x0; i <= x1; i++) {
          float px = i + 0.5f - ax;
          float s = ux * px + uy * py;
          float t = vx * px + vy * py;
          if (s >= 0 && t >= 0 && s + t <= 1) {
            float z = at[a + 2] + s * db + t * dc;
            int pixel = j * side + i;
            near[pixel] = Math.min(near[pixel], z);
            far[pixel] = Math.max(far[pixel], z);
          }
        }
      }
    }

    private void judge(int f, double[] d, float[] seen, float[] all) {
      double slope = normals[3 * f] * d[0] + normals[3 * f + 1] * d[1] + normals[3 * f + 2] * d[2];
      double weight = Math.abs(slope);
      if (weight < GRAZING) {
        return;
      }
      all[f] += (float) weight;
      int a = 3 * mesh.corner(f, 0);
      int b = 3 * mesh.corner(f, 1);
      int c = 3 * mesh.corner(f, 2);
      // Within a pixel the face itself falls by its slope; neighbours may stand a little higher.
      double slack = 1 + 1.5 * Math.sqrt(1 / (weight * weight) - 1);
      float span =
          Math.max(at[a], Math.max(at[b], at[c])) - Math.min(at[a], Math.min(at[b], at[c]));
      span +=
          Math.max(at[a + 1], Math.max(at[b + 1], at[c + 1]))
              - Math.min(at[a + 1], Math.min(at[b + 1], at[c + 1]));
      int points = span > LARGE_FACE ? PLACES.length / 2 : 1;
      int open = 0;
      for (int k = 0; k < points; k++) {
        double s = PLACES[2 * k];
        double t = PLACES[2 * k + 1];
        double r = 1 - s - t;
        int i = (int) (r * at[a] + s * at[b] + t * at[c]);
        int j = (int) (r * at[a + 1] + s * at[b + 1] + t * at[c + 1]);
        double z = r * at[a + 2] + s * at[b + 2] + t * at[c + 2];
        int pixel = j * side + i;
        // A face looking along d is seen from far out along d, and the other way round.
        open += slope > 0 ? (z >= far[pixel] - slack ? 1 : 0) : (z <= near[pixel] + slack ? 1 : 0);
      }
      seen[f] += (float) (weight * open / points);
    }
  }
}
