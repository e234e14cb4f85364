package org.amperskin.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.amperskin.mesh.SurfaceMesh;
import org.junit.jupiter.api.Test;

class CameraTest {
  @Test
  void axesAreRightHanded() {
    Camera c = new Camera(1, 2, 3, 10, 37, -22, 30, Projection.PERSPECTIVE);
    double[] r = c.right();
    double[] u = c.up();
    double[] e = c.eye();
    double[] cross = {
      r[1] * u[2] - r[2] * u[1], r[2] * u[0] - r[0] * u[2], r[0] * u[1] - r[1] * u[0]
    };
    for (int k = 0; k < 3; k++) {
      assertThat(cross[k]).isCloseTo(e[k], within(1e-15));
    }
  }

  @Test
  void fittedPartTouchesNoRim() {
    SurfaceMesh box = SampleParts.box(80, 20, 45);
    for (Projection projection : Projection.values()) {
      for (double yaw = 0; yaw < 360; yaw += 30) {
        Camera camera = Camera.fitting(box, yaw, 25, 1.5).with(projection);
        camera = camera.fittedTo(box, 1.5);
        Picture p =
            Renderer.render(
                Painting.plain(box, 0), camera, 150, 100, RenderOptions.USUAL.withSamples(1));
        int left = 150;
        int top = 100;
        int right = -1;
        int bottom = -1;
        for (int i = 0; i < p.faces().length; i++) {
          if (p.faces()[i] != Picture.NO_FACE) {
            left = Math.min(left, i % 150);
            right = Math.max(right, i % 150);
            top = Math.min(top, i / 150);
            bottom = Math.max(bottom, i / 150);
          }
        }
        assertThat(left).isGreaterThan(1);
        assertThat(top).isGreaterThan(1);
        assertThat(149 - right).as("margins alike").isBetween(left - 4, left + 4);
        assertThat(99 - bottom).as("margins alike").isBetween(top - 4, top + 4);
        assertThat(Math.max((right - left) / 150.0, (bottom - top) / 100.0)).isGreaterThan(0.9);
      }
    }
  }

  @Test
  void panMovesThePartByThatMuch() {
    Camera camera = new Camera(0, 0, 0, 50, 10, 20, 30, Projection.PERSPECTIVE).panned(3, -2);
    double[] r = camera.right();
    double[] u = camera.up();
    double across = -(camera.targetX() * r[0] + camera.targetY() * r[1] + camera.targetZ() * r[2]);
    double along = -(camera.targetX() * u[0] + camera.targetY() * u[1] + camera.targetZ() * u[2]);
    assertThat(across).isCloseTo(3, within(1e-12));
    assertThat(along).isCloseTo(-2, within(1e-12));
  }

  @Test
  void narrowerViewKeepsTheSizeAtTheTarget() {
    Camera camera = new Camera(0, 0, 0, 50, 10, 20, 30, Projection.PERSPECTIVE);
    assertThat(camera.withView(1.5).spanMm()).isCloseTo(camera.spanMm(), within(1e-12));
  }

  @Test
  void pitchStopsAtThePoles() {
    Camera camera = new Camera(0, 0, 0, 50, 350, 80, 30, Projection.PARALLEL).turned(20, 40);
    assertThat(camera.pitchDegrees()).isEqualTo(90);
    assertThat(camera.yawDegrees()).isEqualTo(10);
  }

  @Test
  void refusesADistanceOfZero() {
    assertThatThrownBy(() -> new Camera(0, 0, 0, 0, 0, 0, 30, Projection.PARALLEL))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0.0 mm");
  }
}
