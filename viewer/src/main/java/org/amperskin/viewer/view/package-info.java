/**
 * The window: controls over the model, the part in 3D, and pictures where 3D is missing.
 *
 * <p>May import: {@code viewer.model}, {@code viewer.part}. Read {@link
 * org.amperskin.viewer.view.ViewerWindow} first.
 */
package org.amperskin.viewer.view;
