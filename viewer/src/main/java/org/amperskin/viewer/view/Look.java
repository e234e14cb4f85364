package org.amperskin.viewer.view;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import javafx.application.Application;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.text.Font;
import org.amperskin.picture.Typeface;

/** Light and dark: theme, typeface, and the few colours that are not style sheets' business. */
enum Look {
  /** Dark text on a light ground. */
  LIGHT(0xFFF3F4F6, 0xFF1F2933, 0xFFD9DCE0),
  /** Light text on a dark ground. */
  DARK(0xFF171B21, 0xFFE6EAF0, 0xFF343A44);

  private final int groundArgb;
  private final int lineArgb;
  private final int dimArgb;

  Look(int groundArgb, int lineArgb, int dimArgb) {
    this.groundArgb = groundArgb;
    this.lineArgb = lineArgb;
    this.dimArgb = dimArgb;
  }

  /** The ground behind the part. */
  int groundArgb() {
    return groundArgb;
  }

  /** Lines along the part's edges. */
  int lineArgb() {
    return lineArgb;
  }

  /** Colour of what is not brought out. */
  int dimArgb() {
    return dimArgb;
  }

  void wear(Scene scene) {
    Application.setUserAgentStylesheet(
        this == DARK
            ? new PrimerDark().getUserAgentStylesheet()
            : new PrimerLight().getUserAgentStylesheet());
    Parent root = scene.getRoot();
    root.getStyleClass().removeAll("light", "dark");
    root.getStyleClass().add(this == DARK ? "dark" : "light");
  }

  static void loadTypeface() {
    for (Typeface face : Typeface.values()) {
      try (InputStream in = face.open()) {
        if (Font.loadFont(in, 13) == null) {
          throw new IllegalStateException("typeface " + face + " cannot be read");
        }
      } catch (IOException e) {
        throw new UncheckedIOException("typeface " + face, e);
      }
    }
  }
}
