package org.amperskin.viewer.view;

import java.util.Locale;
import javafx.beans.InvalidationListener;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.Rectangle;
import org.amperskin.geom.Vec3;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.RegionEntry;

/** The part, what the mouse does to it, and the name of the region under the pointer. */
final class PartPane extends StackPane {
  private static final double TURN_DEGREES_PER_PX = 0.4;
  private static final double ZOOM_PER_NOTCH = 1.12;
  private static final double NOTCH = 40;
  private static final double DIM = 0.82;

  private final ViewerModel model;
  private final AdaptiveDisplay display;
  private final RegionFinder finder = new RegionFinder();
  private final Label hint = Parts.word("", "pointer-hint");
  private double lastX;
  private double lastY;

  PartPane(ViewerModel model, Drawing drawing) {
    this.model = model;
    this.display = new AdaptiveDisplay(drawing);
    setId("part");
    getStyleClass().add("part-pane");
    setMinSize(0, 0);
    Rectangle clip = new Rectangle();
    clip.widthProperty().bind(widthProperty());
    clip.heightProperty().bind(heightProperty());
    setClip(clip);
    Pane above = new Pane(hint);
    above.setMouseTransparent(true);
    hint.setVisible(false);
    getChildren().addAll(display.node(), above);
    Label note = Parts.word("", "note");
    note.setId("note");
    note.setMouseTransparent(true);
    note.textProperty().bind(display.note());
    note.visibleProperty().bind(display.note().isNotEmpty().and(model.surface().isNotNull()));
    StackPane.setAlignment(note, Pos.TOP_CENTER);
    getChildren().add(note);
    listen();
  }

  private void listen() {
    InvalidationListener moved =
        o -> {
          display.look(model.camera().get());
          find();
        };
    model.camera().addListener(moved);
    InvalidationListener sized =
        o -> {
          model.setAspect(getWidth() / getHeight());
          find();
        };
    widthProperty().addListener(sized);
    heightProperty().addListener(sized);
    model
        .surface()
        .addListener(
            (o, was, is) -> {
              paint();
              display.look(model.camera().get());
              display.show(is);
              find();
            });
    model.shownRegion().addListener(o -> paint());
    InvalidationListener styled =
        o -> {
          style();
          paint();
        };
    model.dark().addListener(styled);
    model.unlit().addListener(styled);
    model.facets().addListener(styled);
    style();
    setOnMousePressed(this::press);
    setOnMouseDragged(this::drag);
    setOnMouseMoved(this::point);
    setOnMouseExited(e -> hint.setVisible(false));
    setOnScroll(
        e -> {
          if (e.getDeltaY() != 0) {
            model.zoom(Math.pow(ZOOM_PER_NOTCH, -e.getDeltaY() / NOTCH));
          }
        });
  }

  private Look look() {
    return model.dark().get() ? Look.DARK : Look.LIGHT;
  }

  private void style() {
    display.style(
        model.unlit().get(), model.facets().get(), look().groundArgb(), look().lineArgb());
  }

  private void paint() {
    PaintedSurface part = model.surface().get();
    if (part == null) {
      return;
    }
    int shown = model.shownRegion().get();
    int[] palette = new int[part.regions().size()];
    for (int r = 0; r < palette.length; r++) {
      int argb = part.regions().get(r).argb();
      palette[r] = shown == ViewerModel.NONE || shown == r ? argb : mixed(argb, look().dimArgb());
    }
    display.paint(palette);
  }

  private static int mixed(int argb, int other) {
    int out = 0xFF;
    for (int shift = 16; shift >= 0; shift -= 8) {
      double c = (1 - DIM) * (argb >> shift & 255) + DIM * (other >> shift & 255);
      out = out << 8 | (int) Math.round(c);
    }
    return out;
  }

  private void find() {
    hint.setVisible(false);
    if (model.surface().get() != null) {
      finder.changed(model.surface().get(), model.camera().get(), getWidth(), getHeight());
    }
  }

  private void press(MouseEvent e) {
    lastX = e.getX();
    lastY = e.getY();
    requestFocus();
  }

  private void drag(MouseEvent e) {
    double dx = e.getX() - lastX;
    double dy = e.getY() - lastY;
    lastX = e.getX();
    lastY = e.getY();
    if (model.surface().get() == null) {
      return;
    }
    if (e.getButton() == MouseButton.PRIMARY && !e.isShiftDown()) {
      model.turn(-dx * TURN_DEGREES_PER_PX, dy * TURN_DEGREES_PER_PX);
    } else {
      model.pan(dx / getHeight(), -dy / getHeight());
    }
  }

  private void point(MouseEvent e) {
    int region = finder.regionAt(e.getX(), e.getY());
    if (region < 0) {
      hint.setVisible(false);
      return;
    }
    RegionEntry entry = model.surface().get().regions().get(region);
    Vec3 at = finder.placeAt(e.getX(), e.getY());
    // as a job file takes it, for 'from' and 'centre'
    String place = String.format(Locale.ROOT, "%.1f %.1f %.1f mm", at.x(), at.y(), at.z());
    String state = entry.state().isEmpty() ? "" : ", " + entry.state();
    hint.setText(entry.label() + state + "\n" + place);
    hint.applyCss();
    double width = hint.prefWidth(-1);
    double x = e.getX() + 16 + width > getWidth() ? e.getX() - 12 - width : e.getX() + 16;
    hint.relocate(x, Math.min(e.getY() + 14, getHeight() - hint.prefHeight(-1) - 4));
    hint.setVisible(true);
  }

  boolean speedKnown() {
    return display.speedKnown();
  }

  /** True once all of the part is in the picture. */
  ReadOnlyBooleanProperty drawn() {
    return display.drawn();
  }
}
