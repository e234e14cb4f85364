package org.amperskin.skin;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.amperskin.mesh.BodyParity;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Which sides of which faces and cells liquid from outside can reach.
 *
 * <p>Definition: the fluid beside a face's side is one with that beside its neighbour's across an
 * edge; sides that see each other along a straight line share their fluid; a side that sees past
 * everything is outside. What is joined to the outside is reached.
 *
 * <p>Guaranteed: a side told reached is, since every join is a proof. A side told inside lies
 * inside a closed body. Not guaranteed: that a way through a labyrinth between separate bodies is
 * found; sides with neither proof are told as enclosed.
 *
 * <p>Cost: linear joining, then a few rays for each patch, however many faces it has, and for each
 * cell.
 */
final class ReachSearch {
  /** No proof either way. */
  static final byte ENCLOSED = 0;

  /** Joined to the outside. */
  static final byte REACHED = 1;

  /** Inside a closed body. */
  static final byte INSIDE = 2;

  private static final int ENOUGH = 2;
  private static final int SAMPLES = 6;
  private static final int[] ROUNDS = {0, 6, 24, 96, 480};

  private final MeshDiagnosis diagnosis;
  private final SurfaceMesh mesh;
  private final FaceCut[] cuts;
  private final BodyParity parity;
  private final int faces;
  private final int outside;
  private final int[] root;
  private final int[] cutFaces;
  private final Map<Integer, Integer> hosts = new HashMap<>();

  ReachSearch(MeshDiagnosis diagnosis, FaceCut[] cuts, BodyParity parity) {
    this.diagnosis = diagnosis;
    this.mesh = diagnosis.mesh();
    this.cuts = cuts;
    this.parity = parity;
    this.faces = mesh.faceCount();
    int nodes = 2 * faces;
    for (FaceCut cut : cuts) {
      if (cut != null) {
        cut.firstNode = nodes;
        nodes += 2 * cut.cells();
      }
    }
    this.cutFaces = IntStream.range(0, faces).filter(f -> cuts[f] != null).toArray();
    this.outside = nodes;
    this.root = new int[nodes + 1];
  }

  /** A connected set of sides, with places to look from. */
  private static final class Source {
    private final int node;
    private final int[] samples = new int[SAMPLES];
    private int count;
    private int size;
    private int away;
    private boolean inside;
    private int host = -1;
    private int[] seen;

    Source(int node) {
      this.node = node;
    }

    /** Keeps sides spread over the set: its first ones, then one each time it has doubled. */
    void offer(int side) {
      if (count < SAMPLES) {
        samples[count++] = side;
      } else if (Integer.bitCount(size) == 1) {
        samples[1 + Integer.numberOfTrailingZeros(size) % (SAMPLES - 1)] = side;
      }
      size++;
    }
  }

  /**
   * State of every side: {@code [2*f]} front of face f, then back; a cut face's cells follow from
   * its {@code firstNode}.
   */
  byte[] run() {
    for (int i = 0; i < root.length; i++) {
      root[i] = i;
    }
    joinNeighbours();
    List<Source> sources = sources();
    List<Source> open = new ArrayList<>();
    for (Source s : sources) {
      s.inside = inside(s);
      if (!s.inside) {
        open.add(s);
      }
    }
    for (int round = 0; round + 1 < ROUNDS.length && !open.isEmpty(); round++) {
      look(open, ROUNDS[round], ROUNDS[round + 1]);
      open.removeIf(s -> find(s.node) == find(outside));
    }
    boolean[] insideRoot = new boolean[root.length];
    for (Source s : sources) {
      insideRoot[find(s.node)] |= s.inside;
      if (s.inside) {
        hosts.put(find(s.node), s.host);
      }
    }
    byte[] state = new byte[outside];
    int out = find(outside);
    for (int n = 0; n < outside; n++) {
      int r = find(n);
      state[n] = r == out ? REACHED : insideRoot[r] ? INSIDE : ENCLOSED;
    }
    return state;
  }

  /** Number of the connected fluid that a side belongs to. */
  int room(int node) {
    return find(node);
  }

  /** The body around a face's side that is inside one, rather another than its own; -1 if none. */
  int host(int node) {
    return hosts.getOrDefault(find(node), -1);
  }

  /** A body of those around, rather another than one's own; -1 if there is none. */
  static int host(int[] around, int own) {
    for (int b : around) {
      if (b != own) {
        return b;
      }
    }
    return around.length == 0 ? -1 : own;
  }

  private void joinNeighbours() {
    for (int h = 0; h < 3 * faces; h++) {
      int f = h / 3;
      int mate = diagnosis.mate(h);
      if (cuts[f] != null) {
        continue;
      }
      if (mate == MeshDiagnosis.OPEN) {
        join(2 * f, 2 * f + 1);
      } else if (mate > h && cuts[mate / 3] == null) {
        int g = mate / 3;
        int flip = mesh.corners()[h] == mesh.corners()[mate] ? 1 : 0;
        join(2 * f, 2 * g + flip);
        join(2 * f + 1, 2 * g + 1 - flip);
      }
    }
  }

  private List<Source> sources() {
    List<Source> sources = new ArrayList<>();
    int[] at = new int[2 * faces];
    for (int n = 0; n < 2 * faces; n++) {
      int f = n / 2;
      if (diagnosis.leftOut(f) || cuts[f] != null) {
        continue;
      }
      int r = find(n);
      if (r == n) {
        at[n] = sources.size();
        sources.add(new Source(n));
      }
      sources.get(at[r]).offer(n);
    }
    for (FaceCut cut : cuts) {
      if (cut == null) {
        continue;
      }
      for (int c = 0; c < cut.cells(); c++) {
        for (int side = 0; side < 2 && cut.kind[c] == FaceCut.CLEAR; side++) {
          Source s = new Source(cut.firstNode + 2 * c + side);
          s.offer(s.node);
          sources.add(s);
        }
      }
    }
    return sources;
  }

  private boolean inside(Source s) {
    if (s.node >= 2 * faces) {
      FaceCut cut = cutOf(s.node);
      return cut.around[s.node - cut.firstNode] >= 0;
    }
    int votes = 0;
    int asked = 0;
    for (int i = 0; i < s.count && asked < 3; i++) {
      int[] around = around(s.samples[i]);
      if (around != null) {
        asked++;
        votes += around.length > 0 ? 1 : 0;
        s.host = s.host < 0 ? host(around, diagnosis.bodyOf(s.samples[i] / 2)) : s.host;
      }
    }
    return 2 * votes > asked;
  }

  private FaceCut cutOf(int node) {
    int low = 0;
    int high = cutFaces.length - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (cuts[cutFaces[middle]].firstNode <= node) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return cuts[cutFaces[low]];
  }

  /** The closed bodies that the fluid beside a face's side would lie in; null if not clear. */
  private int[] around(int node) {
    int f = node / 2;
    double[] n = mesh.unitNormal(f);
    int axis = SideProbe.axis(n);
    double[] c = SideProbe.within(mesh, f);
    int[] above = parity.around(axis, c[0], c[1], c[2], g -> g == f);
    if (above == null) {
      return null;
    }
    int body = diagnosis.bodyOf(f);
    boolean closed = diagnosis.bodies().get(body).closed();
    boolean up = n[axis] > 0 == (node % 2 == 0);
    return up ? above : SideProbe.toggled(above, closed ? new int[] {body} : new int[0]);
  }

  /** One round: all sources look in parallel, then what they saw is joined in order. */
  private void look(List<Source> open, int from, int to) {
    ThreadLocal<Rays> rays =
        ThreadLocal.withInitial(
            () -> new Rays(mesh, diagnosis.tree().orElseThrow(), diagnosis::leftOut));
    IntStream.range(0, open.size())
        .parallel()
        .forEach(i -> lookFrom(open.get(i), from, to, rays.get()));
    for (Source s : open) {
      for (int node : s.seen) {
        join(s.node, node);
      }
      if (s.away >= ENOUGH) {
        join(s.node, outside);
      }
    }
  }

  private void lookFrom(Source s, int from, int to, Rays rays) {
    double[] d = new double[3];
    int[] seen = new int[to - from];
    int n = 0;
    for (int r = from; r < to && s.away < ENOUGH; r++) {
      int node = s.samples[r % s.count];
      FaceCut cut = node < 2 * faces ? null : cutOf(node);
      int c = cut == null ? 0 : (node - cut.firstNode) / 2;
      int f = cut == null ? node / 2 : cut.face;
      double[] at = cut == null ? SideProbe.within(mesh, f) : cut.point[c];
      int[] lying = cut == null ? SideProbe.NOTHING : cut.lying[c];
      int sign = node % 2 == 0 ? 1 : -1;
      double[] normal = mesh.unitNormal(f);
      Directions.about(sign * normal[0], sign * normal[1], sign * normal[2], r, f, d);
      int hit =
          rays.first(
              at[0], at[1], at[2], d[0], d[1], d[2], g -> g == f || SideProbe.contains(lying, g));
      if (hit < 0) {
        s.away++;
      } else {
        double t = rays.distance();
        int other =
            sideHit(hit, rays.hitFront(), at[0] + t * d[0], at[1] + t * d[1], at[2] + t * d[2]);
        if (other >= 0) {
          seen[n++] = other;
        }
      }
    }
    s.seen = Arrays.copyOf(seen, n);
  }

  /** The side met by a ray at a point, -1 if that cannot be told. */
  private int sideHit(int hit, boolean front, double x, double y, double z) {
    FaceCut cut = cuts[hit];
    if (cut == null) {
      return 2 * hit + (front ? 0 : 1);
    }
    int c = cut.cellAt(x, y, z);
    if (cut.kind[c] == FaceCut.UNSURE) {
      return -1;
    }
    if (cut.kind[c] == FaceCut.CLEAR) {
      return cut.firstNode + 2 * c + (front ? 0 : 1);
    }
    FaceCut stead = cuts[cut.stead[c]];
    int e = stead.cellAt(x, y, z);
    double[] a = mesh.unitNormal(cut.face);
    double[] b = mesh.unitNormal(stead.face);
    boolean same = a[0] * b[0] + a[1] * b[1] + a[2] * b[2] > 0;
    return stead.kind[e] == FaceCut.CLEAR ? stead.firstNode + 2 * e + (front == same ? 0 : 1) : -1;
  }

  private void join(int a, int b) {
    int ra = find(a);
    int rb = find(b);
    if (ra < rb) {
      root[rb] = ra;
    } else {
      root[ra] = rb;
    }
  }

  private int find(int n) {
    int i = n;
    while (root[i] != i) {
      root[i] = root[root[i]];
      i = root[i];
    }
    return i;
  }
}
