package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Random drawings against two general-purpose oracles: the JDK's rasteriser and JTS overlay. */
class SvgRandomTest {
  private static final int PIXELS = 600;

  /**
   * The same shapes drawn by java.awt (fill and BasicStroke) on 600 x 600 pixels, against our rings
   * filled by the same rasteriser. Strokes are of straight lines here: the JDK's stroker strays up
   * to 0.07 mm along curves at this scale; {@link StrokeBandTest} holds curves to their definition.
   */
  @Test
  void rasteriserAgreesPixelByPixel() {
    for (long seed = 1; seed <= 60; seed++) {
      Random random = new Random(seed);
      BufferedImage image = new BufferedImage(PIXELS, PIXELS, BufferedImage.TYPE_BYTE_GRAY);
      Graphics2D g = image.createGraphics();
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      g.setColor(Color.WHITE);
      g.fillRect(0, 0, PIXELS, PIXELS);
      g.scale(PIXELS / 100.0, PIXELS / 100.0);
      StringBuilder svg = new StringBuilder();
      int shapes = 1 + random.nextInt(12);
      for (int i = 0; i < shapes; i++) {
        svg.append(shape(random, g));
      }
      Artwork art = Drawings.read(Drawings.sheet(svg.toString()));
      BufferedImage ours = drawn(art);
      int strong = 0;
      double sum = 0;
      for (int p = 0; p < PIXELS * PIXELS; p++) {
        int theirs = image.getRaster().getSample(p % PIXELS, p / PIXELS, 0);
        int difference = ours.getRaster().getSample(p % PIXELS, p / PIXELS, 0) - theirs;
        sum += difference / 255.0;
        strong += Math.abs(difference) > 100 ? 1 : 0;
      }
      // same rasteriser, so only rounding may differ: no pixel by more than 40 %, save slivers
      assertThat(strong).as("seed %d, drawing %s", seed, svg).isLessThanOrEqualTo(5);
      assertThat(sum / 36) // mm2; 6 x 6 pixels to the mm; edges painted over edges blend in theirs
          .as("seed %d, drawing %s", seed, svg)
          .isCloseTo(0, within(0.5 + 0.003 * art.edgeLengthMm()));
      Geometry geometry = Drawings.geometry(art);
      assertThat(geometry.isValid()).as("seed %d, drawing %s", seed, svg).isTrue();
      assertThat(geometry.getArea())
          .as("seed %d", seed)
          .isCloseTo(art.opaqueAreaMm2(), within(1e-6));
      Artwork again = Drawings.read(Drawings.sheet(svg.toString()));
      assertThat(again).as("seed %d", seed).isEqualTo(art);
      assertThat(Artwork.of(100, 100, art.xy(), art.ringStarts(), art.flatteningMm(), art.notes()))
          .as("seed %d", seed)
          .isEqualTo(art);
    }
  }

  private static BufferedImage drawn(Artwork art) {
    BufferedImage image = new BufferedImage(PIXELS, PIXELS, BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, PIXELS, PIXELS);
    g.setColor(Color.BLACK);
    g.scale(PIXELS / 100.0, PIXELS / 100.0);
    Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
    for (int r = 0; r < art.ringCount(); r++) {
      for (int p = art.ringStarts()[r]; p < art.ringStarts()[r + 1]; p++) {
        double x = 50 + art.xy()[2 * p];
        double y = 50 - art.xy()[2 * p + 1];
        if (p == art.ringStarts()[r]) {
          path.moveTo(x, y);
        } else {
          path.lineTo(x, y);
        }
      }
      path.closePath();
    }
    g.fill(path);
    return image;
  }

  /** Draws a random path with java.awt and returns the same path as SVG. */
  private static String shape(Random random, Graphics2D g) {
    Path2D path = new Path2D.Double(random.nextBoolean() ? Path2D.WIND_NON_ZERO : 0);
    StringBuilder d = new StringBuilder();
    double[] p = points(random, 2);
    path.moveTo(p[0], p[1]);
    d.append(text("M", p));
    int pieces = 2 + random.nextInt(5);
    boolean fill = random.nextBoolean();
    for (int i = 0; i < pieces; i++) {
      switch (fill ? random.nextInt(3) : 0) {
        case 0 -> {
          p = points(random, 2);
          path.lineTo(p[0], p[1]);
          d.append(text("L", p));
        }
        case 1 -> {
          p = points(random, 4);
          path.quadTo(p[0], p[1], p[2], p[3]);
          d.append(text("Q", p));
        }
        default -> {
          p = points(random, 6);
          path.curveTo(p[0], p[1], p[2], p[3], p[4], p[5]);
          d.append(text("C", p));
        }
      }
    }
    boolean closed = random.nextBoolean();
    if (closed) {
      path.closePath();
      d.append("Z");
    }
    boolean black = random.nextInt(3) > 0;
    g.setColor(black ? Color.BLACK : Color.WHITE);
    String colour = black ? "black" : "white";
    if (fill) {
      g.fill(path);
      String rule = path.getWindingRule() == Path2D.WIND_NON_ZERO ? "nonzero" : "evenodd";
      return "<path fill='" + colour + "' fill-rule='" + rule + "' d='" + d + "'/>\n";
    }
    int cap = random.nextInt(3);
    int join = random.nextInt(3);
    double width = 0.5 + random.nextInt(6);
    boolean dashed = random.nextInt(3) == 0;
    float[] dashes = {7, 4, 3, 5};
    g.setStroke(new BasicStroke((float) width, cap, join, 4, dashed ? dashes : null, 2));
    g.draw(path);
    return "<path fill='none' stroke='%s' stroke-width='%s' stroke-linecap='%s' stroke-linejoin='%s'%s d='%s'/>\n"
        .formatted(
            colour,
            width,
            new String[] {"butt", "round", "square"}[cap],
            new String[] {"miter", "round", "bevel"}[join],
            dashed ? " stroke-dasharray='7 4 3 5' stroke-dashoffset='2'" : "",
            d);
  }

  private static double[] points(Random random, int n) {
    double[] p = new double[n];
    for (int i = 0; i < n; i++) {
      p[i] = random.nextInt(1100) / 10.0 - 5;
    }
    return p;
  }

  private static String text(String command, double[] p) {
    StringBuilder out = new StringBuilder(command);
    for (double each : p) {
      out.append(String.format(Locale.ROOT, "%.1f ", each));
    }
    return out.toString();
  }

  /** Rectangles and triangles at random angles, black and white, folded by JTS OverlayNG. */
  @Test
  void overlayOfPolygonsAgreesWithJts() {
    for (long seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      Geometry expected = Drawings.JTS.createPolygon();
      StringBuilder svg = new StringBuilder();
      int shapes = 2 + random.nextInt(30);
      for (int i = 0; i < shapes; i++) {
        List<Coordinate> ring = new ArrayList<>();
        StringBuilder points = new StringBuilder();
        int corners = 3 + random.nextInt(3);
        double cx = 20 + 60 * random.nextDouble();
        double cy = 20 + 60 * random.nextDouble();
        for (int k = 0; k < corners; k++) {
          double angle = 2 * Math.PI * (k + 0.8 * random.nextDouble()) / corners;
          double r = 2 + 17 * random.nextDouble();
          double x = Math.rint(10 * (cx + r * Math.cos(angle))) / 10;
          double y = Math.rint(10 * (cy + r * Math.sin(angle))) / 10;
          ring.add(new Coordinate(x - 50, 50 - y));
          points.append(x).append(' ').append(y).append(' ');
        }
        ring.add(ring.get(0));
        Geometry polygon = Drawings.JTS.createPolygon(ring.toArray(new Coordinate[0]));
        boolean black = random.nextInt(3) > 0;
        expected =
            OverlayNGRobust.overlay(
                expected, polygon, black ? OverlayNG.UNION : OverlayNG.DIFFERENCE);
        svg.append("<polygon fill='").append(black ? "black" : "white");
        svg.append("' points='").append(points).append("'/>\n");
      }
      Artwork art = Drawings.read(Drawings.sheet(svg.toString()));
      assertThat(art.opaqueAreaMm2())
          .as("seed %d", seed)
          .isCloseTo(expected.getArea(), within(1e-5));
      Geometry difference =
          OverlayNGRobust.overlay(Drawings.geometry(art), expected, OverlayNG.SYMDIFFERENCE);
      assertThat(difference.getArea()).as("seed %d", seed).isLessThan(1e-5);
    }
  }
}
