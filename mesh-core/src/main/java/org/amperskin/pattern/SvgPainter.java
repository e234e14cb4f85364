package org.amperskin.pattern;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Walks the elements of a drawing in document order and paints them on a {@link PaintStack}. */
final class SvgPainter {
  private static final int MOST_VISITS = 250_000;
  private static final Set<String> SILENT =
      Set.of(
          "defs",
          "title",
          "desc",
          "metadata",
          "style",
          "symbol",
          "clipPath",
          "mask",
          "filter",
          "marker",
          "pattern",
          "linearGradient",
          "radialGradient",
          "stop",
          "view",
          SvgNode.TEXT);
  private static final Set<String> IGNORED_PROPERTIES = Set.of("filter", "mix-blend-mode");
  private static final List<String> MARKERS =
      List.of("marker", "marker-start", "marker-mid", "marker-end");

  /** What an element takes over from those around it. */
  record Context(
      AffineTransform toMm,
      SvgStyle style,
      double viewWidth,
      double viewHeight,
      int clip,
      int group,
      int depth,
      List<SvgNode> within) {
    Context with(AffineTransform map, SvgStyle newStyle) {
      return new Context(map, newStyle, viewWidth, viewHeight, clip, group, depth + 1, within);
    }

    Context view(AffineTransform map, double width, double height) {
      return new Context(map, style, width, height, clip, group, depth, within);
    }

    Context clipped(int newClip) {
      return new Context(toMm, style, viewWidth, viewHeight, newClip, group, depth, within);
    }

    Context grouped(int newGroup) {
      return new Context(toMm, style, viewWidth, viewHeight, clip, newGroup, depth, within);
    }

    Context inside(SvgNode node) {
      List<SvgNode> more = new ArrayList<>(within);
      more.add(node);
      return new Context(toMm, style, viewWidth, viewHeight, clip, group, depth, more);
    }

    SvgShapes.Lengths lengths(double unitMm) {
      return (node, attribute, direction, otherwise) -> {
        String text = node.get(attribute, "auto");
        return text.equals("auto") ? otherwise : length(text, direction, unitMm);
      };
    }

    /** A length in user units; percent of the view's width, height or diagonal ('x', 'y', 'd'). */
    double length(String text, char direction, double unitMm) {
      SvgNumbers.Length length = SvgNumbers.length(text);
      if (length.unit().equals("%")) {
        double whole =
            switch (direction) {
              case 'x' -> viewWidth;
              case 'y' -> viewHeight;
              default -> Math.hypot(viewWidth, viewHeight) / Math.sqrt(2);
            };
        return length.value() / 100 * whole;
      }
      if (length.ofFont()) {
        double font = length.unit().equals("rem") ? SvgStyle.MEDIUM_PX : style.fontSize();
        return length.value() * (length.unit().equals("ex") ? font / 2 : font);
      }
      boolean user = length.unit().isEmpty() || length.unit().equals("px");
      return user ? length.value() : length.mm() / unitMm;
    }
  }

  /** Edges lie on their element's box, but for rounding to the grid. */
  private static final double SLACK_MM = 0.01;

  private final SvgTree tree;
  private final SvgNotes notes;
  private final SvgStyleSheet sheet;
  private final PaintStack stack;
  private final SvgInk ink;
  private final SvgClips clips;
  private final SvgText text;
  private final SvgImages images;
  private final List<DrawnElement> drawn = new ArrayList<>();
  private double unitMm;
  private int[] line;
  private int visits;

  /** While not null, shapes are measured into this box instead of being painted. */
  private double[] measured;

  SvgPainter(
      SvgTree tree, ArtworkFile.Options options, SvgNotes notes, PaintStack stack, SvgFonts fonts) {
    this.tree = tree;
    this.notes = notes;
    this.stack = stack;
    this.sheet = new SvgStyleSheet(tree.styleSheet.toString(), notes);
    SvgPaints paints = new SvgPaints(tree, notes, this, options.threshold());
    this.ink = new SvgInk(options.flatteningMm(), stack, notes, paints);
    this.clips = new SvgClips(this, stack, ink, notes);
    this.text = new SvgText(this, fonts, notes);
    this.images = new SvgImages(options, stack, ink, notes);
  }

  double flatteningMm() {
    return ink.flatteningMm();
  }

  /** Paints everything; {@code lineNow[0]} follows the element at work, for messages. */
  RingSet paintRoot(
      AffineTransform toMm, double viewWidth, double viewHeight, double unit, int[] lineNow) {
    unitMm = unit;
    line = lineNow;
    ink.unitMm(unit);
    Context context =
        new Context(
            toMm,
            SvgStyle.initial(),
            viewWidth,
            viewHeight,
            PaintStack.NO_CLIP,
            PaintStack.NO_GROUP,
            0,
            List.of());
    SvgStyle style = context.style.of(tree.root, sheet, notes);
    if (!style.get("display", "inline").equals("none")) {
      children(tree.root, opened(tree.root, context.with(toMm, style)));
    }
    line[0] = tree.root.line;
    return stack.fold();
  }

  double unitMm() {
    return unitMm;
  }

  void children(SvgNode node, Context context) {
    for (SvgNode child : node.children) {
      draw(child, context);
    }
  }

  private void draw(SvgNode node, Context outer) {
    if (!node.svg || SILENT.contains(node.name)) {
      return;
    }
    visit(node, outer);
    SvgStyle style = outer.style.of(node, sheet, notes);
    if (style.get("display", "inline").equals("none")) {
      return;
    }
    boolean drawn =
        SvgShapes.isShape(node.name)
            || switch (node.name) {
              case "g", "a", "svg", "use", "switch", "text", "image" -> true;
              default -> false;
            };
    if (!drawn) {
      boolean still =
          node.name.equals("script") || node.name.equals("set") || node.name.startsWith("animate");
      if (measured == null) {
        notes.add("<" + SvgFault.cut(node.name) + "> " + (still ? "not run" : "skipped"), node);
      }
      return;
    }
    Context context = outer.with(mapped(node, style, outer), style);
    if (measured == null) {
      note(style, node);
      context = SvgShapes.isShape(node.name) ? clips.apply(node, context) : opened(node, context);
    }
    content(node, context);
  }

  /** What an element shows, its own transform, clip and opacity already in the context. */
  private void content(SvgNode node, Context context) {
    switch (node.name) {
      case "svg" -> viewport(node, context, node);
      case "use" -> use(node, context);
      case "switch" -> firstOf(node, context);
      case "text" -> text.draw(node, context);
      case "image" -> {
        if (measured == null) {
          images.draw(node, context, unitMm);
        } else {
          measure(SvgImages.frame(node, context.lengths(unitMm)), context);
        }
      }
      default -> {
        if (SvgShapes.isShape(node.name)) {
          paint(node, SvgShapes.outline(node, context.lengths(unitMm)), context);
          children(node, context); // animations, which are told, and titles
        } else {
          children(node, context);
        }
      }
    }
  }

  /** Paints an outline in user units, or measures it. */
  void paint(SvgNode node, Contour outline, Context context) {
    if (measured == null) {
      ink.paint(node, outline, context);
      name(node, outline, context);
    } else {
      measure(outline, context);
    }
  }

  private void name(SvgNode node, Contour outline, Context context) {
    double[] box = outline.mapped(context.toMm).bounds();
    if (box == null) {
      return;
    }
    boolean stroked = !context.style.get("stroke", "none").equals("none");
    double pen =
        stroked
            ? context.length(context.style.get("stroke-width", "1"), 'd', unitMm)
                * Math.sqrt(Math.abs(context.toMm.getDeterminant()))
                / 2
            : 0;
    double more = pen + SLACK_MM;
    SvgNode named = node.name.equals(SvgNode.TEXT) && node.parent != null ? node.parent : node;
    String id = named.get("id", "");
    drawn.add(
        new DrawnElement(
            id.isEmpty() ? "<" + SvgFault.cut(named.name) + "> of line " + named.line : id,
            box[0] - more,
            box[1] - more,
            box[2] + more,
            box[3] + more));
  }

  /** What was painted, in order. */
  List<DrawnElement> drawn() {
    return drawn;
  }

  /** The outlines of a text's glyphs in its user units, one for each run of one style. */
  List<Contour> glyphs(SvgNode node, Context context) {
    List<Contour> out = new ArrayList<>();
    text.runs(node, context).forEach(run -> out.add(run.outline()));
    return out;
  }

  private void measure(Contour outline, Context context) {
    double[] box = outline.mapped(context.toMm).bounds();
    if (box != null) {
      for (int k = 0; k < 2; k++) {
        measured[k] = Math.min(measured[k], box[k]);
        measured[k + 2] = Math.max(measured[k + 2], box[k + 2]);
      }
    }
  }

  /**
   * The box round an element's geometry without strokes, in its own user units, as {x0, y0, x1,
   * y1}; null if it has none. W3C SVG 2 section 8.10.
   */
  double[] bounds(SvgNode node, Context context) {
    double[] before = measured;
    measured =
        new double[] {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
    try {
      visit(node, context);
      content(node, context.with(new AffineTransform(), context.style));
      return measured[0] > measured[2] ? null : measured;
    } finally {
      measured = before;
    }
  }

  /** Style of an element that stands outside the drawn tree, with what it inherits there. */
  SvgStyle styled(SvgNode node) {
    SvgStyle outer = node.parent == null ? SvgStyle.initial() : styled(node.parent);
    return outer.of(node, sheet, notes);
  }

  SvgStyle styled(SvgNode node, Context outer) {
    return outer.style.of(node, sheet, notes);
  }

  /** Draws one tile of a pattern. */
  void tile(
      SvgNode pattern,
      SvgNode holder,
      Context context,
      AffineTransform map,
      AffineTransform inner,
      double width,
      double height) {
    visit(pattern, context);
    Context at = context.with(map, styled(holder)).inside(pattern);
    if (!at.style.get("overflow", "hidden").equals("visible")) {
      at = at.clipped(frameClip(0, 0, width, height, map, at.clip));
    }
    AffineTransform content = new AffineTransform(map);
    content.concatenate(inner);
    children(holder, at.with(content, at.style));
  }

  /** A clip of an upright rectangle in the given map's units. */
  int frameClip(double x, double y, double width, double height, AffineTransform map, int outer) {
    int figure = ink.figure(SvgShapes.box(x, y, width, height).mapped(map), false);
    return stack.clip(new int[] {figure}, outer);
  }

  void visit(SvgNode node, Context context) {
    line[0] = node.line;
    visits++;
    SvgFault.unless(
        visits <= MOST_VISITS, "at most " + MOST_VISITS + " elements drawn", visits + " and more");
    SvgFault.unless(
        context.depth <= SvgTree.DEEPEST,
        "at most " + SvgTree.DEEPEST + " nested elements",
        context.depth + "");
  }

  AffineTransform mapped(SvgNode node, SvgStyle style, Context outer) {
    String text = style.get("transform", "");
    AffineTransform map = new AffineTransform(outer.toMm);
    if (text.isBlank() || text.equals("none")) {
      return map;
    }
    if (node.name.equals("svg")) {
      notes.add("transform on <svg> ignored", node);
      return map;
    }
    String origin = style.get("transform-origin", "");
    double[] about = {0, 0};
    if (!origin.isEmpty()) {
      boolean ofBox = style.get("transform-box", "view-box").matches("fill-box|stroke-box");
      double[] box = {0, 0, outer.viewWidth, outer.viewHeight};
      if (ofBox) {
        double[] own = bounds(node, outer.with(outer.toMm, style));
        box = own == null ? new double[4] : own;
      }
      about = SvgTransform.origin(origin, box, t -> outer.length(t, 'x', unitMm));
    }
    map.translate(about[0], about[1]);
    map.concatenate(SvgTransform.read(text));
    map.translate(-about[0], -about[1]);
    return map;
  }

  /** A container with its clip and, if it lets light through, its group. */
  Context opened(SvgNode node, Context context) {
    Context clipped = clips.apply(node, context);
    double opacity = context.style.portion("opacity");
    if (opacity < 1) {
      ink.half(node, opacity);
      return clipped.grouped(stack.group(opacity, clipped.group));
    }
    return clipped;
  }

  private void note(SvgStyle style, SvgNode node) {
    for (String property : IGNORED_PROPERTIES) {
      String value = style.get(property, "none");
      if (!value.equals("none") && !value.equals("normal")) {
        notes.add(property + " " + SvgFault.shortened(value) + " ignored", node);
      }
    }
    boolean marked =
        switch (node.name) {
          case "path", "line", "polyline", "polygon" -> true;
          default -> false;
        };
    for (String marker : MARKERS) {
      if (marked && !style.get(marker, "none").equals("none")) {
        notes.add(marker + " " + SvgFault.shortened(style.get(marker, "")) + " skipped", node);
      }
    }
    if (style.get("vector-effect", "none").equals("non-scaling-stroke")
        && !style.get("stroke", "none").equals("none")) {
      notes.add("non-scaling stroke drawn in px of the sheet", node);
    }
  }

  /** The element that a href such as #name leads to, or null. */
  SvgNode target(SvgNode node) {
    String href = node.get("href", "");
    return href.startsWith("#") ? tree.byId.get(href.substring(1)) : null;
  }

  private void use(SvgNode node, Context context) {
    String href = node.get("href", "");
    SvgNode target = target(node);
    if (target == null) {
      notes.add("<use> of " + SvgFault.shortened(href) + " skipped", node);
      return;
    }
    SvgFault.unless(
        !context.within.contains(node) && context.within.size() < 64,
        "a <use> that does not lead back to itself within 64 steps",
        href + " after " + context.within.size() + " steps");
    AffineTransform map = new AffineTransform(context.toMm);
    SvgShapes.Lengths lengths = context.lengths(unitMm);
    map.translate(lengths.along(node, "x", 'x', 0), lengths.along(node, "y", 'y', 0));
    Context moved = context.with(map, context.style).inside(node);
    if (target.name.equals("symbol") || target.name.equals("svg")) {
      visit(target, moved);
      SvgStyle style = moved.style.of(target, sheet, notes);
      if (!style.get("display", "inline").equals("none")) {
        Context symbol = moved.with(map, style);
        viewport(target, measured == null ? opened(target, symbol) : symbol, node);
      }
    } else {
      draw(target, moved);
    }
  }

  /** A nested viewport; its size may come from the use element that calls it. */
  private void viewport(SvgNode node, Context context, SvgNode sizer) {
    SvgShapes.Lengths lengths = context.lengths(unitMm);
    boolean symbol = node.name.equals("symbol");
    double x = symbol ? 0 : lengths.along(node, "x", 'x', 0);
    double y = symbol ? 0 : lengths.along(node, "y", 'y', 0);
    double width =
        lengths.along(sizer, "width", 'x', lengths.along(node, "width", 'x', context.viewWidth));
    double height =
        lengths.along(sizer, "height", 'y', lengths.along(node, "height", 'y', context.viewHeight));
    SvgFault.unless(
        width >= 0 && height >= 0, "width and height of 0 or more", width + " x " + height);
    if (width == 0 || height == 0) {
      return;
    }
    AffineTransform map = new AffineTransform(context.toMm);
    map.translate(x, y);
    Context inner = context;
    String overflow = context.style.get("overflow", "hidden");
    if (measured == null && !overflow.equals("visible") && !overflow.equals("auto")) {
      inner = inner.clipped(frameClip(0, 0, width, height, map, inner.clip));
    }
    SvgViewBox box = SvgViewBox.of(node);
    if (box != null) {
      map.concatenate(box.onto(width, height, node.get("preserveAspectRatio", "xMidYMid meet")));
      inner = inner.view(map, box.width(), box.height());
    } else {
      inner = inner.view(map, width, height);
    }
    children(node, inner);
  }

  private void firstOf(SvgNode node, Context context) {
    for (SvgNode child : node.children) {
      boolean extension = !child.get("requiredExtensions", "").isEmpty();
      if (child.svg && !extension && !child.name.equals("foreignObject")) {
        if (node.children.size() > 1 && measured == null) {
          notes.add("<switch> drawn as its <" + child.name + ">", node);
        }
        draw(child, context);
        return;
      }
    }
  }

  /** The element that {@code url(#name)} refers to, or null. */
  SvgNode referred(String value) {
    String bare = value.replaceAll("^url\\(\\s*[\"']?#|[\"']?\\s*\\)$", "");
    return value.startsWith("url(") ? tree.byId.get(bare) : null;
  }

  /** A number, or percent as a part of one. */
  static double part(String text) {
    return text.endsWith("%")
        ? SvgNumbers.single(text.substring(0, text.length() - 1)) / 100
        : SvgNumbers.single(text);
  }
}
