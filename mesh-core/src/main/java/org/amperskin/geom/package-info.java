/**
 * Points, boxes, exact predicates, convex cuts and the bounding-volume tree, in millimetres.
 *
 * <p>May import: {@code units}. Read {@link org.amperskin.geom.Predicates} first: what is decided
 * by sign is decided exactly, what is measured is measured in doubles.
 *
 * <pre>{@code
 * BoxTree tree = BoxTree.of(positions, corners);
 * tree.pairs(0, (f, g) -> lookAt(f, g)); // every pair of faces whose boxes meet
 * }</pre>
 */
package org.amperskin.geom;
