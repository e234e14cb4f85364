package org.amperskin.viewer;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.embed.swing.SwingFXUtils;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.model.ViewerModel.Phase;
import org.amperskin.viewer.part.PartSource;
import org.amperskin.viewer.part.ProblemException;
import org.amperskin.viewer.view.Drawing;
import org.amperskin.viewer.view.ViewerWindow;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/**
 * Starts the viewer.
 *
 * <p>Not an application class of the toolkit: the toolkit's own start refuses such a class on the
 * class path, and a missing display is then an exception that can be told in one line.
 */
public final class Launcher {
  /** Exit code for a command line that was not understood. */
  public static final int USAGE = 2;

  /** Exit code for a file that cannot be shown. */
  public static final int UNREADABLE = 3;

  /** Exit code for a machine without a display. */
  public static final int NO_DISPLAY = 70;

  private static final Logger TOOLKIT_LOG = Logger.getLogger("javafx");
  private static final int PULSES_BEFORE_PICTURE = 4;

  private final ViewOptions options;
  private final PartSource source;
  private final AtomicInteger code = new AtomicInteger();
  private final CountDownLatch ended = new CountDownLatch(1);

  private Launcher(ViewOptions options, PartSource source) {
    this.options = options;
    this.source = source;
  }

  /** Runs the viewer and ends the program with its exit code. */
  public static void main(String[] args) {
    System.exit(run(args, new JobSource()));
  }

  /**
   * Runs the viewer until its window is closed or its picture written.
   *
   * @param args the command line, with or without the word {@code view}
   * @param source where parts come from
   * @return the exit code
   */
  public static int run(String[] args, PartSource source) {
    // software drivers fail the toolkit's qualifier check and would silently lose 3D
    if (System.getProperty("prism.forceGPU") == null) {
      System.setProperty("prism.forceGPU", "true");
    }
    String[] rest =
        args.length > 0 && args[0].equals("view") ? Arrays.copyOfRange(args, 1, args.length) : args;
    ViewOptions options = new ViewOptions();
    CommandLine line = new CommandLine(options);
    try {
      line.parseArgs(rest);
      if (!FieldSurface.NAMES.contains(options.paint)) {
        throw new ParameterException(
            line, "--paint '" + options.paint + "': one of " + FieldSurface.NAMES + " fits");
      }
    } catch (ParameterException e) {
      System.err.println("amperskin view: " + e.getMessage());
      System.err.println("Try: amperskin view --help");
      return USAGE;
    }
    if (options.help) {
      line.usage(System.out);
      return 0;
    }
    return new Launcher(options, source).start();
  }

  private int start() {
    // the toolkit warns that it runs from the class path, which is what this program wants
    TOOLKIT_LOG.setLevel(Level.SEVERE);
    try {
      Platform.startup(this::open);
    } catch (RuntimeException | LinkageError e) {
      String display = System.getenv("DISPLAY");
      System.err.println(
          "amperskin view: no window can be opened on display "
              + (display == null ? "(none set)" : display)
              + ": "
              + e.getMessage());
      return NO_DISPLAY;
    }
    try {
      ended.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Platform.exit();
    return code.get();
  }

  private void open() {
    Platform.setImplicitExit(false);
    try {
      ViewerModel model = new ViewerModel(source, Platform::runLater);
      model.dark().set(options.dark);
      ViewerWindow window =
          new ViewerWindow(
              model,
              options.flat ? Drawing.PICTURES : Drawing.BEST,
              options.size.width(),
              options.size.height(),
              null);
      model
          .phase()
          .addListener(
              (o, was, is) -> {
                if (is == Phase.SHOWN && was == Phase.LOADING) {
                  model.selectStep(options.step - 1);
                  model.paint().set(options.paint);
                }
              });
      if (options.file != null) {
        model.open(options.file);
      }
      if (options.picture != null) {
        new PictureTaker(model, window).start();
      } else {
        Stage stage = new Stage();
        stage.setOnHidden(e -> ended.countDown());
        window.showOn(stage);
      }
    } catch (RuntimeException e) {
      fail(NO_DISPLAY, "a fault of its own: " + e);
    }
  }

  private void fail(int exitCode, String message) {
    System.err.println("amperskin view: " + message);
    code.set(exitCode);
    ended.countDown();
  }

  /** Waits until the window has nothing left to wait for, then takes its picture. */
  private final class PictureTaker extends AnimationTimer {
    private final ViewerModel model;
    private final ViewerWindow window;
    private int settledPulses;

    PictureTaker(ViewerModel model, ViewerWindow window) {
      this.model = model;
      this.window = window;
      window.layOut();
    }

    @Override
    public void handle(long now) {
      window.layOut();
      settledPulses = window.settled() ? settledPulses + 1 : 0;
      if (settledPulses < PULSES_BEFORE_PICTURE) {
        return;
      }
      stop();
      ProblemException problem = model.problem().get();
      try {
        write(SwingFXUtils.fromFXImage(window.scene().snapshot(null), null), options.picture);
        if (problem == null) {
          ended.countDown();
        } else {
          fail(UNREADABLE, problem.what() + " (" + problem.where() + ")");
        }
      } catch (AccessDeniedException e) {
        fail(UNREADABLE, options.picture + ": not allowed to write there");
      } catch (IOException | RuntimeException e) {
        fail(UNREADABLE, options.picture + ": " + e);
      }
    }
  }

  private static void write(BufferedImage image, Path file) throws IOException {
    Path target = file.toAbsolutePath();
    Path part = Files.createTempFile(target.getParent(), target.getFileName().toString(), ".part");
    try {
      ImageIO.write(image, "png", part.toFile());
      Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
    }
  }
}
