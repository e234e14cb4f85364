package org.amperskin.pattern;

import java.awt.geom.AffineTransform;
import java.awt.geom.NoninvertibleTransformException;
import java.util.ArrayList;
import java.util.List;

/**
 * Paint servers: W3C SVG 2 chapter 14. Patterns are laid in tiles; gradients are one tone if all
 * their stops are on the same side of the threshold, else they are skipped and named.
 */
final class SvgPaints {
  private static final int MOST_TILES = 50_000;

  private final SvgTree tree;
  private final SvgNotes notes;
  private final SvgPainter painter;
  private final double threshold;

  SvgPaints(SvgTree tree, SvgNotes notes, SvgPainter painter, double threshold) {
    this.tree = tree;
    this.notes = notes;
    this.painter = painter;
    this.threshold = threshold;
  }

  /** The paint that a property asks for. */
  SvgPaint of(SvgStyle style, String property, String otherwise, SvgNode node) {
    String text = style.get(property, otherwise);
    if (text.startsWith("url(")) {
      int end = text.indexOf(')');
      String fallback = end < 0 ? "" : text.substring(end + 1).strip();
      SvgNode server = painter.referred(end < 0 ? text : text.substring(0, end + 1));
      SvgPaint paint = server == null ? null : served(server, property, node);
      if (paint != null) {
        return paint;
      }
      if (server == null || !server.name.endsWith("Gradient")) {
        String what = property + " by " + SvgFault.shortened(text) + ", not found here, ";
        notes.add(what + (fallback.isEmpty() ? "skipped" : "replaced"), node);
      } else {
        notes.add(
            "%s by gradient \"#%s\" with dark and light stops %s"
                .formatted(
                    property, server.get("id", ""), fallback.isEmpty() ? "skipped" : "replaced"),
            node);
      }
      text = fallback.isEmpty() ? "none" : fallback;
    }
    if (text.equalsIgnoreCase("currentcolor")) {
      text = style.get("color", "black");
    }
    if (text.equals("none")) {
      return SvgPaint.NONE;
    }
    SvgColour colour = SvgColour.read(text);
    if (colour == null) {
      notes.add(property + " " + SvgFault.shortened(text) + " not understood, not drawn", node);
      return SvgPaint.NONE;
    }
    return new SvgPaint(colour, null);
  }

  /** Null if nothing can be made of it. */
  private SvgPaint served(SvgNode server, String property, SvgNode node) {
    if (server.name.equals("pattern")) {
      return new SvgPaint(null, server);
    }
    return server.name.endsWith("Gradient") ? gradient(server, property, node) : null;
  }

  private SvgPaint gradient(SvgNode server, String property, SvgNode node) {
    SvgNode holder = inherited(server, n -> !n.children.isEmpty());
    List<SvgColour> stops = new ArrayList<>();
    for (SvgNode stop : holder.children) {
      if (stop.svg && stop.name.equals("stop")) {
        SvgStyle style = painter.styled(stop);
        String text = style.get("stop-color", "black");
        SvgColour colour =
            SvgColour.read(text.equals("currentColor") ? style.get("color", "black") : text);
        if (colour == null) {
          return null;
        }
        stops.add(
            new SvgColour(colour.lightness(), colour.opacity() * style.portion("stop-opacity")));
      }
    }
    if (stops.isEmpty()) {
      return SvgPaint.NONE; // as W3C SVG 2 section 14.2.4.2 says
    }
    double light = 0;
    double cover = 0;
    int dark = 0;
    for (SvgColour stop : stops) {
      light += stop.lightness() / stops.size();
      cover += stop.opacity() / stops.size();
      dark += 1 - stop.opacity() * (1 - stop.lightness()) < threshold ? 1 : 0;
    }
    if (dark != 0 && dark != stops.size()) {
      return null;
    }
    notes.add(
        "%s by gradient \"#%s\" drawn as one tone, all its stops are %s"
            .formatted(property, server.get("id", ""), dark > 0 ? "dark" : "light"),
        node);
    return new SvgPaint(new SvgColour(light, cover), null);
  }

  /** The first of an element and those it refers to that fits; itself if none does. */
  private SvgNode inherited(SvgNode server, java.util.function.Predicate<SvgNode> fits) {
    SvgNode at = server;
    for (int steps = 0; steps < 32 && at != null; steps++) {
      if (fits.test(at)) {
        return at;
      }
      String href = at.get("href", "");
      at = href.startsWith("#") ? tree.byId.get(href.substring(1)) : null;
    }
    return server;
  }

  private String value(SvgNode server, String attribute, String otherwise) {
    return inherited(server, n -> n.attributes.containsKey(attribute)).get(attribute, otherwise);
  }

  /**
   * Lays a pattern's tiles over a box. A tile's content begins at the tile's corner.
   *
   * @param pattern the pattern element
   * @param box what is to be covered, user units; null for nothing
   * @param margin how far the paint reaches beyond the box (user units)
   * @param context of the painted shape, clipped to what is painted
   */
  void tiles(SvgNode pattern, SvgNode at, double[] box, double margin, SvgPainter.Context context) {
    if (box == null || context.within().contains(pattern)) {
      return;
    }
    boolean unitsOfBox =
        value(pattern, "patternUnits", "objectBoundingBox").equals("objectBoundingBox");
    double boxWidth = box[2] - box[0];
    double boxHeight = box[3] - box[1];
    double[] frame = new double[4];
    String[] names = {"x", "y", "width", "height"};
    for (int k = 0; k < 4; k++) {
      String text = value(pattern, names[k], "0");
      if (unitsOfBox) {
        frame[k] = SvgPainter.part(text) * (k % 2 == 0 ? boxWidth : boxHeight);
        frame[k] += k < 2 ? box[k] : 0;
      } else {
        frame[k] = context.length(text, k % 2 == 0 ? 'x' : 'y', painter.unitMm());
      }
    }
    if (!(frame[2] > 0 && frame[3] > 0)) {
      return;
    }
    AffineTransform own = SvgTransform.read(value(pattern, "patternTransform", ""));
    int[] range = range(own, frame, box, margin);
    if (range == null) {
      return;
    }
    double count = ((double) range[2] - range[0] + 1) * ((double) range[3] - range[1] + 1);
    String id = pattern.get("id", "");
    if (count > MOST_TILES) {
      notes.add(
          "pattern \"#%s\" of %.0f tiles skipped, at most %d are laid"
              .formatted(id, count, MOST_TILES),
          at);
      return;
    }
    SvgNode holder = inherited(pattern, n -> !n.children.isEmpty());
    SvgViewBox view = SvgViewBox.of(inherited(pattern, n -> n.attributes.containsKey("viewBox")));
    AffineTransform inner = new AffineTransform();
    if (view != null) {
      inner = view.onto(frame[2], frame[3], value(pattern, "preserveAspectRatio", "xMidYMid meet"));
    } else if (value(pattern, "patternContentUnits", "").equals("objectBoundingBox")) {
      inner.scale(boxWidth, boxHeight);
    }
    notes.add(
        "pattern \"#%s\" laid in tiles of %s x %s"
            .formatted(id, (float) frame[2], (float) frame[3]),
        at);
    for (int j = range[1]; j <= range[3]; j++) {
      for (int i = range[0]; i <= range[2]; i++) {
        AffineTransform map = new AffineTransform(context.toMm());
        map.concatenate(own);
        map.translate(frame[0] + i * frame[2], frame[1] + j * frame[3]);
        painter.tile(pattern, holder, context, map, inner, frame[2], frame[3]);
      }
    }
  }

  /** First and last column and row of tiles that reach the box; null if the map is flat. */
  private static int[] range(AffineTransform own, double[] frame, double[] box, double margin) {
    double[] corners = {
      box[0] - margin,
      box[1] - margin,
      box[2] + margin,
      box[1] - margin,
      box[2] + margin,
      box[3] + margin,
      box[0] - margin,
      box[3] + margin
    };
    try {
      own.inverseTransform(corners, 0, corners, 0, 4);
    } catch (NoninvertibleTransformException flat) {
      return null;
    }
    double[] low = {Double.MAX_VALUE, Double.MAX_VALUE};
    double[] high = {-Double.MAX_VALUE, -Double.MAX_VALUE};
    for (int k = 0; k < 8; k++) {
      double tile = (corners[k] - frame[k % 2]) / frame[2 + k % 2];
      low[k % 2] = Math.min(low[k % 2], tile);
      high[k % 2] = Math.max(high[k % 2], tile);
    }
    for (int k = 0; k < 2; k++) {
      low[k] = Math.max(-1e9, Math.min(1e9, low[k]));
      high[k] = Math.max(-1e9, Math.min(1e9, high[k]));
    }
    double near = 1e-9; // a box that ends on a tile's border does not reach the next tile
    return new int[] {
      (int) Math.floor(low[0] + near),
      (int) Math.floor(low[1] + near),
      (int) Math.max(Math.floor(low[0] + near), Math.ceil(high[0] - near) - 1),
      (int) Math.max(Math.floor(low[1] + near), Math.ceil(high[1] - near) - 1)
    };
  }
}
