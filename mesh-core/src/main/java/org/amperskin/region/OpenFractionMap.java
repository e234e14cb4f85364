package org.amperskin.region;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;

/**
 * How much of the skin is open round each place: dense and sparse parts of a pattern.
 *
 * <p>Definition: at a place, open area over crossed area (open and masked, what a swab crosses)
 * within a ball of the given radius round it, of skin that faces the same half of space, so that
 * the other side of a thin wall does not count. A place has no value if less than a quarter of the
 * window's disk lies on crossed skin.
 *
 * <p>Guaranteed: areas are those of the split mesh, each counted once in a window; sums run in face
 * order, the same bytes on any machine. Not guaranteed: that the window is round to better than its
 * grid, a third of the radius; it is a picture of the pattern, not a bound.
 *
 * <p>Cost: linear in pieces; pieces are divided until they are no longer than a quarter of the
 * radius.
 */
public final class OpenFractionMap {
  /** The usual radius (mm). */
  public static final double USUAL_RADIUS_MM = 5;

  private static final int REACH = 4;
  private static final double MOST_PARTS = 2e7;
  private static final int FIELDS = 8;

  private final double radiusMm;
  private final double overall;
  private final FaceField field;
  private final double[] fractions;
  private final double[] areas;
  private final int least;
  private final int most;
  private final double[] sums;

  private OpenFractionMap(Builder built, double overall, FaceField field) {
    this.radiusMm = built.radius;
    this.overall = overall;
    this.field = field;
    this.fractions = built.fractions;
    this.sums = built.sums;
    this.areas = new double[fractions.length];
    int low = -1;
    int high = -1;
    for (int i = 0; i < fractions.length; i++) {
      areas[i] = sums[FIELDS * i];
      low = !Double.isNaN(fractions[i]) && (low < 0 || fractions[i] < fractions[low]) ? i : low;
      high = !Double.isNaN(fractions[i]) && (high < 0 || fractions[i] > fractions[high]) ? i : high;
    }
    least = low;
    most = high;
  }

  /**
   * Maps a region.
   *
   * @param radiusMm radius of the window (mm)
   * @throws IllegalArgumentException if nothing is crossed, or the radius is far below the part
   */
  public static OpenFractionMap of(Region region, double radiusMm) {
    SplitMesh split = region.split();
    double crossed = region.traversedAreaMm2();
    if (!(radiusMm > 0) || crossed / (radiusMm * radiusMm / 32) > MOST_PARTS) {
      throw new IllegalArgumentException(
          "window radius "
              + radiusMm
              + " mm on "
              + crossed
              + " mm2; at least "
              + Math.sqrt(32 * crossed / MOST_PARTS)
              + " mm fits");
    }
    if (!(crossed > 0)) {
      throw new IllegalArgumentException("the region crosses " + crossed + " mm2: nothing to map");
    }
    Builder b = new Builder(split, radiusMm);
    b.gather();
    b.average(0.25 * Math.min(Math.PI * radiusMm * radiusMm, crossed));
    double[] values = b.spread();
    return new OpenFractionMap(
        b,
        b.open / b.total,
        FaceField.of(split.mesh(), "open within " + shown(radiusMm) + " mm", "", values));
  }

  private static String shown(double mm) {
    return mm == Math.rint(mm) ? Long.toString((long) mm) : Double.toString(mm);
  }

  /** Radius of the window (mm). */
  public double radiusMm() {
    return radiusMm;
  }

  /** Open over crossed area of the whole region. */
  public double overall() {
    return overall;
  }

  /** The smallest fraction of any window, NaN if no window holds enough skin. */
  public double least() {
    return least < 0 ? Double.NaN : fractions[least];
  }

  /** The largest fraction of any window, NaN if no window holds enough skin. */
  public double most() {
    return most < 0 ? Double.NaN : fractions[most];
  }

  /** Where the smallest fraction is (mm); null if nowhere. */
  public Vec3 leastAt() {
    return place(least);
  }

  /** Where the largest fraction is (mm); null if nowhere. */
  public Vec3 mostAt() {
    return place(most);
  }

  private Vec3 place(int i) {
    return i < 0 ? null : Builder.middle(sums, i);
  }

  /** The fraction that a share of the crossed area does not exceed. */
  public double quantile(double share) {
    return FaceField.quantile(fractions, areas, share);
  }

  /** The fraction at each piece of the split mesh; NaN where nothing is crossed. */
  public FaceField field() {
    return field;
  }

  /** Gathers areas into cells and averages them. */
  private static final class Builder {
    private final SplitMesh split;
    private final double radius;
    private final double side;
    private final double[] corner = new double[3];

    /** A cell's first side of space; {@code next} leads on to its others, -1 at the end. */
    private final Map<Long, Integer> cells = new HashMap<>();

    private int[] next = new int[256];

    /** {@code sums[8*i..]}: crossed area, open area, area times place, area times normal. */
    private double[] sums = new double[FIELDS * 256];

    private int[] keys = new int[4 * 256];
    private int count;
    private double[] fractions;
    private double total;
    private double open;
    private int piece;
    private double[] mean;
    private double[] weight;

    Builder(SplitMesh split, double radius) {
      this.split = split;
      this.radius = radius;
      this.side = radius / 3;
      Arrays.fill(corner, Double.POSITIVE_INFINITY);
      double[] p = split.mesh().positions();
      for (int i = 0; i < p.length; i++) {
        corner[i % 3] = Math.min(corner[i % 3], p[i]);
      }
    }

    static Vec3 middle(double[] s, int i) {
      double a = s[FIELDS * i];
      return new Vec3(s[FIELDS * i + 2] / a, s[FIELDS * i + 3] / a, s[FIELDS * i + 4] / a);
    }

    void gather() {
      eachPart(this::add);
      sums = Arrays.copyOf(sums, FIELDS * count);
    }

    /** Something done with a part of a piece: its middle, area, and cell. */
    private interface Part {
      void at(int cell, double x, double y, double z, double area);
    }

    private void eachPart(Part part) {
      SurfaceMesh mesh = split.mesh();
      for (piece = 0; piece < mesh.faceCount(); piece++) {
        RegionKind kind = split.kind(piece);
        boolean crossed =
            kind == RegionKind.EXPOSED
                || kind == RegionKind.MASKED
                || kind == RegionKind.UNREACHED && split.isOpen(kind);
        if (crossed && mesh.faceAreaMm2(piece) > 0) {
          double[] n = mesh.unitNormal(piece);
          double[] t = new double[9];
          for (int k = 0; k < 3; k++) {
            int v = mesh.corner(piece, k);
            t[3 * k] = mesh.x(v);
            t[3 * k + 1] = mesh.y(v);
            t[3 * k + 2] = mesh.z(v);
          }
          divide(t, mesh.faceAreaMm2(piece), side(n), part);
        }
      }
    }

    /** Which of the six sides of space a normal looks to. */
    private static int side(double[] n) {
      int axis = 0;
      for (int k = 1; k < 3; k++) {
        axis = Math.abs(n[k]) > Math.abs(n[axis]) ? k : axis;
      }
      return 2 * axis + (n[axis] < 0 ? 1 : 0);
    }

    private void divide(double[] t, double area, int side, Part part) {
      int longest = 0;
      double length = 0;
      for (int k = 0; k < 3; k++) {
        int m = 3 * ((k + 1) % 3);
        double l =
            Math.hypot(
                Math.hypot(t[m] - t[3 * k], t[m + 1] - t[3 * k + 1]), t[m + 2] - t[3 * k + 2]);
        if (l > length) {
          length = l;
          longest = k;
        }
      }
      if (length <= radius / 4) {
        double x = (t[0] + t[3] + t[6]) / 3;
        double y = (t[1] + t[4] + t[7]) / 3;
        double z = (t[2] + t[5] + t[8]) / 3;
        part.at(cell(x, y, z, side), x, y, z, area);
        return;
      }
      int a = 3 * longest;
      int b = 3 * ((longest + 1) % 3);
      double[] first = t.clone();
      double[] second = t.clone();
      for (int k = 0; k < 3; k++) {
        double middle = (t[a + k] + t[b + k]) / 2;
        first[b + k] = middle;
        second[a + k] = middle;
      }
      divide(first, area / 2, side, part);
      divide(second, area / 2, side, part);
    }

    private int step(double at, double from) {
      return (int) Math.floor((at - from) / side);
    }

    private static long key(int x, int y, int z) {
      return ((x & 0xFFFFFL) << 40) | ((y & 0xFFFFFL) << 20) | (z & 0xFFFFFL);
    }

    private int cell(double x, double y, double z, int which) {
      int ix = step(x, corner[0]);
      int iy = step(y, corner[1]);
      int iz = step(z, corner[2]);
      Integer first = cells.get(key(ix, iy, iz));
      int last = -1;
      for (int i = first == null ? -1 : first; i >= 0; i = next[i]) {
        if (keys[4 * i + 3] == which) {
          return i;
        }
        last = i;
      }
      if (count == next.length) {
        sums = Arrays.copyOf(sums, 2 * sums.length);
        keys = Arrays.copyOf(keys, 2 * keys.length);
        next = Arrays.copyOf(next, 2 * count);
      }
      keys[4 * count] = ix;
      keys[4 * count + 1] = iy;
      keys[4 * count + 2] = iz;
      keys[4 * count + 3] = which;
      next[count] = -1;
      if (last < 0) {
        cells.put(key(ix, iy, iz), count);
      } else {
        next[last] = count;
      }
      return count++;
    }

    private void add(int cell, double x, double y, double z, double area) {
      double[] n = split.mesh().unitNormal(piece);
      int at = FIELDS * cell;
      sums[at] += area;
      total += area;
      if (split.isOpen(split.kind(piece))) {
        sums[at + 1] += area;
        open += area;
      }
      sums[at + 2] += area * x;
      sums[at + 3] += area * y;
      sums[at + 4] += area * z;
      for (int k = 0; k < 3; k++) {
        sums[at + 5 + k] += area * n[k];
      }
    }

    void average(double leastArea) {
      fractions = new double[count];
      for (int i = 0; i < count; i++) {
        Vec3 here = middle(sums, i);
        double area = 0;
        double bare = 0;
        for (int dx = -REACH; dx <= REACH; dx++) {
          for (int dy = -REACH; dy <= REACH; dy++) {
            for (int dz = -REACH; dz <= REACH; dz++) {
              Integer first =
                  cells.get(key(keys[4 * i] + dx, keys[4 * i + 1] + dy, keys[4 * i + 2] + dz));
              for (int j = first == null ? -1 : first; j >= 0; j = next[j]) {
                if (facesAlike(i, j) && middle(sums, j).minus(here).length() <= radius) {
                  area += sums[FIELDS * j];
                  bare += sums[FIELDS * j + 1];
                }
              }
            }
          }
        }
        fractions[i] = area >= leastArea ? bare / area : Double.NaN;
      }
    }

    private boolean facesAlike(int i, int j) {
      double dot = 0;
      for (int k = 5; k < 8; k++) {
        dot += sums[FIELDS * i + k] * sums[FIELDS * j + k];
      }
      return dot > 0;
    }

    /** The fraction at each piece: the mean of its parts'. */
    double[] spread() {
      int faces = split.mesh().faceCount();
      mean = new double[faces];
      weight = new double[faces];
      eachPart(
          (cell, x, y, z, area) -> {
            if (!Double.isNaN(fractions[cell])) {
              mean[piece] += area * fractions[cell];
              weight[piece] += area;
            }
          });
      for (int f = 0; f < faces; f++) {
        mean[f] = weight[f] > 0 ? mean[f] / weight[f] : Double.NaN;
      }
      return mean;
    }
  }
}
