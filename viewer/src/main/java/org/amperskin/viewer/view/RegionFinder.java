package org.amperskin.viewer.view;

import javafx.animation.PauseTransition;
import javafx.application.Platform;
import javafx.util.Duration;
import org.amperskin.geom.Vec3;
import org.amperskin.picture.Camera;
import org.amperskin.picture.Picture;
import org.amperskin.picture.Projection;
import org.amperskin.picture.RenderOptions;
import org.amperskin.picture.Renderer;
import org.amperskin.viewer.part.PaintedSurface;

/**
 * Tells which region lies under a point of the picture.
 *
 * <p>Method: when the camera has come to rest, the core's renderer draws face numbers at half size
 * on a thread of its own; a question is then one look into an array, at any number of faces.
 */
final class RegionFinder {
  private static final Duration REST = Duration.millis(200);
  private static final int COARSER = 2;
  private static final RenderOptions PLAIN = new RenderOptions(0, false, 1, 0, 1);

  private final PauseTransition rest = new PauseTransition(REST);
  private PaintedSurface part;
  private Camera camera;
  private double width;
  private double height;
  private Picture picture;
  private boolean drawing;
  private boolean stale;

  RegionFinder() {
    rest.setOnFinished(e -> draw());
  }

  void changed(PaintedSurface shown, Camera from, double widthPx, double heightPx) {
    part = shown;
    camera = from;
    width = widthPx;
    height = heightPx;
    picture = null;
    rest.playFromStart();
  }

  /** Region at a point of the picture, -1 for none or not known yet. */
  int regionAt(double x, double y) {
    int face = faceAt(x, y);
    return face == Picture.NO_FACE ? -1 : part.region(face);
  }

  /**
   * Place on the part at a point of the picture (mm), where {@link #regionAt} knows the region: the
   * line of sight meets the face's plane there.
   */
  Vec3 placeAt(double x, double y) {
    int face = faceAt(x, y);
    double[] n = part.mesh().unitNormal(face);
    int v = part.mesh().corner(face, 0);
    double mmPerPx = camera.spanMm() / height;
    double across = (x - width / 2) * mmPerPx;
    double upward = (height / 2 - y) * mmPerPx;
    double[] r = camera.right();
    double[] u = camera.up();
    double[] e = camera.eye();
    double[] target = {camera.targetX(), camera.targetY(), camera.targetZ()};
    double[] corner = {part.mesh().x(v), part.mesh().y(v), part.mesh().z(v)};
    boolean parallel = camera.projection() == Projection.PARALLEL;
    double[] from = new double[3];
    double[] along = new double[3];
    double away = 0;
    double slope = 0;
    for (int k = 0; k < 3; k++) {
      double at = target[k] + across * r[k] + upward * u[k];
      from[k] = parallel ? at : target[k] + camera.distanceMm() * e[k];
      along[k] = parallel ? -e[k] : at - from[k];
      away += n[k] * (corner[k] - from[k]);
      slope += n[k] * along[k];
    }
    double t = slope == 0 ? 0 : away / slope;
    return new Vec3(from[0] + t * along[0], from[1] + t * along[1], from[2] + t * along[2]);
  }

  private int faceAt(double x, double y) {
    if (picture == null || x < 0 || y < 0) {
      return Picture.NO_FACE;
    }
    int column = (int) (x / COARSER);
    int row = (int) (y / COARSER);
    if (column >= picture.width() || row >= picture.height()) {
      return Picture.NO_FACE;
    }
    return picture.face(column, row);
  }

  private void draw() {
    int w = (int) width / COARSER;
    int h = (int) height / COARSER;
    if (part == null || w < 1 || h < 1) {
      return;
    }
    if (drawing) {
      stale = true;
      return;
    }
    drawing = true;
    stale = false;
    PaintedSurface shown = part;
    Camera from = camera;
    int[] blank = new int[shown.regions().size()];
    Thread painter =
        new Thread(
            () -> {
              Picture drawn = Renderer.render(shown.painting(blank), from, w, h, PLAIN);
              Platform.runLater(
                  () -> {
                    drawing = false;
                    if (stale) {
                      draw();
                    } else if (shown == part && from.equals(camera)) {
                      picture = drawn;
                    }
                  });
            },
            "regions of " + shown.name());
    painter.setDaemon(true);
    painter.setPriority(Thread.MIN_PRIORITY);
    painter.start();
  }
}
