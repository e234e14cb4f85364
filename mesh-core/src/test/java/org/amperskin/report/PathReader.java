package org.amperskin.report;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads straight-edged SVG paths of one group: enough to measure what was written. */
final class PathReader {
  private PathReader() {}

  /** Closed rings of a group (user units, y downward). */
  static List<double[]> group(String svg, String id) {
    List<double[]> rings = new ArrayList<>();
    int from = svg.indexOf("<g id=\"" + id + "\"");
    int to = svg.indexOf("</g>", from);
    Matcher d = Pattern.compile(" d=\"([^\"]*)\"").matcher(svg.substring(from, to));
    while (d.find()) {
      for (String ring : d.group(1).split("Z")) {
        String[] numbers = ring.replaceAll("[ML]", " ").strip().split(" ");
        double[] xy = new double[numbers.length];
        for (int i = 0; i < xy.length; i++) {
          xy[i] = Double.parseDouble(numbers[i]);
        }
        rings.add(xy);
      }
    }
    return rings;
  }

  static double area(List<double[]> rings) {
    double sum = 0;
    for (double[] r : rings) {
      for (int i = 0, j = r.length - 2; i < r.length; j = i, i += 2) {
        sum += ((r[j] - r[0]) * (r[i + 1] - r[1]) - (r[i] - r[0]) * (r[j + 1] - r[1])) / 2;
      }
    }
    return sum;
  }

  static double width(List<double[]> rings) {
    double low = 1e9;
    double high = -1e9;
    for (double[] r : rings) {
      for (int i = 0; i < r.length; i += 2) {
        low = Math.min(low, r[i]);
        high = Math.max(high, r[i]);
      }
    }
    return high - low;
  }
}
