package org.amperskin.viewer.view;

/** How the part gets onto the screen. */
public enum Drawing {
  /** In 3D where that is there and quick enough for the part, else by pictures. */
  BEST,
  /** In 3D whatever it takes. */
  SCENE,
  /** By pictures. */
  PICTURES
}
