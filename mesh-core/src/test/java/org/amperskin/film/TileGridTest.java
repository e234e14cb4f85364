package org.amperskin.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tiles cover a figure once, and no more of them are taken than are needed. */
class TileGridTest {
  @Test
  void whatFitsIsOneTile() {
    TileGrid grid = new TileGrid(new Extent(0, 0, 170, 230), 170, 230, 10);
    assertThat(grid.tiles()).isEqualTo(1);
    assertThat(grid.core(1, 1)).isEqualTo(new Extent(0, 0, 170, 230));
    assertThat(grid.window(1, 1)).isEqualTo(new Extent(0, 0, 170, 230));
  }

  /** By hand: 400 mm in windows of 170 that advance by 160 take ceil(390 / 160) = 3. */
  @Test
  void countsByHand() {
    TileGrid grid = new TileGrid(new Extent(0, 0, 400, 230.5), 170, 230, 10);
    assertThat(grid.columns()).isEqualTo(3);
    assertThat(grid.rows()).isEqualTo(2);
    // 3 windows span 490 mm, 45 mm beyond the figure on each side; joints 165 mm from there
    assertThat(grid.window(1, 1).minX()).isEqualTo(-45);
    assertThat(grid.core(1, 1).maxX()).isEqualTo(120);
    assertThat(grid.core(2, 1).maxX()).isEqualTo(280);
    // row 1 is on top
    assertThat(grid.core(1, 1).maxY()).isEqualTo(230.5);
    assertThat(grid.core(1, 2).minY()).isZero();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void coresCoverExactlyOnceAndNeighboursShareTheOverlap(long seed) {
    Random random = new Random(seed);
    double overlap = random.nextBoolean() ? 0 : 20 * random.nextDouble();
    TileGrid grid =
        new TileGrid(
            new Extent(-3, -7, 50 + 900 * random.nextDouble(), 50 + 900 * random.nextDouble()),
            60 + 200 * random.nextDouble(),
            60 + 200 * random.nextDouble(),
            overlap);
    String told = "seed " + seed + ": " + grid;
    double sum = 0;
    for (int r = 1; r <= grid.rows(); r++) {
      for (int c = 1; c <= grid.columns(); c++) {
        Extent core = grid.core(c, r);
        Extent window = grid.window(c, r);
        sum += core.areaMm2();
        assertThat(window.grown(1e-9).holds(core)).as(told).isTrue();
        assertThat(window.width()).as(told).isCloseTo(grid.windowWidthMm(), within(1e-9));
        if (c > 1) {
          assertThat(core.minX()).as(told).isEqualTo(grid.core(c - 1, r).maxX());
          assertThat(grid.window(c - 1, r).maxX() - window.minX())
              .as(told)
              .isCloseTo(overlap, within(1e-9));
        }
        if (r > 1) {
          assertThat(core.maxY()).as(told).isEqualTo(grid.core(c, r - 1).minY());
          assertThat(window.maxY() - grid.window(c, r - 1).minY())
              .as(told)
              .isCloseTo(overlap, within(1e-9));
        }
      }
    }
    assertThat(sum).as(told).isCloseTo(grid.whole().areaMm2(), within(1e-6));
    if (grid.columns() > 1) {
      double fewer = (grid.columns() - 1) * (grid.windowWidthMm() - overlap) + overlap;
      assertThat(fewer).as(told).isLessThan(grid.whole().width());
    }
  }

  @Test
  void anOverlapOfHalfATileIsRefused() {
    assertThatThrownBy(() -> new TileGrid(new Extent(0, 0, 400, 400), 40, 200, 20))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("overlap 20.0 mm");
  }
}
