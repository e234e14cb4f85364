/**
 * Placing artwork on the skin, cutting the mesh along it, and the regions that result.
 *
 * <p>May import: {@code skin}, {@code pattern}. Read {@link org.amperskin.region.Region} first,
 * then {@link org.amperskin.region.SplitMesh}. The cutting is exact: every face is cut along the
 * shadows on it and the artwork over it, nothing is sampled.
 *
 * <pre>{@code
 * MaskFilm film = new MaskFilm("front", artwork,
 *     FlatPlacement.toward(new Vec3(0, 1, 0)), MaskKind.POSITIVE_RESIST, false);
 * Region r = Region.of(
 *     new RegionRule("front", List.of(film), List.of(), List.of()), skin, Progress.SILENT);
 * }</pre>
 */
package org.amperskin.region;
