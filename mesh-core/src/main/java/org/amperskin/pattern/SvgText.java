package org.amperskin.pattern;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.font.LineMetrics;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Turns text into outlines: W3C SVG 1.1 chapter 10, horizontal writing from left to right.
 *
 * <p>Lists of x, y, dx, dy and rotate, nested tspans, text-anchor, letter and word spacing, middle
 * and central baselines, kerning of the font. Text on paths, other baselines, decorations, upright
 * writing and forced lengths are named, not drawn.
 */
final class SvgText {
  static final int MOST_LETTERS = 100_000;

  private static final FontRenderContext PLAIN = new FontRenderContext(null, true, true);

  /** Glyphs of one style in user units. */
  record Run(SvgNode node, SvgStyle style, Contour outline) {}

  /** One letter with what is said about its place; NaN where nothing is. */
  private static final class Letter {
    final int code;
    final SvgNode node;
    final SvgStyle style;
    double x = Double.NaN;
    double y = Double.NaN;
    double dx;
    double dy;
    double turn;

    Letter(int code, SvgNode node, SvgStyle style) {
      this.code = code;
      this.node = node;
      this.style = style;
    }

    boolean placed() {
      return !Double.isNaN(x) || !Double.isNaN(y);
    }
  }

  private final SvgPainter painter;
  private final SvgFonts fonts;
  private final SvgNotes notes;
  private final Map<SvgNode, Set<String>> said = new IdentityHashMap<>();

  SvgText(SvgPainter painter, SvgFonts fonts, SvgNotes notes) {
    this.painter = painter;
    this.fonts = fonts;
    this.notes = notes;
  }

  void draw(SvgNode node, SvgPainter.Context context) {
    for (Run run : runs(node, context)) {
      // the text's own opacity is in the group already; a tspan has none
      painter.paint(run.node, run.outline, context.with(context.toMm(), run.style.opaque()));
    }
  }

  List<Run> runs(SvgNode node, SvgPainter.Context context) {
    List<Letter> letters = new ArrayList<>();
    collect(node, context, letters, 0);
    while (!letters.isEmpty()
        && letters.get(letters.size() - 1).code == ' '
        && !keepsSpace(letters.get(letters.size() - 1))) {
      letters.remove(letters.size() - 1);
    }
    List<Run> runs = new ArrayList<>();
    double[] pen = {0, 0};
    for (int begin = 0; begin < letters.size(); ) {
      int end = begin + 1;
      while (end < letters.size() && !letters.get(end).placed()) {
        end++;
      }
      chunk(letters.subList(begin, end), pen, runs);
      begin = end;
    }
    return runs;
  }

  private static boolean keepsSpace(Letter letter) {
    return preserved(letter.node, letter.style);
  }

  private static boolean preserved(SvgNode node, SvgStyle style) {
    if (style.get("white-space", "").startsWith("pre")) {
      return true;
    }
    for (SvgNode n = node; n != null; n = n.parent) {
      String space = n.attributes.get("xml:space");
      if (space != null) {
        return space.equals("preserve");
      }
    }
    return false;
  }

  /** Letters in reading order; an element's lists apply after those of the elements around it. */
  private void collect(SvgNode node, SvgPainter.Context context, List<Letter> into, int depth) {
    painter.visit(node, context);
    told(node, context.style());
    int begin = into.size();
    for (SvgNode child : node.children) {
      if (child.name.equals(SvgNode.TEXT)) {
        letters(child.text.toString(), node, context.style(), into);
      } else if (child.svg) {
        SvgStyle style = painter.styled(child, context);
        boolean shown = !style.get("display", "inline").equals("none");
        switch (child.name) {
          case "tspan", "a" -> {
            if (shown) {
              collect(child, context.with(context.toMm(), style), into, depth + 1);
            }
          }
          case "title", "desc", "metadata" -> {}
          default -> notes.add("<" + SvgFault.cut(child.name) + "> within <text> skipped", child);
        }
      }
    }
    place(node, context, into.subList(begin, into.size()));
  }

  private void told(SvgNode node, SvgStyle style) {
    String[][] usual = {
      {"writing-mode", "horizontal-tb", "lr-tb", "lr"},
      {"direction", "ltr", "", ""},
      {"text-decoration", "none", "", ""},
      {"baseline-shift", "baseline", "0", "0px"}
    };
    for (String[] each : usual) {
      String value = style.get(each[0], each[1]);
      if (!value.equals(each[1]) && !value.equals(each[2]) && !value.equals(each[3])) {
        notes.add(each[0] + " " + SvgFault.shortened(value) + " of text ignored", node);
      }
    }
    for (String attribute : new String[] {"textLength", "lengthAdjust"}) {
      if (node.attributes.containsKey(attribute)) {
        notes.add(attribute + " of text ignored", node);
      }
    }
  }

  private static void letters(String text, SvgNode node, SvgStyle style, List<Letter> into) {
    boolean keep = preserved(node, style);
    for (int i = 0; i < text.length(); ) {
      int code = text.codePointAt(i);
      i += Character.charCount(code);
      if (code == '\r' && i < text.length() && text.charAt(i) == '\n') {
        continue;
      }
      if (code == '\n' || code == '\t' || code == '\r') {
        code = ' ';
      }
      Letter last = into.isEmpty() ? null : into.get(into.size() - 1);
      boolean doubled = last == null || last.code == ' ' && !keepsSpace(last);
      if (code == ' ' && !keep && doubled) {
        continue;
      }
      into.add(new Letter(code, node, style));
      SvgFault.unless(
          into.size() <= MOST_LETTERS,
          "at most " + MOST_LETTERS + " letters in one text",
          into.size() + "");
    }
  }

  private void place(SvgNode node, SvgPainter.Context context, List<Letter> letters) {
    double[] x = list(node, "x", 'x', context);
    double[] y = list(node, "y", 'y', context);
    double[] dx = list(node, "dx", 'x', context);
    double[] dy = list(node, "dy", 'y', context);
    double[] turn =
        SvgNumbers.list(node.get("rotate", "").matches("(?i)auto.*") ? "" : node.get("rotate", ""));
    for (int i = 0; i < letters.size(); i++) {
      Letter letter = letters.get(i);
      boolean outer = Double.isNaN(letter.x);
      letter.x = i < x.length && outer ? x[i] : letter.x;
      letter.y = i < y.length && Double.isNaN(letter.y) ? y[i] : letter.y;
      letter.dx = i < dx.length && letter.dx == 0 ? dx[i] : letter.dx;
      letter.dy = i < dy.length && letter.dy == 0 ? dy[i] : letter.dy;
      if (turn.length > 0 && letter.turn == 0) {
        letter.turn = turn[Math.min(i, turn.length - 1)];
      }
    }
  }

  private double[] list(
      SvgNode node, String attribute, char direction, SvgPainter.Context context) {
    String text = node.get(attribute, "");
    if (text.isEmpty()) {
      return new double[0];
    }
    String[] words = text.split("\\s*,\\s*|\\s+");
    double[] out = new double[words.length];
    for (int i = 0; i < words.length; i++) {
      out[i] = context.length(words[i], direction, painter.unitMm());
    }
    return out;
  }

  /** Sets one anchored chunk; the pen is moved to its end. */
  private void chunk(List<Letter> letters, double[] pen, List<Run> into) {
    Letter first = letters.get(0);
    pen[0] = Double.isNaN(first.x) ? pen[0] : first.x;
    pen[1] = Double.isNaN(first.y) ? pen[1] : first.y;
    double from = pen[0];
    List<Run> set = new ArrayList<>();
    for (int begin = 0; begin < letters.size(); ) {
      Letter lead = letters.get(begin);
      boolean spaced = spacing(lead.style, "letter-spacing") != 0;
      int end = begin + 1;
      while (end < letters.size()
          && letters.get(end).style == lead.style
          && letters.get(end).dx == 0
          && letters.get(end).dy == 0
          && letters.get(end).turn == 0
          && lead.turn == 0
          && lead.code != ' '
          && !spaced) {
        end++;
        if (letters.get(end - 1).code == ' ') {
          break; // after each space the pen may be moved by word spacing
        }
      }
      set(letters.subList(begin, end), pen, set);
      begin = end;
    }
    double part =
        switch (first.style.get("text-anchor", "start")) {
          case "middle" -> 0.5;
          case "end" -> 1;
          default -> 0;
        };
    AffineTransform back = AffineTransform.getTranslateInstance(part * (from - pen[0]), 0);
    pen[0] += back.getTranslateX();
    for (Run run : set) {
      Contour moved = run.outline.mapped(back);
      Run last = into.isEmpty() ? null : into.get(into.size() - 1);
      if (last != null && last.style == run.style) {
        last.outline.append(moved);
      } else {
        into.add(new Run(run.node, run.style, moved));
      }
    }
  }

  private double spacing(SvgStyle style, String property) {
    String text = style.get(property, "normal");
    if (text.equals("normal")) {
      return 0;
    }
    SvgNumbers.Length length = SvgNumbers.length(text);
    return switch (length.unit()) {
      case "", "px" -> length.value();
      case "em", "%" -> length.value() * style.fontSize() / (length.unit().equals("%") ? 100 : 1);
      case "ex" -> length.value() * style.fontSize() / 2;
      case "rem" -> length.value() * SvgStyle.MEDIUM_PX;
      default -> length.mm() / painter.unitMm();
    };
  }

  /** Sets letters of one style on one line, all but the first without places of their own. */
  private void set(List<Letter> letters, double[] pen, List<Run> into) {
    Letter lead = letters.get(0);
    SvgStyle style = lead.style;
    SvgFonts.Pick pick =
        fonts.find(style.get("font-family", "sans-serif"), bold(style), slanted(style));
    if (pick.font() == null) {
      notes.add("<text> skipped, " + pick.why(), lead.node);
      return;
    }
    say(pick, lead.node);
    StringBuilder text = new StringBuilder();
    int missing = 0;
    for (Letter letter : letters) {
      text.appendCodePoint(letter.code);
      missing += pick.font().canDisplay(letter.code) ? 0 : 1;
    }
    if (missing > 0) {
      notes.add(
          "letters missing in font \"" + pick.name() + "\", drawn as its empty box", lead.node);
    }
    char[] chars = text.toString().toCharArray();
    GlyphVector glyphs =
        pick.font().layoutGlyphVector(PLAIN, chars, 0, chars.length, Font.LAYOUT_LEFT_TO_RIGHT);
    double scale = style.fontSize() / SvgFonts.SIZE;
    pen[0] += lead.dx;
    pen[1] += lead.dy;
    AffineTransform map = AffineTransform.getTranslateInstance(pen[0], pen[1]);
    map.rotate(Math.toRadians(lead.turn));
    map.translate(0, baseline(style, pick.font(), scale, lead.node));
    map.scale(scale, scale);
    Contour outline = new Contour();
    for (int g = 0; g < glyphs.getNumGlyphs(); g++) {
      append(glyphs.getGlyphOutline(g).getPathIterator(map), outline);
    }
    if (!outline.isEmpty()) {
      into.add(new Run(lead.node, style, outline));
    }
    pen[0] += scale * glyphs.getGlyphPosition(glyphs.getNumGlyphs()).getX();
    pen[0] += spacing(style, "letter-spacing");
    if (letters.get(letters.size() - 1).code == ' ') {
      pen[0] += spacing(style, "word-spacing");
    }
  }

  /** Once for each element and font. */
  private void say(SvgFonts.Pick pick, SvgNode node) {
    if (!said.computeIfAbsent(node, n -> new HashSet<>()).add(pick.name())) {
      return;
    }
    if (pick.standsIn()) {
      notes.add(
          "<%s> in font \"%s\", which is not here: drawn in \"%s\""
              .formatted(node.name, SvgFault.cut(pick.asked()), pick.name()),
          node);
    } else {
      notes.add("<%s> drawn as outlines of \"%s\"".formatted(node.name, pick.name()), node);
    }
  }

  private static boolean bold(SvgStyle style) {
    String weight = style.get("font-weight", "normal");
    return weight.equals("bold") || weight.equals("bolder") || weight.matches("[6-9]00|1000");
  }

  private static boolean slanted(SvgStyle style) {
    return style.get("font-style", "normal").matches("italic|oblique.*");
  }

  /** How far below the given place the letters' foot line lies (user units). */
  private double baseline(SvgStyle style, Font font, double scale, SvgNode node) {
    String wanted = style.get("dominant-baseline", "auto");
    LineMetrics line = font.getLineMetrics("x", PLAIN);
    return switch (wanted) {
      case "auto", "alphabetic", "inherit" -> 0;
      case "middle" -> -scale * font.createGlyphVector(PLAIN, "x").getVisualBounds().getMinY() / 2;
      case "central" -> scale * (line.getAscent() - line.getDescent()) / 2;
      case "hanging" -> scale * line.getAscent() * 0.8;
      case "text-before-edge", "text-top" -> scale * line.getAscent();
      default -> {
        notes.add("dominant-baseline " + SvgFault.shortened(wanted) + " ignored", node);
        yield 0;
      }
    };
  }

  private static void append(PathIterator from, Contour to) {
    double[] n = new double[6];
    for (; !from.isDone(); from.next()) {
      switch (from.currentSegment(n)) {
        case PathIterator.SEG_MOVETO -> to.moveTo(n[0], n[1]);
        case PathIterator.SEG_LINETO -> to.lineTo(n[0], n[1]);
        case PathIterator.SEG_QUADTO -> to.quadTo(n[0], n[1], n[2], n[3]);
        case PathIterator.SEG_CUBICTO -> to.cubicTo(n[0], n[1], n[2], n[3], n[4], n[5]);
        default -> to.close();
      }
    }
  }
}
