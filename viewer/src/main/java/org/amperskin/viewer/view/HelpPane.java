package org.amperskin.viewer.view;

import javafx.geometry.HPos;
import javafx.scene.control.Button;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.amperskin.viewer.model.ViewerModel;

/** The list of keys and what the mouse does. */
final class HelpPane extends StackPane {
  private static final String[][] KEYS = {
    {"Ctrl+O", "Open a print file or a job"},
    {"F", "Fit the part into the view"},
    {"Arrow keys", "Turn"},
    {"Shift+arrow keys", "Shift"},
    {"+  −", "Nearer, farther"},
    {"X  Y  Z", "Look along an axis"},
    {"P", "Parallel view on and off"},
    {"1 … 9", "Select a step"},
    {",  .", "Previous, next step"},
    {"0", "Select the part"},
    {"R", "Run the selected step"},
    {"T", "Schedule"},
    {"G", "Paint by region, gap, blur, light …"},
    {"U", "Legend colours without shade"},
    {"E", "Lines along the edges"},
    {"L", "Light or dark"},
    {"Alt+arrow keys", "Move the film by 1 mm, with Shift by 0.1"},
    {"Alt+Page keys", "Turn the film by 1°, with Shift by 0.1"},
    {"Ctrl+Z  Ctrl+Y", "Undo, redo"},
    {"Ctrl+S", "Save the job"},
    {"Esc", "Cancel, close"},
    {"F1", "This list"},
  };
  private static final String[][] MOUSE = {
    {"Drag", "Turn"},
    {"Shift+drag", "Shift; also the right or middle button"},
    {"Wheel", "Nearer, farther"},
    {"Rest on the part", "Region and place in mm"},
    {"Click a region in the list", "Bring it out, dim the others"},
    {"Drop a file", "Open it"},
  };

  HelpPane(ViewerModel model) {
    setId("help");
    getStyleClass().add("veil");
    Button close = new Button("Close");
    close.setOnAction(e -> model.help().set(false));
    HBox foot = new HBox(Parts.spacer(), close);
    HBox columns = new HBox(36, table("Keys", KEYS), table("Mouse", MOUSE));
    VBox card = new VBox(18, columns, foot);
    card.getStyleClass().add("card");
    card.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    getChildren().add(card);
    visibleProperty().bind(model.help());
    managedProperty().bind(model.help());
    setOnMouseClicked(
        e -> {
          if (e.getTarget() == this) {
            model.help().set(false);
          }
        });
  }

  private static VBox table(String heading, String[][] rows) {
    GridPane grid = new GridPane();
    grid.setHgap(16);
    grid.setVgap(7);
    for (int i = 0; i < rows.length; i++) {
      var key = Parts.word(rows[i][0], "key");
      GridPane.setHalignment(key, HPos.LEFT);
      grid.addRow(i, key, Parts.word(rows[i][1]));
    }
    return new VBox(10, Parts.word(heading, "heading"), grid);
  }
}
