package org.amperskin.picture;

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
   * <p>The middle of the mesh's box becomes the target. One pass over the corners of all faces.
   *
   * @param mesh what to show; only vertices used by faces count
   * @param aspect width of the picture over its height
   */
  public Camera fittedTo(SurfaceMesh mesh, double aspect) {
    if (!(aspect > 0)) {
      throw new IllegalArgumentException("aspect " + aspect + " is not above 0");
    }
    Extent box = Extent.of(mesh);
    double halfHeight = Math.tan(Math.toRadians(viewDegrees) / 2) / FIT_MARGIN;
    double halfWidth = halfHeight * aspect;
    double near = projection == Projection.PARALLEL ? 0 : 1;
    double need = box.radiusMm() * 1e-3 + 1e-6;
    double[] r = right();
    double[] u = up();
    double[] e = eye();
    double[] p = mesh.positions();
    for (int v : mesh.corners()) {
      double x = p[3 * v] - box.centreX();
      double y = p[3 * v + 1] - box.centreY();
      double z = p[3 * v + 2] - box.centreZ();
      double across = Math.abs(r[0] * x + r[1] * y + r[2] * z) / halfWidth;
      double along = Math.abs(u[0] * x + u[1] * y + u[2] * z) / halfHeight;
      double toward = near * (e[0] * x + e[1] * y + e[2] * z);
      need = Math.max(need, Math.max(across, along) + toward);
    }
    return new Camera(
        box.centreX(),
        box.centreY(),
        box.centreZ(),
        need,
        yawDegrees,
        pitchDegrees,
        viewDegrees,
        projection);
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
