/**
 * What the viewer is given to show: plain values, no controls, no reading of files.
 *
 * <p>May import: {@code mesh} and {@code picture} of the core. Read {@link
 * org.amperskin.viewer.part.PartSource} first.
 */
package org.amperskin.viewer.part;
