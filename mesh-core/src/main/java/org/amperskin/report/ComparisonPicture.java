package org.amperskin.report;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.job.Comparison;
import org.amperskin.job.Estimate;
import org.amperskin.picture.Camera;
import org.amperskin.picture.Hatch;
import org.amperskin.picture.Hatching;
import org.amperskin.picture.Legend;
import org.amperskin.picture.Painting;
import org.amperskin.picture.Picture;
import org.amperskin.picture.RegionColour;
import org.amperskin.picture.RenderOptions;
import org.amperskin.picture.Renderer;
import org.amperskin.picture.Typeface;
import org.amperskin.region.RegionKind;
import org.amperskin.region.SplitMesh;

/**
 * Jobs side by side as one picture: the part painted by region, the figures under it.
 *
 * <p>Definition: all parts are seen from the same side, the one that the first job's pattern faces,
 * and at the same scale. Painted is the region of the last step that plates through a film, else
 * the first film, else the whole skin. Figures are those of {@link Comparison} that tell the jobs
 * apart, the pattern's always.
 *
 * <p>Guaranteed: colours are those of the viewer, hatched besides; nothing is half-written. Not
 * guaranteed: that a perspective picture keeps sizes at the part's far side. Cost: a rendering a
 * job.
 */
public final class ComparisonPicture {
  private static final int CARD = 620;
  private static final int VIEW_WIDTH = 580;
  private static final int VIEW_HEIGHT = 480;
  private static final int EDGE = 20;
  private static final int ROW = 24;
  private static final int ACROSS = 3;
  private static final double ASPECT = (double) VIEW_WIDTH / VIEW_HEIGHT;
  private static final double ASIDE_DEGREES = 12;

  /** Room for the legend under the part, as shares of the picture's height. */
  private static final double SMALLER = 1.25;

  private static final double HIGHER = 0.1;
  private static final Color PAPER = Color.WHITE;
  private static final Color INK = new Color(0x1B1F24);
  private static final Color FAINT = new Color(0x5A626B);
  private static final Color LINE = new Color(0xD5D9DE);

  private final Comparison comparison;
  private final List<SplitMesh> painted;
  private final List<Comparison.Row> rows;

  private ComparisonPicture(Comparison comparison) {
    this.comparison = comparison;
    this.painted = comparison.jobs().stream().map(ComparisonPicture::painted).toList();
    this.rows = rows(comparison);
  }

  /** Draws the jobs. */
  public static BufferedImage of(Comparison comparison) {
    return new ComparisonPicture(comparison).draw();
  }

  /**
   * Draws the jobs into a PNG file.
   *
   * @throws IOException if it cannot be written
   */
  public static void write(Comparison comparison, Path file) throws IOException {
    Picture.writePng(of(comparison), file);
  }

  private static List<Comparison.Row> rows(Comparison comparison) {
    List<Comparison.Row> kept = new ArrayList<>();
    for (Comparison.Row row : comparison.rows()) {
      boolean differs =
          row.spread().orElse(0) > 0 || row.values().stream().anyMatch(v -> v.isEmpty());
      if (row.pattern() || differs) {
        kept.add(row);
      }
    }
    return kept;
  }

  private static SplitMesh painted(Estimate e) {
    String name = e.job().patternRegion().orElse(e.regions().keySet().iterator().next());
    return e.regions().get(name).split();
  }

  /** One camera for all: the pattern's side, and the largest part fills its picture. */
  private List<Camera> cameras() {
    double[] facing = facing(painted.get(0));
    double yaw = Math.toDegrees(Math.atan2(facing[0], -facing[1])) + ASIDE_DEGREES;
    double pitch = Math.toDegrees(Math.asin(facing[2]));
    pitch = Math.max(-80, Math.min(80, pitch + ASIDE_DEGREES));
    List<Camera> fitted = new ArrayList<>();
    double farthest = 0;
    for (SplitMesh split : painted) {
      Camera one = Camera.fitting(split.mesh(), yaw, pitch, ASPECT);
      fitted.add(one);
      farthest = Math.max(farthest, one.distanceMm());
    }
    double distance = farthest;
    return fitted.stream()
        .map(c -> c.zoomed(SMALLER * distance / c.distanceMm()))
        .map(c -> c.panned(0, HIGHER * c.spanMm()))
        .toList();
  }

  /** Where the pattern looks: the mean normal of what a film covers or opens, of length 1. */
  private static double[] facing(SplitMesh split) {
    double[] sum = new double[3];
    for (int f = 0; f < split.mesh().faceCount(); f++) {
      RegionKind kind = split.kind(f);
      if (kind == RegionKind.EXPOSED || kind == RegionKind.MASKED) {
        double[] n = split.mesh().unitNormal(f);
        double area = split.mesh().faceAreaMm2(f);
        for (int k = 0; k < 3; k++) {
          sum[k] += area * n[k];
        }
      }
    }
    double length = Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]);
    return length > 1e-6
        ? new double[] {sum[0] / length, sum[1] / length, sum[2] / length}
        : new double[] {0.5, -0.8, 0.33};
  }

  private BufferedImage draw() {
    int jobs = comparison.jobs().size();
    int across = Math.min(ACROSS, jobs);
    int down = (jobs + across - 1) / across;
    int high = 2 * EDGE + 2 * ROW + VIEW_HEIGHT + (rows.size() + 1) * ROW;
    BufferedImage image =
        new BufferedImage(across * CARD, down * high, BufferedImage.TYPE_INT_ARGB);
    Graphics2D g = image.createGraphics();
    try {
      g.setRenderingHint(
          RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
      g.setColor(PAPER);
      g.fillRect(0, 0, image.getWidth(), image.getHeight());
      List<Camera> cameras = cameras();
      for (int j = 0; j < jobs; j++) {
        card(g, j, cameras.get(j), j % across * CARD, j / across * high, high);
      }
    } finally {
      g.dispose();
    }
    return image;
  }

  private void card(Graphics2D g, int j, Camera camera, int left, int top, int high) {
    g.setColor(LINE);
    g.drawRect(left + EDGE / 2, top + EDGE / 2, CARD - EDGE, high - EDGE);
    Estimate e = comparison.jobs().get(j);
    int room = CARD - 2 * EDGE;
    int y = top + EDGE + ROW;
    g.setColor(INK);
    g.setFont(Letters.BOLD);
    g.drawString(fitting(g, e.job().name(), room), left + EDGE, y - 4);
    g.setFont(Letters.REGULAR);
    g.setColor(FAINT);
    String part = e.part().file().getFileName().toString();
    g.drawString(
        fitting(g, part + e.job().patternRegion().map(r -> ", " + r).orElse(""), room),
        left + EDGE,
        y + ROW - 6);
    y += ROW;
    g.drawImage(view(painted.get(j), camera), left + EDGE, y, null);
    y += VIEW_HEIGHT + ROW;
    for (Comparison.Row row : rows) {
      figure(g, row, row.values().get(j), left, y, room);
      y += ROW;
    }
  }

  private static void figure(
      Graphics2D g, Comparison.Row row, OptionalDouble value, int left, int y, int room) {
    String text = Figures.orDash(value, v -> CompareText.shown(v, row.unit()));
    g.setFont(Letters.REGULAR);
    FontMetrics metrics = g.getFontMetrics();
    int width = metrics.stringWidth(text);
    g.setColor(FAINT);
    g.drawString(fitting(g, row.label(), room - width - EDGE), left + EDGE, y);
    g.setColor(INK);
    g.drawString(text, left + EDGE + room - width, y);
  }

  private static BufferedImage view(SplitMesh split, Camera camera) {
    Painting painting = Painting.regions(split);
    Picture plain = Renderer.render(painting, camera, VIEW_WIDTH, VIEW_HEIGHT, RenderOptions.USUAL);
    Picture hatched =
        Hatching.over(
            plain,
            painting,
            Arrays.stream(RegionKind.values())
                .map(k -> RegionColour.of(k).hatch())
                .toArray(Hatch[]::new));
    List<Legend.Entry> entries = new ArrayList<>();
    for (RegionKind kind : RegionKind.values()) {
      double area = split.areaMm2(kind);
      if (area > 0) {
        RegionColour colour = RegionColour.of(kind);
        entries.add(
            new Legend.Entry(colour.argb(), colour.hatch(), kind.label(), Figures.area(area)));
      }
    }
    return new Legend(entries).drawnOn(hatched).image();
  }

  /** The text, or as much of it as fits with dots at its end. */
  private static String fitting(Graphics2D g, String text, int room) {
    FontMetrics metrics = g.getFontMetrics();
    if (metrics.stringWidth(text) <= room) {
      return text;
    }
    int end = text.length();
    while (end > 1 && metrics.stringWidth(text.substring(0, end) + "...") > room) {
      end--;
    }
    return text.substring(0, end) + "...";
  }

  /** Faces, loaded when first a picture is drawn. */
  private static final class Letters {
    private static final Font REGULAR = Typeface.REGULAR.at(15);
    private static final Font BOLD = Typeface.BOLD.at(19);
  }
}
