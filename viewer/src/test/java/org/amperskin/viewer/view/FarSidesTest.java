package org.amperskin.viewer.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.picture.SampleParts;
import org.junit.jupiter.api.Test;

class FarSidesTest {
  private final SurfaceMesh box = SampleParts.box(10, 20, 30);

  @Test
  void closedBodyHidesItsInside() {
    assertThat(FarSides.canBeSeen(box)).isFalse();
    assertThat(FarSides.canBeSeen(SampleParts.sphere(10, 40, 20))).isFalse();
  }

  @Test
  void insideOutBodyShowsIt() {
    int[] c = box.corners().clone();
    for (int i = 0; i < c.length; i += 3) {
      int keep = c[i];
      c[i] = c[i + 1];
      c[i + 1] = keep;
    }
    assertThat(FarSides.canBeSeen(SurfaceMesh.of(box.positions(), c))).isTrue();
  }

  @Test
  void missingFaceShowsIt() {
    int[] c = Arrays.copyOf(box.corners(), box.corners().length - 3);
    assertThat(FarSides.canBeSeen(SurfaceMesh.of(box.positions(), c))).isTrue();
  }

  @Test
  void flippedFaceShowsIt() {
    int[] c = box.corners().clone();
    int keep = c[0];
    c[0] = c[1];
    c[1] = keep;
    assertThat(FarSides.canBeSeen(SurfaceMesh.of(box.positions(), c))).isTrue();
  }

  @Test
  void oneInsideOutBodyOfTwoShowsIt() {
    int n = box.vertexCount();
    double[] p = Arrays.copyOf(box.positions(), 6 * n);
    int[] c = Arrays.copyOf(box.corners(), 2 * box.corners().length);
    for (int v = 0; v < n; v++) {
      p[3 * (n + v)] = box.x(v) / 2 + 100;
      p[3 * (n + v) + 1] = box.y(v) / 2;
      p[3 * (n + v) + 2] = box.z(v) / 2;
    }
    for (int i = 0; i < box.corners().length; i += 3) {
      c[box.corners().length + i] = n + box.corners()[i + 1];
      c[box.corners().length + i + 1] = n + box.corners()[i];
      c[box.corners().length + i + 2] = n + box.corners()[i + 2];
    }
    assertThat(FarSides.canBeSeen(SurfaceMesh.of(p, c))).isTrue();
  }
}
