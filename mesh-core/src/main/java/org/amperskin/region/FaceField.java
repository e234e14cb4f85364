package org.amperskin.region;

import java.util.Arrays;
import org.amperskin.mesh.SurfaceMesh;

/**
 * A number for every face of a mesh, for pictures and reports.
 *
 * <p>Definition: {@code value(f)} in {@code unit}; NaN where there is none. The range is that of
 * faces with a value and an area. Arrays are kept, not copied.
 */
public final class FaceField {
  private final SurfaceMesh mesh;
  private final String label;
  private final String unit;
  private final double[] values;
  private final double low;
  private final double high;

  private FaceField(SurfaceMesh mesh, String label, String unit, double[] values) {
    this.mesh = mesh;
    this.label = label;
    this.unit = unit;
    this.values = values;
    double least = Double.NaN;
    double most = Double.NaN;
    for (double v : values) {
      least = v < least || Double.isNaN(least) ? v : least;
      most = v > most || Double.isNaN(most) ? v : most;
    }
    low = least;
    high = most;
  }

  /**
   * A field.
   *
   * @param label what it is, for people
   * @param unit its unit, empty for a plain ratio
   * @param values {@code values[f]}; kept, not copied
   */
  public static FaceField of(SurfaceMesh mesh, String label, String unit, double[] values) {
    if (values.length != mesh.faceCount()) {
      throw new IllegalArgumentException(
          values.length + " values for " + mesh.faceCount() + " faces");
    }
    return new FaceField(mesh, label, unit, values);
  }

  /** The faces. */
  public SurfaceMesh mesh() {
    return mesh;
  }

  /** What it is, for people. */
  public String label() {
    return label;
  }

  /** Its unit, empty for a plain ratio. */
  public String unit() {
    return unit;
  }

  /** The number at a face, NaN for none. */
  public double value(int face) {
    return values[face];
  }

  /** The smallest value, NaN if there is none. */
  public double low() {
    return low;
  }

  /** The largest value, NaN if there is none. */
  public double high() {
    return high;
  }

  /** Mean by area, NaN if there is no value. */
  public double mean() {
    double sum = 0;
    double area = 0;
    for (int f = 0; f < values.length; f++) {
      if (!Double.isNaN(values[f])) {
        double a = mesh.faceAreaMm2(f);
        sum += a * values[f];
        area += a;
      }
    }
    return area > 0 ? sum / area : Double.NaN;
  }

  /**
   * The value that a share of the area does not exceed.
   *
   * @param share 0 to 1
   */
  public double quantile(double share) {
    double[] area = new double[values.length];
    for (int f = 0; f < area.length; f++) {
      area[f] = mesh.faceAreaMm2(f);
    }
    return quantile(values, area, share);
  }

  /**
   * The value that a share of the whole weight does not exceed.
   *
   * @param values numbers, NaN for none
   * @param weights {@code weights[i]} of {@code values[i]}
   * @param share 0 to 1
   * @return NaN if there is no value
   */
  public static double quantile(double[] values, double[] weights, double share) {
    return quantiles(values, weights, share)[0];
  }

  /** As {@link #quantile(double[], double[], double)}, for several shares in rising order. */
  public static double[] quantiles(double[] values, double[] weights, double... shares) {
    Integer[] order = new Integer[values.length];
    double total = 0;
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i])) {
        order[n++] = i;
        total += weights[i];
      }
    }
    Arrays.sort(order, 0, n, (a, b) -> Double.compare(values[a], values[b]));
    double[] found = new double[shares.length];
    Arrays.fill(found, Double.NaN);
    double below = 0;
    int next = 0;
    for (int i = 0; i < n; i++) {
      below += weights[order[i]];
      while (next < shares.length && below >= share(shares, next) * total * (1 - 1e-12)) {
        found[next++] = values[order[i]];
      }
    }
    return found;
  }

  private static double share(double[] shares, int k) {
    if (!(shares[k] >= 0 && shares[k] <= 1)) {
      throw new IllegalArgumentException("share " + shares[k] + ", 0 to 1 fits");
    }
    return shares[k];
  }
}
