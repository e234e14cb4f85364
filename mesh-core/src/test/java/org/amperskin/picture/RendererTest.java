package org.amperskin.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.amperskin.mesh.SurfaceMesh;
import org.junit.jupiter.api.Test;

class RendererTest {
  private static final int WHITE = 0xFFFFFFFF;
  private static final int RED = 0xFFD02020;
  private static final int GREEN = 0xFF20A020;
  private static final RenderOptions PLAIN = new RenderOptions(WHITE, false, 1, 0, 1);

  /** Looks along +y at (5, 5, 5) so that 20 mm span the picture from bottom to top. */
  private static Camera front(Projection projection) {
    double view = 30;
    double distance = 10 / Math.tan(Math.toRadians(view / 2));
    return new Camera(5, 5, 5, distance, 0, 0, view, projection);
  }

  @Test
  void cubeFrontCoversItsArea() {
    Painting cube = Painting.plain(SampleParts.box(10, 10, 10), RED);
    Picture picture = Renderer.render(cube, front(Projection.PARALLEL), 300, 200, PLAIN);
    // 10 mm of 20 mm over 200 px = 100 px a side, and one row or column more or less
    assertThat(count(picture, RED)).isBetween(100 * 99, 100 * 101);
    for (int y = 52; y < 148; y++) {
      for (int x = 102; x < 198; x++) {
        assertThat(picture.face(x, y)).as("face at %d, %d", x, y).isIn(4, 5);
      }
    }
  }

  @Test
  void cubeFrontIsLargerInPerspective() {
    Painting cube = Painting.plain(SampleParts.box(10, 10, 10), RED);
    Camera camera = front(Projection.PERSPECTIVE);
    Picture picture = Renderer.render(cube, camera, 300, 200, PLAIN);
    double side = 100 * camera.distanceMm() / (camera.distanceMm() - 5);
    assertThat((double) count(picture, RED)).isCloseTo(side * side, within(2 * side));
  }

  @Test
  void sphereCoversItsDisk() {
    Painting ball = Painting.plain(SampleParts.sphere(10, 400, 200), RED);
    Camera camera = new Camera(0, 0, 0, 100, 33, 21, 20, Projection.PARALLEL);
    Picture picture = Renderer.render(ball, camera, 500, 500, PLAIN);
    double radiusPx = 10 * 500 / camera.spanMm();
    assertThat(count(picture, RED) / (Math.PI * radiusPx * radiusPx)).isCloseTo(1, within(2e-3));
  }

  @Test
  void closedSurfaceHasNoGaps() {
    SurfaceMesh ball = SampleParts.sphere(10, 601, 307);
    Camera camera = Camera.fitting(ball, 12, 34, 1).zoomed(0.2);
    Picture picture = Renderer.render(Painting.plain(ball, RED), camera, 400, 400, PLAIN);
    assertThat(count(picture, RED)).isEqualTo(400 * 400);
  }

  @Test
  void faceOrderDoesNotMatter() {
    long seed = 20260101;
    SurfaceMesh mesh = SampleParts.sphere(10, 60, 30);
    int[] colours = new int[mesh.faceCount()];
    for (int f = 0; f < colours.length; f++) {
      colours[f] = f / 7 % 3;
    }
    int[] former = new int[mesh.faceCount()];
    SurfaceMesh mixed = SampleParts.shuffled(mesh, former, seed);
    int[] mixedColours = new int[former.length];
    for (int f = 0; f < former.length; f++) {
      mixedColours[f] = colours[former[f]];
    }
    int[] palette = {RED, GREEN, 0xFF2040D0};
    Camera camera = Camera.fitting(mesh, 25, 15, 1.5);
    RenderOptions lit = RenderOptions.USUAL;
    Picture a = Renderer.render(Painting.of(mesh, colours, palette), camera, 300, 200, lit);
    Picture b = Renderer.render(Painting.of(mixed, mixedColours, palette), camera, 300, 200, lit);
    assertThat(b.argb()).as("seed %d", seed).isEqualTo(a.argb());
    for (int i = 0; i < a.faces().length; i++) {
      int face = b.faces()[i];
      assertThat(face < 0 ? face : former[face]).isEqualTo(a.faces()[i]);
    }
  }

  @Test
  void coincidentFacesShowTheLowerColourInAnyOrder() {
    double[] p = {0, 0, 0, 10, 0, 0, 0, 0, 10};
    SurfaceMesh twice = SurfaceMesh.of(p, new int[] {0, 1, 2, 0, 1, 2});
    Camera camera = front(Projection.PERSPECTIVE);
    for (int[] colours : new int[][] {{0, 1}, {1, 0}}) {
      Painting painting = Painting.of(twice, colours, new int[] {RED, GREEN});
      Picture picture = Renderer.render(painting, camera, 200, 200, PLAIN);
      assertThat(count(picture, GREEN)).isZero();
      assertThat(count(picture, RED)).isGreaterThan(4000);
    }
  }

  @Test
  void occludedTriangleNeverShows() {
    // a wall at y = 0 and, 0.01 mm behind it, smaller triangles that it hides from any front view
    Random random = new Random(7);
    int hidden = 200;
    double[] p = new double[12 + 9 * hidden];
    double[] wall = {-50, 0, -50, 50, 0, -50, 50, 0, 50, -50, 0, 50};
    System.arraycopy(wall, 0, p, 0, 12);
    int[] c = new int[6 + 3 * hidden];
    int[] quad = {0, 1, 2, 0, 2, 3};
    System.arraycopy(quad, 0, c, 0, 6);
    int[] colours = new int[2 + hidden];
    for (int t = 0; t < hidden; t++) {
      for (int k = 0; k < 3; k++) {
        int v = 4 + 3 * t + k;
        p[3 * v] = -20 + 40 * random.nextDouble();
        p[3 * v + 1] = 0.01 + 5 * random.nextDouble();
        p[3 * v + 2] = -20 + 40 * random.nextDouble();
        c[6 + 3 * t + k] = v;
      }
      colours[2 + t] = 1;
    }
    Painting painting = Painting.of(SurfaceMesh.of(p, c), colours, new int[] {RED, GREEN});
    for (Projection projection : Projection.values()) {
      for (double yaw : new double[] {-40, 0, 35}) {
        Camera camera = new Camera(0, 0, 0, 80, yaw, 12, 35, projection);
        Picture front = Renderer.render(painting, camera, 320, 240, PLAIN);
        assertThat(count(front, GREEN)).as("%s yaw %s", projection, yaw).isZero();
        Picture back = Renderer.render(painting, camera.turned(180, -24), 320, 240, PLAIN);
        assertThat(count(back, GREEN)).as("%s yaw %s", projection, yaw).isGreaterThan(1000);
      }
    }
  }

  @Test
  void floorReachingBehindTheEyeIsCutAndNotDropped() {
    double[] p = {-500, -500, 0, 500, -500, 0, 500, 500, 0, -500, 500, 0};
    SurfaceMesh floor = SurfaceMesh.of(p, new int[] {0, 1, 2, 0, 2, 3});
    // eye 2 mm above the floor in its middle, looking level: everything below the horizon is floor
    Camera camera = new Camera(0, 10, 2, 10, 0, 0, 60, Projection.PERSPECTIVE);
    Picture picture = Renderer.render(Painting.plain(floor, RED), camera, 200, 200, PLAIN);
    double horizonPx = 100 + 2 / 500.0 * 100 / Math.tan(Math.toRadians(30));
    assertThat(count(picture, RED) / 200.0).isCloseTo(200 - horizonPx, within(1.0));
    for (int x = 0; x < 200; x++) {
      assertThat(picture.argb(x, 199)).isEqualTo(RED);
      assertThat(picture.argb(x, 99)).isEqualTo(WHITE);
    }
  }

  @Test
  void nothingBehindTheEyeShows() {
    Painting cube = Painting.plain(SampleParts.box(10, 10, 10), RED);
    Camera away = new Camera(5, -100, 5, 50, 180, 0, 60, Projection.PERSPECTIVE);
    assertThat(away.eye()[1]).isGreaterThan(0);
    Picture picture = Renderer.render(cube, away, 100, 100, PLAIN);
    assertThat(count(picture, WHITE)).isEqualTo(100 * 100);
  }

  @Test
  void regionShareOfPixelsIsItsShareOfArea() {
    int columns = 60;
    int rows = 40;
    int[] colours = SampleParts.stripes(columns, rows, 6, 2);
    Painting plate = Painting.of(SampleParts.plate(columns, rows), colours, new int[] {RED, GREEN});
    for (double pitch : new double[] {90, 55, 20}) {
      Camera camera =
          new Camera(0, 0, 0, 1, 17, pitch, 20, Projection.PARALLEL).fittedTo(plate.mesh(), 1.5);
      Picture picture = Renderer.render(plate, camera, 900, 600, PLAIN);
      double open = count(picture, RED);
      double all = open + count(picture, GREEN);
      assertThat(open / all).as("pitch %s", pitch).isCloseTo(1 / 3.0, within(2e-3));
      double areaPx = columns * rows * Math.sin(Math.toRadians(pitch));
      areaPx *= Math.pow(600 / camera.spanMm(), 2);
      assertThat(all / areaPx).as("pitch %s", pitch).isCloseTo(1, within(2e-3));
    }
  }

  @Test
  void samplesAverageColoursOnly() {
    Painting cube = Painting.plain(SampleParts.box(10, 10, 10), RED);
    Camera camera = front(Projection.PARALLEL).turned(20, 30);
    Picture fine = Renderer.render(cube, camera, 400, 400, PLAIN);
    Picture averaged = Renderer.render(cube, camera, 200, 200, PLAIN.withSamples(2));
    assertThat(averaged.width()).isEqualTo(200);
    for (int y = 0; y < 200; y++) {
      for (int x = 0; x < 200; x++) {
        int red = 0;
        for (int k = 0; k < 4; k++) {
          red += fine.argb(2 * x + (k & 1), 2 * y + (k >> 1)) == RED ? 1 : 0;
        }
        int green = averaged.argb(x, y) >> 8 & 255;
        double expected = 255 + (0x20 - 255) * red / 4.0;
        assertThat((double) green).isCloseTo(expected, within(0.6));
        assertThat(averaged.face(x, y)).isEqualTo(fine.face(2 * x, 2 * y));
      }
    }
  }

  @Test
  void threadsDoNotChangeTheBytes() {
    SurfaceMesh mesh = SampleParts.sphere(10, 200, 100);
    Painting ball = Painting.plain(mesh, 0xFF8090A0);
    Camera camera = Camera.fitting(mesh, 40, 20, 1).zoomed(0.31);
    RenderOptions lined = RenderOptions.USUAL.withOutline(0xFF000000);
    Picture one = Renderer.render(ball, camera, 333, 251, lined.withThreads(1));
    for (int threads : new int[] {2, 3, 7}) {
      Picture many = Renderer.render(ball, camera, 333, 251, lined.withThreads(threads));
      assertThat(many.argb()).isEqualTo(one.argb());
      assertThat(many.faces()).isEqualTo(one.faces());
    }
  }

  @Test
  void headlightShadesBothSidesAlike() {
    double[] p = {0, 0, 0, 10, 0, 0, 10, 0, 10};
    Camera camera = front(Projection.PARALLEL);
    RenderOptions lit = PLAIN.withLit(true);
    SurfaceMesh out = SurfaceMesh.of(p, new int[] {0, 1, 2});
    SurfaceMesh in = SurfaceMesh.of(p, new int[] {0, 2, 1});
    Picture a = Renderer.render(Painting.plain(out, 0xFF808080), camera, 60, 60, lit);
    Picture b = Renderer.render(Painting.plain(in, 0xFF808080), camera, 60, 60, lit);
    assertThat(b.argb()).isEqualTo(a.argb());
    int grey = a.argb(35, 40) & 255;
    // 0.45 + 0.55 / sqrt(1 + 0.35^2 + 0.3^2) = 0.9495 of 128
    assertThat(grey).isBetween(121, 122);
  }

  @Test
  void outlineRunsAlongTheColourBoundary() {
    Painting plate =
        Painting.of(
            SampleParts.plate(10, 10), SampleParts.stripes(10, 10, 10, 5), new int[] {RED, GREEN});
    Camera camera =
        new Camera(0, 0, 0, 1, 0, 90, 20, Projection.PARALLEL).fittedTo(plate.mesh(), 1);
    Picture picture = Renderer.render(plate, camera, 106, 106, PLAIN.withOutline(0xFF000000));
    int black = 0;
    for (int x = 20; x < 86; x++) {
      black += picture.argb(x, 53) == 0xFF000000 ? 1 : 0;
    }
    assertThat(black).isEqualTo(1);
  }

  @Test
  void refusesAPictureOfNoSize() {
    Painting cube = Painting.plain(SampleParts.box(1, 1, 1), RED);
    assertThatThrownBy(
            () -> Renderer.render(cube, front(Projection.PARALLEL), 0, 10, RenderOptions.USUAL))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0 x 10 px");
  }

  private static int count(Picture picture, int argb) {
    int n = 0;
    for (int pixel : picture.argb()) {
      n += pixel == argb ? 1 : 0;
    }
    return n;
  }
}
