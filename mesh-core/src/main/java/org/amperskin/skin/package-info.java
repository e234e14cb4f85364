/**
 * Which faces the bath and the paint can reach.
 *
 * <p>May import: {@code mesh}, {@code grid}.
 */
package org.amperskin.skin;
