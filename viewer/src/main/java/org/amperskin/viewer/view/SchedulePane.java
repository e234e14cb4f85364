package org.amperskin.viewer.view;

import java.util.stream.Collectors;
import javafx.geometry.HPos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.amperskin.plating.Schedule;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.part.LoadedPart;

/** When the steps happen: hands and waits as bars along the time. */
final class SchedulePane extends StackPane {
  private static final double BAR_PX = 330;
  private static final double LEAST_PX = 2;

  private final GridPane table = new GridPane();
  private final Label totals = Parts.text("", "strong");
  private final Label meanwhile = Parts.text("", "muted");

  SchedulePane(ViewerModel model) {
    setId("schedule");
    getStyleClass().add("veil");
    table.setHgap(16);
    table.setVgap(5);
    ScrollPane scroll = new ScrollPane(table);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    Button close = new Button("Close");
    close.setId("schedule-close");
    close.setOnAction(e -> model.schedule().set(false));
    VBox card =
        new VBox(
            14,
            Parts.word("Schedule", "heading"),
            scroll,
            totals,
            meanwhile,
            new HBox(
                key("bar-hands", "hands busy"), key("bar-wait", "waits"), Parts.spacer(), close));
    card.getStyleClass().add("card");
    card.setMaxSize(860, Region.USE_PREF_SIZE);
    card.maxHeightProperty().bind(heightProperty().subtract(48));
    getChildren().add(card);
    visibleProperty().bind(model.schedule());
    managedProperty().bind(model.schedule());
    model.part().addListener((o, was, is) -> fill(is));
    setOnMouseClicked(
        e -> {
          if (e.getTarget() == this) {
            model.schedule().set(false);
          }
        });
  }

  private static HBox key(String style, String words) {
    Region swatch = new Region();
    swatch.getStyleClass().add(style);
    swatch.setMinSize(22, 12);
    swatch.setMaxSize(22, 12);
    HBox row = new HBox(8, swatch, Parts.word(words, "muted"), new Region());
    row.getStyleClass().add("schedule-key");
    return row;
  }

  private void fill(LoadedPart part) {
    table.getChildren().clear();
    table.getColumnConstraints().clear();
    if (part == null || part.schedule().isEmpty() || part.schedule().get().entries().isEmpty()) {
      totals.setText("This file has no steps with a time.");
      meanwhile.setText("");
      return;
    }
    Schedule schedule = part.schedule().get();
    for (HPos at : new HPos[] {HPos.RIGHT, HPos.LEFT, HPos.RIGHT, HPos.RIGHT, HPos.RIGHT}) {
      ColumnConstraints column = new ColumnConstraints();
      column.setHalignment(at);
      table.getColumnConstraints().add(column);
    }
    table.addRow(
        0,
        Parts.word(""),
        Parts.word("step", "muted"),
        Parts.word("after", "muted"),
        Parts.word("hands", "muted"),
        Parts.word("waits", "muted"));
    int row = 1;
    for (Schedule.Entry e : schedule.entries()) {
      table.addRow(
          row++,
          Parts.word(Integer.toString(e.number()), "muted"),
          Parts.word(e.name()),
          Parts.word(span(e.startS())),
          Parts.word(span(e.handsS()), "value"),
          Parts.word(span(e.waitS()), "value"),
          bars(e, schedule.elapsedS()));
    }
    totals.setText(
        "Hands busy "
            + span(schedule.handsS())
            + ", ends "
            + span(schedule.elapsedS())
            + " after the start at the earliest.");
    meanwhile.setText(
        schedule.freeWhile().isEmpty()
            ? ""
            : "Free for films, mixing and other parts: "
                + schedule.freeWhile().stream()
                    .map(e -> span(e.waitS()) + " in step " + e.number())
                    .collect(Collectors.joining(", "))
                + ".");
  }

  /** Hands, then the wait, at their place along the whole time. */
  private static Pane bars(Schedule.Entry e, double elapsedS) {
    Pane line = new Pane();
    line.setMinSize(BAR_PX, 14);
    line.setPrefSize(BAR_PX, 14);
    double perS = BAR_PX / elapsedS;
    bar(line, "bar-hands", e.startS() * perS, e.handsS() * perS);
    bar(line, "bar-wait", (e.startS() + e.handsS()) * perS, e.waitS() * perS);
    return line;
  }

  private static void bar(Pane line, String style, double from, double width) {
    if (width <= 0) {
      return;
    }
    double shown = Math.max(LEAST_PX, width);
    Region bar = new Region();
    bar.getStyleClass().add(style);
    bar.resizeRelocate(Math.min(from, BAR_PX - shown), 1, shown, 12);
    bar.setManaged(false);
    line.getChildren().add(bar);
  }

  /** Whole minutes; rules of thumb are not told to the second. */
  private static String span(double seconds) {
    return seconds == 0 ? "–" : FigureText.duration(60 * Math.ceil(seconds / 60));
  }
}
