package org.amperskin.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.amperskin.geom.Box;
import org.amperskin.mesh.MeshBody;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;

/**
 * What a print file is made of: the bodies and the groups that can be picked.
 *
 * @param bodies connected pieces, by number
 * @param groups the file's own groups, in its order; empty if it has none
 */
public record PartList(List<Body> bodies, List<Group> groups) {
  /**
   * A connected piece of surface.
   *
   * @param number the number it is picked by, from 1
   * @param triangles its faces
   * @param areaMm2 their area as stored (mm2)
   * @param volumeMm3 signed volume (mm3), below zero if its faces look inward; empty if it is open
   * @param box box around it (mm)
   * @param closed true if no edge is open
   * @param inner true if it lies inside another closed body
   */
  public record Body(
      int number,
      int triangles,
      double areaMm2,
      OptionalDouble volumeMm3,
      Box box,
      boolean closed,
      boolean inner) {}

  /**
   * A group of faces that the file names; one without faces is left out.
   *
   * @param name the name it is picked by
   * @param triangles its faces
   * @param areaMm2 their area as stored (mm2)
   * @param box box around it (mm)
   */
  public record Group(String name, int triangles, double areaMm2, Box box) {}

  /** Keeps lists of its own. */
  public PartList {
    bodies = List.copyOf(bodies);
    groups = List.copyOf(groups);
  }

  /** Lists the parts of a diagnosed mesh. */
  public static PartList of(MeshDiagnosis diagnosis) {
    SurfaceMesh mesh = diagnosis.mesh();
    Sums each = new Sums(mesh, diagnosis.bodies().size());
    Sums named = new Sums(mesh, mesh.groupNames().size());
    for (int f = 0; f < mesh.faceCount(); f++) {
      each.add(f, diagnosis.bodyOf(f));
      named.add(f, mesh.group(f));
    }
    List<Body> bodies = new ArrayList<>();
    for (MeshBody b : diagnosis.bodies()) {
      int i = bodies.size();
      OptionalDouble volume =
          Double.isNaN(b.volumeMm3())
              ? OptionalDouble.empty()
              : OptionalDouble.of(b.volumeMm3() + 0.0);
      bodies.add(
          new Body(i + 1, b.faces(), b.areaMm2(), volume, each.boxOf(i), b.closed(), b.inner()));
    }
    List<Group> groups = new ArrayList<>();
    for (String name : mesh.groupNames()) {
      int i = mesh.groupNames().indexOf(name);
      if (named.faces[i] > 0) {
        groups.add(new Group(name, named.faces[i], named.areaMm2[i], named.boxOf(i)));
      }
    }
    return new PartList(bodies, groups);
  }

  /** Faces, area and box of each of several sets of faces. */
  private static final class Sums {
    private final SurfaceMesh mesh;
    private final int[] faces;
    private final double[] areaMm2;

    /** {@code low[3*i+axis]}, {@code high[3*i+axis]} of set i (mm). */
    private final double[] low;

    private final double[] high;

    Sums(SurfaceMesh mesh, int sets) {
      this.mesh = mesh;
      faces = new int[sets];
      areaMm2 = new double[sets];
      low = new double[3 * sets];
      high = new double[3 * sets];
      Arrays.fill(low, Double.POSITIVE_INFINITY);
      Arrays.fill(high, Double.NEGATIVE_INFINITY);
    }

    void add(int f, int set) {
      if (set < 0) {
        return;
      }
      faces[set]++;
      areaMm2[set] += mesh.faceAreaMm2(f);
      for (int k = 0; k < 3; k++) {
        for (int axis = 0; axis < 3; axis++) {
          double at = mesh.positions()[3 * mesh.corner(f, k) + axis];
          low[3 * set + axis] = Math.min(low[3 * set + axis], at);
          high[3 * set + axis] = Math.max(high[3 * set + axis], at);
        }
      }
    }

    Box boxOf(int i) {
      return new Box(
          low[3 * i],
          low[3 * i + 1],
          low[3 * i + 2],
          high[3 * i],
          high[3 * i + 1],
          high[3 * i + 2]);
    }
  }
}
