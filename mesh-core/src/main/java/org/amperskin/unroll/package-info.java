/**
 * Pieces of skin and the plane: patches, the cylinder or cone that fits one, and its unrolling.
 *
 * <p>Imports {@code geom}, {@code mesh} and {@code linear}. Read {@link org.amperskin.unroll.Patch}
 * first, then {@link org.amperskin.unroll.Cone} (films that bend) and {@link
 * org.amperskin.unroll.Unrolling} (films that are draped):
 *
 * <pre>{@code
 * Patch patch = Patch.of(mesh, chosen);
 * Cone cone = ConeFit.of(patch, ConeFit.Form.BEST).cone();
 * Unrolling flat = Unrolling.of(patch, centre, up);
 * }</pre>
 */
package org.amperskin.unroll;
