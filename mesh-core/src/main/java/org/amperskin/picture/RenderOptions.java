package org.amperskin.picture;

/**
 * How a picture is drawn.
 *
 * @param backgroundArgb colour where no face is (0xAARRGGBB); alpha is kept
 * @param lit true for flat shading by a headlight, false for the palette's colours as they are
 * @param samples samples along each side of a pixel, 1 to 4; 2 gives 2x2
 * @param outlineArgb colour of lines between faces of different colours and round the part
 *     (0xAARRGGBB), 0 for none
 * @param threads worker threads, 1 or more; the picture does not depend on it
 */
public record RenderOptions(
    int backgroundArgb, boolean lit, int samples, int outlineArgb, int threads) {

  /** Lit, 2x2 samples, white ground, no outline, two threads. */
  public static final RenderOptions USUAL = new RenderOptions(0xFFFFFFFF, true, 2, 0, 2);

  /** Checks the ranges. */
  public RenderOptions {
    if (samples < 1 || samples > 4) {
      throw new IllegalArgumentException(samples + " samples a side, not 1..4");
    }
    if (threads < 1 || threads > 256) {
      throw new IllegalArgumentException(threads + " threads, not 1..256");
    }
  }

  /** With another background. */
  public RenderOptions withBackground(int argb) {
    return new RenderOptions(argb, lit, samples, outlineArgb, threads);
  }

  /** With or without the headlight. */
  public RenderOptions withLit(boolean on) {
    return new RenderOptions(backgroundArgb, on, samples, outlineArgb, threads);
  }

  /** With another number of samples along each side of a pixel. */
  public RenderOptions withSamples(int perSide) {
    return new RenderOptions(backgroundArgb, lit, perSide, outlineArgb, threads);
  }

  /** With lines between colours and round the part, 0 for none. */
  public RenderOptions withOutline(int argb) {
    return new RenderOptions(backgroundArgb, lit, samples, argb, threads);
  }

  /** With another number of threads. */
  public RenderOptions withThreads(int count) {
    return new RenderOptions(backgroundArgb, lit, samples, outlineArgb, count);
  }
}
