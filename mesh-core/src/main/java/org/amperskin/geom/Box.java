package org.amperskin.geom;

/**
 * An axis-aligned box, empty if {@code min} exceeds {@code max}.
 *
 * @param minX smallest x (mm)
 * @param minY smallest y (mm)
 * @param minZ smallest z (mm)
 * @param maxX largest x (mm)
 * @param maxY largest y (mm)
 * @param maxZ largest z (mm)
 */
public record Box(double minX, double minY, double minZ, double maxX, double maxY, double maxZ) {
  /** The box of no point. */
  public static final Box EMPTY =
      new Box(
          Double.POSITIVE_INFINITY,
          Double.POSITIVE_INFINITY,
          Double.POSITIVE_INFINITY,
          Double.NEGATIVE_INFINITY,
          Double.NEGATIVE_INFINITY,
          Double.NEGATIVE_INFINITY);

  /** Smallest box around {@code positions[3*v+k]} (mm). */
  public static Box around(double[] positions) {
    double x0 = Double.POSITIVE_INFINITY;
    double y0 = x0;
    double z0 = x0;
    double x1 = Double.NEGATIVE_INFINITY;
    double y1 = x1;
    double z1 = x1;
    for (int i = 0; i < positions.length; i += 3) {
      x0 = Math.min(x0, positions[i]);
      x1 = Math.max(x1, positions[i]);
      y0 = Math.min(y0, positions[i + 1]);
      y1 = Math.max(y1, positions[i + 1]);
      z0 = Math.min(z0, positions[i + 2]);
      z1 = Math.max(z1, positions[i + 2]);
    }
    return new Box(x0, y0, z0, x1, y1, z1);
  }

  /** True if no point lies in it. */
  public boolean isEmpty() {
    return minX > maxX || minY > maxY || minZ > maxZ;
  }

  /** Smallest box around this one and {@code o}. */
  public Box with(Box o) {
    return new Box(
        Math.min(minX, o.minX),
        Math.min(minY, o.minY),
        Math.min(minZ, o.minZ),
        Math.max(maxX, o.maxX),
        Math.max(maxY, o.maxY),
        Math.max(maxZ, o.maxZ));
  }

  /** Middle of the box (mm). */
  public Vec3 centre() {
    return new Vec3((minX + maxX) / 2, (minY + maxY) / 2, (minZ + maxZ) / 2);
  }

  /** Length of the space diagonal (mm), 0 if empty. */
  public double diagonal() {
    return isEmpty() ? 0 : new Vec3(maxX - minX, maxY - minY, maxZ - minZ).length();
  }

  /** Longest side (mm), 0 if empty. */
  public double longestSide() {
    return isEmpty() ? 0 : Math.max(maxX - minX, Math.max(maxY - minY, maxZ - minZ));
  }
}
