package org.amperskin.viewer;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.picture.RegionColour;
import org.amperskin.skin.Skin;
import org.amperskin.skin.SprayReach;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.RegionEntry;

/** The skin as the viewer paints it: painted, wet only, assumed, and what is not wetted at all. */
final class SkinSurface {
  private static final List<String> LABELS =
      List.of("painted", "wet, not painted", "assumed", "not wetted, whole faces");
  private static final List<RegionColour> COLOURS =
      List.of(RegionColour.SKY, RegionColour.YELLOW, RegionColour.VERMILION, RegionColour.GREY);

  private SkinSurface() {}

  /**
   * The skin and, behind it, the faces of the part that no liquid reaches.
   *
   * @param all the part as examined
   */
  static PaintedSurface of(SurfaceMesh all, Skin skin, SprayReach spray) {
    SurfaceMesh wet = skin.mesh();
    boolean[] shown = new boolean[all.faceCount()];
    for (int f = 0; f < wet.faceCount(); f++) {
      if (skin.sourceFace(f) >= 0) {
        shown[skin.sourceFace(f)] = true;
      }
    }
    int[] corners = Arrays.copyOf(wet.corners(), 3 * (wet.faceCount() + all.faceCount()));
    int[] kind = new int[wet.faceCount() + all.faceCount()];
    double[] area = new double[LABELS.size()];
    int n = 0;
    for (int f = 0; f < wet.faceCount(); f++) {
      kind[n] = skin.sourceFace(f) < 0 ? 2 : spray.painted(f) ? 0 : 1;
      area[kind[n++]] += wet.faceAreaMm2(f);
    }
    for (int f = 0; f < all.faceCount(); f++) {
      if (!shown[f]) {
        // A skin's mesh begins with the vertices of the part it was cut from.
        System.arraycopy(all.corners(), 3 * f, corners, 3 * n, 3);
        kind[n++] = 3;
        area[3] += all.faceAreaMm2(f);
      }
    }
    List<RegionEntry> entries = new ArrayList<>();
    int[] index = new int[LABELS.size()];
    for (int k = 0; k < LABELS.size(); k++) {
      if (area[k] > 0 || k == 0) {
        index[k] = entries.size();
        RegionColour colour = COLOURS.get(k);
        entries.add(
            new RegionEntry(
                LABELS.get(k),
                area[k],
                k == 0 ? RegionEntry.OPEN : RegionEntry.CLOSED,
                colour.argb(),
                colour.hatch()));
      }
    }
    int[] region = new int[n];
    for (int f = 0; f < n; f++) {
      region[f] = index[kind[f]];
    }
    SurfaceMesh mesh = SurfaceMesh.of(wet.positions(), Arrays.copyOf(corners, 3 * n));
    return PaintedSurface.of("skin", mesh, region, entries);
  }
}
