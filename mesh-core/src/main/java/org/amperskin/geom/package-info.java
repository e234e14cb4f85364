/**
 * Points, boxes, predicates and search trees, in millimetres.
 *
 * <p>May import: {@code units}.
 */
package org.amperskin.geom;
