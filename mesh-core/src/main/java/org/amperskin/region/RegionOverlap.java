package org.amperskin.region;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.amperskin.geom.Barycentric;
import org.amperskin.geom.BoxTree;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;

/**
 * Which regions of a skin lie over one another.
 *
 * <p>Definition: each region's open area, shared out by the set of regions in whose openings it
 * lies. Guaranteed: the shares add to the open area; the same regions give the same figures. Not
 * guaranteed: shares better than about one in a hundred, since {@value #SAMPLES} places are looked
 * at; enough for a caution, not for a current. Method: places spread evenly by area along the
 * pieces, additive recurrence within them (M. Roberts' R2 sequence, from memory); a place lies in
 * another region if one of its open pieces of the same face holds it. Cost: linear in the pieces,
 * logarithmic for each place.
 */
public final class RegionOverlap {
  /** Places looked at in each region. */
  static final int SAMPLES = 4096;

  private static final double[] R2 = {0.7548776662466927, 0.5698402909980532};
  private static final double SLACK = 1e-9;

  private final Map<String, Region> regions;
  private final Map<String, BoxTree> trees = new HashMap<>();

  /**
   * Regions of one skin.
   *
   * @param regions by name
   */
  public RegionOverlap(Map<String, Region> regions) {
    this.regions = new TreeMap<>(regions);
  }

  /** A region's open area (mm2) by the sets of regions that hold it, its own name in each. */
  public Map<Set<String>, Double> of(String name) {
    SplitMesh split = regions.get(name).split();
    List<Integer> open = new ArrayList<>();
    double all = 0;
    for (int f = 0; f < split.mesh().faceCount(); f++) {
      if (split.isOpen(split.kind(f))) {
        open.add(f);
        all += split.mesh().faceAreaMm2(f);
      }
    }
    Map<Set<String>, Double> shares = new LinkedHashMap<>();
    double each = all / SAMPLES;
    double passed = 0;
    int sample = 0;
    for (int f : open) {
      passed += split.mesh().faceAreaMm2(f);
      for (; sample < SAMPLES && (sample + 0.5) * each <= passed; sample++) {
        Vec3 place = within(split.mesh(), f, sample);
        shares.merge(holding(name, place, split.parent(f)), each, Double::sum);
      }
    }
    return shares;
  }

  /** A place inside a piece. */
  private static Vec3 within(SurfaceMesh mesh, int face, int sample) {
    double u = (0.5 + sample * R2[0]) % 1;
    double v = (0.5 + sample * R2[1]) % 1;
    if (u + v > 1) {
      u = 1 - u;
      v = 1 - v;
    }
    Vec3 a = mesh.point(mesh.corner(face, 0));
    Vec3 b = mesh.point(mesh.corner(face, 1));
    Vec3 c = mesh.point(mesh.corner(face, 2));
    return a.plus(b.minus(a).times(u)).plus(c.minus(a).times(v));
  }

  private Set<String> holding(String own, Vec3 place, int parent) {
    Set<String> names = new TreeSet<>();
    names.add(own);
    for (Map.Entry<String, Region> other : regions.entrySet()) {
      if (!other.getKey().equals(own) && holds(other.getKey(), place, parent)) {
        names.add(other.getKey());
      }
    }
    return names;
  }

  private boolean holds(String name, Vec3 place, int parent) {
    RegionRule rule = regions.get(name).rule();
    if (rule.films().isEmpty() && rule.within().isEmpty() && rule.except().isEmpty()) {
      return true; // open wherever there is paint, and nothing is open elsewhere
    }
    SplitMesh split = regions.get(name).split();
    SurfaceMesh mesh = split.mesh();
    BoxTree tree = trees.computeIfAbsent(name, n -> BoxTree.of(mesh.positions(), mesh.corners()));
    boolean[] found = {false};
    tree.around(
        place.x(),
        place.y(),
        place.z(),
        f -> {
          if (!found[0] && split.parent(f) == parent && split.isOpen(split.kind(f))) {
            Vec3 a = mesh.point(mesh.corner(f, 0));
            Vec3 b = mesh.point(mesh.corner(f, 1));
            Vec3 c = mesh.point(mesh.corner(f, 2));
            found[0] = Barycentric.of(a, b, c, place).smallest() >= -SLACK;
          }
        });
    return found[0];
  }
}
