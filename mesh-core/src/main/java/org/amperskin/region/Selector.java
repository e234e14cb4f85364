package org.amperskin.region;

import org.amperskin.geom.Box;
import org.amperskin.geom.Vec3;

/** A choice of skin by where it lies or how it faces. */
public sealed interface Selector {
  /** Skin on the side of a plane that {@code normal} points to. */
  record HalfSpace(Vec3 point, Vec3 normal) implements Selector {
    /** Takes the normal as a direction. */
    public HalfSpace {
      normal = normal.unit();
    }
  }

  /** Skin inside a box. */
  record InBox(Box box) implements Selector {
    /** Refuses an empty box. */
    public InBox {
      if (box.isEmpty()) {
        throw new IllegalArgumentException("box " + box + " mm is empty");
      }
    }
  }

  /** Skin inside a sphere. */
  record Ball(Vec3 centre, double radiusMm) implements Selector {
    /** Checks the radius. */
    public Ball {
      checkRadius(radiusMm);
    }
  }

  /** Skin inside a cylinder without ends. */
  record Rod(Vec3 point, Vec3 axis, double radiusMm) implements Selector {
    /** Checks the radius and takes the axis as a direction. */
    public Rod {
      checkRadius(radiusMm);
      axis = axis.unit();
    }
  }

  /** Faces whose outward normal lies within an angle of a direction. */
  record Facing(Vec3 direction, double withinDegrees) implements Selector {
    /** Checks the angle and takes the direction as one. */
    public Facing {
      direction = direction.unit();
      if (!(withinDegrees >= 0 && withinDegrees <= 180)) {
        throw new IllegalArgumentException("angle " + withinDegrees + " deg, 0 to 180 fit");
      }
    }
  }

  /** Faces of a group of the print file. */
  record InGroup(String group) implements Selector {}

  /**
   * Faces joined with the one nearest to a point, without crossing an edge whose faces turn by more
   * than an angle: the skin up to the creases round it.
   */
  record Grown(Vec3 from, double creaseDegrees) implements Selector {
    /** Checks the angle. */
    public Grown {
      if (!(creaseDegrees > 0 && creaseDegrees <= 180)) {
        throw new IllegalArgumentException("crease " + creaseDegrees + " deg, above 0 to 180 fit");
      }
    }
  }

  private static void checkRadius(double radiusMm) {
    if (!(radiusMm > 0) || Double.isInfinite(radiusMm)) {
      throw new IllegalArgumentException("radius " + radiusMm + " mm");
    }
  }
}
