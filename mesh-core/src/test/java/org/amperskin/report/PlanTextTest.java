package org.amperskin.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.amperskin.geom.Progress;
import org.amperskin.io.PrintFileWriter;
import org.amperskin.job.JobFile;
import org.amperskin.job.JobRun;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanTextTest {
  @TempDir private Path folder;

  @Test
  void openAndNotPaintedOfTheWholeSkinAddUpToTheSkin() throws Exception {
    PrintFileWriter.write(
        Shapes.drainedBall(125, 120, 1, 4), folder.resolve("part.obj"), "hollow ball");
    Path job = Files.writeString(folder.resolve("job.yaml"), "part: {file: part.obj, unit: mm}\n");
    String text =
        PlanText.of(JobRun.of(JobFile.read(job, RecipeLibrary.standard()), Progress.SILENT));
    double skinDm2 = found(text, "skin ([\\d.]+) dm2");
    double openDm2 = found(text, "whole skin +([\\d.]+)");
    double unpaintedDm2 = found(text, "not painted, so closed: +([\\d.]+)");
    assertThat(unpaintedDm2).isPositive();
    assertThat(openDm2 + unpaintedDm2).isCloseTo(skinDm2, within(0.06));
  }

  private static double found(String text, String pattern) {
    Matcher m = Pattern.compile(pattern).matcher(text);
    assertThat(m.find()).as("%s in%n%s", pattern, text).isTrue();
    return Double.parseDouble(m.group(1));
  }
}
