package org.amperskin.pattern;

/**
 * What of a drawing was painted where, so that a place of the figure can be called by its name.
 *
 * <p>Not guaranteed: that an element is seen; a later one may have painted over it.
 *
 * @param name its id, else its element's word and line
 * @param minX left end of the box round it, its stroke included (mm from the sheet's middle)
 * @param minY lower end
 * @param maxX right end
 * @param maxY upper end
 */
public record DrawnElement(String name, double minX, double minY, double maxX, double maxY) {
  boolean holds(double x, double y) {
    return x >= minX && x <= maxX && y >= minY && y <= maxY;
  }

  double areaMm2() {
    return (maxX - minX) * (maxY - minY);
  }
}
