package org.amperskin.viewer.view;

import java.util.ArrayList;
import java.util.List;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.StepCard;

/** The job as a list in working order, with the part itself on top. */
final class StepsPane extends VBox {
  private static final PseudoClass SELECTED = PseudoClass.getPseudoClass("selected");

  private final ViewerModel model;
  private final VBox list = new VBox();
  private final List<Button> rows = new ArrayList<>();

  StepsPane(ViewerModel model) {
    this.model = model;
    getStyleClass().add("side");
    setId("steps");
    ScrollPane scroll = new ScrollPane(list);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().addAll(Parts.word("Steps", "heading"), scroll);
    list.getStyleClass().add("step-list");
    model.part().addListener((o, was, is) -> fill(is));
    model.selectedStep().addListener(o -> mark());
    fill(model.part().get());
  }

  private void fill(LoadedPart part) {
    rows.clear();
    list.getChildren().clear();
    if (part == null) {
      return;
    }
    add(ViewerModel.NONE, "0", "The part", "surface and regions", "", false);
    for (int i = 0; i < part.steps().size(); i++) {
      StepCard s = part.steps().get(i);
      String about = s.metal().equals("none") ? s.how() : s.metal() + " · " + s.how();
      add(i, Integer.toString(i + 1), s.name(), about, figures(s), !s.warnings().isEmpty());
    }
    if (part.steps().isEmpty()) {
      Label none =
          Parts.text(
              "This file holds a part but no job. Open a job file to see the steps, with current,"
                  + " time and metal for each.",
              "muted",
              "steps-hint");
      list.getChildren().add(none);
    }
    mark();
  }

  private static String figures(StepCard s) {
    List<String> words = new ArrayList<>();
    s.currentA().ifPresent(a -> words.add(FigureText.fourDigits(a) + " A"));
    s.timeS().ifPresent(t -> words.add(FigureText.duration(t)));
    return String.join("  ·  ", words);
  }

  private void add(
      int step, String number, String name, String about, String figures, boolean warned) {
    Label badge = Parts.word(number, "badge");
    StackPane rail = new StackPane(badge);
    rail.setAlignment(Pos.TOP_CENTER);
    rail.getStyleClass().add("rail");
    VBox words = new VBox(Parts.text(name, "strong"), Parts.text(about, "muted"));
    if (!figures.isEmpty()) {
      words.getChildren().add(Parts.text(figures, "value"));
    }
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    HBox content = new HBox(10, rail, words);
    if (warned) {
      content.getChildren().add(Parts.sign(Parts.WARNING_SIGN, "warning-sign"));
    }
    Button row = new Button();
    row.setGraphic(content);
    row.setMaxWidth(Double.MAX_VALUE);
    row.setMinHeight(Region.USE_PREF_SIZE);
    row.getStyleClass().setAll("step-row");
    row.setAlignment(Pos.TOP_LEFT);
    row.setId("step-" + number);
    row.setAccessibleText("Step " + number + ", " + name + ", " + about + " " + figures);
    row.setOnAction(e -> model.selectStep(step));
    content.prefWidthProperty().bind(row.widthProperty().subtract(24));
    rows.add(row);
    list.getChildren().add(row);
  }

  private void mark() {
    for (int i = 0; i < rows.size(); i++) {
      rows.get(i).pseudoClassStateChanged(SELECTED, i - 1 == model.selectedStep().get());
    }
  }
}
