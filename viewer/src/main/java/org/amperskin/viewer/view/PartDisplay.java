package org.amperskin.viewer.view;

import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.scene.Node;
import org.amperskin.picture.Camera;
import org.amperskin.viewer.part.PaintedSurface;

/** A way to show the part: in 3D, or by pictures. Used on the user interface's thread only. */
interface PartDisplay {
  /** What to put into the window; fills its parent. */
  Node node();

  /** Shows a part. */
  void show(PaintedSurface part);

  /** Lets go of the part. */
  void clear();

  /** Moves the camera. */
  void look(Camera camera);

  /** Recolours the regions, {@code palette[region]} = 0xAARRGGBB. */
  void paint(int[] palette);

  /** Switches light and shade, lines along edges, and the ground's colour. */
  void style(boolean unlit, boolean facets, int groundArgb, int lineArgb);

  /** True once all of the part is in the picture. */
  ReadOnlyBooleanProperty drawn();
}
