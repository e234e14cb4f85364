package org.amperskin.skin;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.amperskin.geom.Progress;
import org.amperskin.mesh.BodyParity;
import org.amperskin.mesh.HoleCaps;
import org.amperskin.mesh.MeshBody;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.MeshProblem.Kind;
import org.amperskin.mesh.SurfaceMesh;

/** One making of a {@link Skin}: the working arrays live here and go with it. */
final class SkinAssembly {
  private final MeshDiagnosis given;
  private final Skin.OpenBodies open;
  private final Progress progress;
  private MeshDiagnosis diagnosis;
  private HoleCaps caps;
  private SurfaceMesh mesh;
  private ReachSearch reach;
  private final List<SkinPart> parts = new ArrayList<>();
  private final Map<Integer, double[]> inside = new TreeMap<>();
  private final double[] enclosed = new double[3];
  private final double[] doubled = new double[3];
  private double errorMm2;
  private final SkinBuilder out = new SkinBuilder();
  private DisplacementSum volume;

  SkinAssembly(MeshDiagnosis given, Skin.OpenBodies open, Progress progress) {
    this.given = given;
    this.open = open;
    this.progress = progress;
  }

  Skin assemble() {
    if (given.search() != MeshDiagnosis.Search.ALL
        || !given.crossings().complete()
        || !given.touches().complete()) {
      return asStored();
    }
    caps = HoleCaps.of(given, open == Skin.OpenBodies.SHEETS);
    diagnosis =
        caps.holes().isEmpty()
            ? given
            : MeshDiagnosis.unstitched(caps.mesh(), MeshDiagnosis.Search.ALL, progress);
    mesh = diagnosis.mesh();
    volume = new DisplacementSum(mesh, diagnosis.box());
    progress.at("following the liquid", 0);
    if (plain()) {
      for (int f = 0; f < mesh.faceCount(); f++) {
        out.face(mesh, f, false);
        volume.skin(f, 1, false);
      }
    } else {
      BodyParity parity = BodyParity.of(diagnosis);
      FaceCut[] cuts = FaceCutter.cut(diagnosis, parity, progress);
      reach = new ReachSearch(diagnosis, cuts, parity);
      byte[] sides = reach.run();
      for (int f = 0; f < mesh.faceCount(); f++) {
        if (cuts[f] != null) {
          cutFace(cuts[f], sides);
        } else if (!diagnosis.leftOut(f)) {
          wholeFace(f, sides);
        }
      }
    }
    tellParts();
    boolean sound = caps.sheets().isEmpty() && enclosed[0] == 0 && oneSided();
    List<String> doubts = new ArrayList<>();
    if (given.cracks() != 0) {
      String count =
          given.cracks() == MeshDiagnosis.UNKNOWN
              ? "too many to look at"
              : String.format(
                  Locale.ROOT, "%,d place%s", given.cracks(), given.cracks() == 1 ? "" : "s");
      doubts.add(
          "open edges end on the middle of other open edges (T-junctions, "
              + count
              + ") and do not pair: what closes them is a guess; repair the file, or mesh it"
              + " again");
    }
    return out.build(
        mesh,
        caps.firstCap(),
        errorMm2,
        caps.areaMm2(),
        parts,
        doubts,
        sound,
        doubts.isEmpty() && given.closed()
            ? volume.sum()
            : Displacement.unknown(
                doubts.isEmpty() ? "the surface is open" : String.join("; ", doubts)));
  }

  /** True if one closed body that looks outward is all there is. */
  private boolean plain() {
    List<MeshBody> bodies = diagnosis.bodies();
    return bodies.size() == 1
        && bodies.get(0).volumeMm3() > 0
        && diagnosis.crossings().count() == 0
        && diagnosis.touches().count() == 0
        && diagnosis.problems().stream().allMatch(p -> p.kind() == Kind.STITCHED);
  }

  private boolean oneSided() {
    return diagnosis.bodies().stream().allMatch(MeshBody::closed);
  }

  private void wholeFace(int f, byte[] sides) {
    boolean front = sides[2 * f] == ReachSearch.REACHED;
    boolean back = sides[2 * f + 1] == ReachSearch.REACHED;
    weigh(f, 1, 2 * f, sides);
    if (front && back && sheet(f)) {
      out.face(mesh, f, false);
      out.face(mesh, f, true);
    } else if (front || back) {
      out.face(mesh, f, !front);
    } else if (sides[2 * f] == ReachSearch.INSIDE && sides[2 * f + 1] == ReachSearch.INSIDE) {
      add(inside.computeIfAbsent(host(f), k -> new double[3]), f, mesh.faceAreaMm2(f));
    } else {
      add(enclosed, f, mesh.faceAreaMm2(f));
    }
  }

  private void cutFace(FaceCut cut, byte[] sides) {
    boolean allFront = true;
    boolean allBack = true;
    for (int c = 0; c < cut.cells(); c++) {
      boolean clear = cut.kind[c] == FaceCut.CLEAR;
      boolean front = clear && sides[cut.firstNode + 2 * c] == ReachSearch.REACHED;
      boolean back = clear && sides[cut.firstNode + 2 * c + 1] == ReachSearch.REACHED;
      allFront &= front && !back;
      allBack &= back && !front;
    }
    if (allFront || allBack) {
      out.face(mesh, cut.face, allBack);
      volume.skin(cut.face, 1, allBack);
      return;
    }
    double area = mesh.faceAreaMm2(cut.face);
    for (int c = 0; c < cut.cells(); c++) {
      double part = area * cut.share[c];
      if (cut.kind[c] == FaceCut.DOUBLED) {
        add(doubled, cut.face, part);
      } else if (cut.kind[c] == FaceCut.UNSURE) {
        out.piece(mesh, cut.face, cut.weights[c], false);
        errorMm2 += part;
        volume.unsure(cut.face, cut.share[c]);
      } else {
        weigh(cut.face, cut.share[c], cut.firstNode + 2 * c, sides);
        cell(cut, c, sides, part);
      }
    }
  }

  private void cell(FaceCut cut, int c, byte[] sides, double areaMm2) {
    int node = cut.firstNode + 2 * c;
    boolean front = sides[node] == ReachSearch.REACHED;
    boolean back = sides[node + 1] == ReachSearch.REACHED;
    if (front || back) {
      out.piece(mesh, cut.face, cut.weights[c], !front);
      if (front && back && sheet(cut.face)) {
        out.piece(mesh, cut.face, cut.weights[c], true);
      }
    } else if (cut.around[2 * c] >= 0 && cut.around[2 * c + 1] >= 0) {
      int own = diagnosis.bodyOf(cut.face);
      int host = cut.around[2 * c] != own ? cut.around[2 * c] : cut.around[2 * c + 1];
      add(inside.computeIfAbsent(host, k -> new double[3]), cut.face, areaMm2);
    } else {
      add(enclosed, cut.face, areaMm2);
    }
  }

  /**
   * Takes a face or a part of one into the displaced volume.
   *
   * @param node its front; its back follows
   */
  private void weigh(int f, double share, int node, byte[] sides) {
    boolean front = sides[node] == ReachSearch.REACHED;
    boolean back = sides[node + 1] == ReachSearch.REACHED;
    if (front != back) {
      volume.skin(f, share, back);
    } else if (front && !sheet(f)) {
      volume.unsure(f, share);
    }
    for (int side = 0; side < 2; side++) {
      if (sides[node + side] == ReachSearch.ENCLOSED) {
        volume.enclosed(f, share, side == 0, reach.room(node + side));
      }
    }
  }

  /** The body a face lies in, other than its own where there is one. */
  private int host(int f) {
    int own = diagnosis.bodyOf(f);
    int front = reach.host(2 * f);
    return front >= 0 && front != own ? front : reach.host(2 * f + 1);
  }

  private boolean sheet(int f) {
    return f < caps.firstCap() && caps.sheets().contains(given.bodyOf(f));
  }

  /** Adds a face or a piece of one: the pieces of a face come in a row and count as one face. */
  private static void add(double[] sum, int face, double areaMm2) {
    if (sum[2] != face + 1) {
      sum[0] += 1;
      sum[2] = face + 1;
    }
    sum[1] += areaMm2;
  }

  private void tellParts() {
    for (Map.Entry<Integer, double[]> e : inside.entrySet()) {
      int body = e.getKey() + 1;
      tell(SkinPart.Kind.INSIDE, body, e.getValue(), "inside body " + body + ": no liquid there");
    }
    if (enclosed[0] > 0) {
      tell(SkinPart.Kind.ENCLOSED, 0, enclosed, "in closed voids: no way out was found");
    }
    if (doubled[0] > 0) {
      tell(SkinPart.Kind.DOUBLED, 0, doubled, "on other faces, counted once");
    }
    for (HoleCaps.Hole hole : caps.holes()) {
      double[] one = {hole.edges(), hole.areaMm2()};
      tell(
          SkinPart.Kind.ASSUMED,
          hole.body() + 1,
          one,
          "edges around a hole in body " + (hole.body() + 1) + ": closed as a slicer would");
    }
    for (int body : caps.sheets()) {
      MeshBody b = given.bodies().get(body);
      double[] one = {b.faces(), b.areaMm2()};
      tell(
          SkinPart.Kind.SHEET,
          body + 1,
          one,
          "of body " + (body + 1) + ", taken as a sheet: wet on both sides");
    }
  }

  private void tell(SkinPart.Kind kind, int body, double[] sum, String what) {
    String thing = kind == SkinPart.Kind.ASSUMED ? "" : sum[0] == 1 ? "face " : "faces ";
    parts.add(
        new SkinPart(
            kind,
            body,
            (long) sum[0],
            sum[1],
            String.format(Locale.ROOT, "%,d %s%s, %.6g mm2", (long) sum[0], thing, what, sum[1])));
  }

  private Skin asStored() {
    mesh = given.mesh();
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (!given.leftOut(f)) {
        out.face(mesh, f, false);
      }
    }
    boolean sound = given.closed() && !given.has(Kind.FLIPPED) && !given.has(Kind.NON_MANIFOLD);
    String why =
        given.search() != MeshDiagnosis.Search.ALL
            ? "overlaps and inner shells were not looked for"
            : "more than " + given.crossings().count() + " pairs of faces cross";
    return out.build(
        mesh, mesh.faceCount(), 0, 0, List.of(), List.of(why), sound, Displacement.unknown(why));
  }
}
