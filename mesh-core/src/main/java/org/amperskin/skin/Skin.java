package org.amperskin.skin;

import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.geom.Progress;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;

/**
 * The surface that liquid can reach.
 *
 * <p>Definition: every part of every face whose one side, at least, is joined to the outside by
 * fluid. Holes where faces are missing are closed first, as a slicer would, and told; a body that
 * encloses no volume is a sheet and wet on both sides.
 *
 * <p>Guaranteed: faces that cross are cut along each other, so the area is exact up to rounding and
 * what {@link #errorMm2()} bounds. Not guaranteed: ways through labyrinths between separate bodies;
 * what was found neither reached nor inside a body is told in {@link #parts()}.
 *
 * <p>Method: {@link ReachSearch}. Cost: nothing for one clean body; about as much as the search for
 * crossings otherwise.
 */
public final class Skin {
  private final SurfaceMesh mesh;
  private final int[] sourceFaces;
  private final double areaMm2;
  private final double errorMm2;
  private final double assumedMm2;
  private final List<SkinPart> parts;
  private final List<String> doubts;
  private final boolean sound;
  private final Displacement displacement;

  Skin(
      SurfaceMesh mesh,
      int[] sourceFaces,
      double errorMm2,
      double assumedMm2,
      List<SkinPart> parts,
      List<String> doubts,
      boolean sound,
      Displacement displacement) {
    this.mesh = mesh;
    this.sourceFaces = sourceFaces;
    double area = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      area += mesh.faceAreaMm2(f);
    }
    this.areaMm2 = area;
    this.errorMm2 = errorMm2;
    this.assumedMm2 = assumedMm2;
    this.parts = List.copyOf(parts);
    this.doubts = List.copyOf(doubts);
    this.sound = sound;
    this.displacement = displacement;
  }

  /** What to make of bodies with open edges. */
  public enum OpenBodies {
    /** Closed if that encloses a volume, as a slicer would; else a sheet. */
    CLOSED,
    /** Always sheets, wet on both sides. */
    SHEETS
  }

  /** Takes the skin from a diagnosed mesh, holes closed. */
  public static Skin of(MeshDiagnosis diagnosis, Progress progress) {
    return of(diagnosis, OpenBodies.CLOSED, progress);
  }

  /** Takes the skin from a diagnosed mesh. */
  public static Skin of(MeshDiagnosis diagnosis, OpenBodies open, Progress progress) {
    return new SkinAssembly(diagnosis, open, progress).assemble();
  }

  /** The faces and pieces of faces of the skin, outward sides out; a sheet's faces stand twice. */
  public SurfaceMesh mesh() {
    return mesh;
  }

  /** The face of the diagnosed mesh that a face of the skin is or is part of; -1 if assumed. */
  public int sourceFace(int face) {
    return sourceFaces[face];
  }

  /** Area of the skin (mm2), assumed surface included. */
  public double areaMm2() {
    return areaMm2;
  }

  /** Bound of the error of the area (mm2): what could not be decided. */
  public double errorMm2() {
    return errorMm2;
  }

  /** Part of the area that closes holes where faces are missing (mm2). */
  public double assumedMm2() {
    return assumedMm2;
  }

  /** The wetted area (mm2), empty where it cannot be stood behind. */
  public OptionalDouble wettedAreaMm2() {
    return doubts.isEmpty() ? OptionalDouble.of(areaMm2) : OptionalDouble.empty();
  }

  /** Surface that is not wetted, or assumed, and why. */
  public List<SkinPart> parts() {
    return parts;
  }

  /** Why the wetted area is not known, empty if it is. */
  public List<String> doubts() {
    return doubts;
  }

  /** True if the skin is closed and its faces agree on which side is out. */
  public boolean sound() {
    return sound;
  }

  /** The volume of liquid that the part pushes aside. */
  public Displacement displacement() {
    return displacement;
  }
}
