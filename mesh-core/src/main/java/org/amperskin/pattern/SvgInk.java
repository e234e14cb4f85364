package org.amperskin.pattern;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Puts the fill and the stroke of one shape, or of a text's glyphs, on the stack. */
final class SvgInk {
  private final double toleranceMm;
  private final PaintStack stack;
  private final SvgNotes notes;
  private final SvgPaints paints;
  private final PointBudget budget = new PointBudget();
  private double unitMm;
  private double worstMm;

  SvgInk(double toleranceMm, PaintStack stack, SvgNotes notes, SvgPaints paints) {
    this.toleranceMm = toleranceMm;
    this.stack = stack;
    this.notes = notes;
    this.paints = paints;
  }

  void unitMm(double unit) {
    unitMm = unit;
  }

  double flatteningMm() {
    return worstMm;
  }

  /** A figure from rings that are flat already, in mm; their points count. */
  int figure(List<double[]> rings) {
    for (double[] ring : rings) {
      budget.spend(ring.length / 2.0);
    }
    return stack.figure(rings, false);
  }

  /** A figure from an outline in mm. */
  int figure(Contour outline, boolean evenOdd) {
    Flattener flattener = new Flattener(toleranceMm, 0, true, budget);
    List<double[]> rings = new ArrayList<>();
    for (Chain chain : outline.chains(flattener)) {
      budget.spend(chain.straightPoints());
      rings.add(chain.ring());
    }
    worstMm = Math.max(worstMm, flattener.worst());
    return stack.figure(rings, evenOdd);
  }

  void paint(SvgNode node, Contour outline, SvgPainter.Context context) {
    SvgStyle style = context.style();
    if (outline.isEmpty() || !style.get("visibility", "visible").equals("visible")) {
      return;
    }
    SvgPaint fill = paints.of(style, "fill", "black", node);
    SvgPaint stroke = paints.of(style, "stroke", "none", node);
    double width = context.length(style.get("stroke-width", "1"), 'd', unitMm);
    SvgFault.unless(width >= 0, "stroke-width of 0 or more", width + "");
    if (width == 0) {
      stroke = SvgPaint.NONE;
    }
    double opacity = style.portion("opacity");
    int group = context.group();
    if (opacity < 1) {
      half(node, opacity);
    }
    if (opacity < 1 && !fill.isNone() && !stroke.isNone()) {
      group = stack.group(opacity, group);
      opacity = 1;
    }
    boolean strokeFirst = style.get("paint-order", "normal").startsWith("stroke");
    for (int turn = 0; turn < 2; turn++) {
      boolean fillNow = (turn == 0) != strokeFirst;
      SvgPaint paint = fillNow ? fill : stroke;
      double part = style.portion(fillNow ? "fill-opacity" : "stroke-opacity");
      if (paint.isNone() || opacity * part == 0) {
        continue;
      }
      int figure =
          fillNow
              ? figure(
                  outline.mapped(context.toMm()),
                  style.get("fill-rule", "nonzero").equals("evenodd"))
              : stroke(node, outline, context, width);
      if (paint.tile() != null) {
        int within = opacity * part < 1 ? stack.group(opacity * part, group) : group;
        int clip = stack.clip(new int[] {figure}, context.clip());
        paints.tiles(
            paint.tile(),
            node,
            outline.bounds(),
            fillNow ? 0 : width * 2,
            context.clipped(clip).grouped(within));
      } else {
        double cover = opacity * part * paint.colour().opacity();
        if (cover > 0 && cover < 1) {
          half(node, cover);
        }
        if (stack.inMask() && (cover < 1 || !plain(paint.colour().lightness()))) {
          notes.add("grey in a mask taken as all or nothing, by half light", node);
        }
        stack.paint(figure, paint.colour().lightness(), cover, context.clip(), group);
      }
    }
  }

  private static boolean plain(double lightness) {
    return lightness < 0.02 || lightness > 0.98;
  }

  /** Half-opaque paint is told: the threshold decides what becomes of it. */
  void half(SvgNode node, double cover) {
    if (cover > 0) {
      notes.add("half-opaque paint judged by the threshold", node);
    }
  }

  private int stroke(SvgNode node, Contour outline, SvgPainter.Context context, double userWidth) {
    SvgStyle style = context.style();
    AffineTransform toMm = context.toMm();
    Contour path = outline;
    double unit = 1;
    if (style.get("vector-effect", "none").equals("non-scaling-stroke")) {
      // the pen stays round on the sheet: widths count in px of the outermost viewport
      path = outline.mapped(toMm);
      toMm = new AffineTransform();
      unit = unitMm;
    }
    double scale =
        Flattener.largestAxis(
            toMm.getScaleX(), toMm.getShearY(), toMm.getShearX(), toMm.getScaleY());
    if (scale == 0) {
      return stack.figure(List.of(), false);
    }
    double width = userWidth * unit;
    double tolerance = toleranceMm / scale;
    Flattener flattener = new Flattener(tolerance, width / 2, false, budget);
    Pen pen = new Pen(width, cap(style, node), join(style, node), limit(style), tolerance, budget);
    List<Chain> chains = path.chains(flattener);
    double[] dashes = dashes(style, context, unit, chains, node);
    double offset = unit * context.length(style.get("stroke-dashoffset", "0"), 'd', unitMm);
    for (Chain chain : chains) {
      budget.spend(chain.straightPoints());
      if (dashes == null || chain.segments <= 0) {
        if (chain.segments > 0 || drawn(node)) {
          pen.draw(chain);
        }
      } else {
        new Dashes(dashes, offset * lengthFactor(node, chains), budget).draw(chain, pen);
      }
    }
    worstMm = Math.max(worstMm, scale * Math.max(flattener.worst(), pen.worst()));
    List<double[]> rings = new ArrayList<>();
    for (double[] ring : pen.rings()) {
      double[] mapped = new double[ring.length];
      toMm.transform(ring, 0, mapped, 0, ring.length / 2);
      rings.add(counterClockwise(mapped));
    }
    return stack.figure(rings, false);
  }

  /** A lone "M x y" draws nothing; a subpath with a piece of no length draws its caps. */
  private static boolean drawn(SvgNode node) {
    return !node.name.equals("path") || node.get("d", "").matches("(?s).*[a-zA-Z].*[a-zA-Z].*");
  }

  private static Pen.Cap cap(SvgStyle style, SvgNode node) {
    return switch (style.get("stroke-linecap", "butt")) {
      case "butt" -> Pen.Cap.BUTT;
      case "round" -> Pen.Cap.ROUND;
      case "square" -> Pen.Cap.SQUARE;
      default -> throw new SvgFault("butt, round or square", style.get("stroke-linecap", ""));
    };
  }

  private Pen.Join join(SvgStyle style, SvgNode node) {
    String text = style.get("stroke-linejoin", "miter");
    if (text.equals("arcs") || text.equals("miter-clip")) {
      notes.add("stroke-linejoin " + text + " drawn as miter", node);
      text = "miter";
    }
    return switch (text) {
      case "miter" -> Pen.Join.MITER;
      case "round" -> Pen.Join.ROUND;
      case "bevel" -> Pen.Join.BEVEL;
      default -> throw new SvgFault("miter, round or bevel", text);
    };
  }

  private static double limit(SvgStyle style) {
    double limit = SvgNumbers.single(style.get("stroke-miterlimit", "4"));
    SvgFault.unless(limit >= 1, "stroke-miterlimit of 1 or more", limit + "");
    return limit;
  }

  private double[] dashes(
      SvgStyle style, SvgPainter.Context context, double unit, List<Chain> chains, SvgNode node) {
    String text = style.get("stroke-dasharray", "none");
    if (text.equals("none")) {
      return null;
    }
    double factor = unit * lengthFactor(node, chains);
    double[] out =
        Arrays.stream(text.strip().split("\\s*,\\s*|\\s+"))
            .mapToDouble(each -> factor * context.length(each, 'd', unitMm))
            .toArray();
    double sum = 0;
    for (double each : out) {
      SvgFault.unless(each >= 0, "dashes of 0 or more", text);
      sum += each;
    }
    return sum > 0 ? out : null;
  }

  /** Real length over the length the author says the path has. */
  private static double lengthFactor(SvgNode node, List<Chain> chains) {
    String text = node.get("pathLength", "");
    if (text.isEmpty()) {
      return 1;
    }
    double told = SvgNumbers.single(text);
    SvgFault.unless(told > 0, "pathLength above 0", text);
    double real = 0;
    for (Chain chain : chains) {
      for (int k = 0; k < chain.segments; k++) {
        int q = chain.after(k);
        real += Math.hypot(chain.x[q] - chain.x[k], chain.y[q] - chain.y[k]);
      }
    }
    return real / told;
  }

  private static double[] counterClockwise(double[] ring) {
    double twice = 0;
    int n = ring.length;
    for (int i = 2; i + 3 < n; i += 2) {
      twice +=
          (ring[i] - ring[0]) * (ring[i + 3] - ring[1])
              - (ring[i + 2] - ring[0]) * (ring[i + 1] - ring[1]);
    }
    if (twice < 0) {
      for (int i = 0, j = n - 2; i < j; i += 2, j -= 2) {
        double x = ring[i];
        double y = ring[i + 1];
        ring[i] = ring[j];
        ring[i + 1] = ring[j + 1];
        ring[j] = x;
        ring[j + 1] = y;
      }
    }
    return ring;
  }
}
