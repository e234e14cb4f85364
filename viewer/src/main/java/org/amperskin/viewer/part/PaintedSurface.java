package org.amperskin.viewer.part;

import java.util.List;
import java.util.Objects;
import org.amperskin.geom.Box;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.picture.Camera;
import org.amperskin.picture.Painting;

/**
 * The part's faces and the region of each, as one mask leaves them.
 *
 * <p>Guaranteed: one region per face, all within the list. Owns its region array; read only.
 */
public final class PaintedSurface {
  private final String name;
  private final SurfaceMesh mesh;
  private final Box box;
  private final int[] regionOfFace;
  private final List<RegionEntry> regions;
  private final List<PaintedSurface> fields;

  private PaintedSurface(
      String name,
      SurfaceMesh mesh,
      int[] regionOfFace,
      List<RegionEntry> regions,
      List<PaintedSurface> fields) {
    this.name = name;
    this.mesh = mesh;
    this.box = Camera.boxOf(mesh);
    this.regionOfFace = regionOfFace;
    this.regions = regions;
    this.fields = fields;
  }

  /**
   * Makes a surface.
   *
   * @param name what people call it, such as "lattice" or "whole skin"
   * @param mesh the faces (mm), already split along region borders; at least one
   * @param regionOfFace {@code regionOfFace[f]}, index into {@code regions}; kept, not copied
   * @param regions the legend, one entry or more
   */
  public static PaintedSurface of(
      String name, SurfaceMesh mesh, int[] regionOfFace, List<RegionEntry> regions) {
    Objects.requireNonNull(name, "name");
    if (mesh.faceCount() == 0) {
      throw new IllegalArgumentException("surface " + name + " has 0 faces");
    }
    if (regionOfFace.length != mesh.faceCount()) {
      throw new IllegalArgumentException(
          regionOfFace.length + " regions for " + mesh.faceCount() + " faces");
    }
    for (int r : regionOfFace) {
      if (r < 0 || r >= regions.size()) {
        throw new IllegalArgumentException("region " + r + " of " + regions.size());
      }
    }
    return new PaintedSurface(name, mesh, regionOfFace, List.copyOf(regions), List.of());
  }

  /** The same surface with other ways to paint it, each named by what it shows. */
  public PaintedSurface with(List<PaintedSurface> others) {
    return new PaintedSurface(name, mesh, regionOfFace, regions, List.copyOf(others));
  }

  /** Other ways to paint it, each named by what it shows; none for most surfaces. */
  public List<PaintedSurface> fields() {
    return fields;
  }

  /** What people call it. */
  public String name() {
    return name;
  }

  /** The faces. */
  public SurfaceMesh mesh() {
    return mesh;
  }

  /** Box around the faces (mm). */
  public Box box() {
    return box;
  }

  /** Region of a face, index into {@link #regions()}. */
  public int region(int face) {
    return regionOfFace[face];
  }

  /** The legend. */
  public List<RegionEntry> regions() {
    return regions;
  }

  /** The same faces in other colours, one per region (0xAARRGGBB). */
  public Painting painting(int[] palette) {
    return Painting.of(mesh, regionOfFace, palette);
  }
}
