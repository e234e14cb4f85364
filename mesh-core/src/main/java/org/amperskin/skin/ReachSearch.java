package org.amperskin.skin;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.amperskin.mesh.BodyParity;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Which sides of which faces liquid from outside can reach.
 *
 * <p>Definition: the fluid beside a face's side is one with that beside its neighbour's across an
 * edge; sides that see each other along a straight line share their fluid; a side that sees past
 * everything is outside. What is joined to the outside is reached.
 *
 * <p>Guaranteed: a side told reached is: every join is a proof. A side told inside lies inside a
 * closed body. Not guaranteed: that a way through a labyrinth between separate bodies is found;
 * sides with neither proof are told as enclosed.
 *
 * <p>Cost: linear joining, then a few rays for each patch, however many faces it has.
 */
final class ReachSearch {
  /** State of a side: no proof either way. */
  static final byte ENCLOSED = 0;

  /** State of a side: joined to the outside. */
  static final byte REACHED = 1;

  /** State of a side: inside a closed body. */
  static final byte INSIDE = 2;

  /** Rays that get away before a side counts as outside: one could be a fluke of rounding. */
  static final int ENOUGH = 2;

  private static final int SAMPLES = 6;
  private static final int RAYS = 96;
  private static final int MORE_RAYS = 768;

  private final MeshDiagnosis diagnosis;
  private final SurfaceMesh mesh;
  private final boolean[] crossed;
  private final BodyParity parity;
  private final Rays rays;
  private final int faces;
  private final int outside;
  private final int[] root;
  private final byte[] state;

  ReachSearch(MeshDiagnosis diagnosis, boolean[] crossed, BodyParity parity) {
    this.diagnosis = diagnosis;
    this.mesh = diagnosis.mesh();
    this.crossed = crossed;
    this.parity = parity;
    this.rays = new Rays(mesh, diagnosis.tree().orElseThrow(), diagnosis::leftOut);
    this.faces = mesh.faceCount();
    this.outside = 2 * faces;
    this.root = new int[2 * faces + 1];
    this.state = new byte[2 * faces];
  }

  /** State of every side of the faces that nothing crosses: {@code [2*f]} front, then back. */
  byte[] run() {
    for (int i = 0; i < root.length; i++) {
      root[i] = i;
    }
    joinNeighbours();
    List<Patch> patches = patches();
    List<Patch> open = new ArrayList<>();
    for (Patch patch : patches) {
      if (inside(patch)) {
        mark(patch, INSIDE);
      } else {
        open.add(patch);
      }
    }
    look(open, 0, RAYS);
    open.removeIf(p -> find(p.node) == find(outside));
    look(open, RAYS, MORE_RAYS);
    boolean[] insideRoot = new boolean[root.length];
    for (Patch patch : patches) {
      insideRoot[find(patch.node)] |= patch.inside;
    }
    int out = find(outside);
    for (int n = 0; n < 2 * faces; n++) {
      int r = find(n);
      state[n] = r == out ? REACHED : insideRoot[r] ? INSIDE : ENCLOSED;
    }
    return state;
  }

  /** Sides joined by neighbourhood, with faces to look from. */
  private static final class Patch {
    private final int node;
    private final int[] samples = new int[SAMPLES];
    private int sampleCount;
    private int size;
    private boolean inside;

    Patch(int node) {
      this.node = node;
    }
  }

  private void joinNeighbours() {
    for (int h = 0; h < 3 * faces; h++) {
      int f = h / 3;
      int mate = diagnosis.mate(h);
      if (crossed[f]) {
        continue;
      }
      if (mate == MeshDiagnosis.OPEN) {
        join(2 * f, 2 * f + 1);
      } else if (mate > h && !crossed[mate / 3]) {
        int g = mate / 3;
        int flip = mesh.corners()[h] == mesh.corners()[mate] ? 1 : 0;
        join(2 * f, 2 * g + flip);
        join(2 * f + 1, 2 * g + 1 - flip);
      }
    }
  }

  private List<Patch> patches() {
    int[] patchOf = new int[2 * faces];
    List<Patch> patches = new ArrayList<>();
    for (int n = 0; n < 2 * faces; n++) {
      int f = n / 2;
      if (diagnosis.leftOut(f) || crossed[f]) {
        continue;
      }
      int r = find(n);
      if (r == n) {
        patchOf[n] = patches.size();
        patches.add(new Patch(n));
      }
      Patch patch = patches.get(patchOf[r]);
      // Faces number 0, 1, 3, 7, 15, ... of a patch: spread out, whatever its size.
      if (patch.sampleCount < SAMPLES && (patch.size & patch.size + 1) == 0) {
        patch.samples[patch.sampleCount++] = n;
      } else if (patch.size % 97 == 0) {
        patch.samples[patch.size / 97 % SAMPLES] = n;
        patch.sampleCount = Math.max(patch.sampleCount, Math.min(SAMPLES, patch.size));
      }
      patch.size++;
    }
    for (Patch patch : patches) {
      int first = patch.samples[0];
      for (int i = 0; i < SAMPLES; i++) {
        if (patch.samples[i] == 0 && find(0) != find(patch.node)) {
          patch.samples[i] = first;
        }
      }
    }
    return patches;
  }

  private boolean inside(Patch patch) {
    int votes = 0;
    int asked = 0;
    for (int i = 0; i < patch.sampleCount && asked < 3; i++) {
      int[] around = around(patch.samples[i]);
      if (around != null) {
        asked++;
        votes += around.length > 0 ? 1 : 0;
      }
    }
    return 2 * votes > asked;
  }

  /** The closed bodies that the fluid beside a side would lie in; null if not clear. */
  private int[] around(int node) {
    int f = node / 2;
    double[] n = normal(f);
    int axis = SideProbe.axis(n);
    double[] c = centre(f);
    int[] above = parity.around(axis, c[0], c[1], c[2], g -> g == f);
    if (above == null) {
      return null;
    }
    boolean up = n[axis] > 0 == (node % 2 == 0);
    return up ? above : SideProbe.toggled(above, ownBody(f));
  }

  private int[] ownBody(int f) {
    int body = diagnosis.bodyOf(f);
    boolean closed = body >= 0 && diagnosis.bodies().get(body).closed();
    return closed ? new int[] {body} : new int[0];
  }

  private void mark(Patch patch, byte what) {
    patch.inside = what == INSIDE;
  }

  private void look(List<Patch> open, int from, int to) {
    double[] d = new double[3];
    for (Patch patch : open) {
      int away = 0;
      for (int r = from; r < to && find(patch.node) != find(outside); r++) {
        int node = patch.samples[r % patch.sampleCount];
        int f = node / 2;
        double[] n = normal(f);
        double s = node % 2 == 0 ? 1 : -1;
        double[] c = centre(f);
        Directions.about(s * n[0], s * n[1], s * n[2], r, f, d);
        int hit = rays.first(c[0], c[1], c[2], d[0], d[1], d[2], g -> g == f);
        if (hit < 0) {
          away++;
          if (away >= ENOUGH) {
            join(patch.node, outside);
          }
        } else if (!crossed[hit]) {
          join(patch.node, 2 * hit + (rays.hitFront() ? 0 : 1));
        }
      }
    }
  }

  private double[] normal(int f) {
    return SideProbe.normal(mesh, f);
  }

  private double[] centre(int f) {
    double[] c = new double[3];
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner(f, k);
      // In general position, so that half-lines through a regular mesh miss its edges.
      double w = k == 0 ? 0.3317 : k == 1 ? 0.3549 : 0.3134;
      c[0] += w * mesh.x(v);
      c[1] += w * mesh.y(v);
      c[2] += w * mesh.z(v);
    }
    return c;
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

  /** How many faces nothing crosses. */
  static int count(boolean[] flags) {
    int n = 0;
    for (boolean f : flags) {
      n += f ? 1 : 0;
    }
    return n;
  }

  @Override
  public String toString() {
    return "sides " + Arrays.toString(Arrays.copyOf(state, Math.min(20, state.length)));
  }
}
