package org.amperskin.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.PackageBytes;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadProgressTest {
  private static final SurfaceMesh BALL = Shapes.sphere(new Vec3(0, 0, 0), 10, 6);

  @TempDir private Path folder;

  private List<Path> files() throws Exception {
    StringBuilder ply = new StringBuilder("ply\nformat ascii 1.0\nelement vertex ");
    StringBuilder obj = new StringBuilder();
    ply.append(BALL.vertexCount()).append("\nproperty double x\nproperty double y\n");
    ply.append("property double z\nelement face ").append(BALL.faceCount());
    ply.append("\nproperty list uchar int vertex_indices\nend_header\n");
    for (int v = 0; v < BALL.vertexCount(); v++) {
      String at = BALL.x(v) + " " + BALL.y(v) + " " + BALL.z(v) + "\n";
      ply.append(at);
      obj.append("v ").append(at);
    }
    for (int f = 0; f < BALL.faceCount(); f++) {
      int a = BALL.corner(f, 0);
      int b = BALL.corner(f, 1);
      int c = BALL.corner(f, 2);
      ply.append("3 " + a + " " + b + " " + c + "\n");
      obj.append("f " + (a + 1) + " " + (b + 1) + " " + (c + 1) + "\n");
    }
    return List.of(
        Files.writeString(folder.resolve("ball.ply"), ply),
        Files.writeString(folder.resolve("ball.obj"), obj),
        Files.write(
            folder.resolve("ball.3mf"), PackageBytes.of(PackageBytes.model("millimeter", BALL))));
  }

  @Test
  void progressIsToldWhileReadingAndRises() throws Exception {
    for (Path file : files()) {
      List<Double> told = Collections.synchronizedList(new ArrayList<>());
      PrintFile read =
          PrintFile.read(
              file,
              1,
              (what, done) -> {
                if (what.equals("reading")) {
                  told.add(done);
                }
              });
      assertThat(read.mesh().faceCount()).isEqualTo(BALL.faceCount());
      assertThat(told).as(file.toString()).hasSizeGreaterThanOrEqualTo(2).isSorted();
      assertThat(told.get(0)).as(file.toString()).isBetween(0.1, 0.9);
    }
  }

  @Test
  void readingCanBeGivenUp() throws Exception {
    for (Path file : files()) {
      assertThatThrownBy(
              () ->
                  PrintFile.read(
                      file,
                      1,
                      (what, done) -> {
                        throw new CancellationException("no longer wanted");
                      }))
          .as(file.toString())
          .isInstanceOf(CancellationException.class);
    }
  }
}
