package org.amperskin.pattern;

/** Reads the {@code d} attribute: W3C SVG 2 section 9.3 (all commands, absolute and relative). */
final class SvgPathText {
  private final SvgNumbers in;
  private final Contour path = new Contour();
  private double controlX;
  private double controlY;
  private char last = 'M';

  private SvgPathText(String text) {
    in = new SvgNumbers(text);
  }

  static Contour read(String text) {
    SvgPathText reader = new SvgPathText(text);
    reader.run();
    return reader.path;
  }

  private void run() {
    boolean begun = false;
    while (in.more()) {
      char command = in.take();
      SvgFault.unless(
          "MmLlHhVvCcSsQqTtAaZz".indexOf(command) >= 0, "a path command", command + in.rest());
      SvgFault.unless(begun || command == 'M' || command == 'm', "M first", "" + command);
      begun = true;
      if (command == 'Z' || command == 'z') {
        path.close();
        last = 'Z';
        continue;
      }
      do {
        step(command);
        command = command == 'M' ? 'L' : command == 'm' ? 'l' : command;
      } while (in.more() && in.atNumber());
    }
  }

  private void step(char command) {
    boolean relative = Character.isLowerCase(command);
    double ox = relative ? path.x() : 0;
    double oy = relative ? path.y() : 0;
    char kind = Character.toUpperCase(command);
    switch (kind) {
      case 'M' -> path.moveTo(ox + in.number(), oy + in.number());
      case 'L' -> path.lineTo(ox + in.number(), oy + in.number());
      case 'H' -> path.lineTo(ox + in.number(), path.y());
      case 'V' -> path.lineTo(path.x(), oy + in.number());
      case 'C' -> cubic(ox + in.number(), oy + in.number(), ox, oy);
      case 'S' -> {
        boolean follows = last == 'C' || last == 'S';
        cubic(
            follows ? 2 * path.x() - controlX : path.x(),
            follows ? 2 * path.y() - controlY : path.y(),
            ox,
            oy);
      }
      case 'Q' -> quad(ox + in.number(), oy + in.number(), ox, oy);
      case 'T' -> {
        boolean follows = last == 'Q' || last == 'T';
        quad(
            follows ? 2 * path.x() - controlX : path.x(),
            follows ? 2 * path.y() - controlY : path.y(),
            ox,
            oy);
      }
      default -> {
        double rx = in.number();
        double ry = in.number();
        double turn = in.number();
        boolean large = in.flag();
        boolean sweep = in.flag();
        path.arcTo(rx, ry, turn, large, sweep, ox + in.number(), oy + in.number());
      }
    }
    last = kind;
  }

  private void cubic(double c1x, double c1y, double ox, double oy) {
    controlX = ox + in.number();
    controlY = oy + in.number();
    path.cubicTo(c1x, c1y, controlX, controlY, ox + in.number(), oy + in.number());
  }

  private void quad(double cx, double cy, double ox, double oy) {
    controlX = cx;
    controlY = cy;
    path.quadTo(cx, cy, ox + in.number(), oy + in.number());
  }
}
