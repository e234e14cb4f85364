package org.amperskin.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.amperskin.geom.Box;
import org.amperskin.geom.BoxTree;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshProblem.Kind;

/** One run of {@link MeshDiagnosis}: the working arrays live here and go with it. */
final class Examination {
  private static final int BLOCK = 1 << 16;

  private final MeshDiagnosis.Search search;
  private final Progress progress;
  private final boolean stitch;
  private SurfaceMesh mesh;
  private int faces;
  private boolean[] leftOut;
  private int[] duplicateOf;
  private MeshDiagnosis.Cracks cracks = MeshDiagnosis.Cracks.NONE;
  private final List<MeshProblem> problems = new ArrayList<>();
  private Box box;
  private int[] bodyOf;
  private double[] bodyArea;
  private double[] bodyVolume;
  private int[] bodyFaces;
  private boolean[] bodyOpen;
  private boolean[] bodyUnbalanced;

  Examination(SurfaceMesh mesh, MeshDiagnosis.Search search, boolean stitch, Progress progress) {
    this.mesh = mesh;
    this.search = search;
    this.stitch = stitch;
    this.progress = progress;
    this.faces = mesh.faceCount();
    this.leftOut = new boolean[faces];
  }

  MeshDiagnosis run() {
    box = Box.around(mesh.positions());
    double area = areaInBlocks();
    progress.at("matching edges", 0);
    dropDegenerates();
    EdgeTable edges = edgesWithoutDuplicates();
    if (stitch && edges.openEdges() > 0) {
      progress.at("looking for cracks", 0);
      edges = stitchCracks(edges);
    }
    boolean closed = faces > 0 && edges.openEdges() == 0;
    tellEdges(edges);
    boolean oriented = edges.unbalancedEdges() == 0;
    progress.at("joining bodies", 0.5);
    labelBodies(edges);
    double sum = sumBodies();
    double volume = closed && oriented ? sum : Double.NaN;
    boolean[] inner = new boolean[bodyFaces.length];
    FacePairs crossings = FacePairs.NONE;
    FacePairs touches = FacePairs.NONE;
    BoxTree tree = null;
    if (search == MeshDiagnosis.Search.ALL && faces > 0) {
      progress.at("looking for overlaps", 0);
      tree = BoxTree.of(mesh.positions(), mesh.corners());
      OverlapSearch.Pairs pairs = OverlapSearch.of(mesh, tree, leftOut);
      crossings = pairs.crossings();
      touches = pairs.touches();
      boolean[] concerned = concerned(crossings);
      tellOverlaps(crossings, concerned);
      findInner(tree, concerned, inner);
    }
    tellInsideOut(inner);
    List<MeshBody> bodies = new ArrayList<>();
    for (int b = 0; b < bodyFaces.length; b++) {
      boolean whole = !bodyOpen[b];
      double v = whole && !bodyUnbalanced[b] ? bodyVolume[b] : Double.NaN;
      bodies.add(new MeshBody(bodyFaces[b], bodyArea[b], v, whole, inner[b]));
    }
    problems.sort((p, q) -> Integer.compare(q.kind().ordinal(), p.kind().ordinal()));
    return new MeshDiagnosis(
        mesh, search, box, area, volume, closed, bodies, bodyOf, leftOut, problems, edges,
        crossings, touches, tree, cracks);
  }

  /**
   * The area, summed by blocks of faces in a fixed order: the same bytes on any number of threads.
   */
  private double areaInBlocks() {
    double[] sums = new double[(faces + BLOCK - 1) / BLOCK];
    IntStream.range(0, sums.length)
        .parallel()
        .forEach(
            b -> {
              double sum = 0;
              for (int f = b * BLOCK; f < Math.min(faces, (b + 1) * BLOCK); f++) {
                sum += mesh.faceAreaMm2(f);
              }
              sums[b] = sum;
            });
    double area = 0;
    for (double sum : sums) {
      area += sum;
    }
    return area;
  }

  private void dropDegenerates() {
    int count = 0;
    int first = -1;
    int[] c = mesh.corners();
    for (int f = 0; f < faces; f++) {
      int i = 3 * f;
      if (c[i] == c[i + 1]
          || c[i + 1] == c[i + 2]
          || c[i + 2] == c[i]
          || mesh.faceAreaMm2(f) == 0) {
        leftOut[f] = true;
        first = first < 0 ? f : first;
        count++;
      }
    }
    if (count > 0) {
      tell(Kind.DEGENERATE, count, centre(first), 0, "%,d face%s without area", count, s(count));
    }
  }

  private EdgeTable edgesWithoutDuplicates() {
    duplicateOf = new int[faces];
    Arrays.fill(duplicateOf, -1);
    EdgeTable edges = new EdgeTable(mesh, leftOut, duplicateOf);
    if (edges.duplicates() == 0) {
      return edges;
    }
    double area = 0;
    int first = -1;
    for (int f = 0; f < faces; f++) {
      if (duplicateOf[f] >= 0) {
        leftOut[f] = true;
        area += mesh.faceAreaMm2(f);
        first = first < 0 ? f : first;
      }
    }
    tell(
        Kind.DUPLICATE,
        edges.duplicates(),
        centre(first),
        area,
        "%,d face%s stored again on the same three vertices, %.6g mm2 counted twice",
        edges.duplicates(),
        s(edges.duplicates()),
        area);
    return new EdgeTable(mesh, leftOut, null);
  }

  private EdgeTable stitchCracks(EdgeTable edges) {
    OpenBoundary boundary = OpenBoundary.of(mesh, leftOut, edges);
    CrackStitch done =
        boundary.givenUp() || boundary.clear()
            ? null
            : CrackStitch.of(mesh, leftOut, duplicateOf, boundary);
    int given = faces;
    if (done == null) {
      long left = boundary.givenUp() ? MeshDiagnosis.UNKNOWN : boundary.touches().size();
      cracks = new MeshDiagnosis.Cracks(given, new int[0], new BitSet(), left);
      return edges;
    }
    mesh = done.mesh();
    faces = mesh.faceCount();
    leftOut = done.leftOut();
    problems.add(done.problem());
    EdgeTable after = new EdgeTable(mesh, leftOut, null);
    long left = 0;
    if (after.openEdges() > 0) {
      OpenBoundary rest = OpenBoundary.of(mesh, leftOut, after);
      left = rest.givenUp() ? MeshDiagnosis.UNKNOWN : rest.touches().size();
    }
    cracks = new MeshDiagnosis.Cracks(given, done.parents(), done.touched(), left);
    return after;
  }

  private void tellEdges(EdgeTable edges) {
    if (edges.openEdges() > 0) {
      tell(
          Kind.OPEN_EDGE,
          edges.openEdges(),
          middle(edges.firstOpen()),
          0,
          "%,d edge%s with one face: the surface is not closed",
          edges.openEdges(),
          s(edges.openEdges()));
    }
    if (edges.crowdedEdges() > 0) {
      tell(
          Kind.NON_MANIFOLD,
          edges.crowdedEdges(),
          middle(edges.firstCrowded()),
          0,
          "%,d edge%s with more than two faces",
          edges.crowdedEdges(),
          s(edges.crowdedEdges()));
    }
    if (edges.flippedEdges() > 0) {
      tell(
          Kind.FLIPPED,
          edges.flippedEdges(),
          middle(edges.firstFlipped()),
          0,
          "%,d edge%s whose two faces disagree on which side is out",
          edges.flippedEdges(),
          s(edges.flippedEdges()));
    }
  }

  private void labelBodies(EdgeTable edges) {
    int[] root = new int[faces];
    for (int f = 0; f < faces; f++) {
      root[f] = f;
    }
    for (int h = 0; h < 3 * faces; h++) {
      int mate = edges.mate(h);
      if (mate > h) {
        int a = find(root, h / 3);
        int b = find(root, mate / 3);
        if (a < b) {
          root[b] = a;
        } else {
          root[a] = b;
        }
      }
    }
    bodyOf = new int[faces];
    int count = 0;
    for (int f = 0; f < faces; f++) {
      if (leftOut[f]) {
        bodyOf[f] = -1;
      } else {
        int r = find(root, f);
        bodyOf[f] = r == f ? count++ : bodyOf[r];
      }
    }
    bodyFaces = new int[count];
    bodyOpen = new boolean[count];
    bodyUnbalanced = new boolean[count];
    for (int f = 0; f < faces; f++) {
      if (!leftOut[f]) {
        int b = bodyOf[f];
        bodyFaces[b]++;
        for (int k = 0; k < 3; k++) {
          int mate = edges.mate(3 * f + k);
          bodyOpen[b] |= mate == EdgeTable.OPEN;
          bodyUnbalanced[b] |= mate < 0 || mesh.corner(f, k) == mesh.corners()[mate];
        }
      }
    }
    openWhereOdd(edges);
  }

  /** A body with an odd number of its faces on a crowded edge bounds no inside of its own. */
  private void openWhereOdd(EdgeTable edges) {
    List<long[]> crowded = new ArrayList<>();
    for (int h = 0; h < 3 * faces; h++) {
      if (edges.mate(h) == EdgeTable.CROWDED) {
        int a = mesh.corners()[h];
        int b = mesh.corner(h / 3, (h % 3 + 1) % 3);
        crowded.add(new long[] {(long) Math.min(a, b) << 32 | Math.max(a, b), bodyOf[h / 3]});
      }
    }
    crowded.sort((u, v) -> u[0] != v[0] ? Long.compare(u[0], v[0]) : Long.compare(u[1], v[1]));
    int from = 0;
    while (from < crowded.size()) {
      int to = from;
      while (to < crowded.size() && Arrays.equals(crowded.get(to), crowded.get(from))) {
        to++;
      }
      bodyOpen[(int) crowded.get(from)[1]] |= (to - from) % 2 == 1;
      from = to;
    }
  }

  private static int find(int[] root, int f) {
    int i = f;
    while (root[i] != i) {
      root[i] = root[root[i]];
      i = root[i];
    }
    return i;
  }

  private double sumBodies() {
    bodyArea = new double[bodyFaces.length];
    bodyVolume = new double[bodyFaces.length];
    if (faces == 0) {
      return 0;
    }
    Vec3 o = box.centre();
    double[] p = mesh.positions();
    int[] c = mesh.corners();
    double total = 0;
    for (int f = 0; f < faces; f++) {
      if (leftOut[f]) {
        continue;
      }
      int i = 3 * c[3 * f];
      int j = 3 * c[3 * f + 1];
      int k = 3 * c[3 * f + 2];
      double ax = p[i] - o.x();
      double ay = p[i + 1] - o.y();
      double az = p[i + 2] - o.z();
      double bx = p[j] - o.x();
      double by = p[j + 1] - o.y();
      double bz = p[j + 2] - o.z();
      double cx = p[k] - o.x();
      double cy = p[k + 1] - o.y();
      double cz = p[k + 2] - o.z();
      double v =
          (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
      bodyVolume[bodyOf[f]] += v;
      bodyArea[bodyOf[f]] += mesh.faceAreaMm2(f);
      total += v;
    }
    return total;
  }

  private boolean[] concerned(FacePairs crossings) {
    boolean[] concerned = new boolean[faces];
    for (int i = 0; i < crossings.count(); i++) {
      concerned[crossings.first(i)] = true;
      concerned[crossings.second(i)] = true;
    }
    return concerned;
  }

  private void tellOverlaps(FacePairs crossings, boolean[] concerned) {
    if (crossings.count() == 0) {
      return;
    }
    double area = 0;
    for (int f = 0; f < faces; f++) {
      if (concerned[f]) {
        area += mesh.faceAreaMm2(f);
      }
    }
    int a = bodyOf[crossings.first(0)] + 1;
    int b = bodyOf[crossings.second(0)] + 1;
    tell(
        Kind.OVERLAP,
        crossings.count(),
        centre(crossings.first(0)),
        area,
        "%,d pair%s of faces pass through or lie on each other (first: bod%s %s)",
        crossings.count(),
        s(crossings.count()),
        a == b ? "y" : "ies",
        a == b ? "" + a : a + " and " + b);
  }

  private void findInner(BoxTree tree, boolean[] concerned, boolean[] inner) {
    int count = bodyFaces.length;
    if (count < 2) {
      return;
    }
    boolean[] crossed = new boolean[count];
    int[] firstFace = new int[count];
    Arrays.fill(firstFace, -1);
    for (int f = 0; f < faces; f++) {
      if (!leftOut[f]) {
        crossed[bodyOf[f]] |= concerned[f];
        if (firstFace[bodyOf[f]] < 0) {
          firstFace[bodyOf[f]] = f;
        }
      }
    }
    BodyParity parity = new BodyParity(mesh, tree, bodyOf, bodyOpen);
    double area = 0;
    int found = 0;
    int first = -1;
    for (int b = 0; b < count; b++) {
      if (!bodyOpen[b] && !crossed[b] && parity.insideAnother(firstFace[b])) {
        inner[b] = true;
        area += bodyArea[b];
        first = first < 0 ? b : first;
        found++;
      }
    }
    if (found > 0) {
      tell(
          Kind.INNER_SHELL,
          found,
          centre(firstFace[first]),
          area,
          "%,d closed shell%s inside another body (first: body %d), %.6g mm2 that no liquid"
              + " reaches",
          found,
          s(found),
          first + 1,
          area);
    }
  }

  private void tellInsideOut(boolean[] inner) {
    int count = 0;
    int first = -1;
    double area = 0;
    for (int b = 0; b < bodyFaces.length; b++) {
      if (!bodyOpen[b] && !bodyUnbalanced[b] && bodyVolume[b] < 0 && !inner[b]) {
        count++;
        area += bodyArea[b];
        first = first < 0 ? b : first;
      }
    }
    if (count > 0) {
      tell(
          Kind.INSIDE_OUT,
          count,
          null,
          area,
          "%,d closed bod%s with all faces looking inward (first: body %d)",
          count,
          count == 1 ? "y" : "ies",
          first + 1);
    }
  }

  private void tell(
      Kind kind, long count, Vec3 where, double areaMm2, String format, Object... numbers) {
    problems.add(
        new MeshProblem(kind, count, where, areaMm2, String.format(Locale.ROOT, format, numbers)));
  }

  private static String s(long count) {
    return count == 1 ? "" : "s";
  }

  private Vec3 centre(int face) {
    Vec3 sum = vertex(mesh.corner(face, 0));
    return sum.plus(vertex(mesh.corner(face, 1))).plus(vertex(mesh.corner(face, 2))).times(1 / 3.0);
  }

  private Vec3 middle(int halfEdge) {
    int f = halfEdge / 3;
    int k = halfEdge % 3;
    return vertex(mesh.corner(f, k)).plus(vertex(mesh.corner(f, (k + 1) % 3))).times(0.5);
  }

  private Vec3 vertex(int v) {
    return mesh.point(v);
  }
}
