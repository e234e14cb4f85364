package org.amperskin.viewer.view;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.InvalidationListener;
import javafx.beans.Observable;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import org.amperskin.job.KeptRun;
import org.amperskin.plating.Pulse;
import org.amperskin.plating.StepRun;
import org.amperskin.report.RunText;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.viewer.model.RunClock;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.part.FigureRow;

/** A step while it is done, to be read from two metres away. */
final class RunPane extends VBox {
  private static final Duration EACH = Duration.millis(500);

  private final ViewerModel model;
  private final Label title = Parts.word("", "title-words");
  private final Label large = Parts.word("", "run-large");
  private final Label under = Parts.text("", "run-under");
  private final ProgressBar bar = new ProgressBar(0);
  private final GridPane figures = Parts.figures();
  private final Button go = new Button();
  private final TextField read = new TextField();
  private final Label readWord = Parts.word("Current on the meter", "muted");
  private final Label fault = Parts.text("", "fault");
  private final VBox watch = new VBox(8);
  private final Label seen = Parts.text("", "run-kept");
  private final Button on = new Button();
  private final VBox question = new VBox(10);
  private final HBox buttons = new HBox(10);
  private final InvalidationListener shown = o -> show();
  private RunClock clock;
  private final Timeline timer = new Timeline(new KeyFrame(EACH, e -> tick()));

  RunPane(ViewerModel model) {
    this.model = model;
    setId("run");
    getStyleClass().add("run-pane");
    large.setId("run-large");
    go.setId("run-go");
    read.setId("run-read");
    read.setPromptText("6.5 A");
    read.setPrefColumnCount(7);
    read.setOnAction(e -> take());
    read.setOnKeyPressed(
        e -> {
          if (e.getCode() == KeyCode.ESCAPE) {
            model.leaveRun();
          }
        });
    go.setOnAction(e -> clock.toggle());
    Button reset = new Button("Back to the start");
    reset.setOnAction(e -> clock.reset());
    Button close = new Button("Close");
    close.setId("run-close");
    close.setOnAction(e -> model.leaveRun());
    bar.setMaxWidth(Double.MAX_VALUE);
    HBox head = new HBox(10, title, Parts.spacer(), close);
    head.setAlignment(Pos.CENTER_LEFT);
    buttons.getChildren().addAll(go, reset, Parts.spacer(), readWord, read);
    buttons.setAlignment(Pos.CENTER_LEFT);
    on.setId("run-on");
    on.setOnAction(e -> clock.onSince());
    Button off = new Button("No, go on from here");
    off.setId("run-off");
    off.setOnAction(e -> clock.offSince());
    Button anew = new Button("From the start");
    anew.setId("run-anew");
    anew.setOnAction(e -> clock.reset());
    question.setId("run-question");
    question.getChildren().addAll(seen, new HBox(10, on, off, anew));
    VBox left = new VBox(14, large, under, bar, figures, question, buttons, fault);
    HBox.setHgrow(left, Priority.ALWAYS);
    left.setMinWidth(0);
    ScrollPane scroll = new ScrollPane(watch);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox right = new VBox(10, Parts.word("Watch for", "heading"), scroll);
    right.getStyleClass().add("run-watch");
    VBox.setVgrow(scroll, Priority.ALWAYS);
    HBox columns = new HBox(36, left, right);
    VBox.setVgrow(columns, Priority.ALWAYS);
    getChildren().addAll(head, columns);
    timer.setCycleCount(Animation.INDEFINITE);
    model.running().addListener((o, was, is) -> change(is));
    visibleProperty().bind(model.running().isNotNull());
    managedProperty().bind(visibleProperty());
  }

  private void change(RunClock next) {
    if (clock != null) {
      watched(clock).forEach(o -> o.removeListener(shown));
    }
    clock = next;
    timer.stop();
    if (next == null) {
      return;
    }
    watched(next).forEach(o -> o.addListener(shown));
    fault.setText("");
    read.clear();
    timer.play();
    StepRun run = next.run().get();
    title.setText(next.number() + "  " + run.step().name());
    read.setVisible(run.electric());
    readWord.setVisible(run.electric());
    watch.getChildren().clear();
    run.watch().forEach(w -> watch.getChildren().add(Parts.noted(w, "warning-sign")));
    run.step().cautions().stream()
        .map(c -> c.hazard() + ": " + c.text())
        .forEach(c -> watch.getChildren().add(Parts.noted(c, "caution-sign")));
    clock.tick();
    show();
    (next.kept().get() == null ? go : on).requestFocus();
  }

  private static List<Observable> watched(RunClock clock) {
    return List.of(clock.run(), clock.going(), clock.kept(), clock.fault());
  }

  private void tick() {
    clock.tick();
    if (clock.kept().get() != null) {
      show(); // the time since it was last seen grows
    }
  }

  private void take() {
    String text = read.getText().strip();
    if (text.isEmpty()) {
      return;
    }
    try {
      String told = text.matches("[0-9.]+") ? text + " A" : text;
      double amperes = Quantity.parse(told, Dimension.CURRENT).si();
      Optional<String> far = RunText.farOff(clock.run().get(), amperes);
      clock.read(amperes);
      fault.setText(far.orElse(""));
      read.clear();
      go.requestFocus();
    } catch (IllegalArgumentException bad) {
      fault.setText(bad.getMessage());
    }
  }

  private void show() {
    StepRun run = clock.run().get();
    Parts.show(question, clock.kept().get() != null);
    Parts.show(buttons, clock.kept().get() == null);
    if (clock.kept().get() != null) {
      ask(clock.kept().get(), run.electric());
    }
    if (!clock.fault().get().isEmpty()) {
      fault.setText(clock.fault().get());
    }
    large.setText(large(run));
    under.setText(under(run));
    bar.setProgress(run.share());
    boolean begun = run.elapsedS() > 0;
    go.setText(clock.going().get() ? "Pause" : begun ? "Go on" : "Start");
    figures.getChildren().clear();
    if (run.electric()) {
      row("Passed", ampereHours(run.passedAh()), "A·h");
      row("of", ampereHours(run.step().chargeAh().orElse(0)), "A·h");
      boolean over = run.overAh() > 0;
      row(over ? "Too many" : "Left", ampereHours(over ? run.overAh() : run.leftAh()), "A·h");
    }
    row("Time gone", clock(run.elapsedS()), "");
    row("Time left", clock(run.leftS()), "");
    run.pass().ifPresent(p -> row("Round of the swab", p[0] + " of " + p[1], ""));
    run.next()
        .ifPresent(
            n ->
                row(
                    "In " + clock(n.atS() - run.elapsedS()) + " set",
                    FigureText.fourDigits(n.currentA()),
                    "A"));
    run.readA().ifPresent(a -> row("Counted as read", FigureText.fourDigits(a), "A"));
  }

  /** A step that was broken off: how it goes on is for the user to say. */
  private void ask(KeptRun kept, boolean electric) {
    String ago = "Last seen " + FigureText.duration(clock.gapS()) + " ago";
    if (kept.going()) {
      String since = electric ? "was the current on since?" : "has it gone on since?";
      seen.setText(ago + " while it ran; " + since);
      on.setText(
          electric ? "Yes, count " + ampereHours(clock.gapAh()) + " A·h more" : "Yes, count that");
    } else {
      seen.setText(ago + ", paused.");
    }
    if (kept.planChanged(clock.run().get())) {
      seen.setText(seen.getText() + " The plan of this step has changed since.");
    }
    Parts.show(on, kept.going());
  }

  private void row(String label, String value, String unit) {
    Parts.add(figures, new FigureRow(label, value, unit));
  }

  private static String ampereHours(double value) {
    return String.format(Locale.ROOT, value < 1 ? "%.4f" : "%.3f", value);
  }

  /** Hours, minutes and seconds, so that a running figure keeps its width. */
  private static String clock(double seconds) {
    long s = Math.round(seconds);
    return String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60);
  }

  private static String large(StepRun run) {
    if (run.done()) {
      return run.electric() ? "OFF" : "Done";
    }
    if (run.setA().isPresent()) {
      return RunText.large(run.setA().getAsDouble());
    }
    return clock(run.leftS());
  }

  private static String under(StepRun run) {
    Optional<String> doing = RunText.doing(run);
    if (doing.isPresent()) {
      return Character.toUpperCase(doing.get().charAt(0)) + doing.get().substring(1) + ".";
    }
    String volts =
        run.step().voltageV().isPresent()
            ? "about " + Quantity.plain(run.step().voltageV().getAsDouble(), 2) + " V"
            : "";
    return run.step()
        .figure(Pulse.PEAK)
        .map(p -> "mean of pulses of " + Quantity.plain(p.value(), 3) + " A: " + p.basis())
        .orElse(volts);
  }
}
