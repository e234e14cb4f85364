package org.amperskin.picture;

import org.amperskin.region.RegionKind;

/**
 * The colours of regions, told apart also with any of the usual colour-vision deficiencies.
 *
 * <p>Source: the eight colours of M. Okabe and K. Ito, "Color Universal Design: how to make figures
 * and presentations that are friendly to colorblind people" (2002, revised 2008), with a mid grey
 * for what no mask has touched. Each colour has its own {@link Hatch}, so that a legend never rests
 * on colour alone.
 */
public enum RegionColour {
  /** Orange. */
  ORANGE(0xFFE69F00, Hatch.SOLID),
  /** Blue. */
  BLUE(0xFF0072B2, Hatch.RISING),
  /** Reddish purple. */
  PURPLE(0xFFCC79A7, Hatch.CROSS),
  /** Mid grey; not of the published eight. */
  GREY(0xFF9AA0A6, Hatch.DOTS),
  /** Bluish green. */
  GREEN(0xFF009E73, Hatch.FALLING),
  /** Sky blue. */
  SKY(0xFF56B4E9, Hatch.LEVEL),
  /** Vermilion. */
  VERMILION(0xFFD55E00, Hatch.UPRIGHT),
  /** Yellow. */
  YELLOW(0xFFF0E442, Hatch.GRID);

  private final int argb;
  private final Hatch hatch;

  RegionColour(int argb, Hatch hatch) {
    this.argb = argb;
    this.hatch = hatch;
  }

  /** The colour of a kind of region. */
  public static RegionColour of(RegionKind kind) {
    return switch (kind) {
      case EXPOSED -> ORANGE;
      case MASKED -> BLUE;
      case STOPPED_OFF -> PURPLE;
      case UNREACHED -> GREY;
      case UNPAINTED -> YELLOW;
    };
  }

  /** The colour of region number {@code index} (0, 1, ...), starting again after the last. */
  public static RegionColour number(int index) {
    if (index < 0) {
      throw new IllegalArgumentException("region number " + index + " is below 0");
    }
    return values()[index % values().length];
  }

  /** The colour, 0xFFRRGGBB. */
  public int argb() {
    return argb;
  }

  /** The pattern that goes with the colour in legends. */
  public Hatch hatch() {
    return hatch;
  }
}
