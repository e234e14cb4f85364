/**
 * What the readers of all formats share: the error they throw, the mesh they build up, the text
 * they scan.
 *
 * <p>A room of its own, so that {@code io} can know every format and no format knows {@code io}.
 *
 * <p>May import: {@code mesh}. Read {@link org.amperskin.io.common.MeshBuilder} first.
 */
package org.amperskin.io.common;
