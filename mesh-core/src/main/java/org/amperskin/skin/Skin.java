package org.amperskin.skin;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.MeshProblem.Kind;
import org.amperskin.mesh.SurfaceMesh;

/**
 * The surface that the bath can wet, as far as the diagnosis tells.
 *
 * <p>Definition: the faces of the mesh less degenerate and repeated ones and less closed shells
 * inside other bodies; bodies that are inside out are turned.
 *
 * <p>Guaranteed: for closed bodies that do not meet, the area is the wetted area. Not guaranteed:
 * anything else. Where bodies cross, edges are open or the search was left out, {@link
 * #wettedAreaMm2()} is empty and {@link #doubts()} says why; the area of the faces is then an upper
 * bound for closed bodies and no bound for sheets.
 */
public final class Skin {
  private final SurfaceMesh mesh;
  private final int[] sourceFaces;
  private final double areaMm2;
  private final List<String> doubts;
  private final boolean sound;

  private Skin(
      SurfaceMesh mesh, int[] sourceFaces, double areaMm2, List<String> doubts, boolean sound) {
    this.mesh = mesh;
    this.sourceFaces = sourceFaces;
    this.areaMm2 = areaMm2;
    this.doubts = List.copyOf(doubts);
    this.sound = sound;
  }

  /** Takes the skin from a diagnosed mesh. */
  public static Skin of(MeshDiagnosis diagnosis) {
    SurfaceMesh all = diagnosis.mesh();
    int[] kept = new int[all.faceCount()];
    int count = 0;
    for (int f = 0; f < kept.length; f++) {
      int body = diagnosis.bodyOf(f);
      if (body >= 0 && !diagnosis.bodies().get(body).inner()) {
        kept[count++] = f;
      }
    }
    boolean turned = diagnosis.has(Kind.INSIDE_OUT);
    int[] source = Arrays.copyOf(kept, count);
    SurfaceMesh mesh = count == all.faceCount() && !turned ? all : subset(all, source, diagnosis);
    double area = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      area += mesh.faceAreaMm2(f);
    }
    boolean sound =
        diagnosis.closed() && !diagnosis.has(Kind.FLIPPED) && !diagnosis.has(Kind.NON_MANIFOLD);
    return new Skin(mesh, source, area, doubts(diagnosis), sound);
  }

  private static SurfaceMesh subset(SurfaceMesh all, int[] source, MeshDiagnosis diagnosis) {
    int[] corners = new int[3 * source.length];
    int[] groups = all.groupNames().isEmpty() ? null : new int[source.length];
    for (int f = 0; f < source.length; f++) {
      boolean turn = diagnosis.bodies().get(diagnosis.bodyOf(source[f])).volumeMm3() < 0;
      corners[3 * f] = all.corner(source[f], 0);
      corners[3 * f + 1] = all.corner(source[f], turn ? 2 : 1);
      corners[3 * f + 2] = all.corner(source[f], turn ? 1 : 2);
      if (groups != null) {
        groups[f] = all.group(source[f]);
      }
    }
    return SurfaceMesh.of(all.positions(), corners, groups, all.groupNames());
  }

  private static List<String> doubts(MeshDiagnosis diagnosis) {
    List<String> doubts = new ArrayList<>();
    if (diagnosis.search() != MeshDiagnosis.Search.ALL) {
      doubts.add("overlaps and inner shells were not looked for");
    }
    if (diagnosis.has(Kind.OVERLAP)) {
      doubts.add("bodies cross or touch: surface inside them is counted");
    }
    if (diagnosis.has(Kind.OPEN_EDGE)) {
      doubts.add("the surface is open: the side away from you and missing facets are not counted");
    }
    if (diagnosis.has(Kind.NON_MANIFOLD)) {
      doubts.add("edges with more than two faces: bodies may touch there");
    }
    if (diagnosis.has(Kind.FLIPPED)) {
      doubts.add("neighbouring faces disagree on which side is out");
    }
    return doubts;
  }

  /** The faces of the skin, outward sides out as far as that is known. */
  public SurfaceMesh mesh() {
    return mesh;
  }

  /** The face of the diagnosed mesh that a face of the skin is. */
  public int sourceFace(int face) {
    return sourceFaces[face];
  }

  /** Sum of the skin's face areas (mm2). */
  public double areaMm2() {
    return areaMm2;
  }

  /** The wetted area (mm2), empty where it cannot be stood behind. */
  public OptionalDouble wettedAreaMm2() {
    return doubts.isEmpty() ? OptionalDouble.of(areaMm2) : OptionalDouble.empty();
  }

  /** Why the wetted area is not known, empty if it is. */
  public List<String> doubts() {
    return doubts;
  }

  /** True if the skin is closed and its faces agree on which side is out. */
  public boolean sound() {
    return sound;
  }
}
