package org.amperskin.region;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.amperskin.geom.Progress;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.skin.Skin;
import org.amperskin.skin.SprayReach;

/**
 * A region worked out on a skin: the split mesh and its figures.
 *
 * <p>Guaranteed: open plus closed area is the skin's. The error is numerical: flattened curves,
 * slivers of the cut and curved bounds; how well the mesh follows the true part is not in it.
 *
 * @param rule what made it
 * @param split the skin, cut
 * @param errorMm2 largest error of the open area (mm2)
 * @param edgeLengthMm length of the lines between light and shade (mm)
 * @param laid the films as they lie, in the rule's order
 * @param fogMm2 area that one film's artwork keeps dark and another film lets light to (mm2)
 */
public record Region(
    RegionRule rule,
    SplitMesh split,
    double errorMm2,
    double edgeLengthMm,
    List<LaidFilm> laid,
    double fogMm2) {
  /** Copies the list. */
  public Region {
    laid = List.copyOf(laid);
  }

  /** Works a region out on a skin that is conductive all over. */
  public static Region of(RegionRule rule, Skin skin, Progress progress) {
    return of(rule, skin, SprayReach.everything(skin), progress);
  }

  /**
   * Works a region out.
   *
   * @param paint where the skin is conductive; open pieces elsewhere count as not painted
   */
  public static Region of(RegionRule rule, Skin skin, SprayReach paint, Progress progress) {
    return of(rule, FilmShapes.on(skin), paint, progress);
  }

  /**
   * Works a region out on a skin on which films were laid before.
   *
   * @param shapes the skin, with the shapes known already; new ones are added
   * @param paint where the skin is conductive; open pieces elsewhere count as not painted
   */
  public static Region of(RegionRule rule, FilmShapes shapes, SprayReach paint, Progress progress) {
    Skin skin = shapes.skin();
    Partition pieces = Partition.whole(skin.mesh());
    double error = skin.errorMm2();
    double edges = 0;
    List<LaidFilm> laid = new ArrayList<>();
    for (MaskFilm film : rule.films()) {
      FilmShape shape = shapes.of(film, progress);
      Laid behind = shape.lay(pieces, progress);
      boolean first = pieces.mesh() == skin.mesh();
      FilmCut.Result lit = FilmCut.light(behind, film, progress);
      laid.add(
          LaidFilm.of(
              film,
              shape.form(),
              first ? behind : shape.lay(Partition.whole(skin.mesh()), progress),
              dark(lit.pieces(), skin.mesh())));
      pieces = lit.pieces();
      error += lit.errorMm2();
      edges += lit.edgeLengthMm();
    }
    List<Selector> bounds = new ArrayList<>(rule.within());
    bounds.addAll(rule.except());
    for (Selector bound : bounds) {
      SelectorCut.Result cut = SelectorCut.cut(pieces, skin.mesh(), bound);
      pieces = cut.pieces();
      error += cut.errorMm2();
    }
    Optional<MaskKind> resist =
        rule.films().stream().map(MaskFilm::kind).filter(k -> k != MaskKind.STOP_OFF).findFirst();
    RegionKind[] kinds = new RegionKind[pieces.mesh().faceCount()];
    double fog = 0;
    for (int f = 0; f < kinds.length; f++) {
      fog += fogged(pieces.code(f), rule) ? pieces.mesh().faceAreaMm2(f) : 0;
      RegionKind kind = kindOf(pieces.code(f), rule, resist);
      boolean bare = resist.orElse(MaskKind.STOP_OFF).open().contains(kind);
      kinds[f] = bare && !paint.painted(pieces.parent(f)) ? RegionKind.UNPAINTED : kind;
      error += bare && paint.doubtful(pieces.parent(f)) ? pieces.mesh().faceAreaMm2(f) : 0;
    }
    SplitMesh split =
        new SplitMesh(
            skin.mesh(),
            pieces.mesh(),
            pieces.parents(),
            kinds,
            resist.orElse(MaskKind.STOP_OFF).open());
    return new Region(rule, split, error, edges, laid, fog);
  }

  /** Share of each face that the last film's light does not reach. */
  private static double[] dark(Partition pieces, SurfaceMesh skin) {
    double[] dark = new double[skin.faceCount()];
    for (int f = 0; f < pieces.mesh().faceCount(); f++) {
      if (pieces.code(f) % FilmCut.CODES == FilmCut.UNREACHED) {
        dark[pieces.parent(f)] += pieces.mesh().faceAreaMm2(f);
      }
    }
    for (int f = 0; f < dark.length; f++) {
      double whole = skin.faceAreaMm2(f);
      dark[f] = whole > 0 ? Math.min(1, dark[f] / whole) : 1;
    }
    return dark;
  }

  /** True if a piece is dark behind one resist film's artwork and in the light of another film. */
  private static boolean fogged(int code, RegionRule rule) {
    int rest = code >> rule.within().size() + rule.except().size();
    boolean dark = false;
    boolean lit = false;
    for (int i = rule.films().size() - 1; i >= 0; i--) {
      int one = rest % FilmCut.CODES;
      rest /= FilmCut.CODES;
      if (rule.films().get(i).kind() != MaskKind.STOP_OFF) {
        dark |= one == FilmCut.SHADED;
        lit |= one == FilmCut.LIT;
      }
    }
    return dark && lit;
  }

  private static RegionKind kindOf(int code, RegionRule rule, Optional<MaskKind> resist) {
    int rest = code;
    boolean outside = false;
    for (int i = rule.except().size() - 1; i >= 0; i--) {
      outside |= (rest & 1) == 1;
      rest >>= 1;
    }
    for (int i = rule.within().size() - 1; i >= 0; i--) {
      outside |= (rest & 1) == 0;
      rest >>= 1;
    }
    int light = FilmCut.UNREACHED;
    int tape = FilmCut.UNREACHED;
    boolean covered = false;
    for (int i = rule.films().size() - 1; i >= 0; i--) {
      int one = rest % FilmCut.CODES;
      rest /= FilmCut.CODES;
      if (rule.films().get(i).kind() == MaskKind.STOP_OFF) {
        covered |= one == FilmCut.SHADED || one == FilmCut.BESIDE;
        tape = Math.min(tape, one);
      } else {
        light = Math.min(light, one);
      }
    }
    if (outside || covered) {
      return RegionKind.STOPPED_OFF;
    }
    if (resist.isPresent()) {
      return resist.get().kindOf(light == FilmCut.BESIDE ? FilmCut.SHADED : light);
    }
    boolean noTape = rule.films().isEmpty();
    return noTape ? RegionKind.EXPOSED : MaskKind.STOP_OFF.kindOf(tape);
  }

  /** Area that a step sees as bare (mm2). */
  public double openAreaMm2() {
    return split.openAreaMm2();
  }

  /** Area that a swab crosses to reach all openings: exposed and masked (mm2). */
  public double traversedAreaMm2() {
    return split.areaMm2(RegionKind.EXPOSED)
        + split.areaMm2(RegionKind.MASKED)
        + (split.isOpen(RegionKind.UNREACHED) ? split.areaMm2(RegionKind.UNREACHED) : 0);
  }

  /** What to try if the films leave nothing open or spoil one another's; empty if neither. */
  public Optional<String> hint() {
    if (fogMm2 > 0) {
      return Optional.of(
          String.format(
              Locale.ROOT,
              "%s: films overlap: %.6g mm2 that one film's drawing keeps dark get light through"
                  + " another; cover them while the other film is exposed, or move the films apart",
              rule.name(),
              fogMm2));
    }
    boolean dark =
        rule.films().stream()
            .anyMatch(f -> f.kind() == MaskKind.POSITIVE_RESIST && !f.surroundClear());
    return dark && openAreaMm2() == 0 && split.areaMm2(RegionKind.MASKED) > 0
        ? Optional.of(
            String.format(
                Locale.ROOT,
                "%s: 0 mm2 are open, %.6g mm2 lie in the dark of the film; is light to pass beside"
                    + " the drawing? That is 'surround: clear' (--surround clear)",
                rule.name(),
                split.areaMm2(RegionKind.MASKED)))
        : Optional.empty();
  }
}
