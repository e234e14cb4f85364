package org.amperskin.pattern;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;

/** The properties clip-path and mask: W3C CSS Masking 1, sections 5 and 6. */
final class SvgClips {
  private final SvgPainter painter;
  private final PaintStack stack;
  private final SvgInk ink;
  private final SvgNotes notes;

  SvgClips(SvgPainter painter, PaintStack stack, SvgInk ink, SvgNotes notes) {
    this.painter = painter;
    this.stack = stack;
    this.ink = ink;
    this.notes = notes;
  }

  /** Applies both properties of an element to what it will draw. */
  SvgPainter.Context apply(SvgNode node, SvgPainter.Context context) {
    return mask(node, clip(node, context));
  }

  private SvgPainter.Context clip(SvgNode node, SvgPainter.Context context) {
    String value = context.style().get("clip-path", "none");
    if (value.equals("none")) {
      return context;
    }
    SvgNode path = usable(value, "clipPath", "clip-path", node, context);
    if (path == null) {
      return context;
    }
    AffineTransform unit = unit(path, "clipPathUnits", "userSpaceOnUse", node, context);
    if (unit == null) {
      return context.clipped(stack.clip(new int[0], context.clip()));
    }
    SvgStyle style = painter.styled(path);
    SvgPainter.Context at = context.with(context.toMm(), style).inside(path);
    at = at.with(painter.mapped(path, style, at), style);
    int outer = clip(path, at).clip();
    at.toMm().concatenate(unit);
    List<int[]> figures = new ArrayList<>();
    for (SvgNode child : path.children) {
      figure(child, at, figures, 0);
    }
    int[] anyOf = figures.stream().mapToInt(f -> f[0]).toArray();
    int[] theirClips = figures.stream().mapToInt(f -> f[1]).toArray();
    return context.clipped(stack.clip(anyOf, theirClips, outer));
  }

  /** Adds the figures of one child of a clipPath, each with the clip that cuts it alone. */
  private void figure(SvgNode node, SvgPainter.Context outer, List<int[]> into, int uses) {
    if (!node.svg || node.name.equals(SvgNode.TEXT)) {
      return;
    }
    painter.visit(node, outer);
    SvgStyle style = painter.styled(node, outer);
    boolean shown =
        !style.get("display", "inline").equals("none")
            && style.get("visibility", "visible").equals("visible");
    boolean silent =
        switch (node.name) {
          case "title", "desc", "metadata" -> true;
          default -> node.name.startsWith("animate") || node.name.equals("set");
        };
    if (!shown || silent) {
      return;
    }
    SvgPainter.Context context = outer.with(painter.mapped(node, style, outer), style);
    SvgPainter.Context alone = context.clipped(PaintStack.NO_CLIP);
    int own = clip(node, alone).clip();
    boolean evenOdd = style.get("clip-rule", "nonzero").equals("evenodd");
    if (SvgShapes.isShape(node.name)) {
      Contour outline = SvgShapes.outline(node, context.lengths(painter.unitMm()));
      into.add(new int[] {ink.figure(outline.mapped(context.toMm()), evenOdd), own});
    } else if (node.name.equals("text")) {
      for (Contour run : painter.glyphs(node, context)) {
        into.add(new int[] {ink.figure(run.mapped(context.toMm()), false), own});
      }
    } else if (node.name.equals("use") && uses == 0 && painter.target(node) != null) {
      SvgShapes.Lengths lengths = context.lengths(painter.unitMm());
      context.toMm().translate(lengths.along(node, "x", 'x', 0), lengths.along(node, "y", 'y', 0));
      List<int[]> inner = new ArrayList<>();
      figure(painter.target(node), context, inner, 1);
      for (int[] each : inner) {
        // both clips hold: the target's within the use's
        int both = each[1];
        if (own != PaintStack.NO_CLIP) {
          both = each[1] == PaintStack.NO_CLIP ? own : stack.both(each[1], own);
        }
        into.add(new int[] {each[0], both});
      }
    } else {
      notes.add("<" + SvgFault.cut(node.name) + "> within <clipPath> skipped", node);
    }
  }

  private SvgPainter.Context mask(SvgNode node, SvgPainter.Context context) {
    String value = context.style().get("mask", "none");
    if (value.equals("none")) {
      return context;
    }
    SvgNode mask = usable(value, "mask", "mask", node, context);
    if (mask == null) {
      return context;
    }
    SvgStyle style = painter.styled(mask);
    AffineTransform unit = unit(mask, "maskContentUnits", "userSpaceOnUse", node, context);
    AffineTransform region = unit(mask, "maskUnits", "objectBoundingBox", node, context);
    if (unit == null || region == null) {
      return context.clipped(stack.clip(new int[0], context.clip()));
    }
    boolean ofBox = !mask.get("maskUnits", "objectBoundingBox").equals("userSpaceOnUse");
    double[] frame = new double[4];
    String[] names = {"x", "y", "width", "height"};
    for (int k = 0; k < 4; k++) {
      String text = mask.get(names[k], k < 2 ? "-10%" : "120%");
      frame[k] =
          ofBox
              ? SvgPainter.part(text)
              : context.length(text, k % 2 == 0 ? 'x' : 'y', painter.unitMm());
    }
    SvgFault.unless(
        frame[2] >= 0 && frame[3] >= 0,
        "mask width and height of 0 or more",
        frame[2] + " x " + frame[3]);
    AffineTransform frameMap = new AffineTransform(context.toMm());
    frameMap.concatenate(region);
    AffineTransform map = new AffineTransform(context.toMm());
    map.concatenate(unit);
    int before = stack.beginMask(style.get("mask-type", "luminance").equals("alpha"));
    int within =
        painter.frameClip(frame[0], frame[1], frame[2], frame[3], frameMap, PaintStack.NO_CLIP);
    SvgPainter.Context at =
        context.with(map, style).inside(mask).clipped(within).grouped(PaintStack.NO_GROUP);
    at = mask(mask, clip(mask, at));
    painter.children(mask, at);
    return context.clipped(stack.endMask(before, context.clip()));
  }

  /** The element of the wanted kind that a property refers to; null and a note if there is none. */
  private SvgNode usable(
      String value, String kind, String property, SvgNode node, SvgPainter.Context context) {
    SvgNode found = painter.referred(value);
    if (found == null || !found.name.equals(kind) || context.within().contains(found)) {
      notes.add(property + " " + SvgFault.shortened(value) + " ignored", node);
      return null;
    }
    return found;
  }

  /** The map from the unit square to the element's box, or none; null if the box has no area. */
  private AffineTransform unit(
      SvgNode holder,
      String attribute,
      String otherwise,
      SvgNode node,
      SvgPainter.Context context) {
    if (holder.get(attribute, otherwise).equals("userSpaceOnUse")) {
      return new AffineTransform();
    }
    double[] box = painter.bounds(node, context);
    if (box == null || box[0] == box[2] || box[1] == box[3]) {
      return null;
    }
    return new AffineTransform(box[2] - box[0], 0, 0, box[3] - box[1], box[0], box[1]);
  }
}
