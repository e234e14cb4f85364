package org.amperskin.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.MeshProblem;
import org.amperskin.report.JsonReports;
import org.amperskin.report.MeasureText;
import org.amperskin.skin.Skin;
import org.amperskin.testmeshes.Patches;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Print files with cracks, measured whole and in part. */
class CrackedFileTest {
  @TempDir Path folder;

  private static Patches box() {
    return new Patches().box(50, 30, 20, s -> s == 1 ? new int[] {6, 5} : new int[] {1, 1});
  }

  private static MeasuredPart measured(Job.PartSpec part) throws Exception {
    return MeasuredPart.of(part, MeshDiagnosis.Search.ALL, true, Progress.SILENT);
  }

  @Test
  void binaryStlInInchesGivesAreaVolumeAndPaint() throws Exception {
    Patches box = box().moved(p -> Patches.rounded(turned(p).times(1 / 25.4)));
    ByteBuffer out = ByteBuffer.allocate(84 + 50 * box.count()).order(ByteOrder.LITTLE_ENDIAN);
    out.putInt(80, box.count());
    for (int i = 0; i < box.count(); i++) {
      for (int k = 0; k < 3; k++) {
        int at = 84 + 50 * i + 12 + 12 * k;
        Vec3 p = box.corner(i, k);
        out.putFloat(at, (float) p.x()).putFloat(at + 4, (float) p.y());
        out.putFloat(at + 8, (float) p.z());
      }
    }
    Path file = Files.write(folder.resolve("cracked.stl"), out.array());
    MeasuredPart part = measured(Job.PartSpec.of(file, Optional.of("in"), 1));
    assertThat(part.diagnosis().closed()).isTrue();
    assertThat(part.skin().wettedAreaMm2().orElseThrow()).isCloseTo(6200, within(1e-3));
    assertThat(part.diagnosis().volumeMm3().orElseThrow()).isCloseTo(30000, within(1e-2));
    assertThat(part.spray().orElseThrow().areaMm2()).isCloseTo(6200, within(1e-3));
    assertThat(part.diagnosis().areaMm2()).isCloseTo(6200, within(1e-3));
    assertThat(MeasureText.of(part)).contains("! stitched: 18 corners inside open edges");
    assertThat(JsonReports.measure(part, false)).contains("\"stitched\"");
  }

  private static Vec3 turned(Vec3 p) {
    return new Vec3(0.6 * p.x() - 0.8 * p.y() + 31, 0.8 * p.x() + 0.6 * p.y(), p.z() - 7);
  }

  @Test
  void partsArePickedByGroupAndBodyOfTheStitchedMesh() throws Exception {
    StringBuilder obj = new StringBuilder();
    Patches box = box();
    for (int twice = 0; twice < 2; twice++) {
      for (int i = 0; i < box.count(); i++) {
        obj.append(i == 0 ? "g walls\n" : i == 2 ? "g plate\n" : i == 62 ? "g walls\n" : "");
        for (int k = 0; k < 3; k++) {
          Vec3 p = box.corner(i, k);
          obj.append(String.format(Locale.ROOT, "v %s %s %s\n", p.x() + 80 * twice, p.y(), p.z()));
        }
        obj.append("f -3 -2 -1\n");
      }
    }
    Path file = Files.writeString(folder.resolve("two.obj"), obj);
    MeasuredPart both = measured(Job.PartSpec.of(file));
    assertThat(both.diagnosis().bodies()).hasSize(2);
    assertThat(both.skin().wettedAreaMm2().orElseThrow()).isCloseTo(12400, within(1e-8));
    MeasuredPart second = measured(picked(file, "2"));
    assertThat(second.skin().wettedAreaMm2().orElseThrow()).isCloseTo(6200, within(1e-8));
    assertThat(second.diagnosis().has(MeshProblem.Kind.STITCHED)).isTrue();
    assertThat(second.diagnosis().box().minX()).isEqualTo(80);
    assertThat(measured(picked(file, "walls")).diagnosis().areaMm2())
        .isCloseTo(2 * (6200 - 1500), within(1e-8));
    assertThat(measured(picked(file, "plate")).diagnosis().areaMm2())
        .isCloseTo(2 * 1500, within(1e-8));
  }

  private static Job.PartSpec picked(Path file, String name) {
    return new Job.PartSpec(
        file,
        Optional.empty(),
        1,
        Optional.empty(),
        List.of(name),
        Skin.OpenBodies.CLOSED,
        Job.InsideSpec.NONE,
        Optional.empty());
  }
}
