package org.amperskin.film;

import java.util.List;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.region.FilmForm;
import org.amperskin.region.LaidFilm;
import org.amperskin.unroll.Cone;

/**
 * The cut outline of a film that bends round a cylinder or cone: a rectangle or a ring's sector.
 *
 * <p>Definition: as far round and as far along as the pieces it lies over; where that is the whole
 * turn, it has exactly the turn's length and a flap of {@value #FLAP_MM} mm to glue.
 *
 * @param outline the outline
 * @param flaps one flap if it closes, else none
 */
record BentOutline(Outline outline, List<Flap> flaps) {
  private static final double FLAP_MM = 8;
  private static final double WHOLE_TURN = 0.999;
  private static final double SAGITTA_MM = 0.002;

  static BentOutline of(LaidFilm laid, FilmForm.Bent bent, List<double[]> pieces) {
    Cone cone = bent.film();
    return cone.isCylinder() ? rectangle(cone, pieces) : sector(laid, cone, pieces);
  }

  private static BentOutline rectangle(Cone cone, List<double[]> pieces) {
    Extent e = Extent.around(pieces);
    double turn = 2 * Math.PI * cone.radiusMm();
    if (e.width() < WHOLE_TURN * turn) {
      return new BentOutline(Outline.box(e), List.of());
    }
    Extent whole = new Extent(-turn / 2, e.minY(), turn / 2, e.maxY());
    Flap flap =
        new Flap(whole.maxX(), whole.minY(), whole.maxX(), whole.maxY(), FLAP_MM, "opposite edge");
    return new BentOutline(Outline.box(whole), List.of(flap));
  }

  /** Polar about the apex: distance along the surface, angle in the plane. */
  private static BentOutline sector(LaidFilm laid, Cone cone, List<double[]> pieces) {
    double sine = Math.sin(Math.toRadians(cone.halfAngleDegrees()));
    double apexY = -cone.radiusMm() / sine - height(laid, cone, pieces);
    double side = Math.signum(sine); // below the film if it widens upward, else above
    double r0 = Double.POSITIVE_INFINITY;
    double r1 = 0;
    double p0 = Double.POSITIVE_INFINITY;
    double p1 = Double.NEGATIVE_INFINITY;
    for (double[] ring : pieces) {
      for (int i = 0; i < ring.length; i += 2) {
        double y = ring[i + 1] - apexY;
        double r = Math.hypot(ring[i], y);
        double p = Math.atan2(side * ring[i], side * y);
        r0 = Math.min(r0, r);
        r1 = Math.max(r1, r);
        p0 = Math.min(p0, p);
        p1 = Math.max(p1, p);
      }
    }
    double turn = 2 * Math.PI * Math.abs(sine);
    boolean closes = p1 - p0 >= WHOLE_TURN * turn;
    if (closes) {
      p0 = -turn / 2;
      p1 = turn / 2;
    }
    int steps = (int) Math.ceil((p1 - p0) / Math.sqrt(8 * SAGITTA_MM / r1)) + 1;
    double[] ring = new double[4 * (steps + 1)];
    for (int i = 0; i <= steps; i++) {
      double p = p0 + (p1 - p0) * i / steps;
      put(ring, 2 * i, side * r1, p, apexY);
      put(ring, 2 * (2 * steps + 1 - i), side * r0, p, apexY);
    }
    boolean clockwise = Outline.areaMm2(ring) < 0;
    Outline outline = Outline.of(List.of(clockwise ? turned(ring) : ring));
    if (!closes) {
      return new BentOutline(outline, List.of());
    }
    int a = clockwise ? 2 * (steps + 1) : 2 * steps;
    int b = clockwise ? 2 * steps : 2 * (steps + 1);
    Flap flap = new Flap(ring[a], ring[a + 1], ring[b], ring[b + 1], FLAP_MM, "opposite edge");
    return new BentOutline(outline, List.of(flap));
  }

  private static void put(double[] ring, int at, double along, double phi, double apexY) {
    ring[at] = along * Math.sin(phi);
    ring[at + 1] = along * Math.cos(phi) + apexY;
  }

  private static double[] turned(double[] ring) {
    double[] out = new double[ring.length];
    for (int i = 0; i < ring.length; i += 2) {
      out[ring.length - 2 - i] = ring[i];
      out[ring.length - 1 - i] = ring[i + 1];
    }
    return out;
  }

  /** How high the artwork's centre lies on the unrolled cone (mm), from a piece near the front. */
  private static double height(LaidFilm laid, Cone cone, List<double[]> pieces) {
    SurfaceMesh mesh = laid.mesh();
    double[] unrolled = new double[3];
    double best = Double.POSITIVE_INFINITY;
    double height = 0;
    int at = 0;
    for (int f = 0; f < laid.pieceCount(); f++) {
      if (laid.faces(f)) {
        double[] ring = pieces.get(at++);
        int v = mesh.corner(f, 0);
        Vec3 p = mesh.point(v);
        double turn = cone.turn(p);
        if (Math.abs(turn) < best) {
          best = Math.abs(turn);
          cone.unroll(p, turn, unrolled);
          height = unrolled[1] - ring[1];
        }
      }
    }
    return height;
  }
}
