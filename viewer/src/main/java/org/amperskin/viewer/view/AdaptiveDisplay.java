package org.amperskin.viewer.view;

import java.util.function.Consumer;
import javafx.application.ConditionalFeature;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.scene.Node;
import javafx.scene.layout.StackPane;
import org.amperskin.picture.Camera;
import org.amperskin.viewer.part.PaintedSurface;

/**
 * The part in 3D while the machine keeps up, else as pictures, with a note that says so.
 *
 * <p>The toolkit's thread waits for every frame of the graphics pipeline. Where a software driver
 * takes a tenth of a second for a frame, the whole window would hang with each; the pictures of the
 * core's renderer come from a thread of their own and keep the window awake. So a large part is
 * first shown as pictures, and handed to the pipeline if that was measured to be quick enough.
 */
final class AdaptiveDisplay implements PartDisplay {
  private static final int LARGE_FROM_FACES = 150_000;
  private static final double LONGEST_FRAME_S = 0.06;

  private final Drawing drawing;
  private final boolean in3d = Platform.isSupported(ConditionalFeature.SCENE3D);
  private final StackPane pane = new StackPane();
  private final PictureDisplay pictures = new PictureDisplay();
  private final SceneDisplay scene;
  private final ReadOnlyBooleanWrapper drawn = new ReadOnlyBooleanWrapper();
  private final ReadOnlyStringWrapper note = new ReadOnlyStringWrapper("");
  private PartDisplay active;
  private PaintedSurface part;
  private Camera camera;
  private int[] palette;
  private Consumer<PartDisplay> styling = d -> {};
  private double secondsPerMillion = Double.NaN;

  AdaptiveDisplay(Drawing drawing) {
    this.drawing = drawing;
    scene = in3d && drawing != Drawing.PICTURES ? new SceneDisplay() : null;
    if (scene != null) {
      scene
          .drawn()
          .addListener(
              (o, was, is) -> {
                if (is && active == pictures) {
                  change(scene);
                  pictures.clear();
                }
              });
    }
    activate(scene == null ? pictures : scene);
    if (scene != null && drawing == Drawing.BEST) {
      // while the window is still empty: the first 3D of a program takes longest
      SpeedProbe.run(this::measured);
    }
  }

  private void activate(PartDisplay next) {
    active = next;
    pane.getChildren().setAll(next.node());
    drawn.unbind();
    drawn.bind(next.drawn());
    String why = "";
    if (!in3d) {
      why = "3D drawing is not available on this machine; the part is shown as pictures.";
    } else if (drawing == Drawing.PICTURES) {
      why = "The part is shown as pictures, as asked.";
    } else if (next == pictures && tooSlow()) {
      why = "This machine draws 3D slowly; so large a part is shown as pictures.";
    }
    note.set(why);
  }

  private void change(PartDisplay next) {
    if (next != active) {
      activate(next);
    }
    dress(next);
  }

  private void dress(PartDisplay next) {
    styling.accept(next);
    if (palette != null) {
      next.paint(palette);
    }
    next.look(camera);
  }

  /** True if a frame of this part would hold up the window; false if not known yet. */
  private boolean tooSlow() {
    return part != null && part.mesh().faceCount() / 1e6 * secondsPerMillion > LONGEST_FRAME_S;
  }

  @Override
  public Node node() {
    return pane;
  }

  @Override
  public void show(PaintedSurface shown) {
    part = shown;
    pictures.clear();
    if (scene == null) {
      change(pictures);
      pictures.show(shown);
      return;
    }
    scene.clear();
    if (drawing == Drawing.SCENE || shown.mesh().faceCount() < LARGE_FROM_FACES) {
      change(scene);
      scene.show(shown);
      return;
    }
    change(pictures);
    pictures.show(shown);
    if (speedKnown()) {
      measured(secondsPerMillion);
    }
  }

  /** True once the pipeline's speed was measured. */
  boolean speedKnown() {
    return !Double.isNaN(secondsPerMillion);
  }

  private void measured(double seconds) {
    secondsPerMillion = seconds;
    activate(active);
    if (active == pictures && part != null && !tooSlow()) {
      dress(scene);
      scene.show(part);
    }
  }

  @Override
  public void clear() {
    active.clear();
  }

  @Override
  public void look(Camera c) {
    camera = c;
    active.look(c);
  }

  @Override
  public void paint(int[] colours) {
    palette = colours.clone();
    active.paint(colours);
  }

  @Override
  public void style(boolean unlit, boolean facets, int groundArgb, int lineArgb) {
    styling = d -> d.style(unlit, facets, groundArgb, lineArgb);
    styling.accept(active);
  }

  @Override
  public ReadOnlyBooleanProperty drawn() {
    return drawn.getReadOnlyProperty();
  }

  /** Why there are pictures in place of 3D, empty for none. */
  ReadOnlyStringProperty note() {
    return note.getReadOnlyProperty();
  }
}
