package org.amperskin.picture;

import java.util.Arrays;

/**
 * Draws a painting into an array, with no display.
 *
 * <p>Definition: the face nearest to the eye wins each sample; among faces at the same depth the
 * one with the lower palette index, then the lower number. A sample on an edge shared by two faces
 * belongs to one of them (top-left rule), so a closed surface has neither gaps nor double hits.
 *
 * <p>Guaranteed: same bytes on any number of threads; colours do not depend on the order of faces;
 * faces that reach behind the eye are cut at a near plane, a thousandth of the distance in front of
 * it, and not left out. A parallel camera has no near plane. Both sides of a face are drawn alike.
 * Not guaranteed: transparency, shadows, smooth shading.
 *
 * <p>Method: depth buffer of 32-bit floats over edge functions in whole numbers of 1/256 sample;
 * depth is {@code 1/w}, or the height above the target for a parallel camera, both linear on the
 * picture. Shading after visibility: 0.45 + 0.55 |n.l| with the light a little above and to the
 * left of the eye, so that slopes to either side differ.
 *
 * <p>Cost: one pass over the faces a band of rows, plus the covered samples; 8 bytes a sample.
 */
public final class Renderer {
  private static final double AMBIENT = 0.45;
  private static final double LIGHT_UP = 0.35;
  private static final double LIGHT_LEFT = 0.3;
  private static final long MOST_SAMPLES = 1L << 28;

  private Renderer() {}

  /**
   * Draws.
   *
   * @param painting what to draw
   * @param camera from where
   * @param width pixels across, 1 or more
   * @param height pixels down, 1 or more
   * @param options how
   */
  public static Picture render(
      Painting painting, Camera camera, int width, int height, RenderOptions options) {
    int s = options.samples();
    if (width < 1 || height < 1 || (long) width * s * height * s > MOST_SAMPLES) {
      throw new IllegalArgumentException(
          width + " x " + height + " px with " + s + " samples a side, not 1.." + MOST_SAMPLES);
    }
    int w = width * s;
    int h = height * s;
    View view = new View(painting.mesh(), camera, w, h, options.threads());
    float[] depth = new float[w * h];
    int[] faces = new int[w * h];
    int bands = options.threads() == 1 ? 1 : Math.min(h, 2 * options.threads());
    Work.split(
        bands,
        options.threads(),
        band -> {
          int top = (int) ((long) h * band / bands);
          int end = (int) ((long) h * (band + 1) / bands);
          Arrays.fill(depth, top * w, end * w, Float.NEGATIVE_INFINITY);
          Arrays.fill(faces, top * w, end * w, Picture.NO_FACE);
          new Raster(painting, view, depth, faces, w, top, end).drawAll();
        });
    int[] argb = new int[width * height];
    int[] shown = s == 1 ? faces : new int[width * height];
    Work.split(
        bands,
        options.threads(),
        band -> {
          int top = (int) ((long) height * band / bands);
          int end = (int) ((long) height * (band + 1) / bands);
          new Shading(painting, camera, options, faces, w, h).resolve(argb, shown, width, top, end);
        });
    return new Picture(width, height, argb, shown);
  }

  /** Turns face numbers into colours and averages the samples of a pixel. */
  private static final class Shading {
    private final Painting painting;
    private final RenderOptions options;
    private final int[] faces;
    private final int w;
    private final int h;
    private final double[] light = new double[3];
    private int lastFace = Picture.NO_FACE;
    private int lastColour;

    Shading(Painting painting, Camera camera, RenderOptions options, int[] faces, int w, int h) {
      this.painting = painting;
      this.options = options;
      this.faces = faces;
      this.w = w;
      this.h = h;
      double[] e = camera.eye();
      double[] u = camera.up();
      double[] r = camera.right();
      double length = Math.sqrt(1 + LIGHT_UP * LIGHT_UP + LIGHT_LEFT * LIGHT_LEFT);
      for (int k = 0; k < 3; k++) {
        light[k] = (e[k] + LIGHT_UP * u[k] - LIGHT_LEFT * r[k]) / length;
      }
    }

    void resolve(int[] argb, int[] shown, int width, int top, int end) {
      int s = options.samples();
      int n = s * s;
      for (int y = top; y < end; y++) {
        for (int x = 0; x < width; x++) {
          if (s == 1) {
            argb[y * width + x] = colour(x, y);
            continue;
          }
          shown[y * width + x] = faces[y * s * w + x * s];
          int a = 0;
          int r = 0;
          int g = 0;
          int b = 0;
          for (int j = 0; j < s; j++) {
            for (int i = 0; i < s; i++) {
              int c = colour(x * s + i, y * s + j);
              int alpha = c >>> 24;
              a += alpha;
              r += (c >> 16 & 255) * alpha;
              g += (c >> 8 & 255) * alpha;
              b += (c & 255) * alpha;
            }
          }
          argb[y * width + x] =
              a == 0
                  ? 0
                  : (a + n / 2) / n << 24
                      | (r + a / 2) / a << 16
                      | (g + a / 2) / a << 8
                      | (b + a / 2) / a;
        }
      }
    }

    private int colour(int x, int y) {
      int face = faces[y * w + x];
      if (options.outlineArgb() != 0 && onOutline(x, y, face)) {
        return options.outlineArgb();
      }
      if (face == Picture.NO_FACE) {
        return options.backgroundArgb();
      }
      if (face != lastFace) {
        lastFace = face;
        lastColour = shaded(face);
      }
      return lastColour;
    }

    private boolean onOutline(int x, int y, int face) {
      int own = colourIndex(face);
      for (int d = 1; d <= options.samples(); d++) {
        if (x + d < w && colourIndex(faces[y * w + x + d]) != own
            || y + d < h && colourIndex(faces[(y + d) * w + x]) != own) {
          return true;
        }
      }
      return false;
    }

    private int colourIndex(int face) {
      return face == Picture.NO_FACE ? -1 : painting.colourOf(face);
    }

    private int shaded(int face) {
      int argb = painting.argb(painting.colourOf(face)) | 0xFF000000;
      if (!options.lit()) {
        return argb;
      }
      double[] p = painting.mesh().positions();
      int a = 3 * painting.mesh().corner(face, 0);
      int b = 3 * painting.mesh().corner(face, 1);
      int c = 3 * painting.mesh().corner(face, 2);
      double ux = p[b] - p[a];
      double uy = p[b + 1] - p[a + 1];
      double uz = p[b + 2] - p[a + 2];
      double vx = p[c] - p[a];
      double vy = p[c + 1] - p[a + 1];
      double vz = p[c + 2] - p[a + 2];
      double nx = uy * vz - uz * vy;
      double ny = uz * vx - ux * vz;
      double nz = ux * vy - uy * vx;
      double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
      double lambert =
          length == 0 ? 0 : Math.abs(nx * light[0] + ny * light[1] + nz * light[2]) / length;
      double k = AMBIENT + (1 - AMBIENT) * lambert;
      int red = (int) Math.round((argb >> 16 & 255) * k);
      int green = (int) Math.round((argb >> 8 & 255) * k);
      int blue = (int) Math.round((argb & 255) * k);
      return 0xFF000000 | red << 16 | green << 8 | blue;
    }
  }
}
