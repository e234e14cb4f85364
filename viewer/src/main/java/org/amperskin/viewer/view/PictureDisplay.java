package org.amperskin.viewer.view;

import javafx.animation.PauseTransition;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.scene.Node;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Pane;
import javafx.util.Duration;
import org.amperskin.picture.Camera;
import org.amperskin.picture.Painting;
import org.amperskin.picture.Picture;
import org.amperskin.picture.RenderOptions;
import org.amperskin.picture.Renderer;
import org.amperskin.viewer.part.PaintedSurface;

/**
 * The part as pictures of the core's own renderer, for machines without 3D.
 *
 * <p>Pictures are drawn on a thread of their own; while one is drawn only the newest wish waits.
 * During motion one sample a pixel, at rest 2x2.
 */
final class PictureDisplay implements PartDisplay {
  private static final Duration REST = Duration.millis(150);

  private final Pane pane = new Pane();
  private final ImageView view = new ImageView();
  private final ReadOnlyBooleanWrapper drawn = new ReadOnlyBooleanWrapper();
  private final PauseTransition rest = new PauseTransition(REST);
  private PaintedSurface part;
  private Camera camera;
  private int[] palette;
  private RenderOptions options = RenderOptions.USUAL;
  private boolean drawing;
  private boolean stale;
  private boolean moving;

  PictureDisplay() {
    pane.getChildren().add(view);
    view.setManaged(false);
    view.setMouseTransparent(true);
    pane.widthProperty().addListener(o -> draw());
    pane.heightProperty().addListener(o -> draw());
    rest.setOnFinished(
        e -> {
          moving = false;
          draw();
        });
  }

  @Override
  public Node node() {
    return pane;
  }

  @Override
  public void show(PaintedSurface shown) {
    drawn.set(false);
    part = shown;
    draw();
  }

  @Override
  public void clear() {
    part = null;
    drawn.set(false);
    view.setImage(null);
  }

  @Override
  public void look(Camera c) {
    camera = c;
    moving = drawn.get();
    if (moving) {
      rest.playFromStart();
    }
    draw();
  }

  @Override
  public void paint(int[] colours) {
    palette = colours.clone();
    draw();
  }

  @Override
  public void style(boolean unlit, boolean facets, int groundArgb, int lineArgb) {
    options =
        RenderOptions.USUAL
            .withLit(!unlit)
            .withBackground(groundArgb)
            .withOutline(facets ? lineArgb : 0);
    pane.setStyle(String.format("-fx-background-color: #%06x", groundArgb & 0xFFFFFF));
    draw();
  }

  private void draw() {
    int width = (int) Math.round(pane.getWidth());
    int height = (int) Math.round(pane.getHeight());
    if (part == null
        || camera == null
        || palette == null
        || palette.length < part.regions().size()
        || width < 1
        || height < 1) {
      return;
    }
    if (drawing) {
      stale = true;
      return;
    }
    drawing = true;
    stale = false;
    PaintedSurface shown = part;
    int[] colours = palette;
    Camera from = camera;
    RenderOptions how = moving ? options.withSamples(1) : options;
    Thread painter =
        new Thread(
            () -> {
              Painting painting = shown.painting(colours);
              Picture picture = Renderer.render(painting, from, width, height, how);
              Platform.runLater(() -> finish(shown, picture));
            },
            "picture of " + shown.name());
    painter.setDaemon(true);
    painter.start();
  }

  private void finish(PaintedSurface shown, Picture picture) {
    if (part == null) {
      drawing = false;
      return;
    }
    WritableImage image = new WritableImage(picture.width(), picture.height());
    image
        .getPixelWriter()
        .setPixels(
            0,
            0,
            picture.width(),
            picture.height(),
            PixelFormat.getIntArgbInstance(),
            picture.argb(),
            0,
            picture.width());
    view.setImage(image);
    drawing = false;
    if (stale) {
      draw();
    } else if (shown == part) {
      drawn.set(true);
    }
  }

  @Override
  public ReadOnlyBooleanProperty drawn() {
    return drawn.getReadOnlyProperty();
  }
}
