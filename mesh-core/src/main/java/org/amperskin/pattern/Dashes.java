package org.amperskin.pattern;

/**
 * Cuts a chain into dashes and hands them to a pen.
 *
 * <p>Rules: W3C SVG 2 section 13.5.6 and 13.5.7: the pattern starts anew on every subpath, an odd
 * list is doubled, the offset may be negative. On a closed subpath a dash that ends where another
 * begins at the start point is joined with it, so that the corner there is not cut.
 */
final class Dashes {
  private final double[] lengths;
  private final double offset;
  private final PointBudget budget;

  /**
   * Dashes.
   *
   * @param lengths dash, gap, dash, ... none negative, sum above zero
   * @param offset where in the pattern the path begins
   * @param budget counts dashes
   */
  Dashes(double[] lengths, double offset, PointBudget budget) {
    this.lengths = lengths;
    double total = 0;
    for (double length : lengths) {
      total += length;
    }
    double period = lengths.length % 2 == 0 ? total : 2 * total;
    this.offset = ((offset % period) + period) % period;
    this.budget = budget;
  }

  void draw(Chain chain, Pen pen) {
    int index = 0;
    double left = offset;
    while (left > 0 && left >= lengths[index % lengths.length]) {
      left -= lengths[index % lengths.length];
      index++;
      if (index > 2 * lengths.length) {
        break;
      }
    }
    double untilChange = lengths[index % lengths.length] - left;
    boolean on = index % 2 == 0;
    boolean startsOn = on;
    Chain.Builder now = on ? new Chain.Builder(chain.x[0], chain.y[0]) : null;
    Chain first = null;
    for (int k = 0; k < chain.segments; k++) {
      int q = chain.after(k);
      double length = Math.hypot(chain.x[q] - chain.x[k], chain.y[q] - chain.y[k]);
      double done = 0;
      double slack = 1e-12 * length;
      while (length - done > untilChange + slack) {
        double from = done;
        done += untilChange;
        if (on) {
          piece(chain, k, from / length, done / length, now);
          budget.spend(1);
          Chain dash = now.build(false);
          if (first == null && startsOn && chain.closed) {
            first = dash;
          } else {
            drawDash(dash, chain, k, pen);
          }
          now = null;
        } else {
          now =
              new Chain.Builder(at(chain.x, k, q, done / length), at(chain.y, k, q, done / length));
        }
        on = !on;
        index++;
        untilChange = lengths[index % lengths.length];
        budget.spend(0.5);
      }
      if (on) {
        piece(chain, k, done / length, 1, now);
      }
      untilChange -= length - done;
      untilChange = Math.max(0, untilChange);
    }
    if (on && first == null && startsOn && chain.closed && now != null) {
      pen.draw(chain); // one dash goes all the way round
      return;
    }
    if (on && now != null) {
      if (first != null) {
        append(first, now);
        first = null;
      }
      drawDash(now.build(false), chain, chain.segments - 1, pen);
    }
    if (first != null) {
      drawDash(first, chain, 0, pen);
    }
  }

  private static void drawDash(Chain dash, Chain whole, int k, Pen pen) {
    if (dash.segments > 0) {
      pen.draw(dash);
    } else {
      pen.dot(dash.x[0], dash.y[0], whole.tangents[4 * k], whole.tangents[4 * k + 1]);
    }
  }

  private static void append(Chain dash, Chain.Builder to) {
    for (int k = 0; k < dash.segments; k++) {
      double[] t = dash.tangents;
      to.segment(
          dash.x[k + 1],
          dash.y[k + 1],
          t[4 * k],
          t[4 * k + 1],
          t[4 * k + 2],
          t[4 * k + 3],
          dash.runLength[k],
          dash.joinsOn[k]);
    }
  }

  /** Part of segment k between two fractions, tangents turned in proportion. */
  private static void piece(Chain chain, int k, double from, double to, Chain.Builder into) {
    int q = chain.after(k);
    double[] t = chain.tangents;
    double turn = Flattener.turn(t[4 * k], t[4 * k + 1], t[4 * k + 2], t[4 * k + 3]);
    double[] a = turned(t[4 * k], t[4 * k + 1], from * turn);
    double[] b = turned(t[4 * k], t[4 * k + 1], to * turn);
    boolean end = to >= 1;
    into.segment(
        end ? chain.x[q] : at(chain.x, k, q, to),
        end ? chain.y[q] : at(chain.y, k, q, to),
        a[0],
        a[1],
        b[0],
        b[1],
        chain.runLength[k],
        end && chain.joinsOn[k]);
  }

  private static double[] turned(double x, double y, double angle) {
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    return new double[] {x * c - y * s, x * s + y * c};
  }

  private static double at(double[] values, int from, int to, double part) {
    return values[from] + part * (values[to] - values[from]);
  }
}
