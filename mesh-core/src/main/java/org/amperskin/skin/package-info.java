/**
 * Which faces the bath and the paint can reach.
 *
 * <p>May import: {@code mesh}, {@code grid}. Read {@link org.amperskin.skin.Skin} first, then
 * {@link org.amperskin.skin.SprayReach}. Crossed faces are cut along each other ({@code
 * FaceCutter}), and the liquid is followed by proofs of reach ({@code ReachSearch}).
 *
 * <pre>{@code
 * Skin skin = Skin.of(diagnosis, progress);
 * skin.wettedAreaMm2(); // with skin.errorMm2(), and skin.parts() for what is not wetted and why
 * SprayReach.of(skin, progress).areaMm2(); // the part that takes paint, and so current
 * }</pre>
 */
package org.amperskin.skin;
