/**
 * What the viewer is doing, as properties: no controls, so that tests need no window.
 *
 * <p>May import: {@code viewer.part}. Read {@link org.amperskin.viewer.model.ViewerModel} first.
 */
package org.amperskin.viewer.model;
