package org.amperskin.pattern;

import java.awt.geom.AffineTransform;
import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the {@code transform} attribute: W3C SVG 1.1 section 7.6. */
final class SvgTransform {
  private static final Pattern CALL =
      Pattern.compile("\\s*,?\\s*([a-zA-Z]+)\\s*\\(([^()]*)\\)\\s*");

  private static final Pattern WITH_UNIT =
      Pattern.compile("([-+]?[0-9.]+(?:[eE][-+]?[0-9]+)?)(deg|grad|turn|rad|px|mm|cm|in|pt|pc|Q|)");

  private SvgTransform() {}

  static AffineTransform read(String text) {
    AffineTransform all = new AffineTransform();
    if (text.strip().equals("none")) {
      return all;
    }
    Matcher call = CALL.matcher(text);
    int at = 0;
    while (at < text.length() && !text.substring(at).isBlank()) {
      SvgFault.unless(
          call.find(at) && call.start() == at, "transform functions", text.substring(at));
      all.concatenate(one(call.group(1), call.group(2), call.group()));
      at = call.end();
    }
    return all;
  }

  private static AffineTransform one(String name, String arguments, String whole) {
    double[] n = SvgNumbers.list(bare(arguments));
    String key = name + n.length;
    return switch (key) {
      case "matrix6" -> new AffineTransform(n);
      case "translate1", "translateX1" -> AffineTransform.getTranslateInstance(n[0], 0);
      case "translate2" -> AffineTransform.getTranslateInstance(n[0], n[1]);
      case "translateY1" -> AffineTransform.getTranslateInstance(0, n[0]);
      case "scale1" -> AffineTransform.getScaleInstance(n[0], n[0]);
      case "scale2" -> AffineTransform.getScaleInstance(n[0], n[1]);
      case "scaleX1" -> AffineTransform.getScaleInstance(n[0], 1);
      case "scaleY1" -> AffineTransform.getScaleInstance(1, n[0]);
      case "rotate1" -> turn(n[0]);
      case "rotate3" -> {
        AffineTransform turn = AffineTransform.getTranslateInstance(n[1], n[2]);
        turn.concatenate(turn(n[0]));
        turn.translate(-n[1], -n[2]);
        yield turn;
      }
      case "skewX1" -> new AffineTransform(1, 0, Math.tan(Math.toRadians(n[0])), 1, 0, 0);
      case "skewY1" -> new AffineTransform(1, Math.tan(Math.toRadians(n[0])), 0, 1, 0, 0);
      default ->
          throw new SvgFault(
              "matrix(6), translate(1-2), scale(1-2), rotate(1 or 3), skewX(1), skewY(1)",
              whole + " with " + Arrays.toString(n));
    };
  }

  /**
   * The point of {@code transform-origin}: W3C CSS Transforms 1, section 5.
   *
   * @param box reference box {x0, y0, x1, y1}, which percent and words count in
   */
  static double[] origin(String text, double[] box, ToDoubleFunction<String> length) {
    String[] words = text.strip().split("\\s+");
    double[] at = {Double.NaN, Double.NaN};
    boolean swapped = words[0].matches("top|bottom");
    for (int k = 0; k < 2; k++) {
      String word = k < words.length ? words[k] : "center";
      int axis = swapped ? 1 - k : k;
      double side = box[axis + 2] - box[axis];
      double offset =
          switch (word) {
            case "left", "top" -> 0;
            case "center" -> side / 2;
            case "right", "bottom" -> side;
            default ->
                word.endsWith("%") ? SvgPainter.part(word) * side : length.applyAsDouble(word);
          };
      at[axis] = box[axis] + offset;
    }
    return at;
  }

  /** Numbers alone: angles in degrees, lengths in px, as style sheets write them with units. */
  private static String bare(String arguments) {
    if (!arguments.matches("(?s).*[a-df-zA-DF-Z%].*")) {
      return arguments;
    }
    StringBuilder out = new StringBuilder();
    for (String each : arguments.strip().split("\\s*,\\s*|\\s+")) {
      Matcher unit = WITH_UNIT.matcher(each);
      SvgFault.unless(
          unit.matches(), "numbers, deg, rad, grad, turn or lengths as px, mm, in", each);
      double value = SvgNumbers.single(unit.group(1));
      out.append(
          switch (unit.group(2)) {
            case "", "deg", "px" -> value;
            case "grad" -> value * 0.9;
            case "turn" -> value * 360;
            case "rad" -> Math.toDegrees(value);
            default -> SvgNumbers.length(each).mm() / SvgNumbers.MM_PER_PX;
          });
      out.append(' ');
    }
    return out.toString();
  }

  /** Quarter turns are exact. */
  private static AffineTransform turn(double degrees) {
    double quarters = degrees / 90;
    return quarters == Math.rint(quarters)
        ? AffineTransform.getQuadrantRotateInstance((int) (quarters % 4))
        : AffineTransform.getRotateInstance(Math.toRadians(degrees));
  }
}
