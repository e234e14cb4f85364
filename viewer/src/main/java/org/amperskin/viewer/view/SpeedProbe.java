package org.amperskin.viewer.view;

import java.util.function.DoubleConsumer;
import javafx.application.Platform;
import javafx.scene.Group;
import javafx.scene.PerspectiveCamera;
import javafx.scene.Scene;
import javafx.scene.image.WritableImage;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;

/**
 * Measures how fast this machine draws faces in 3D.
 *
 * <p>Method: a wavy sheet of 20,000 faces is drawn a few times into a small picture that is never
 * shown, each time in a turn of its own so that the window stays awake; the quickest counts, since
 * the first ones also build shaders and buffers.
 */
final class SpeedProbe {
  private static final int SIDE = 100;
  private static final int PICTURE = 64;
  private static final int TIMES = 4;

  private final Scene scene;
  private final WritableImage image = new WritableImage(PICTURE, PICTURE);
  private final DoubleConsumer result;
  private int left = TIMES;
  private double best = Double.POSITIVE_INFINITY;

  private SpeedProbe(DoubleConsumer result) {
    this.result = result;
    MeshView sheet = new MeshView(sheet());
    sheet.setCullFace(CullFace.NONE);
    sheet.setTranslateZ(250);
    PerspectiveCamera eye = new PerspectiveCamera(true);
    eye.setFarClip(1000);
    scene = new Scene(new Group(sheet), PICTURE, PICTURE, true);
    scene.setCamera(eye);
  }

  /**
   * Starts a measurement.
   *
   * @param result told the time for a million faces (s), on the user interface's thread
   */
  static void run(DoubleConsumer result) {
    Platform.runLater(() -> new SpeedProbe(result).next());
  }

  private void next() {
    long start = System.nanoTime();
    scene.snapshot(image);
    double seconds = (System.nanoTime() - start) / 1e9;
    best = Math.min(best, seconds * 1e6 / (2 * SIDE * SIDE));
    left--;
    if (left > 0) {
      Platform.runLater(this::next);
    } else {
      result.accept(best);
    }
  }

  private static TriangleMesh sheet() {
    TriangleMesh mesh = new TriangleMesh();
    mesh.getTexCoords().addAll(0, 0);
    float[] points = new float[3 * (SIDE + 1) * (SIDE + 1)];
    for (int j = 0; j <= SIDE; j++) {
      for (int i = 0; i <= SIDE; i++) {
        int at = 3 * (j * (SIDE + 1) + i);
        points[at] = i - SIDE / 2f;
        points[at + 1] = j - SIDE / 2f;
        points[at + 2] = (float) (3 * Math.sin(0.3 * i) * Math.cos(0.2 * j));
      }
    }
    mesh.getPoints().setAll(points);
    int[] faces = new int[12 * SIDE * SIDE];
    int n = 0;
    for (int j = 0; j < SIDE; j++) {
      for (int i = 0; i < SIDE; i++) {
        int v = j * (SIDE + 1) + i;
        int w = v + SIDE + 1;
        for (int k : new int[] {v, v + 1, w + 1, v, w + 1, w}) {
          faces[n] = k;
          n += 2;
        }
      }
    }
    mesh.getFaces().setAll(faces);
    mesh.getFaceSmoothingGroups().setAll(new int[2 * SIDE * SIDE]);
    return mesh;
  }
}
