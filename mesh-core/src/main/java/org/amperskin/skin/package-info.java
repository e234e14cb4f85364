/**
 * Which faces the bath and the paint can reach.
 *
 * <p>May import: {@code mesh}, {@code grid}. Read {@link org.amperskin.skin.Skin} first: it stands
 * behind an area only where the surface is closed, nothing crosses and inner shells are told apart.
 *
 * <pre>{@code
 * Skin skin = Skin.of(diagnosis, progress);
 * skin.wettedAreaMm2(); // empty where it cannot be stood behind; skin.doubts() says why
 * }</pre>
 */
package org.amperskin.skin;
