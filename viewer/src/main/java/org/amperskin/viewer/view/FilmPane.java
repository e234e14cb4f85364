package org.amperskin.viewer.view;

import java.util.HashMap;
import java.util.Map;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.amperskin.job.FilmHandles;
import org.amperskin.viewer.model.JobEditor;

/** How one film lies, as values to change: the words and units are those of the job file. */
final class FilmPane extends VBox {
  private static final double KEY_WIDTH = 64;

  private final JobEditor editor;
  private final String film;
  private final Map<String, TextField> fields = new HashMap<>();
  private final Map<String, Label> faults = new HashMap<>();

  FilmPane(JobEditor editor, FilmHandles handles) {
    this.editor = editor;
    this.film = handles.film();
    getStyleClass().add("film-pane");
    setId("film-" + film);
    getChildren().add(Parts.text("Film " + film + ", lies " + handles.lies(), "subheading"));
    GridPane grid = new GridPane();
    grid.getStyleClass().add("figures");
    ColumnConstraints key = new ColumnConstraints();
    key.setMinWidth(KEY_WIDTH);
    ColumnConstraints value = new ColumnConstraints();
    value.setHgrow(Priority.ALWAYS);
    grid.getColumnConstraints().addAll(key, value);
    for (FilmHandles.Handle handle : handles.handles()) {
      Label fault = Parts.text("", "fault");
      fault.setId("film-" + film + "-" + handle.key() + "-fault");
      fault.managedProperty().bind(fault.visibleProperty());
      faults.put(handle.key(), fault);
      VBox cell = new VBox(3, field(handle), fault);
      grid.addRow(grid.getRowCount(), Parts.word(handle.key(), "muted"), cell);
    }
    getChildren().add(grid);
    tell(editor.fault().get());
  }

  private TextField field(FilmHandles.Handle handle) {
    TextField field = new TextField(handle.text());
    field.setId("film-" + film + "-" + handle.key());
    field.setPromptText(handle.usual());
    field.setOnAction(e -> editor.set(film, handle.key(), field.getText()));
    field
        .focusedProperty()
        .addListener(
            (o, was, is) -> {
              if (is) {
                editor.active().set(film);
              } else if (field.getScene() != null) {
                editor.set(film, handle.key(), field.getText());
              }
            });
    field.addEventFilter(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (e.getCode() == KeyCode.ESCAPE) {
            field.setText(handle.text());
            getParent().requestFocus();
            e.consume();
          }
        });
    fields.put(handle.key(), field);
    return field;
  }

  /** Shows what was refused, if it is of this film. */
  void tell(JobEditor.Fault now) {
    boolean mine = now != null && now.film().equals(film);
    faults.forEach(
        (key, fault) -> {
          fault.setVisible(mine && now.key().equals(key));
          fault.setText(mine ? now.why() : "");
        });
    if (mine && fields.containsKey(now.key()) && !now.text().isEmpty()) {
      fields.get(now.key()).setText(now.text());
    }
  }
}
