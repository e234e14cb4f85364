package org.amperskin.viewer.view;

import javafx.geometry.HPos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.shape.FillRule;
import javafx.scene.shape.SVGPath;
import org.amperskin.viewer.part.FigureRow;

/** Small pieces that several panes are made of. */
final class Parts {
  static final String WARNING_SIGN =
      "M8 1 L15.5 14.5 H0.5 Z M7.2 6 H8.8 V10 H7.2 Z M7.2 11.2 H8.8 V12.8 H7.2 Z";

  private static final double UNIT_WIDTH = 44;

  private Parts() {}

  /** Text that wraps and is never cut off. */
  static Label text(String words, String... styles) {
    Label label = new Label(words);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.setMinWidth(0);
    label.getStyleClass().addAll(styles);
    return label;
  }

  /** Short text that never wraps and never shrinks. */
  static Label word(String words, String... styles) {
    Label label = new Label(words);
    label.setMinWidth(Region.USE_PREF_SIZE);
    label.getStyleClass().addAll(styles);
    return label;
  }

  /** Shows or hides, hidden without taking room. */
  static void show(Node node, boolean shown) {
    node.setVisible(shown);
    node.setManaged(shown);
  }

  static Region spacer() {
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    return space;
  }

  static Node sign(String path, String style) {
    SVGPath shape = new SVGPath();
    shape.setContent(path);
    shape.setFillRule(FillRule.EVEN_ODD);
    shape.getStyleClass().add(style);
    return shape;
  }

  /** A sign and a text beside it. */
  static HBox noted(String words, String signStyle) {
    Label text = text(words);
    HBox.setHgrow(text, Priority.ALWAYS);
    HBox row = new HBox(8, sign(WARNING_SIGN, signStyle), text);
    row.getStyleClass().add("noted");
    row.setMinHeight(Region.USE_PREF_SIZE);
    return row;
  }

  /** Label, value flush right, unit flush left. */
  static GridPane figures() {
    GridPane grid = new GridPane();
    grid.getStyleClass().add("figures");
    ColumnConstraints label = new ColumnConstraints();
    label.setHgrow(Priority.ALWAYS);
    label.setMinWidth(0);
    ColumnConstraints value = new ColumnConstraints();
    value.setHalignment(HPos.RIGHT);
    value.setMinWidth(Region.USE_PREF_SIZE);
    ColumnConstraints unit = new ColumnConstraints();
    unit.setMinWidth(UNIT_WIDTH);
    unit.setPrefWidth(UNIT_WIDTH);
    grid.getColumnConstraints().addAll(label, value, unit);
    return grid;
  }

  static void add(GridPane grid, FigureRow row) {
    int y = grid.getRowCount();
    Label value = word(row.value(), "value");
    Label label = text(row.label(), "muted");
    GridPane.setValignment(value, VPos.TOP);
    GridPane.setValignment(label, VPos.TOP);
    Label unit = word(row.unit(), "muted");
    GridPane.setValignment(unit, VPos.TOP);
    grid.addRow(y, label, value, unit);
  }
}
