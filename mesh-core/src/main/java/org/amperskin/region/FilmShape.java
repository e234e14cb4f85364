package org.amperskin.region;

import org.amperskin.geom.Barycentric;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.unroll.Cone;
import org.amperskin.unroll.ConeFit;
import org.amperskin.unroll.Patch;
import org.amperskin.unroll.Unrolling;

/** The shape a film takes on a skin, worked out once; pieces are then laid behind it. */
abstract sealed class FilmShape permits FilmShape.Flat, FilmShape.Wrapped, FilmShape.Draped {
  final SurfaceMesh skin;
  final boolean sound;
  final boolean[] behind;

  private FilmShape(SurfaceMesh skin, boolean sound, boolean[] behind) {
    this.skin = skin;
    this.sound = sound;
    this.behind = behind;
  }

  /**
   * Finds the shape.
   *
   * @param skin the uncut skin
   * @param sound whether it is closed and its faces agree on which side is out
   * @throws IllegalArgumentException if the film cannot be laid so
   */
  static FilmShape of(MaskFilm film, SurfaceMesh skin, boolean sound, Progress progress) {
    boolean[] behind = film.patch().isEmpty() ? null : ChosenFaces.inAll(skin, film.patch());
    Placement placement = film.placement();
    if (placement instanceof FlatPlacement flat) {
      return new Flat(skin, sound, behind, flat, progress);
    }
    if (placement instanceof WrappedPlacement wrapped) {
      progress.at("bending the film", Double.NaN);
      return new Wrapped(skin, sound, patch(film, skin, behind), behind, wrapped);
    }
    progress.at("unrolling the patch", Double.NaN);
    Patch patch = patch(film, skin, behind);
    return new Draped(skin, sound, patch, (DrapedPlacement) placement);
  }

  private static Patch patch(MaskFilm film, SurfaceMesh skin, boolean[] behind) {
    boolean given = film.placement() instanceof WrappedPlacement w && w.axis() != null;
    if (behind == null && !given) {
      throw new IllegalArgumentException(
          "film " + film.name() + ": 0 selectors say which patch it covers; give a 'patch'");
    }
    boolean[] chosen = behind == null ? ChosenFaces.inAll(skin, film.patch()) : behind;
    try {
      return Patch.of(skin, chosen);
    } catch (IllegalArgumentException none) {
      throw new IllegalArgumentException(
          "film " + film.name() + ": the patch is empty: " + none.getMessage(), none);
    }
  }

  /** Lays pieces behind the film. */
  abstract Laid lay(Partition in, Progress progress);

  /** What the film's shape is, for people. */
  abstract FilmForm form();

  /** Before the part, square to parallel light. */
  static final class Flat extends FilmShape {
    private static final double GAP = 1e-7;

    private final FlatPlacement placement;
    private final Vec3 centre;
    private final FilmFrame whole;
    private final Shadows shadows;

    private Flat(
        SurfaceMesh skin,
        boolean sound,
        boolean[] behind,
        FlatPlacement placement,
        Progress progress) {
      super(skin, sound, behind);
      this.placement = placement;
      this.centre =
          placement.centre() != null
              ? placement.centre()
              : FilmFrame.centreOfFacing(skin, placement, behind);
      this.whole = FilmFrame.of(skin, placement, centre);
      double depth0 = Double.POSITIVE_INFINITY;
      double depth1 = Double.NEGATIVE_INFINITY;
      for (int v = 0; v < skin.vertexCount(); v++) {
        depth0 = Math.min(depth0, whole.depth(v));
        depth1 = Math.max(depth1, whole.depth(v));
      }
      progress.at("casting shadows", 0);
      double gap = GAP * Math.max(whole.reach() * placement.scale(), depth1 - depth0);
      this.shadows = Shadows.of(skin, whole, sound, gap);
    }

    @Override
    Laid lay(Partition in, Progress progress) {
      FilmFrame frame = in.mesh() == skin ? whole : FilmFrame.of(in.mesh(), placement, centre);
      return new Laid(in, frame, shadows, true, behind, 0);
    }

    @Override
    FilmForm form() {
      return new FilmForm.Plane(placement.toward(), centre);
    }
  }

  /** Bent round a cylinder or cone. */
  static final class Wrapped extends FilmShape {
    private final WrappedPlacement placement;
    private final ConeFit fit;
    private final Cone film;
    private final double height;

    private Wrapped(
        SurfaceMesh skin,
        boolean sound,
        Patch patch,
        boolean[] behind,
        WrappedPlacement placement) {
      super(skin, sound, behind == null ? null : patch.marked());
      this.placement = placement;
      Cone found =
          placement.axis() == null ? ConeFit.of(patch, placement.form()).cone() : given(patch);
      Cone cone = upward(found);
      fit = ConeFit.given(patch, cone);
      Vec3 towards = placement.centre() == null ? patch.centroid() : placement.centre();
      Vec3 d = towards.minus(cone.point());
      Vec3 front = d.minus(cone.axis().times(d.dot(cone.axis())));
      if (front.length() < 1e-3 * cone.radiusMm()) {
        front = cone.axis().cross(new Vec3(1, 0, 0));
        if (front.length() < 0.1) {
          front = cone.axis().cross(new Vec3(0, 1, 0));
        }
        front = Math.abs(front.y()) > 1e-9 && front.y() > 0 ? front.times(-1) : front;
      }
      Cone turned = cone.facing(front);
      film = turned.grown(turned.inside() ? fit.lowestMm() : fit.highestMm());
      height = placement.centre() == null ? middle(patch) : heightOf(placement.centre());
    }

    private Cone given(Patch patch) {
      WrappedPlacement.Axis axis = placement.axis();
      double least = Double.POSITIVE_INFINITY;
      double most = 0;
      double sense = 0;
      for (int i = 0; i < patch.size(); i++) {
        double[] n = patch.mesh().unitNormal(patch.face(i));
        Vec3 out = fromAxis(axis, patch.middle(i));
        sense += patch.mesh().faceAreaMm2(patch.face(i)) * out.dot(new Vec3(n[0], n[1], n[2]));
        for (int k = 0; k < 3; k++) {
          double r = fromAxis(axis, patch.point(patch.corner(i, k))).length();
          least = Math.min(least, r);
          most = Math.max(most, r);
        }
      }
      boolean inside = sense < 0;
      Vec3 square =
          axis.direction()
              .cross(Math.abs(axis.direction().x()) < 0.6 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0));
      double radius = inside ? least : most;
      if (!(radius > 0)) {
        throw new IllegalArgumentException(
            "the patch lies within " + radius + " mm of the axis: nothing to bend a film round");
      }
      return new Cone(axis.point(), axis.direction(), square, radius, 0, inside);
    }

    private static Vec3 fromAxis(WrappedPlacement.Axis axis, Vec3 p) {
      Vec3 d = p.minus(axis.point());
      return d.minus(axis.direction().times(d.dot(axis.direction())));
    }

    /** The same cone with its axis turned to where up points. */
    private Cone upward(Cone c) {
      if (c.axis().dot(placement.up()) >= 0) {
        return c;
      }
      return new Cone(
          c.point(),
          c.axis().times(-1),
          c.front(),
          c.radiusMm(),
          -c.halfAngleDegrees(),
          c.inside());
    }

    private double middle(Patch patch) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < patch.size(); i++) {
        for (int k = 0; k < 3; k++) {
          double y = heightOf(patch.point(patch.corner(i, k)));
          low = Math.min(low, y);
          high = Math.max(high, y);
        }
      }
      return (low + high) / 2;
    }

    /** Height on the unrolled film of a point, as if it lay before the front (mm). */
    private double heightOf(Vec3 p) {
      double[] out = new double[3];
      film.unroll(p, 0, out);
      return out[1];
    }

    @Override
    Laid lay(Partition in, Progress progress) {
      BentMesh bent = BentMesh.of(in, film);
      FilmFrame frame = bent.frame(film, placement, height);
      progress.at("casting shadows", 0);
      Shadows shadows =
          Shadows.of(bent.pieces().mesh(), frame, sound, BentMesh.gapMm(film.radiusMm()));
      return new Laid(
          bent.pieces(), frame, shadows, false, behind, BentMesh.shiftMm(film.radiusMm()));
    }

    @Override
    FilmForm form() {
      return new FilmForm.Bent(film, fit);
    }
  }

  /** Cut to an unrolled patch. */
  static final class Draped extends FilmShape {
    private final DrapedPlacement placement;
    private final Unrolling flat;
    private final int[] place;

    private Draped(SurfaceMesh skin, boolean sound, Patch patch, DrapedPlacement placement) {
      super(skin, sound, patch.marked());
      this.placement = placement;
      Vec3 centre = placement.centre() == null ? patch.centroid() : placement.centre();
      this.flat = Unrolling.of(patch, centre, placement.up());
      this.place = new int[skin.faceCount()];
      for (int i = 0; i < patch.size(); i++) {
        place[patch.face(i)] = i;
      }
    }

    @Override
    Laid lay(Partition in, Progress progress) {
      SurfaceMesh mesh = in.mesh();
      int faces = mesh.faceCount();
      double[] positions = new double[9 * faces];
      int[] corners = new int[3 * faces];
      int[] codes = new int[faces];
      double[] xyz = new double[9 * faces];
      for (int f = 0; f < faces; f++) {
        codes[f] = in.code(f);
        for (int k = 0; k < 3; k++) {
          int v = mesh.corner(f, k);
          int to = 3 * f + k;
          corners[to] = to;
          positions[3 * to] = mesh.x(v);
          positions[3 * to + 1] = mesh.y(v);
          positions[3 * to + 2] = mesh.z(v);
          if (behind[in.parent(f)]) {
            onFilm(in.parent(f), positions, 3 * to, xyz);
          }
        }
      }
      Partition apart = new Partition(SurfaceMesh.of(positions, corners), in.parents(), codes);
      return new Laid(apart, FilmFrame.of(xyz, Lay.of(placement), 0, 0), null, true, behind, 0);
    }

    /** Takes a point of a face to the plane, by its place in the face. */
    private void onFilm(int face, double[] p, int at, double[] out) {
      int i = place[face];
      Vec3 point = new Vec3(p[at], p[at + 1], p[at + 2]);
      Barycentric w = Barycentric.of(corner(face, 0), corner(face, 1), corner(face, 2), point);
      double s = w.second();
      double t = w.third();
      out[at] =
          flat.x(i, 0) + s * (flat.x(i, 1) - flat.x(i, 0)) + t * (flat.x(i, 2) - flat.x(i, 0));
      out[at + 1] =
          flat.y(i, 0) + s * (flat.y(i, 1) - flat.y(i, 0)) + t * (flat.y(i, 2) - flat.y(i, 0));
    }

    private Vec3 corner(int face, int k) {
      int v = skin.corner(face, k);
      return skin.point(v);
    }

    @Override
    FilmForm form() {
      return new FilmForm.Cut(flat);
    }
  }
}
