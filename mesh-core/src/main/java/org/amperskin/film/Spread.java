package org.amperskin.film;

import java.util.Arrays;
import org.amperskin.region.FaceField;

/**
 * How a quantity is spread over the skin that a film covers, by area.
 *
 * @param least smallest value
 * @param low five per cent of the area have less
 * @param mean mean by area
 * @param high ninety-five per cent of the area have no more
 * @param most largest value
 */
public record Spread(double least, double low, double mean, double high, double most) {
  /** Values with their areas, as they come. */
  static final class Sum {
    private double[] values = new double[256];
    private double[] areas = new double[256];
    private int count;
    private double least = Double.POSITIVE_INFINITY;
    private double most = Double.NEGATIVE_INFINITY;

    void add(double value, double area) {
      if (count == values.length) {
        values = Arrays.copyOf(values, 2 * count);
        areas = Arrays.copyOf(areas, 2 * count);
      }
      values[count] = value;
      areas[count++] = area;
      reach(value);
    }

    /** Widens the range without weight. */
    void reach(double value) {
      least = Math.min(least, value);
      most = Math.max(most, value);
    }

    /** Largest less smallest so far, 0 if there is nothing yet. */
    double range() {
      return count == 0 ? 0 : most - least;
    }

    double area() {
      double sum = 0;
      for (int i = 0; i < count; i++) {
        sum += areas[i];
      }
      return sum;
    }

    Spread spread() {
      double sum = 0;
      for (int i = 0; i < count; i++) {
        sum += values[i] * areas[i];
      }
      double[] v = Arrays.copyOf(values, count);
      double[] a = Arrays.copyOf(areas, count);
      double[] ends = FaceField.quantiles(v, a, 0.05, 0.95);
      return new Spread(least, ends[0], sum / area(), ends[1], most);
    }
  }
}
