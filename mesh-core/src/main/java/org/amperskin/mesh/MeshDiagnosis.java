package org.amperskin.mesh;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.geom.Box;
import org.amperskin.geom.BoxTree;

/**
 * What a surface measures and what is wrong with it.
 *
 * <p>Definition: area is the sum over all faces as stored; bodies are connected pieces of what is
 * left without degenerate and repeated faces; the surface is closed if no edge of these is open.
 *
 * <p>Guaranteed: sums run in a fixed order, so the same file gives the same bytes. Not guaranteed:
 * that the area is wetted; see the skin for that.
 *
 * <p>Cost: see {@link #of(SurfaceMesh, Search, org.amperskin.geom.Progress)}.
 */
public final class MeshDiagnosis {
  /** How much to look for. */
  public enum Search {
    /** Everything. */
    ALL,
    /** Neither crossing faces nor bodies inside bodies. */
    NO_OVERLAPS
  }

  private final SurfaceMesh mesh;
  private final Search search;
  private final Box box;
  private final double areaMm2;
  private final double volumeMm3;
  private final boolean closed;
  private final List<MeshBody> bodies;
  private final int[] bodyOfFace;
  private final boolean[] leftOut;
  private final List<MeshProblem> problems;
  private final EdgeTable edges;
  private final FacePairs crossings;
  private final BoxTree tree;

  MeshDiagnosis(
      SurfaceMesh mesh,
      Search search,
      Box box,
      double areaMm2,
      double volumeMm3,
      boolean closed,
      List<MeshBody> bodies,
      int[] bodyOfFace,
      boolean[] leftOut,
      List<MeshProblem> problems,
      EdgeTable edges,
      FacePairs crossings,
      BoxTree tree) {
    this.mesh = mesh;
    this.search = search;
    this.box = box;
    this.areaMm2 = areaMm2;
    this.volumeMm3 = volumeMm3;
    this.closed = closed;
    this.bodies = List.copyOf(bodies);
    this.bodyOfFace = bodyOfFace;
    this.leftOut = leftOut;
    this.problems = List.copyOf(problems);
    this.edges = edges;
    this.crossings = crossings;
    this.tree = tree;
  }

  /**
   * Examines a mesh.
   *
   * <p>Cost: about 0.3 s a million faces, and as much again for the search of overlaps.
   */
  public static MeshDiagnosis of(
      SurfaceMesh mesh, Search search, org.amperskin.geom.Progress progress) {
    return new Examination(mesh, search, progress).run();
  }

  /** The mesh examined. */
  public SurfaceMesh mesh() {
    return mesh;
  }

  /** What was looked for. */
  public Search search() {
    return search;
  }

  /** Smallest box around all vertices (mm). */
  public Box box() {
    return box;
  }

  /** Sum of all face areas as stored (mm2). */
  public double areaMm2() {
    return areaMm2;
  }

  /**
   * Signed volume (mm3); empty if the surface is open or its faces disagree on which side is out.
   */
  public OptionalDouble volumeMm3() {
    return Double.isNaN(volumeMm3) ? OptionalDouble.empty() : OptionalDouble.of(volumeMm3);
  }

  /** True if no edge is open. */
  public boolean closed() {
    return closed;
  }

  /** The bodies, in the order of their first face. */
  public List<MeshBody> bodies() {
    return bodies;
  }

  /** Body of a face as an index into {@link #bodies()}, -1 for a face that was left out. */
  public int bodyOf(int face) {
    return bodyOfFace[face];
  }

  /** True for degenerate faces and repeats of an earlier face. */
  public boolean leftOut(int face) {
    return leftOut[face];
  }

  /** Value of {@link #mate} on an edge with one face. */
  public static final int OPEN = EdgeTable.OPEN;

  /**
   * The half-edge on the other side of an edge that exactly two faces share; negative where there
   * is none, {@link #OPEN} if the edge has one face only.
   *
   * @param halfEdge {@code 3*f+k}: from corner k of face f to the next
   */
  public int mate(int halfEdge) {
    return edges.mate(halfEdge);
  }

  /** Pairs of faces that cross or lie on each other; none if that was not looked for. */
  public FacePairs crossings() {
    return crossings;
  }

  /** The tree over the mesh's faces, empty if overlaps were not looked for. */
  public Optional<BoxTree> tree() {
    return Optional.ofNullable(tree);
  }

  /** The faults, worst first. */
  public List<MeshProblem> problems() {
    return problems;
  }

  /** True if there is a fault of this kind. */
  public boolean has(MeshProblem.Kind kind) {
    return problems.stream().anyMatch(p -> p.kind() == kind);
  }
}
