package org.amperskin.pattern.motif;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Bands that swing to and fro in arcs of circles, of one width all along; the middle of the sheet
 * lies on a crossing of the mid line.
 *
 * <p>Coverage: line times arc length of one wave over its rectangle (a band's area is its width
 * times the length of its middle, Pappus). Bands stay apart: two curves of slope up to s at the
 * vertical distance p are at least p cos(s) apart.
 *
 * @param pitchMm from the middle of a band to the next, upward (mm)
 * @param lineMm width of a band (mm)
 * @param lengthMm from crest to crest (mm)
 * @param heightMm from trough to crest, of the band's middle (mm)
 */
public record Waves(double pitchMm, double lineMm, double lengthMm, double heightMm)
    implements LinedMotif {
  /** Checks the values. */
  public Waves {
    MotifParameter.PITCH.check(pitchMm);
    MotifParameter.LENGTH.check(lengthMm);
    MotifFault.within(MotifParameter.HEIGHT, heightMm, lengthMm / 1000, 0.4 * lengthMm);
    MotifFault.line(
        lineMm,
        widest(pitchMm, lengthMm, heightMm),
        "what the pitch and the bend of the waves leave");
  }

  @Override
  public MotifKind kind() {
    return MotifKind.WAVES;
  }

  @Override
  public double widestLineMm() {
    return widest(pitchMm, lengthMm, heightMm);
  }

  private static double widest(double pitchMm, double lengthMm, double heightMm) {
    double radius = radius(lengthMm, heightMm);
    double cos = Math.sqrt(1 - square(lengthMm / 4 / radius));
    return Math.min(pitchMm * cos, 2 * radius);
  }

  private static double radius(double lengthMm, double heightMm) {
    return (square(lengthMm / 4) + square(heightMm / 2)) / heightMm;
  }

  private static double square(double v) {
    return v * v;
  }

  /** Half the angle of one arc; also the steepest slope (rad). */
  private double halfArc() {
    return Math.asin(lengthMm / 4 / radius(lengthMm, heightMm));
  }

  @Override
  public Waves withLine(double newLineMm) {
    return new Waves(pitchMm, newLineMm, lengthMm, heightMm);
  }

  @Override
  public OptionalDouble coverage() {
    double arcMm = 4 * halfArc() * radius(lengthMm, heightMm);
    return OptionalDouble.of(lineMm * arcMm / (lengthMm * pitchMm));
  }

  @Override
  public Optional<Tile> tile() {
    return Optional.of(new Tile(lengthMm, pitchMm));
  }

  @Override
  public double edgesOn(double areaMm2) {
    return 40 * areaMm2 / (lengthMm * pitchMm);
  }

  @Override
  public void draw(Window w, Pencil pencil) {
    double half = lengthMm / 2;
    int first = Cells.first(w.left(), half);
    int last = Cells.last(w.right(), half);
    double radius = radius(lengthMm, heightMm);
    // the outer edge of a crest and of a trough, for the wave that begins at the origin
    double[][] lower = new double[2][];
    double[][] upper = new double[2][];
    double a = halfArc();
    double drop = radius - heightMm / 2;
    double up = Math.PI / 2;
    upper[0] = pencil.arc(half / 2, -drop, radius + lineMm / 2, up + a, -2 * a);
    lower[0] = pencil.arc(half / 2, -drop, radius - lineMm / 2, up + a, -2 * a);
    upper[1] = pencil.arc(half / 2, drop, radius - lineMm / 2, -up - a, 2 * a);
    lower[1] = pencil.arc(half / 2, drop, radius + lineMm / 2, -up - a, 2 * a);
    double reach = heightMm / 2 + lineMm;
    int top = Cells.last(w.top() + reach, pitchMm);
    for (int row = Cells.first(w.bottom() - reach, pitchMm); row <= top; row++) {
      Walk walk = new Walk();
      for (int k = first; k < last; k++) {
        walk.forward(lower[Math.floorMod(k, 2)], k * half, row * pitchMm);
      }
      for (int k = last - 1; k >= first; k--) {
        walk.back(upper[Math.floorMod(k, 2)], k * half, row * pitchMm);
      }
      pencil.ring(walk.points());
    }
  }

  /** Strings arcs together; where one ends the next begins, and the point is taken once. */
  private static final class Walk {
    private double[] xy = new double[256];
    private int size;

    void forward(double[] arc, double dx, double dy) {
      for (int i = 0; i < arc.length; i += 2) {
        add(arc[i] + dx, arc[i + 1] + dy);
      }
    }

    void back(double[] arc, double dx, double dy) {
      for (int i = arc.length - 2; i >= 0; i -= 2) {
        add(arc[i] + dx, arc[i + 1] + dy);
      }
    }

    private void add(double x, double y) {
      if (size > 0 && Math.abs(xy[size - 2] - x) + Math.abs(xy[size - 1] - y) < 1e-9) {
        return;
      }
      if (size + 2 > xy.length) {
        xy = java.util.Arrays.copyOf(xy, 2 * xy.length);
      }
      xy[size++] = x;
      xy[size++] = y;
    }

    double[] points() {
      return java.util.Arrays.copyOf(xy, size);
    }
  }

  @Override
  public String told() {
    return "pitch %s mm, line %s mm, length %s mm, height %s mm"
        .formatted(
            Pencil.number(pitchMm),
            Pencil.number(lineMm),
            Pencil.number(lengthMm),
            Pencil.number(heightMm));
  }
}
