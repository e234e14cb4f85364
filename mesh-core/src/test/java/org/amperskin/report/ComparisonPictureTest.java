package org.amperskin.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.amperskin.geom.Progress;
import org.amperskin.job.Comparison;
import org.amperskin.job.Estimate;
import org.amperskin.job.JobFile;
import org.amperskin.job.JobRun;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Layouts side by side as a picture. */
class ComparisonPictureTest {
  @TempDir private Path folder;

  private Estimate job(String name, String scale) throws Exception {
    Path examples = TestMeshes.folder().resolve("examples");
    Path file = folder.resolve(name + ".yaml");
    Files.writeString(
        file,
        """
        part: {file: %s, unit: mm}
        film:
          square: {artwork: %s, toward: -z, scale: %s, surround: clear}
        step:
          - {recipe: palladium-brush, thickness: 0.2 um, region: square, swab: {contact: 1 cm2}}
        """
            .formatted(examples.resolve("cube20.stl"), examples.resolve("square20.svg"), scale));
    return JobRun.of(JobFile.read(file, RecipeLibrary.standard()), Progress.SILENT);
  }

  private static long orange(BufferedImage image, int fromX, int toX) {
    long count = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = fromX; x < toX; x++) {
        Color c = new Color(image.getRGB(x, y));
        float[] hsb = Color.RGBtoHSB(c.getRed(), c.getGreen(), c.getBlue(), null);
        count += hsb[0] > 0.09 && hsb[0] < 0.14 && hsb[1] > 0.8 ? 1 : 0;
      }
    }
    return count;
  }

  @Test
  void exposedColourIsInProportionToExposedArea() throws Exception {
    // 20 x 20 mm lit, 10 x 10 and 5 x 5 mm of it covered: 300 and 375 mm2 stay open.
    Comparison two = Comparison.of(List.of(job("half", "50 %"), job("quarter", "25 %")));
    Path file = folder.resolve("two.png");
    ComparisonPicture.write(two, file);
    BufferedImage image = ImageIO.read(file.toFile());
    int middle = image.getWidth() / 2;
    double half = orange(image, 0, middle);
    double quarter = orange(image, middle, image.getWidth());
    assertThat(half).isGreaterThan(10_000);
    assertThat(half / quarter).isCloseTo(300.0 / 375, within(0.02 * 300 / 375));
    try (var left = Files.list(folder)) {
      assertThat(left.map(p -> p.getFileName().toString())).noneMatch(n -> n.endsWith(".part"));
    }
  }

  @Test
  void threeStandAcrossAndMoreGoBelow() throws Exception {
    List<Estimate> jobs = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      jobs.add(job("layout with quite a long name that does not fit its card at all " + i, "50 %"));
    }
    BufferedImage three = ComparisonPicture.of(Comparison.of(jobs.subList(0, 3)));
    BufferedImage four = ComparisonPicture.of(Comparison.of(jobs));
    assertThat(four.getWidth()).isEqualTo(three.getWidth());
    assertThat(four.getHeight()).isEqualTo(2 * three.getHeight());
    assertThat(orange(four, 0, four.getWidth())).isGreaterThan(orange(three, 0, three.getWidth()));
  }

  @Test
  void rowsTellTheSmallestLineAndWhatVanishes() throws Exception {
    Comparison two = Comparison.of(List.of(job("half", "50 %"), job("quarter", "25 %")));
    Comparison.Row line =
        two.rows().stream().filter(r -> r.label().equals("smallest line")).findFirst().get();
    assertThat(line.pattern()).isTrue();
    assertThat(line.values().get(0).getAsDouble()).isCloseTo(10, within(1e-6));
    assertThat(line.values().get(1).getAsDouble()).isCloseTo(5, within(1e-6));
    Comparison.Row lost =
        two.rows().stream()
            .filter(r -> r.label().equals("outline of lines that vanish"))
            .findFirst()
            .get();
    assertThat(lost.values().get(0).getAsDouble()).isZero();
  }
}
