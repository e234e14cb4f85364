package org.amperskin.picture;

/**
 * Line patterns for legend swatches, so that a region is known without its colour.
 *
 * <p>Definition: {@link #inked} says for a pixel of a swatch whether it carries ink; patterns
 * repeat every 6 pixels.
 */
public enum Hatch {
  /** No lines. */
  SOLID,
  /** Lines rising to the right. */
  RISING,
  /** Lines falling to the right. */
  FALLING,
  /** Both slants. */
  CROSS,
  /** Dots. */
  DOTS,
  /** Level lines. */
  LEVEL,
  /** Upright lines. */
  UPRIGHT,
  /** Level and upright lines. */
  GRID;

  private static final int PERIOD = 6;

  /** True if the pixel at ({@code x}, {@code y}), y down, carries ink. */
  public boolean inked(int x, int y) {
    int rising = Math.floorMod(x + y, PERIOD);
    int falling = Math.floorMod(x - y, PERIOD);
    int column = Math.floorMod(x, PERIOD);
    int row = Math.floorMod(y, PERIOD);
    return switch (this) {
      case SOLID -> false;
      case RISING -> rising < 1;
      case FALLING -> falling < 1;
      case CROSS -> rising < 1 || falling < 1;
      case DOTS -> column >= 2 && column < 4 && row >= 2 && row < 4;
      case LEVEL -> row == 3;
      case UPRIGHT -> column == 3;
      case GRID -> column == 3 || row == 3;
    };
  }
}
