package org.amperskin.viewer.view;

import javafx.beans.InvalidationListener;
import javafx.beans.Observable;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.shape.SVGPath;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.model.ViewerModel.Phase;
import org.amperskin.viewer.part.ProblemException;

/** What stands in the middle when there is no part to look at: welcome, progress, or a problem. */
final class MessagePane extends StackPane {
  private static final double WIDTH = 460;

  private final ViewerModel model;
  private final Runnable choose;

  MessagePane(ViewerModel model, Runnable choose) {
    this.model = model;
    this.choose = choose;
    setPickOnBounds(false);
    model.phase().addListener(o -> refresh());
    model.problem().addListener(o -> refresh());
    refresh();
  }

  private void refresh() {
    getChildren().clear();
    Phase phase = model.phase().get();
    boolean empty = model.part().get() == null;
    if (phase == Phase.EMPTY) {
      getChildren().add(welcome());
    } else if (phase == Phase.LOADING && empty) {
      getChildren().add(waiting());
    } else if (phase == Phase.FAILED && model.problem().get() != null) {
      getChildren().add(problem(model.problem().get()));
    }
  }

  private VBox welcome() {
    SVGPath mark = new SVGPath();
    // a sheet folded over an edge: the skin of a part, with the piece that stays bare
    mark.setContent("M6 40 V18 Q6 6 18 6 H58 M14 40 V20 Q14 14 20 14 H34 M46 14 H58");
    mark.getStyleClass().add("mark");
    Button open = new Button("Open a file…");
    open.setId("open-first");
    open.setDefaultButton(true);
    open.setOnAction(e -> choose.run());
    VBox box =
        new VBox(
            14,
            mark,
            Parts.text("Drop a print file or a job here", "title-words"),
            Parts.text(
                "You see the part with its exposed and masked skin, and for each plating step the"
                    + " current, the time and the metal. Print files: STL, OBJ, PLY or 3MF.",
                "muted",
                "centred"),
            open,
            Parts.text("F1 lists the keys.", "muted", "small-words"));
    box.setAlignment(Pos.CENTER);
    box.setMaxSize(WIDTH, Region.USE_PREF_SIZE);
    box.setId("empty");
    return box;
  }

  private VBox waiting() {
    ProgressBar bar = new ProgressBar();
    bar.setPrefWidth(WIDTH);
    var stage = Parts.text("", "centred");
    Runnable tell =
        () -> {
          var now = model.progress().get();
          if (now != null) {
            stage.setText(now.stage());
            bar.setProgress(now.done().orElse(ProgressBar.INDETERMINATE_PROGRESS));
          }
        };
    tell.run();
    model
        .progress()
        .addListener(
            new InvalidationListener() {
              @Override
              public void invalidated(Observable o) {
                if (bar.getParent() == null || getChildren().isEmpty()) {
                  model.progress().removeListener(this);
                } else {
                  tell.run();
                }
              }
            });
    VBox box = new VBox(14, stage, bar);
    box.setAlignment(Pos.CENTER);
    box.setMaxSize(WIDTH, Region.USE_PREF_SIZE);
    box.setId("waiting");
    return box;
  }

  private VBox problem(ProblemException why) {
    Button open = new Button("Open another file…");
    open.setDefaultButton(true);
    open.setOnAction(e -> choose.run());
    Button back = new Button(model.part().get() == null ? "Close" : "Back to the part");
    back.setId("problem-back");
    back.setOnAction(e -> model.back());
    HBox buttons = new HBox(10, Parts.spacer(), back, open);
    HBox head =
        new HBox(
            10,
            Parts.sign(Parts.WARNING_SIGN, "problem-sign"),
            Parts.text("This file cannot be shown", "title-words"));
    head.setAlignment(Pos.CENTER_LEFT);
    VBox card =
        new VBox(
            12,
            head,
            Parts.text(why.what()),
            Parts.text(why.where(), "place"),
            Parts.text(why.whatToDo(), "muted"),
            buttons);
    card.getStyleClass().add("card");
    card.setMaxSize(WIDTH + 60, Region.USE_PREF_SIZE);
    card.setId("problem");
    return card;
  }
}
