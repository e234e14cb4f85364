package org.amperskin.viewer.view;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.beans.InvalidationListener;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.geometry.Pos;
import javafx.scene.Scene;
import javafx.scene.control.Alert;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBar;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ButtonType;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.input.DragEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.stage.FileChooser;
import javafx.stage.Stage;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.model.ViewerModel.Phase;

/**
 * One viewer window: the part in the middle, the job's steps on its left, the numbers of what is
 * selected on its right, progress and problems below.
 *
 * <p>Used on the user interface's thread only, after the toolkit has started.
 */
public final class ViewerWindow {
  /** Width and height of a new window (px). */
  public static final int[] USUAL_SIZE = {1280, 800};

  private final ViewerModel model;
  private final PartPane part;
  private final BorderPane frame = new BorderPane();
  private final StackPane root = new StackPane();
  private final Scene scene;
  private final Supplier<Optional<Path>> chooser;

  /**
   * Builds a window around a model; {@link #showOn} puts it on the screen.
   *
   * @param model the state
   * @param drawing how the part gets onto the screen
   * @param widthPx width of the scene (px)
   * @param heightPx height of the scene (px)
   * @param chooser asks for a file; null for the system's own dialogue
   */
  public ViewerWindow(
      ViewerModel model,
      Drawing drawing,
      double widthPx,
      double heightPx,
      Supplier<Optional<Path>> chooser) {
    this.model = model;
    this.chooser = chooser == null ? this::ask : chooser;
    Look.loadTypeface();
    part = new PartPane(model, drawing);
    MessagePane message = new MessagePane(model, this::choose);
    StackPane middle = new StackPane(part, message);
    middle.setMinSize(0, 0);
    StepsPane steps = new StepsPane(model);
    FiguresPane figures = new FiguresPane(model);
    frame.setTop(header());
    frame.setCenter(middle);
    frame.setBottom(new StatusPane(model));
    root.getChildren()
        .addAll(frame, new RunPane(model), new SchedulePane(model), new HelpPane(model));
    scene = new Scene(root, widthPx, heightPx);
    scene.getStylesheets().add(ViewerWindow.class.getResource("viewer.css").toExternalForm());
    InvalidationListener sides =
        o -> {
          boolean shown = model.part().get() != null;
          frame.setLeft(shown ? steps : null);
          frame.setRight(shown ? figures : null);
        };
    model.part().addListener(sides);
    sides.invalidated(null);
    model.dark().addListener(o -> look().wear(scene));
    look().wear(scene);
    Keys.install(scene, model, this::choose);
    scene.setOnDragOver(this::dragOver);
    scene.setOnDragDropped(this::dropped);
  }

  private Look look() {
    return model.dark().get() ? Look.DARK : Look.LIGHT;
  }

  private HBox header() {
    Label title = Parts.word("", "strong");
    title.setMinWidth(0);
    InvalidationListener named = o -> title.setText(title());
    model.part().addListener(named);
    model.editor().unsaved().addListener(named);
    HBox bar =
        new HBox(
            Parts.word("Amperskin", "product"),
            title,
            Parts.spacer(),
            button("Open…", "open", "Ctrl+O", this::choose),
            save(),
            forPart(button("Fit", "fit", "F", model::fit)),
            forPart(toggle("Shade", "shade", "U", model.unlit(), true)),
            forPart(toggle("Edges", "edges", "E", model.facets(), false)),
            forPart(toggle("Schedule", "schedule-button", "T", model.schedule(), false)),
            toggle("Dark", "look", "L", model.dark(), false),
            button("Help", "help-button", "F1", () -> model.help().set(true)));
    bar.setAlignment(Pos.CENTER_LEFT);
    bar.getStyleClass().add("header");
    return bar;
  }

  private Button button(String words, String id, String key, Runnable action) {
    Button button = new Button(words);
    button.setOnAction(e -> action.run());
    return dressed(button, id, key);
  }

  /** A switch that is down while the property is true, or while it is false. */
  private ToggleButton toggle(
      String words, String id, String key, BooleanProperty property, boolean whileFalse) {
    ToggleButton toggle = new ToggleButton(words);
    toggle.setSelected(property.get() != whileFalse);
    toggle.setOnAction(e -> property.set(toggle.isSelected() != whileFalse));
    property.addListener(o -> toggle.setSelected(property.get() != whileFalse));
    return dressed(toggle, id, key);
  }

  private static <B extends ButtonBase> B dressed(B button, String id, String key) {
    button.setId(id);
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setTooltip(new Tooltip(key));
    button.getStyleClass().add("flat");
    return button;
  }

  private <B extends ButtonBase> B forPart(B button) {
    button.disableProperty().bind(model.part().isNull());
    return button;
  }

  private String title() {
    String mark = model.editor().unsaved().get() ? " (not saved)" : "";
    return model.part().get() == null ? "" : model.part().get().title() + mark;
  }

  private Button save() {
    Button save = button("Save", "save", "Ctrl+S", model.editor()::save);
    save.visibleProperty().bind(model.editor().unsaved());
    save.managedProperty().bind(save.visibleProperty());
    return save;
  }

  private void choose() {
    if (mayLeave()) {
      chooser.get().ifPresent(model::open);
    }
  }

  /** Asks what is to become of changes; false to stay. */
  private boolean mayLeave() {
    if (!model.editor().unsaved().get()) {
      return true;
    }
    ButtonType save = new ButtonType("Save", ButtonBar.ButtonData.YES);
    ButtonType drop = new ButtonType("Do not save", ButtonBar.ButtonData.NO);
    Alert ask =
        new Alert(
            Alert.AlertType.CONFIRMATION,
            "The films of " + model.part().get().title() + " were moved. Save that?",
            save,
            drop,
            ButtonType.CANCEL);
    ask.setHeaderText(null);
    ask.initOwner(scene.getWindow());
    ButtonType answer = ask.showAndWait().orElse(ButtonType.CANCEL);
    return answer == drop || answer == save && model.editor().save();
  }

  private Optional<Path> ask() {
    FileChooser dialogue = new FileChooser();
    dialogue.setTitle("Open a print file or a job");
    dialogue
        .getExtensionFilters()
        .addAll(
            new FileChooser.ExtensionFilter(
                "Print files and jobs",
                "*.stl",
                "*.STL",
                "*.obj",
                "*.OBJ",
                "*.ply",
                "*.PLY",
                "*.3mf",
                "*.3MF",
                "*.yaml",
                "*.yml"),
            new FileChooser.ExtensionFilter("All files", "*"));
    return Optional.ofNullable(dialogue.showOpenDialog(scene.getWindow())).map(File::toPath);
  }

  private void dragOver(DragEvent e) {
    if (e.getDragboard().hasFiles()) {
      e.acceptTransferModes(TransferMode.COPY);
    }
    e.consume();
  }

  private void dropped(DragEvent e) {
    e.setDropCompleted(openDropped(e.getDragboard().getFiles()));
    e.consume();
  }

  /** Opens the first of the dropped files; false if there is none. */
  boolean openDropped(List<File> files) {
    if (files == null || files.isEmpty()) {
      return false;
    }
    if (!mayLeave()) {
      return false;
    }
    model.open(files.get(0).toPath());
    return true;
  }

  /** Puts the window on the screen. */
  public void showOn(Stage stage) {
    stage.setScene(scene);
    stage.setTitle("Amperskin");
    InvalidationListener named = o -> stage.setTitle(title() + " – Amperskin");
    model.part().addListener(named);
    model.editor().unsaved().addListener(named);
    stage.setOnCloseRequest(
        e -> {
          if (!mayLeave()) {
            e.consume();
          }
        });
    stage.setMinWidth(900);
    stage.setMinHeight(560);
    stage.show();
    part.requestFocus();
  }

  /** True once the machine's speed in 3D was measured. */
  boolean speedKnown() {
    return part.speedKnown();
  }

  /** The scene, for pictures of the whole window. */
  public Scene scene() {
    return scene;
  }

  /** Lays the window out where it is not on a screen, so that the part knows its size. */
  public void layOut() {
    root.resize(scene.getWidth(), scene.getHeight());
    root.applyCss();
    root.layout();
  }

  /** True once all of the part is in the picture. */
  public ReadOnlyBooleanProperty drawn() {
    return part.drawn();
  }

  /** True if there is nothing left to wait for: the part is drawn, or there is none to draw. */
  public boolean settled() {
    Phase phase = model.phase().get();
    return phase == Phase.EMPTY
        || phase == Phase.FAILED
        || phase == Phase.SHOWN
            && model.progress().get() == null
            && part.drawn().get()
            && !model.fitting();
  }
}
