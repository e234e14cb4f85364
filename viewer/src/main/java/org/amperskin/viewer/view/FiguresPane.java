package org.amperskin.viewer.view;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.InvalidationListener;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.amperskin.job.FilmHandles;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.part.FigureRow;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.StepCard;

/** The numbers of what is selected, and the legend of regions. */
final class FiguresPane extends VBox {
  private final ViewerModel model;
  private final VBox content = new VBox();
  private final List<FilmPane> films = new ArrayList<>();
  private final ScrollPane scroll = new ScrollPane(content);

  FiguresPane(ViewerModel model) {
    this.model = model;
    getStyleClass().add("side");
    setId("figures");
    content.getStyleClass().add("figure-list");
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    RegionLegend legend = new RegionLegend(model);
    getChildren().addAll(scroll, legend);
    model
        .editor()
        .fault()
        .addListener(o -> films.forEach(pane -> pane.tell(model.editor().fault().get())));
    InvalidationListener refill = o -> fill();
    model.part().addListener(refill);
    model.selectedStep().addListener(refill);
    fill();
  }

  private void fill() {
    String focused = focused();
    content.getChildren().clear();
    films.clear();
    LoadedPart part = model.part().get();
    if (part == null) {
      return;
    }
    int step = model.selectedStep().get();
    if (step >= 0 && step < part.steps().size()) {
      step(step + 1, part.steps().get(step));
    } else {
      part(part);
    }
    scroll.setVvalue(0);
    if (focused != null && content.lookup("#" + focused) != null) {
      content.lookup("#" + focused).requestFocus();
    }
  }

  /** Id of the film's value that is being typed into; it keeps the focus when all is refilled. */
  private String focused() {
    boolean typing =
        getScene() != null
            && getScene().getFocusOwner() instanceof TextField field
            && content.lookup("#" + field.getId()) == field;
    return typing ? getScene().getFocusOwner().getId() : null;
  }

  /** How films lie, those of one surface or all. */
  private void films(String surface) {
    for (FilmHandles handles : model.editor().films()) {
      if (surface == null || surface.equals(handles.film())) {
        FilmPane pane = new FilmPane(model.editor(), handles);
        films.add(pane);
        content.getChildren().add(pane);
      }
    }
    if (surface == null && !films.isEmpty()) {
      content
          .getChildren()
          .add(
              Parts.text(
                  "Alt+arrows move the film by 1 mm, with Shift by 0.1 mm; Alt+Page keys turn it."
                      + " Ctrl+S saves.",
                  "muted"));
    }
  }

  private void part(LoadedPart part) {
    content.getChildren().add(Parts.text("The part", "heading"));
    GridPane grid = Parts.figures();
    part.partRows().forEach(row -> Parts.add(grid, row));
    content.getChildren().add(grid);
    films(null);
    if (!part.steps().isEmpty()) {
      content
          .getChildren()
          .add(Parts.text("Choose a step on the left, or press its number.", "muted", "hint"));
    }
  }

  /** The settings first, then the hazards, then everything else, so that hazards need no scroll. */
  private void step(int number, StepCard s) {
    content.getChildren().add(Parts.text(number + "  " + s.name(), "heading"));
    String about = s.metal().equals("none") ? s.how() : s.metal() + " · " + s.how();
    content.getChildren().add(Parts.text(about, "muted", "under-heading"));
    GridPane grid = Parts.figures();
    s.currentA()
        .ifPresent(a -> Parts.add(grid, new FigureRow("Current", FigureText.fourDigits(a), "A")));
    s.timeS().ifPresent(t -> Parts.add(grid, new FigureRow("Time", FigureText.duration(t), "")));
    s.massG()
        .ifPresent(
            m -> Parts.add(grid, new FigureRow("Metal landed", FigureText.fourDigits(m), "g")));
    if (!s.thickness().isEmpty()) {
      Parts.add(grid, new FigureRow("Thickness", s.thickness(), ""));
    }
    if (grid.getRowCount() > 0) {
      content.getChildren().add(grid);
    }
    if (s.run().isPresent()) {
      Button run = new Button("Run this step");
      run.setId("run-step");
      run.setTooltip(new Tooltip("R"));
      run.setOnAction(e -> model.runStep());
      content.getChildren().add(run);
    }
    if (!s.notes().isEmpty()) {
      content.getChildren().add(Parts.text("How it is done", "subheading"));
      s.notes().forEach(note -> content.getChildren().add(Parts.text(note)));
    }
    notes("Check first", s.warnings(), "warning-sign");
    notes("Cautions", s.cautions(), "caution-sign");
    if (s.cautions().stream().noneMatch(c -> c.contains("data sheets"))) {
      Label defer =
          Parts.text("Follow the safety data sheets, local codes and licensed practice.", "muted");
      content.getChildren().add(defer);
    }
    if (!s.more().isEmpty()) {
      content.getChildren().add(Parts.text("More figures", "subheading"));
      GridPane more = Parts.figures();
      s.more().forEach(row -> Parts.add(more, row));
      content.getChildren().add(more);
    }
    films(model.part().get().surfaces().get(s.surface()).name());
  }

  private void notes(String heading, List<String> notes, String sign) {
    if (notes.isEmpty()) {
      return;
    }
    content.getChildren().add(Parts.text(heading, "subheading"));
    notes.forEach(note -> content.getChildren().add(Parts.noted(note, sign)));
  }
}
