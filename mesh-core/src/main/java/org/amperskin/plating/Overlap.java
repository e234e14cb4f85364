package org.amperskin.plating;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** How the open places of a job's regions lie over one another: plain areas, no mesh. */
@FunctionalInterface
public interface Overlap {
  /**
   * A part of a region.
   *
   * @param regions the regions in whose openings it lies, its own among them
   * @param areaMm2 its area (mm2)
   */
  record Patch(Set<String> regions, double areaMm2) {
    public Patch {
      regions = Set.copyOf(regions);
      if (!(areaMm2 >= 0)) {
        throw new IllegalArgumentException("area of a patch (" + areaMm2 + " mm2) is negative");
      }
    }
  }

  /** The parts of a region's open area, by the regions that hold them. */
  List<Patch> of(String region);

  /** Every region of these steps over every other, where nothing is known of how they lie. */
  static Overlap all(List<Step> steps) {
    Set<String> names = new TreeSet<>();
    steps.forEach(s -> names.add(s.region()));
    return region -> List.of(new Patch(names, 1));
  }
}
