package org.amperskin.region;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.amperskin.mesh.SurfaceMesh;

/**
 * A skin cut along a mask, so that every triangle lies in one region.
 *
 * <p>Definition: face {@code f} of {@link #mesh()} is a piece of face {@code parent(f)} of the
 * uncut skin and has the region {@code kind(f)}; a kind is open if a step sees it as bare.
 *
 * <p>Guaranteed: the pieces of a parent add up to its area, and open plus closed to the skin,
 * within {@value #AREA_TOLERANCE} of the whole. Not guaranteed: no T-junctions; neighbours are cut
 * independently.
 */
public final class SplitMesh {
  /** Largest loss of area in cutting, as a fraction of the skin's area. */
  public static final double AREA_TOLERANCE = 1e-9;

  private final SurfaceMesh mesh;
  private final int[] parents;
  private final RegionKind[] kinds;
  private final Set<RegionKind> openKinds;
  private final double[] areasMm2;

  /**
   * Checks and keeps a split.
   *
   * @param uncut the skin before the cut
   * @param mesh the pieces
   * @param parents {@code parents[f]}, face of {@code uncut}; kept, not copied
   * @param kinds {@code kinds[f]}; kept, not copied
   * @param openKinds the kinds that a step sees as bare
   */
  public SplitMesh(
      SurfaceMesh uncut,
      SurfaceMesh mesh,
      int[] parents,
      RegionKind[] kinds,
      Set<RegionKind> openKinds) {
    if (parents.length != mesh.faceCount() || kinds.length != mesh.faceCount()) {
      throw new IllegalArgumentException(
          mesh.faceCount() + " faces, " + parents.length + " parents, " + kinds.length + " kinds");
    }
    this.mesh = mesh;
    this.parents = parents;
    this.kinds = kinds;
    this.openKinds = Set.copyOf(openKinds);
    this.areasMm2 = new double[RegionKind.values().length];
    double[] rest = new double[uncut.faceCount()];
    double skin = 0;
    for (int f = 0; f < rest.length; f++) {
      rest[f] = uncut.faceAreaMm2(f);
      skin += rest[f];
    }
    for (int f = 0; f < parents.length; f++) {
      double area = mesh.faceAreaMm2(f);
      rest[parents[f]] -= area;
      areasMm2[kinds[f].ordinal()] += area;
    }
    double lost = 0;
    for (double r : rest) {
      lost += Math.abs(r);
    }
    if (lost > AREA_TOLERANCE * skin) {
      throw new IllegalArgumentException(
          "pieces differ from their parents by " + lost + " mm2 of " + skin + " mm2");
    }
  }

  /** The pieces. */
  public SurfaceMesh mesh() {
    return mesh;
  }

  /** The pieces as one mesh with a group for each kind, named by its label. */
  public SurfaceMesh grouped() {
    int[] groups = new int[kinds.length];
    for (int f = 0; f < groups.length; f++) {
      groups[f] = kinds[f].ordinal();
    }
    List<String> names = Arrays.stream(RegionKind.values()).map(RegionKind::label).toList();
    return SurfaceMesh.of(mesh.positions(), mesh.corners(), groups, names);
  }

  /** The face of the uncut skin that a piece comes from. */
  public int parent(int face) {
    return parents[face];
  }

  /** Region of a piece. */
  public RegionKind kind(int face) {
    return kinds[face];
  }

  /** True if a step sees this kind as bare. */
  public boolean isOpen(RegionKind kind) {
    return openKinds.contains(kind);
  }

  /** Area of all pieces of a kind (mm2), summed in face order. */
  public double areaMm2(RegionKind kind) {
    return areasMm2[kind.ordinal()];
  }

  /** Area that a step sees as bare (mm2). */
  public double openAreaMm2() {
    return sum(openKinds);
  }

  /** Area that a step sees as covered (mm2). */
  public double closedAreaMm2() {
    EnumSet<RegionKind> closed = EnumSet.allOf(RegionKind.class);
    closed.removeAll(openKinds);
    return sum(closed);
  }

  /** Area of the whole skin (mm2). */
  public double skinAreaMm2() {
    return openAreaMm2() + closedAreaMm2();
  }

  private double sum(Set<RegionKind> some) {
    double total = 0;
    for (RegionKind kind : RegionKind.values()) {
      if (some.contains(kind)) {
        total += areasMm2[kind.ordinal()];
      }
    }
    return total;
  }
}
