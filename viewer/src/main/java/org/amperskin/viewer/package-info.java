/**
 * The desktop viewer's start.
 *
 * <p>May import: all of the core, and the viewer's own rooms below. Read {@link
 * org.amperskin.viewer.Launcher} first.
 */
package org.amperskin.viewer;
