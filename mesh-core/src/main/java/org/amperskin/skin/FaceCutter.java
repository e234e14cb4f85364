package org.amperskin.skin;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.amperskin.geom.Progress;
import org.amperskin.mesh.BodyParity;
import org.amperskin.mesh.FacePairs;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Cuts all crossed faces and asks for each cell which bodies lie around its two sides. A face that
 * another one touches along an edge counts too: fluid beside it may end there.
 *
 * <p>Guaranteed: the same cells on any number of threads. Cost: some ten microseconds a cell.
 */
final class FaceCutter {
  private static final int BLOCK = 64;
  private static final int TRIES = 5;

  private final MeshDiagnosis diagnosis;
  private final SurfaceMesh mesh;
  private final BodyParity parity;

  private FaceCutter(MeshDiagnosis diagnosis, BodyParity parity) {
    this.diagnosis = diagnosis;
    this.mesh = diagnosis.mesh();
    this.parity = parity;
  }

  /** The cuts by face, null for faces that nothing crosses. */
  static FaceCut[] cut(MeshDiagnosis diagnosis, BodyParity parity, Progress progress) {
    return new FaceCutter(diagnosis, parity).run(progress);
  }

  private FaceCut[] run(Progress progress) {
    int faces = mesh.faceCount();
    List<FacePairs> both = List.of(diagnosis.crossings(), diagnosis.touches());
    int[] start = new int[faces + 1];
    for (FacePairs pairs : both) {
      for (int i = 0; i < pairs.count(); i++) {
        start[pairs.first(i) + 1]++;
        start[pairs.second(i) + 1]++;
      }
    }
    for (int f = 0; f < faces; f++) {
      start[f + 1] += start[f];
    }
    int[] partner = new int[start[faces]];
    int[] next = Arrays.copyOf(start, faces);
    for (FacePairs pairs : both) {
      for (int i = 0; i < pairs.count(); i++) {
        partner[next[pairs.first(i)]++] = pairs.second(i);
        partner[next[pairs.second(i)]++] = pairs.first(i);
      }
    }
    int[] list = IntStream.range(0, faces).filter(f -> start[f] < start[f + 1]).toArray();
    FaceCut[] cuts = new FaceCut[faces];
    int blocks = (list.length + BLOCK - 1) / BLOCK;
    IntStream.range(0, blocks)
        .parallel()
        .forEach(
            b -> {
              FaceCells cells = new FaceCells(mesh);
              for (int i = b * BLOCK; i < Math.min(list.length, (b + 1) * BLOCK); i++) {
                int f = list[i];
                cuts[f] = cutOne(f, cells, cells.cut(f, partner, start[f], start[f + 1]));
              }
              progress.at("cutting crossed faces", (double) b / blocks);
            });
    return cuts;
  }

  private FaceCut cutOne(int f, FaceCells cells, List<double[]> outlines) {
    FaceCut cut = new FaceCut(f, cells.axis(), outlines.size());
    double[] n = mesh.unitNormal(f);
    for (int c = 0; c < cut.cells(); c++) {
      cut.outline[c] = outlines.get(c);
      cut.weights[c] = cells.weights(outlines.get(c));
      cut.share[c] = cells.share(outlines.get(c));
      cut.kind[c] = FaceCut.UNSURE;
      for (int attempt = 0; attempt < TRIES && cut.kind[c] == FaceCut.UNSURE; attempt++) {
        tell(cut, c, cells, n, attempt);
      }
    }
    return cut;
  }

  private void tell(FaceCut cut, int c, FaceCells cells, double[] n, int attempt) {
    double[] flat = middle(cut.outline[c], attempt);
    int[] lying =
        cells.flatPartners().stream()
            .filter(g -> cells.holds(g, flat[0], flat[1]))
            .mapToInt(Integer::intValue)
            .toArray();
    cut.lying[c] = lying;
    cut.point[c] = point(cut.face, cells.weights(flat));
    int least = Arrays.stream(lying).min().orElse(Integer.MAX_VALUE);
    if (least < cut.face) {
      cut.kind[c] = FaceCut.DOUBLED;
      cut.stead[c] = least;
      return;
    }
    double[] at = cut.point[c];
    int axis = SideProbe.axis(n);
    int[] above =
        parity.around(
            axis, at[0], at[1], at[2], g -> g == cut.face || SideProbe.contains(lying, g));
    if (above == null) {
      return;
    }
    int[] passed =
        IntStream.concat(IntStream.of(cut.face), IntStream.of(lying))
            .map(diagnosis::bodyOf)
            .filter(b -> diagnosis.bodies().get(b).closed())
            .toArray();
    int[] below = SideProbe.toggled(above, passed);
    int own = diagnosis.bodyOf(cut.face);
    cut.around[2 * c] = ReachSearch.host(n[axis] > 0 ? above : below, own);
    cut.around[2 * c + 1] = ReachSearch.host(n[axis] > 0 ? below : above, own);
    cut.kind[c] = FaceCut.CLEAR;
  }

  /** A point inside a cell, another one at each attempt. */
  private static double[] middle(double[] cell, int attempt) {
    int n = cell.length / 2;
    double x = 0;
    double y = 0;
    double total = 0;
    for (int k = 0; k < n; k++) {
      double w = 1 + 0.13 * ((k * 7 + attempt * 3 + 1) % 5);
      x += w * cell[2 * k];
      y += w * cell[2 * k + 1];
      total += w;
    }
    return new double[] {x / total, y / total};
  }

  private double[] point(int face, double[] w) {
    double[] at = new double[3];
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner(face, k);
      at[0] += w[k] * mesh.x(v);
      at[1] += w[k] * mesh.y(v);
      at[2] += w[k] * mesh.z(v);
    }
    return at;
  }
}
