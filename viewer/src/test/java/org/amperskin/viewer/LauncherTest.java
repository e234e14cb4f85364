package org.amperskin.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each case is a program of its own, since exit codes and the toolkit belong to a program. */
class LauncherTest {
  @TempDir private Path folder;

  private record Ended(int code, String out, String err) {}

  private Ended run(boolean display, String flag, String... args)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Xmx700m");
    command.add(flag);
    command.add("-cp");
    command.add(System.getProperty("java.class.path"));
    command.add(SampleViewer.class.getName());
    command.addAll(List.of(args));
    ProcessBuilder builder = new ProcessBuilder(command);
    if (!display) {
      builder.environment().remove("DISPLAY");
      builder.environment().remove("WAYLAND_DISPLAY");
    }
    Path out = folder.resolve("out.txt");
    Path err = folder.resolve("err.txt");
    Process process = builder.redirectOutput(out.toFile()).redirectError(err.toFile()).start();
    try {
      assertThat(process.waitFor(90, TimeUnit.SECONDS)).as("ended: %s", command).isTrue();
    } finally {
      process.destroyForcibly();
    }
    return new Ended(process.exitValue(), Files.readString(out), Files.readString(err));
  }

  @Test
  void missingDisplayIsToldInOneLine() throws Exception {
    Ended ended = run(false, "-Dx=y", "view", "plate");
    assertThat(ended.code()).isEqualTo(Launcher.NO_DISPLAY);
    assertThat(ended.err().lines().filter(l -> l.startsWith("amperskin view:"))).hasSize(1);
    assertThat(ended.err()).contains("(none set)").doesNotContain("\tat ");
  }

  @Test
  void pictureOfTheWindowIsWritten() throws Exception {
    Path file = folder.resolve("window.png");
    Ended ended =
        run(true, "-Dx=y", "view", "dome", "--picture", file.toString(), "--size", "1000x640");
    assertThat(ended.err()).isEmpty();
    assertThat(ended.code()).isZero();
    BufferedImage image = ImageIO.read(file.toFile());
    assertThat(image.getWidth()).isEqualTo(1000);
    assertThat(image.getHeight()).isEqualTo(640);
    assertThat(colourful(image)).isGreaterThan(20_000);
  }

  @Test
  void machineWithoutThreeDimensionsStillShowsThePart() throws Exception {
    Path file = folder.resolve("flat.png");
    Ended ended = run(true, "-Dprism.order=sw", "dome", "--picture", file.toString());
    assertThat(ended.code()).isZero();
    BufferedImage image = ImageIO.read(file.toFile());
    assertThat(colourful(image)).isGreaterThan(20_000);
    // the note over the picture: darkest pixel of text where the ground would be plain
    int darkest = 255;
    for (int x = 480; x < 740; x++) {
      darkest = Math.min(darkest, image.getRGB(x, 74) & 255);
    }
    assertThat(darkest).isLessThan(100);
  }

  @Test
  void unknownPaintIsAUsageFaultThatListsWhatFits() throws Exception {
    Ended ended = run(true, "-Dx=y", "dome", "--paint", "gaps");
    assertThat(ended.code()).isEqualTo(Launcher.USAGE);
    assertThat(ended.err()).contains("--paint 'gaps'").contains("edge blur");
  }

  @Test
  void unreadableFileEndsWithThree() throws Exception {
    Path file = folder.resolve("broken.png");
    Ended ended = run(true, "-Dx=y", "broken", "--picture", file.toString());
    assertThat(ended.code()).isEqualTo(Launcher.UNREADABLE);
    assertThat(ended.err()).contains("triangle 12 of 400").contains("byte 684");
    assertThat(file).exists();
  }

  @Test
  void helpHasAnExampleAndNeedsNoDisplay() throws Exception {
    Ended ended = run(false, "-Dx=y", "view", "--help");
    assertThat(ended.code()).isZero();
    assertThat(ended.out()).contains("amperskin view visor.stl").contains("--picture");
    assertThat(ended.out().lines()).allMatch(l -> l.length() <= 80);
  }

  @Test
  void wrongSizeIsAUsageError() throws Exception {
    Ended ended = run(false, "-Dx=y", "view", "plate", "--size", "huge");
    assertThat(ended.code()).isEqualTo(Launcher.USAGE);
    assertThat(ended.err()).contains("'huge'").contains("1280x800");
  }

  private static long colourful(BufferedImage image) {
    long n = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 264; x < image.getWidth() - 330; x++) {
        int c = image.getRGB(x, y);
        n += Math.abs((c >> 16 & 255) - (c & 255)) > 60 ? 1 : 0;
      }
    }
    return n;
  }
}
