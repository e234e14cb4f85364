package org.amperskin.picture;

import org.amperskin.geom.Box;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;

/**
 * An eye that circles a target.
 *
 * <p>Definition: the eye lies {@code distanceMm} from the target in the direction {@code (sin yaw
 * cos pitch, -cos yaw cos pitch, sin pitch)}; z is up in the picture as far as pitch allows. Yaw 0
 * and pitch 0 look along +y. At the target's depth the picture's height spans {@code 2 distance
 * tan(viewDegrees / 2)} in both projections, so that switching keeps the size.
 *
 * @param targetX x of the point looked at (mm)
 * @param targetY y of the point looked at (mm)
 * @param targetZ z of the point looked at (mm)
 * @param distanceMm eye to target (mm), above 0
 * @param yawDegrees turn about z (degrees)
 * @param pitchDegrees height of the eye above the horizon (degrees), -90 to 90
 * @param viewDegrees angle of view from bottom to top (degrees), 0.01 to 170
 * @param projection parallel or perspective
 */
public record Camera(
    double targetX,
    double targetY,
    double targetZ,
    double distanceMm,
    double yawDegrees,
    double pitchDegrees,
    double viewDegrees,
    Projection projection) {

  /** Angle of view of a new camera (degrees). */
  public static final double USUAL_VIEW_DEGREES = 30;

  private static final double FIT_MARGIN = 1.06;

  /** Checks that every number can be used. */
  public Camera {
    if (!(distanceMm > 0) || !Double.isFinite(distanceMm)) {
      throw new IllegalArgumentException("camera distance " + distanceMm + " mm is not above 0");
    }
    if (!(pitchDegrees >= -90 && pitchDegrees <= 90)) {
      throw new IllegalArgumentException("camera pitch " + pitchDegrees + " degrees, not -90..90");
    }
    if (!(viewDegrees >= 0.01 && viewDegrees <= 170)) {
      throw new IllegalArgumentException("camera view " + viewDegrees + " degrees, not 0.01..170");
    }
    if (!Double.isFinite(targetX + targetY + targetZ + yawDegrees)) {
      throw new IllegalArgumentException(
          "camera target ("
              + targetX
              + ", "
              + targetY
              + ", "
              + targetZ
              + ") mm, yaw "
              + yawDegrees
              + " degrees");
    }
  }

  /**
   * A perspective camera that shows a whole mesh.
   *
   * @param mesh the part; only vertices used by faces count
   * @param yawDegrees turn about z (degrees)
   * @param pitchDegrees height above the horizon (degrees)
   * @param aspect width of the picture over its height
   */
  public static Camera fitting(
      SurfaceMesh mesh, double yawDegrees, double pitchDegrees, double aspect) {
    return new Camera(
            0, 0, 0, 1, yawDegrees, pitchDegrees, USUAL_VIEW_DEGREES, Projection.PERSPECTIVE)
        .fittedTo(mesh, aspect);
  }

  /**
   * This camera moved so that a mesh just fills the picture, with the same direction and view.
   *
   * <p>What the picture shows of the mesh is in its middle; the target lies at the depth of the
   * middle of the mesh's box. Method: a point at (x, y) right and up, z toward the eye, is in the
   * picture if {@code |x - cx| <= (d - z) w}; so the largest {@code x + w z} and {@code -x + w z}
   * give the shift cx and the distance d at once. Two passes over the corners of all faces.
   *
   * @param mesh what to show; only vertices used by faces count
   * @param aspect width of the picture over its height
   */
  public Camera fittedTo(SurfaceMesh mesh, double aspect) {
    if (!(aspect > 0)) {
      throw new IllegalArgumentException("aspect " + aspect + " is not above 0");
    }
    Box box = boxOf(mesh);
    Vec3 middle = box.centre();
    double halfHeight = Math.tan(Math.toRadians(viewDegrees) / 2) / FIT_MARGIN;
    double halfWidth = halfHeight * aspect;
    double nearer = projection == Projection.PARALLEL ? 0 : 1;
    double[] r = right();
    double[] u = up();
    double[] e = eye();
    double[] p = mesh.positions();
    double rightMost = Double.NEGATIVE_INFINITY;
    double leftMost = rightMost;
    double topMost = rightMost;
    double lowMost = rightMost;
    for (int v : mesh.corners()) {
      double dx = p[3 * v] - middle.x();
      double dy = p[3 * v + 1] - middle.y();
      double dz = p[3 * v + 2] - middle.z();
      double x = r[0] * dx + r[1] * dy + r[2] * dz;
      double y = u[0] * dx + u[1] * dy + u[2] * dz;
      double z = nearer * (e[0] * dx + e[1] * dy + e[2] * dz);
      rightMost = Math.max(rightMost, x + halfWidth * z);
      leftMost = Math.max(leftMost, -x + halfWidth * z);
      topMost = Math.max(topMost, y + halfHeight * z);
      lowMost = Math.max(lowMost, -y + halfHeight * z);
    }
    double across = (rightMost - leftMost) / 2;
    double along = (topMost - lowMost) / 2;
    double need =
        Math.max((rightMost + leftMost) / 2 / halfWidth, (topMost + lowMost) / 2 / halfHeight);
    Camera close =
        new Camera(
            middle.x() + across * r[0] + along * u[0],
            middle.y() + across * r[1] + along * u[1],
            middle.z() + across * r[2] + along * u[2],
            Math.max(need, box.diagonal() * 1e-3 + 1e-6),
            yawDegrees,
            pitchDegrees,
            viewDegrees,
            projection);
    return projection == Projection.PARALLEL ? close : close.centredOn(mesh);
  }

  /** Shifted so that the picture's margins are alike on the side that has room to spare. */
  private Camera centredOn(SurfaceMesh mesh) {
    double[] r = right();
    double[] u = up();
    double[] e = eye();
    double[] p = mesh.positions();
    double left = Double.POSITIVE_INFINITY;
    double low = left;
    double right = Double.NEGATIVE_INFINITY;
    double top = right;
    for (int v : mesh.corners()) {
      double dx = p[3 * v] - targetX;
      double dy = p[3 * v + 1] - targetY;
      double dz = p[3 * v + 2] - targetZ;
      double k = distanceMm / (distanceMm - (e[0] * dx + e[1] * dy + e[2] * dz));
      double x = k * (r[0] * dx + r[1] * dy + r[2] * dz);
      double y = k * (u[0] * dx + u[1] * dy + u[2] * dz);
      left = Math.min(left, x);
      right = Math.max(right, x);
      low = Math.min(low, y);
      top = Math.max(top, y);
    }
    return panned(-(left + right) / 2, -(low + top) / 2);
  }

  /**
   * Box around the vertices that faces use; vertices that no face uses would spoil a fit.
   *
   * @throws IllegalArgumentException if the mesh has no faces
   */
  public static Box boxOf(SurfaceMesh mesh) {
    if (mesh.faceCount() == 0) {
      throw new IllegalArgumentException("0 faces have no box");
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
    return new Box(low[0], low[1], low[2], high[0], high[1], high[2]);
  }

  /** Unit vector to the right of the picture. */
  public double[] right() {
    double yaw = Math.toRadians(yawDegrees);
    return new double[] {Math.cos(yaw), Math.sin(yaw), 0};
  }

  /** Unit vector to the top of the picture. */
  public double[] up() {
    double yaw = Math.toRadians(yawDegrees);
    double pitch = Math.toRadians(pitchDegrees);
    return new double[] {
      -Math.sin(pitch) * Math.sin(yaw), Math.sin(pitch) * Math.cos(yaw), Math.cos(pitch)
    };
  }

  /** Unit vector from the target to the eye. */
  public double[] eye() {
    double yaw = Math.toRadians(yawDegrees);
    double pitch = Math.toRadians(pitchDegrees);
    return new double[] {
      Math.sin(yaw) * Math.cos(pitch), -Math.cos(yaw) * Math.cos(pitch), Math.sin(pitch)
    };
  }

  /** Height that the picture spans at the target's depth (mm). */
  public double spanMm() {
    return 2 * distanceMm * Math.tan(Math.toRadians(viewDegrees) / 2);
  }

  /** Turned about the target; pitch stops at the poles. */
  public Camera turned(double byYawDegrees, double byPitchDegrees) {
    double yaw = (yawDegrees + byYawDegrees) % 360;
    double pitch = Math.max(-90, Math.min(90, pitchDegrees + byPitchDegrees));
    return new Camera(targetX, targetY, targetZ, distanceMm, yaw, pitch, viewDegrees, projection);
  }

  /** Nearer (factor below 1) or farther. */
  public Camera zoomed(double factor) {
    return new Camera(
        targetX,
        targetY,
        targetZ,
        distanceMm * factor,
        yawDegrees,
        pitchDegrees,
        viewDegrees,
        projection);
  }

  /**
   * Shifted so that the part moves in the picture.
   *
   * @param rightMm how far the part goes to the right at the target's depth (mm)
   * @param upMm how far the part goes up (mm)
   */
  public Camera panned(double rightMm, double upMm) {
    double[] r = right();
    double[] u = up();
    return new Camera(
        targetX - r[0] * rightMm - u[0] * upMm,
        targetY - r[1] * rightMm - u[1] * upMm,
        targetZ - r[2] * rightMm - u[2] * upMm,
        distanceMm,
        yawDegrees,
        pitchDegrees,
        viewDegrees,
        projection);
  }

  /** Another angle of view, with the distance changed so that the target keeps its size. */
  public Camera withView(double degrees) {
    double keep =
        distanceMm
            * Math.tan(Math.toRadians(viewDegrees) / 2)
            / Math.tan(Math.toRadians(degrees) / 2);
    return new Camera(
        targetX, targetY, targetZ, keep, yawDegrees, pitchDegrees, degrees, projection);
  }

  /** The same place with another projection. */
  public Camera with(Projection other) {
    return new Camera(
        targetX, targetY, targetZ, distanceMm, yawDegrees, pitchDegrees, viewDegrees, other);
  }
}
