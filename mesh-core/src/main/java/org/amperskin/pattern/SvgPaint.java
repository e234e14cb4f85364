package org.amperskin.pattern;

/**
 * What fills or strokes a shape: nothing, one colour, or a pattern element that is laid in tiles.
 *
 * @param colour the colour, or null
 * @param tile the pattern element, or null
 */
record SvgPaint(SvgColour colour, SvgNode tile) {
  static final SvgPaint NONE = new SvgPaint(null, null);

  boolean isNone() {
    return colour == null && tile == null;
  }
}
