package org.amperskin.mesh;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.geom.Box;
import org.amperskin.geom.BoxTree;

/**
 * What a surface measures and what is wrong with it.
 *
 * <p>Definition: area is the sum over all faces as stored; bodies are connected pieces of what is
 * left without degenerate and repeated faces, cracks stitched; the surface is closed if no edge of
 * these is open. A crack is an open edge with corners of other open edges inside it, or beside its
 * own corners, within the rounding of a file.
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
  private final FacePairs touches;
  private final BoxTree tree;
  private final Cracks cracks;

  /**
   * What was stitched: faces given, parents of the faces behind these, faces touched, cracks left.
   */
  static final class Cracks {
    static final Cracks NONE = new Cracks(Integer.MAX_VALUE, new int[0], new BitSet(), 0);

    private final int given;
    private final int[] parents;
    private final BitSet touched;
    private final long left;

    Cracks(int given, int[] parents, BitSet touched, long left) {
      this.given = given;
      this.parents = parents;
      this.touched = touched;
      this.left = left;
    }
  }

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
      FacePairs touches,
      BoxTree tree,
      Cracks cracks) {
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
    this.touches = touches;
    this.tree = tree;
    this.cracks = cracks;
  }

  /**
   * Stitches the cracks of a mesh and examines it.
   *
   * <p>Cost: about 0.3 s a million faces, and as much again for the search of overlaps; a mesh with
   * open edges takes some microseconds more for each.
   */
  public static MeshDiagnosis of(
      SurfaceMesh mesh, Search search, org.amperskin.geom.Progress progress) {
    return new Examination(mesh, search, true, progress).run();
  }

  /** Examines a mesh as it is: its faces keep their numbers, its cracks stay. */
  public static MeshDiagnosis unstitched(
      SurfaceMesh mesh, Search search, org.amperskin.geom.Progress progress) {
    return new Examination(mesh, search, false, progress).run();
  }

  /** The face of the mesh given that a face of {@link #mesh()} is, or is a piece of. */
  public int parent(int face) {
    return face < cracks.given ? face : cracks.parents[face - cracks.given];
  }

  /** True if a face was cut, or had a corner moved, to stitch a crack. */
  public boolean stitched(int face) {
    return cracks.touched.get(face);
  }

  /** Value of {@link #cracks()} where open edges lie over one another in too many places. */
  public static final long UNKNOWN = -1;

  /** Corners still inside open edges they do not belong to; {@link #UNKNOWN} if too many to see. */
  public long cracks() {
    return cracks.left;
  }

  /** The mesh examined: the one given, its cracks stitched. Faces given keep their numbers. */
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

  /**
   * Pairs of faces that share a stretch of an edge without being neighbours, none lying on the
   * other; none if they were not looked for.
   */
  public FacePairs touches() {
    return touches;
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
