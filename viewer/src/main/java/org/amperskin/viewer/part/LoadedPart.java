package org.amperskin.viewer.part;

import java.util.List;
import java.util.Objects;
import org.amperskin.geom.Box;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.picture.Camera;
import org.amperskin.picture.Painting;

/**
 * Everything the viewer shows of one file.
 *
 * <p>Guaranteed: one region per face, all within the list. Owns its region array; read only.
 */
public final class LoadedPart {
  private final String title;
  private final SurfaceMesh mesh;
  private final Box box;
  private final int[] regionOfFace;
  private final List<RegionEntry> regions;
  private final List<FigureRow> partRows;
  private final List<StepCard> steps;
  private final List<String> problems;

  private LoadedPart(
      String title,
      SurfaceMesh mesh,
      int[] regionOfFace,
      List<RegionEntry> regions,
      List<FigureRow> partRows,
      List<StepCard> steps,
      List<String> problems) {
    this.title = title;
    this.mesh = mesh;
    this.box = Camera.boxOf(mesh);
    this.regionOfFace = regionOfFace;
    this.regions = regions;
    this.partRows = partRows;
    this.steps = steps;
    this.problems = problems;
  }

  /**
   * Makes a part to show.
   *
   * @param title name shown above the part
   * @param mesh the faces (mm), already split along region borders
   * @param regionOfFace {@code regionOfFace[f]}, index into {@code regions}; kept, not copied
   * @param regions the legend, one entry or more
   * @param partRows figures of the whole part
   * @param steps the job in working order; empty for a mere print file
   * @param problems faults of the file or the job, each with a place
   */
  public static LoadedPart of(
      String title,
      SurfaceMesh mesh,
      int[] regionOfFace,
      List<RegionEntry> regions,
      List<FigureRow> partRows,
      List<StepCard> steps,
      List<String> problems) {
    Objects.requireNonNull(title, "title");
    if (mesh.faceCount() == 0) {
      throw new IllegalArgumentException("part " + title + " has 0 faces");
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
    return new LoadedPart(
        title,
        mesh,
        regionOfFace,
        List.copyOf(regions),
        List.copyOf(partRows),
        List.copyOf(steps),
        List.copyOf(problems));
  }

  /** Name shown above the part. */
  public String title() {
    return title;
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

  /** Figures of the whole part. */
  public List<FigureRow> partRows() {
    return partRows;
  }

  /** The job in working order. */
  public List<StepCard> steps() {
    return steps;
  }

  /** Faults, each with a place. */
  public List<String> problems() {
    return problems;
  }

  /** The same faces in other colours, one per region (0xAARRGGBB). */
  public Painting painting(int[] palette) {
    return Painting.of(mesh, regionOfFace, palette);
  }
}
