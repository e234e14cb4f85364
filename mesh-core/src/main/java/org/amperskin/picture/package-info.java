/**
 * Pictures of the part without a display.
 *
 * <p>May import: {@code region}. Read {@link org.amperskin.picture.Renderer} first. Example:
 *
 * <pre>{@code
 * Painting painting = Painting.regions(split);
 * Camera camera = Camera.fitting(split.mesh(), 30, 20, 1.6);
 * Renderer.render(painting, camera, 1600, 1000, RenderOptions.USUAL).writePng(Path.of("part.png"));
 * }</pre>
 */
package org.amperskin.picture;
