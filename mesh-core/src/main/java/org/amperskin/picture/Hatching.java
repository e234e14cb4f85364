package org.amperskin.picture;

/** Draws the patterns of colours over a picture, so that what they mean is seen without colour. */
public final class Hatching {
  private static final int INK = 0xFF1B1F24;

  private Hatching() {}

  /**
   * A copy of a picture with patterns on its faces.
   *
   * @param painting what was rendered
   * @param hatches {@code hatches[colour]}, the pattern of each colour
   */
  public static Picture over(Picture picture, Painting painting, Hatch... hatches) {
    if (hatches.length != painting.colourCount()) {
      throw new IllegalArgumentException(
          hatches.length + " patterns for " + painting.colourCount() + " colours");
    }
    int[] argb = picture.argb().clone();
    for (int y = 0; y < picture.height(); y++) {
      for (int x = 0; x < picture.width(); x++) {
        int face = picture.face(x, y);
        if (face != Picture.NO_FACE && hatches[painting.colourOf(face)].inked(x, y)) {
          argb[y * picture.width() + x] = INK;
        }
      }
    }
    return new Picture(picture.width(), picture.height(), argb, picture.faces());
  }
}
