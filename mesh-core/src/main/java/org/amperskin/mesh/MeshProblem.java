package org.amperskin.mesh;

import org.amperskin.geom.Vec3;

/**
 * A fault of a surface that can still be used, with its place and its effect.
 *
 * @param kind what is wrong
 * @param count how often
 * @param where the first place in face order (mm), null if it has none
 * @param areaMm2 surface concerned (mm2), 0 if no area depends on it
 * @param message one sentence for people, with the numbers in it
 */
public record MeshProblem(Kind kind, long count, Vec3 where, double areaMm2, String message) {
  /** The kinds of fault. */
  public enum Kind {
    /** Cracks narrower than the file's rounding, which were closed. */
    STITCHED("stitched"),
    /** Faces without area. */
    DEGENERATE("degenerate"),
    /** Faces on the same three vertices. */
    DUPLICATE("duplicate"),
    /** Edges with one face: facets are missing or the surface is a sheet. */
    OPEN_EDGE("open-edge"),
    /** Edges with more than two faces. */
    NON_MANIFOLD("non-manifold"),
    /** Neighbours that disagree on which side is out. */
    FLIPPED("flipped"),
    /** A closed body whose faces all look inward. */
    INSIDE_OUT("inside-out"),
    /** A closed shell inside a body: surface that no liquid reaches. */
    INNER_SHELL("inner-shell"),
    /** Faces that pass through each other. */
    OVERLAP("overlap");

    private final String label;

    Kind(String label) {
      this.label = label;
    }

    /** The word used in JSON and text. */
    public String label() {
      return label;
    }
  }
}
