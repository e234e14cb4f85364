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
          "view");
  private static final Set<String> IGNORED_PROPERTIES =
      Set.of("mask", "filter", "mix-blend-mode", "transform-origin", "transform-box");
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
      boolean user = length.unit().isEmpty() || length.unit().equals("px");
      return user ? length.value() : length.mm() / unitMm;
    }
  }

  private final SvgTree tree;
  private final SvgNotes notes;
  private final SvgStyleSheet sheet;
  private final PaintStack stack;
  private final SvgInk ink;
  private double unitMm;
  private int[] line;
  private int visits;

  SvgPainter(SvgTree tree, ArtworkFile.Options options, SvgNotes notes, PaintStack stack) {
    this.tree = tree;
    this.notes = notes;
    this.stack = stack;
    this.sheet = new SvgStyleSheet(tree.styleSheet.toString(), notes);
    this.ink = new SvgInk(options.flatteningMm(), stack, notes);
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

  private void children(SvgNode node, Context context) {
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
    boolean shape = SvgShapes.isShape(node.name);
    boolean container =
        switch (node.name) {
          case "g", "a", "svg", "use", "switch" -> true;
          default -> false;
        };
    if (!shape && !container) {
      boolean still =
          node.name.equals("script") || node.name.equals("set") || node.name.startsWith("animate");
      notes.add("<" + node.name + "> " + (still ? "not run" : "skipped"), node.line);
      return;
    }
    Context context = outer.with(mapped(node, style, outer.toMm), style);
    note(style, node);
    if (shape) {
      context = clip(node, context);
      ink.paint(node, SvgShapes.outline(node, context.lengths(unitMm)), context);
      return;
    }
    context = opened(node, context);
    switch (node.name) {
      case "svg" -> viewport(node, context, node);
      case "use" -> use(node, context);
      case "switch" -> firstOf(node, context);
      default -> children(node, context);
    }
  }

  private void visit(SvgNode node, Context context) {
    line[0] = node.line;
    visits++;
    SvgFault.unless(
        visits <= MOST_VISITS, "at most " + MOST_VISITS + " elements drawn", visits + " and more");
    SvgFault.unless(
        context.depth <= SvgTree.DEEPEST,
        "at most " + SvgTree.DEEPEST + " nested elements",
        context.depth + "");
  }

  private AffineTransform mapped(SvgNode node, SvgStyle style, AffineTransform outer) {
    String text = style.get("transform", "");
    AffineTransform map = new AffineTransform(outer);
    if (!text.isBlank() && !node.name.equals("svg")) {
      map.concatenate(SvgTransform.read(text));
    }
    return map;
  }

  /** A container with its clip and, if it lets light through, its group. */
  private Context opened(SvgNode node, Context context) {
    Context clipped = clip(node, context);
    double opacity = context.style.portion("opacity");
    return opacity < 1 ? clipped.grouped(stack.group(opacity, clipped.group)) : clipped;
  }

  private void note(SvgStyle style, SvgNode node) {
    for (String property : IGNORED_PROPERTIES) {
      String value = style.get(property, "none");
      if (!value.equals("none") && !value.equals("normal")) {
        notes.add(property + " ignored", node.line);
      }
    }
    boolean marked =
        switch (node.name) {
          case "path", "line", "polyline", "polygon" -> true;
          default -> false;
        };
    for (String marker : MARKERS) {
      if (marked && !style.get(marker, "none").equals("none")) {
        notes.add(marker + " skipped", node.line);
      }
    }
  }

  private void use(SvgNode node, Context context) {
    String href = node.get("href", "");
    SvgNode target = href.startsWith("#") ? tree.byId.get(href.substring(1)) : null;
    if (target == null) {
      notes.add("<use> of " + SvgFault.shortened(href) + " skipped", node.line);
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
        viewport(target, opened(target, moved.with(map, style)), node);
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
    if (!overflow.equals("visible") && !overflow.equals("auto")) {
      Contour frame = new Contour();
      frame.moveTo(0, 0);
      frame.lineTo(width, 0);
      frame.lineTo(width, height);
      frame.lineTo(0, height);
      frame.close();
      int figure = ink.figure(frame.mapped(map), false);
      inner = inner.clipped(stack.clip(new int[] {figure}, inner.clip));
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
        if (node.children.size() > 1) {
          notes.add("<switch> drawn as its <" + child.name + ">", node.line);
        }
        draw(child, context);
        return;
      }
    }
  }

  /** Applies the clip-path property: W3C CSS Masking 1, section 5. */
  private Context clip(SvgNode node, Context context) {
    String value = context.style.get("clip-path", "none");
    if (value.equals("none")) {
      return context;
    }
    SvgNode path = referred(value);
    boolean usable =
        path != null
            && path.name.equals("clipPath")
            && path.get("clipPathUnits", "userSpaceOnUse").equals("userSpaceOnUse")
            && context.within.stream().filter(n -> n == path).findAny().isEmpty();
    if (!usable) {
      notes.add("clip-path " + SvgFault.shortened(value) + " ignored", node.line);
      return context;
    }
    SvgStyle style = SvgStyle.initial().of(path, sheet, notes);
    Context inner = context.with(mapped(path, style, context.toMm), style).inside(path);
    int outer = clip(path, inner).clip;
    List<Integer> figures = new ArrayList<>();
    for (SvgNode child : path.children) {
      clipFigure(child, inner, figures, 0);
    }
    int[] anyOf = figures.stream().mapToInt(Integer::intValue).toArray();
    return context.clipped(stack.clip(anyOf, outer));
  }

  private void clipFigure(SvgNode node, Context outer, List<Integer> figures, int uses) {
    if (!node.svg) {
      return;
    }
    visit(node, outer);
    SvgStyle style = outer.style.of(node, sheet, notes);
    boolean shown =
        !style.get("display", "inline").equals("none")
            && style.get("visibility", "visible").equals("visible");
    Context context = outer.with(mapped(node, style, outer.toMm), style);
    if (!style.get("clip-path", "none").equals("none")) {
      notes.add("clip-path within <clipPath> ignored", node.line);
    }
    if (shown && SvgShapes.isShape(node.name)) {
      Contour outline = SvgShapes.outline(node, context.lengths(unitMm)).mapped(context.toMm);
      figures.add(ink.figure(outline, style.get("clip-rule", "nonzero").equals("evenodd")));
    } else if (shown && node.name.equals("use") && uses == 0) {
      SvgNode target = tree.byId.get(node.get("href", "#").substring(1));
      if (target != null) {
        context.toMm.translate(
            context.lengths(unitMm).along(node, "x", 'x', 0),
            context.lengths(unitMm).along(node, "y", 'y', 0));
        clipFigure(target, context, figures, 1);
      }
    } else if (shown && !SILENT.contains(node.name)) {
      notes.add("<" + node.name + "> within <clipPath> skipped", node.line);
    }
  }

  private SvgNode referred(String value) {
    String bare = value.replaceAll("^url\\(\\s*[\"']?#|[\"']?\\s*\\)$", "");
    return value.startsWith("url(") ? tree.byId.get(bare) : null;
  }
}
