package org.amperskin.viewer.view;

import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.amperskin.viewer.model.JobEditor;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.model.ViewerModel.Phase;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.Progress;

/** Progress, and the faults of the file or the job. */
final class StatusPane extends VBox {
  private static final double MOST_PROBLEMS_HEIGHT = 96;

  private final ViewerModel model;
  private final Label state = Parts.word("", "muted");
  private final Label count = Parts.word("", "muted");
  private final ProgressBar bar = new ProgressBar();
  private final Button cancel = new Button("Cancel");
  private final VBox problems = new VBox();
  private final ScrollPane scroll = new ScrollPane(problems);

  StatusPane(ViewerModel model) {
    this.model = model;
    getStyleClass().add("status");
    bar.setPrefWidth(220);
    cancel.setId("cancel");
    cancel.getStyleClass().add("small");
    cancel.setOnAction(e -> model.cancel());
    HBox line = new HBox(12, state, bar, cancel, Parts.spacer(), count);
    line.setAlignment(Pos.CENTER_LEFT);
    line.getStyleClass().add("status-line");
    scroll.setFitToWidth(true);
    scroll.setMaxHeight(MOST_PROBLEMS_HEIGHT);
    problems.getStyleClass().add("problems");
    problems.setId("problems");
    getChildren().addAll(scroll, line);
    model.progress().addListener(o -> tell());
    model.phase().addListener(o -> tell());
    model.editor().fault().addListener(o -> tell());
    model.part().addListener((o, was, is) -> list(is));
    list(model.part().get());
    tell();
  }

  private void list(LoadedPart part) {
    problems.getChildren().clear();
    int n = part == null ? 0 : part.problems().size();
    if (part != null) {
      part.problems().forEach(p -> problems.getChildren().add(Parts.noted(p, "warning-sign")));
    }
    scroll.setVisible(n > 0);
    scroll.setManaged(n > 0);
    // a part that is shown while work on it goes on was not looked through yet
    String none =
        model.progress().get() == null ? "No problems found" : "Problems not looked for yet";
    String found = n == 0 ? none : n == 1 ? "1 problem" : n + " problems";
    count.setText(part == null ? "" : found);
  }

  private String ready() {
    JobEditor.Fault fault = model.editor().fault().get();
    if (fault == null) {
      return "Ready";
    }
    return fault.film().isEmpty()
        ? fault.why()
        : "Film " + fault.film() + " stays as it was: see its " + fault.key();
  }

  private void tell() {
    Progress now = model.progress().get();
    boolean busy = now != null || model.phase().get() == Phase.LOADING;
    bar.setVisible(busy);
    bar.setManaged(busy);
    cancel.setVisible(busy);
    cancel.setManaged(busy);
    if (busy && now != null) {
      state.setText(now.stage());
      bar.setProgress(now.done().orElse(ProgressBar.INDETERMINATE_PROGRESS));
    } else {
      state.setText(
          switch (model.phase().get()) {
            case EMPTY -> "Nothing opened yet";
            case LOADING -> "Opening";
            case SHOWN -> ready();
            case FAILED -> "Could not open the file";
          });
    }
  }
}
