package org.amperskin.viewer.view;

import java.util.EnumSet;
import java.util.Set;
import javafx.scene.Scene;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.model.ViewerModel.Phase;

/** The keyboard: every command of the window has a key. */
final class Keys {
  private static final double TURN_DEGREES = 6;
  private static final double SHIFT_SHARE = 0.04;
  private static final double ZOOM = 1.15;

  /** Share of a millimetre or degree that a film goes with Shift. */
  private static final double FINE = 0.1;

  private final ViewerModel model;
  private final Runnable choose;
  private final Set<KeyCode> down = EnumSet.noneOf(KeyCode.class);

  private Keys(ViewerModel model, Runnable choose) {
    this.model = model;
    this.choose = choose;
  }

  static void install(Scene scene, ViewerModel model, Runnable choose) {
    Keys keys = new Keys(model, choose);
    scene.addEventFilter(
        KeyEvent.KEY_PRESSED,
        e -> {
          if ((!(e.getTarget() instanceof TextInputControl) || outlivesTyping(e))
              && keys.pressed(e)) {
            e.consume();
          }
          keys.down.add(e.getCode());
        });
    scene.addEventFilter(KeyEvent.KEY_RELEASED, e -> keys.down.remove(e.getCode()));
  }

  /** Keys that mean nothing in a text field, so that they need not wait until it is left. */
  private static boolean outlivesTyping(KeyEvent e) {
    boolean file = e.getCode() == KeyCode.O || e.getCode() == KeyCode.S;
    return e.isAltDown() || e.isShortcutDown() && file || e.getCode() == KeyCode.F1;
  }

  private boolean pressed(KeyEvent e) {
    if (model.running().get() != null) {
      // the part behind the run screen is not to be turned unseen
      return e.getCode() == KeyCode.ESCAPE && once(e, this::escape);
    }
    if (e.isShortcutDown()) {
      return switch (e.getCode()) {
        case O -> once(e, choose);
        case S -> once(e, model.editor()::save);
        case Y -> flip(model.editor()::redo);
        case Z -> flip(e.isShiftDown() ? model.editor()::redo : model.editor()::undo);
        default -> false;
      };
    }
    if (e.isAltDown()) {
      return film(e);
    }
    return switch (e.getCode()) {
      case F1 -> once(e, () -> model.help().set(!model.help().get()));
      case L -> once(e, () -> model.dark().set(!model.dark().get()));
      case U -> once(e, () -> model.unlit().set(!model.unlit().get()));
      case E -> once(e, () -> model.facets().set(!model.facets().get()));
      case G -> once(e, model::nextPaint);
      case R -> once(e, model::runStep);
      case T -> once(e, this::schedule);
      case P -> once(e, model::toggleParallel);
      case F, HOME -> flip(model::fit);
      case X -> flip(() -> model.lookFrom(-90, 0));
      case Y -> flip(() -> model.lookFrom(0, 0));
      case Z -> flip(() -> model.lookFrom(0, 90));
      case LEFT -> arrow(e, -1, 0);
      case RIGHT -> arrow(e, 1, 0);
      case UP -> arrow(e, 0, 1);
      case DOWN -> arrow(e, 0, -1);
      case PLUS, ADD, EQUALS -> flip(() -> model.zoom(1 / ZOOM));
      case MINUS, SUBTRACT -> flip(() -> model.zoom(ZOOM));
      case PERIOD -> flip(() -> step(1));
      case COMMA -> flip(() -> step(-1));
      case ESCAPE -> once(e, this::escape);
      default -> digit(e.getCode());
    };
  }

  /** Moves the film; the part itself stays. */
  private boolean film(KeyEvent e) {
    double step = e.isShiftDown() ? FINE : 1;
    return switch (e.getCode()) {
      case LEFT -> flip(() -> model.editor().nudge(-step, 0));
      case RIGHT -> flip(() -> model.editor().nudge(step, 0));
      case UP -> flip(() -> model.editor().nudge(0, step));
      case DOWN -> flip(() -> model.editor().nudge(0, -step));
      case PAGE_UP -> flip(() -> model.editor().turn(step));
      case PAGE_DOWN -> flip(() -> model.editor().turn(-step));
      default -> false;
    };
  }

  private void schedule() {
    model.schedule().set(model.part().get() != null && !model.schedule().get());
  }

  private void step(int by) {
    int next = model.selectedStep().get() + by;
    int steps = model.part().get() == null ? 0 : model.part().get().steps().size();
    model.selectStep(Math.max(ViewerModel.NONE, Math.min(steps - 1, next)));
  }

  private boolean digit(KeyCode code) {
    if (!code.isDigitKey()) {
      return false;
    }
    String name = code.getName();
    int digit = name.charAt(name.length() - 1) - '0';
    model.selectStep(digit - 1);
    return true;
  }

  private boolean arrow(KeyEvent e, int right, int up) {
    if (e.isShiftDown()) {
      model.pan(right * SHIFT_SHARE, up * SHIFT_SHARE);
    } else {
      // the part follows the arrow, as it follows a dragged mouse
      model.turn(-right * TURN_DEGREES, -up * TURN_DEGREES);
    }
    return true;
  }

  private void escape() {
    if (model.help().get()) {
      model.help().set(false);
    } else if (model.schedule().get()) {
      model.schedule().set(false);
    } else if (model.running().get() != null) {
      model.leaveRun();
    } else if (model.phase().get() == Phase.LOADING || model.progress().get() != null) {
      model.cancel();
    } else if (model.phase().get() == Phase.FAILED) {
      model.back();
    } else {
      model.shownRegion().set(ViewerModel.NONE);
      model.selectStep(ViewerModel.NONE);
    }
  }

  /** A switch must not flutter while its key is held. */
  private boolean once(KeyEvent e, Runnable change) {
    if (!down.contains(e.getCode())) {
      change.run();
    }
    return true;
  }

  private static boolean flip(Runnable change) {
    change.run();
    return true;
  }
}
