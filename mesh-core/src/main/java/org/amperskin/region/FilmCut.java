package org.amperskin.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.amperskin.geom.Progress;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.ArtworkTree;
import org.amperskin.pattern.Sheets;

/**
 * The light and shade of a film on a skin, cut exactly.
 *
 * <p>Definition: every piece of skin is in the light, behind opaque artwork, or not reached: turned
 * away, edge-on within {@value #EDGE_ON} of the normal's length, or in the shadow of other skin.
 *
 * <p>Guaranteed: pieces follow the artwork's straight edges and the shadows' outlines to rounding;
 * the told error bounds what flattened curves and slivers can change; the same bytes on any number
 * of threads. Not guaranteed: anything about blur; the light is parallel.
 *
 * <p>Method: {@link Shadows} and {@link ArtworkTree}; areas are of the cut pieces in space, that is
 * flat area over the cosine of the slope. Cost: a few seconds a million faces.
 */
final class FilmCut {
  /** Code of a piece in the light. */
  static final int LIT = 0;

  /** Code of a piece behind opaque artwork. */
  static final int SHADED = 1;

  /** Code of a piece in the dark beside the artwork's sheet. */
  static final int BESIDE = 2;

  /** Code of a piece that is not reached. */
  static final int UNREACHED = 3;

  /** Number of codes. */
  static final int CODES = 4;

  private static final double EDGE_ON = 1e-6;
  private static final int BLOCK = 4096;

  private final Laid laid;
  private final Partition in;
  private final FilmFrame frame;
  private final ArtworkTree tree;
  private final double scale;
  private final double halfWidth;
  private final double halfHeight;

  private FilmCut(Laid laid, ArtworkTree tree, double scale, Artwork artwork) {
    this.halfWidth = artwork.widthMm() / 2;
    this.halfHeight = artwork.heightMm() / 2;
    this.laid = laid;
    this.in = laid.pieces();
    this.frame = laid.frame();
    this.tree = tree;
    this.scale = scale;
  }

  /**
   * The outcome: old codes times {@link #CODES} plus the new one.
   *
   * @param pieces the finer partition
   * @param edgeLengthMm length on the skin of the lines between light and shade (mm)
   * @param errorMm2 largest error of the lit and of the shaded area (mm2)
   */
  record Result(Partition pieces, double edgeLengthMm, double errorMm2) {}

  /**
   * Lights pieces of skin through a film.
   *
   * @param laid the pieces behind the film
   */
  static Result light(Laid laid, MaskFilm film, Progress progress) {
    Placement placement = film.placement();
    double reach = laid.frame().reach();
    Artwork tiled = Sheets.repeated(film.artwork(), placement.columns(), placement.rows());
    Artwork sheet =
        Sheets.surrounded(tiled, 2.2 * reach + 1, 2.2 * reach + 1, !film.surroundClear());
    FilmCut cut = new FilmCut(laid, ArtworkTree.of(sheet), placement.scale(), tiled);
    return cut.run(sheet.flatteningMm(), progress);
  }

  private Result run(double flatteningMm, Progress progress) {
    int faces = in.mesh().faceCount();
    int blocks = (faces + BLOCK - 1) / BLOCK;
    Block[] done = new Block[blocks];
    ThreadLocal<Cutter> cutters =
        ThreadLocal.withInitial(() -> laid.shadows() == null ? null : laid.shadows().cutter());
    IntStream.range(0, blocks)
        .parallel()
        .forEach(
            b -> {
              Block block = new Block(cutters.get());
              int end = Math.min(faces, (b + 1) * BLOCK);
              for (int f = b * BLOCK; f < end; f++) {
                block.face(f);
              }
              done[b] = block;
              progress.at("cutting", (double) b / blocks);
            });
    double edges = 0;
    double slivers = 0;
    List<PieceBuffer> buffers = new ArrayList<>(blocks);
    for (Block block : done) {
      edges += block.edgeLength;
      slivers += block.slivers;
      buffers.add(block.out);
    }
    double error = slivers + edges * (flatteningMm * scale + laid.shiftMm());
    return new Result(PieceBuffer.join(in, buffers), edges, error);
  }

  /** One stretch of faces, cut by one thread. */
  private final class Block implements ArtworkTree.Sink {
    private final Cutter cutter;
    private final PieceBuffer out = new PieceBuffer();
    private final List<double[]> lit = new ArrayList<>();
    private final List<double[]> shaded = new ArrayList<>();
    private final double[] triangle = new double[6];
    private double[] weights = new double[3 * 16];
    private double edgeLength;
    private double slivers;
    private int face;
    private double det;

    Block(Cutter cutter) {
      this.cutter = cutter;
    }

    void face(int f) {
      face = f;
      SurfaceMesh mesh = in.mesh();
      int code = in.code(f) * CODES;
      double seen = frame.doubledArea(mesh, f) * scale * scale;
      double area = 2 * mesh.faceAreaMm2(f);
      if (!laid.covers(in.parent(f)) || !(seen > EDGE_ON * area)) {
        out.whole(mesh, f, code + UNREACHED);
        return;
      }
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(f, k);
        triangle[2 * k] = frame.x(v);
        triangle[2 * k + 1] = frame.y(v);
      }
      det =
          (triangle[2] - triangle[0]) * (triangle[5] - triangle[1])
              - (triangle[3] - triangle[1]) * (triangle[4] - triangle[0]);
      lit.clear();
      shaded.clear();
      Cutter.Light light = shadow(f, area);
      if (light == Cutter.Light.HIDDEN) {
        out.whole(mesh, f, code + UNREACHED);
        return;
      }
      if (light == Cutter.Light.SEEN) {
        tree.cut(triangle, 3, this);
        if (lit.isEmpty() || shaded.isEmpty()) {
          out.whole(mesh, f, code + (lit.isEmpty() ? dark(triangle) : LIT));
          return;
        }
      } else {
        for (double[] p : cutter.seen()) {
          tree.cut(p, p.length / 2, this);
        }
        for (double[] p : cutter.hidden()) {
          polygon(p, code + UNREACHED);
        }
      }
      for (double[] p : lit) {
        polygon(p, code + LIT);
      }
      for (double[] p : shaded) {
        polygon(p, code + dark(p));
      }
    }

    /** Code of a dark piece: on the sheet or beside it, by its middle. */
    private int dark(double[] p) {
      double x = 0;
      double y = 0;
      for (int i = 0; i < p.length; i += 2) {
        x += p[i];
        y += p[i + 1];
      }
      int n = p.length / 2;
      boolean on = Math.abs(x / n) <= halfWidth && Math.abs(y / n) <= halfHeight;
      return on ? SHADED : BESIDE;
    }

    private Cutter.Light shadow(int f, double area) {
      if (cutter == null) {
        return Cutter.Light.SEEN;
      }
      double before = cutter.sliverArea();
      Cutter.Light light = cutter.cut(laid.caster(f), triangle, 3);
      slivers += (cutter.sliverArea() - before) * area / Math.abs(det);
      return light;
    }

    @Override
    public void piece(ArtworkTree.Cover cover, double[] p, int n) {
      (cover == ArtworkTree.Cover.CLEAR ? lit : shaded).add(Arrays.copyOf(p, 2 * n));
    }

    @Override
    public void edge(double x0, double y0, double x1, double y1) {
      double[] w = new double[6];
      weigh(x0, y0, w, 0);
      weigh(x1, y1, w, 3);
      double dx = 0;
      double dy = 0;
      double dz = 0;
      SurfaceMesh mesh = in.mesh();
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(face, k);
        double d = w[3 + k] - w[k];
        dx += d * mesh.x(v);
        dy += d * mesh.y(v);
        dz += d * mesh.z(v);
      }
      edgeLength += Math.sqrt(dx * dx + dy * dy + dz * dz);
    }

    private void polygon(double[] p, int code) {
      int n = p.length / 2;
      if (weights.length < 3 * n) {
        weights = new double[6 * n];
      }
      for (int i = 0; i < n; i++) {
        weigh(p[2 * i], p[2 * i + 1], weights, 3 * i);
      }
      out.polygon(in.mesh(), face, weights, n, code);
    }

    private void weigh(double x, double y, double[] w, int at) {
      double px = x - triangle[0];
      double py = y - triangle[1];
      double ux = triangle[2] - triangle[0];
      double uy = triangle[3] - triangle[1];
      double vx = triangle[4] - triangle[0];
      double vy = triangle[5] - triangle[1];
      double s = (px * vy - py * vx) / det;
      double t = (ux * py - uy * px) / det;
      w[at] = 1 - s - t;
      w[at + 1] = s;
      w[at + 2] = t;
    }
  }
}
