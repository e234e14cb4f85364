package org.amperskin.picture;

import org.amperskin.mesh.SurfaceMesh;

/**
 * The box round what a picture shows, along the axes.
 *
 * @param minX least x (mm)
 * @param minY least y (mm)
 * @param minZ least z (mm)
 * @param maxX largest x (mm)
 * @param maxY largest y (mm)
 * @param maxZ largest z (mm)
 */
public record Extent(double minX, double minY, double minZ, double maxX, double maxY, double maxZ) {

  /** Checks the order of the bounds. */
  public Extent {
    if (!(minX <= maxX && minY <= maxY && minZ <= maxZ)) {
      throw new IllegalArgumentException(
          "box from ("
              + minX
              + ", "
              + minY
              + ", "
              + minZ
              + ") to ("
              + maxX
              + ", "
              + maxY
              + ", "
              + maxZ
              + ") mm is inside out");
    }
  }

  /** The box round all vertices that faces use; a mesh without faces gives a point at 0. */
  public static Extent of(SurfaceMesh mesh) {
    if (mesh.faceCount() == 0) {
      return new Extent(0, 0, 0, 0, 0, 0);
    }
    double[] low = {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE};
    double[] high = {-Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
    double[] p = mesh.positions();
    for (int v : mesh.corners()) {
      for (int k = 0; k < 3; k++) {
        double value = p[3 * v + k];
        low[k] = Math.min(low[k], value);
        high[k] = Math.max(high[k], value);
      }
    }
    return new Extent(low[0], low[1], low[2], high[0], high[1], high[2]);
  }

  /** Width along x (mm). */
  public double sizeX() {
    return maxX - minX;
  }

  /** Width along y (mm). */
  public double sizeY() {
    return maxY - minY;
  }

  /** Width along z (mm). */
  public double sizeZ() {
    return maxZ - minZ;
  }

  /** Middle along x (mm). */
  public double centreX() {
    return 0.5 * (minX + maxX);
  }

  /** Middle along y (mm). */
  public double centreY() {
    return 0.5 * (minY + maxY);
  }

  /** Middle along z (mm). */
  public double centreZ() {
    return 0.5 * (minZ + maxZ);
  }

  /** Half the diagonal (mm). */
  public double radiusMm() {
    return 0.5 * Math.sqrt(sizeX() * sizeX() + sizeY() * sizeY() + sizeZ() * sizeZ());
  }
}
