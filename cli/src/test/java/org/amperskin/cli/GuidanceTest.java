package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a message tells to do next. */
class GuidanceTest {
  private static final String CUBE = "test-meshes/examples/cube20.stl";

  @TempDir private Path folder;

  private Cli.Result job(String text) throws Exception {
    Path file = Files.writeString(folder.resolve("job.yaml"), text);
    Cli.Result shown = Cli.run("plan", file.toString());
    return new Cli.Result(shown.code(), shown.out(), shown.err().replaceAll("\\s+", " ").strip());
  }

  private static String cube() {
    return "part: {file: '" + Cli.ROOT.resolve(CUBE) + "'}\n";
  }

  @Test
  void missingFilesAreToldWithTheirLine() throws Exception {
    Cli.Result part =
        job("part:\n  file: nowhere.stl\nstep: [{recipe: nickel-watts, thickness: 5 um}]\n");
    assertThat(part.code()).isEqualTo(3);
    assertThat(part.err()).containsPattern("job.yaml:2:9: .*nowhere.stl: there is no such file");
    Cli.Result art =
        job(
            cube()
                + "film:\n  f:\n    artwork: nowhere.svg\n    toward: -z\n"
                + "step: [{recipe: nickel-watts, thickness: 5 um}]\n");
    assertThat(art.code()).isEqualTo(3);
    assertThat(art.err()).containsPattern("job.yaml:4:14: .*nowhere.svg: there is no such file");
  }

  @Test
  void regionThatIsNotThereIsToldWithThoseThatAre() throws Exception {
    Cli.Result none = job(cube() + "step: [{recipe: nickel-watts, region: q}]\n");
    assertThat(none.err()).contains("the job has only 'all', the whole skin");
  }

  @Test
  void pictureWithoutResolutionIsToldWhereToTellIt() throws Exception {
    Path png = folder.resolve("plain.png");
    ImageIO.write(new BufferedImage(4, 4, BufferedImage.TYPE_INT_RGB), "png", png.toFile());
    Cli.Result shown = Cli.run("mask", CUBE, "--artwork", png.toString(), "--toward", "-z");
    assertThat(shown.code()).isEqualTo(3);
    assertThat(shown.err()).contains("'--dpi 600'").contains("'dpi: 600'");
  }

  @Test
  void filmThatClosesEverythingIsAskedAbout() throws Exception {
    Path svg = folder.resolve("black.svg");
    Files.writeString(
        svg,
        "<svg xmlns='http://www.w3.org/2000/svg' width='5mm' height='5mm' viewBox='0 0 5 5'>"
            + "<rect width='5' height='5'/></svg>");
    String[] words = {"mask", CUBE, "--artwork", svg.toString(), "--toward", "-z"};
    String closed = Cli.run(words).out().replaceAll("\\s+", " ");
    // The top of 20 x 20 mm lies in the dark.
    assertThat(closed).contains("0 mm2 are open, 400.000 mm2 lie in the dark");
    assertThat(closed).contains("--surround clear");
    String[] clear = java.util.Arrays.copyOf(words, words.length + 2);
    clear[words.length] = "--surround";
    clear[words.length + 1] = "clear";
    assertThat(Cli.run(clear).out()).doesNotContain("are open");
  }
}
