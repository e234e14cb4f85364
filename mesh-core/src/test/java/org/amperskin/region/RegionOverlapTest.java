package org.amperskin.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.amperskin.geom.Box;
import org.amperskin.geom.Progress;
import org.amperskin.geom.Vec3;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.skin.Skin;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;

/** Regions of the cube of 10 mm, their overlaps by hand. */
class RegionOverlapTest {
  private static final Skin SKIN =
      Skin.of(
          MeshDiagnosis.of(
              Shapes.box(0, 0, 0, 10, 10, 10), MeshDiagnosis.Search.ALL, Progress.SILENT),
          Progress.SILENT);

  private static Region within(String name, Selector... selectors) {
    RegionRule rule = new RegionRule(name, List.of(), List.of(selectors), List.of());
    return Region.of(rule, SKIN, Progress.SILENT);
  }

  private static Selector above(double z) {
    return new Selector.HalfSpace(new Vec3(0, 0, z), new Vec3(0, 0, 1));
  }

  /** Above 3 mm lie 100 + 4 x 70 = 380 mm2, above 8 mm 100 + 4 x 20 = 180 mm2 of them. */
  private static final RegionOverlap OVERLAP =
      new RegionOverlap(
          Map.of(
              "all",
              within("all"),
              "upper",
              within("upper", above(3)),
              "rim",
              within("rim", above(8)),
              "foot",
              within("foot", new Selector.InBox(new Box(-1, -1, -1, 11, 11, 1)))));

  @Test
  void aRegionInsideOthersLiesInAllOfThem() {
    Map<Set<String>, Double> rim = OVERLAP.of("rim");
    assertThat(rim).containsOnlyKeys(Set.of("all", "upper", "rim"));
    assertThat(rim.values().iterator().next()).isCloseTo(180, offset(1e-9));
  }

  @Test
  void aRegionIsSharedOutByWhatLiesOverIt() {
    Map<Set<String>, Double> upper = OVERLAP.of("upper");
    assertThat(upper).containsOnlyKeys(Set.of("all", "upper"), Set.of("all", "upper", "rim"));
    assertThat(upper.get(Set.of("all", "upper", "rim"))).isCloseTo(180, offset(4.0));
    assertThat(upper.get(Set.of("all", "upper"))).isCloseTo(200, offset(4.0));
  }

  /** 600 mm2: 180 in the rim, 200 above 3 mm beside it, 100 + 4 x 10 in the foot, 80 in none. */
  @Test
  void theWholeSkinAddsUp() {
    Map<Set<String>, Double> all = OVERLAP.of("all");
    assertThat(all.values().stream().mapToDouble(Double::doubleValue).sum())
        .isCloseTo(600, offset(1e-9));
    assertThat(all.get(Set.of("all", "foot"))).isCloseTo(140, offset(6.0));
    assertThat(all.get(Set.of("all"))).isCloseTo(80, offset(6.0));
  }

  @Test
  void theSameRegionsGiveTheSameFigures() {
    assertThat(OVERLAP.of("all")).isEqualTo(OVERLAP.of("all"));
  }
}
