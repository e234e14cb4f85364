package org.amperskin.pattern;

import java.awt.geom.AffineTransform;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the {@code transform} attribute: W3C SVG 1.1 section 7.6. */
final class SvgTransform {
  private static final Pattern CALL =
      Pattern.compile("\\s*,?\\s*([a-zA-Z]+)\\s*\\(([^()]*)\\)\\s*");

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
    String bare = arguments.replace("deg", "").replace("px", "");
    double[] n = SvgNumbers.list(bare);
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

  /** Quarter turns are exact. */
  private static AffineTransform turn(double degrees) {
    double quarters = degrees / 90;
    return quarters == Math.rint(quarters)
        ? AffineTransform.getQuadrantRotateInstance((int) (quarters % 4))
        : AffineTransform.getRotateInstance(Math.toRadians(degrees));
  }
}
