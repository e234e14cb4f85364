package org.amperskin.viewer;

import java.util.ArrayList;
import java.util.List;
import org.amperskin.mesh.FacePairs;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.MeshProblem.Kind;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.picture.RegionColour;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.RegionEntry;

/** The part as stored, every face painted by the worst fault it takes part in. */
final class FaultSurface {
  private static final String SOUND = "sound";

  private FaultSurface() {}

  /** Paints the faults of a part whose overlaps were looked for. */
  static PaintedSurface of(MeshDiagnosis found) {
    SurfaceMesh mesh = found.mesh();
    Kind[] worst = new Kind[mesh.faceCount()];
    for (int f = 0; f < worst.length; f++) {
      worst[f] = alone(found, f);
    }
    FacePairs pairs = found.crossings();
    for (int i = 0; i < pairs.count(); i++) {
      worst[pairs.first(i)] = Kind.OVERLAP;
      worst[pairs.second(i)] = Kind.OVERLAP;
    }
    double[] area = new double[Kind.values().length + 1];
    int sound = area.length - 1;
    for (int f = 0; f < worst.length; f++) {
      area[worst[f] == null ? sound : worst[f].ordinal()] += mesh.faceAreaMm2(f);
    }
    int[] index = new int[area.length];
    List<RegionEntry> entries = new ArrayList<>();
    for (int k = sound; k >= 0; k--) {
      if (area[k] > 0) {
        index[k] = entries.size();
        RegionColour colour = k == sound ? RegionColour.GREY : faultColour(entries.size());
        String label = k == sound ? SOUND : Kind.values()[k].label();
        entries.add(
            new RegionEntry(
                label,
                area[k],
                k == sound ? RegionEntry.OPEN : RegionEntry.CLOSED,
                colour.argb(),
                colour.hatch()));
      }
    }
    int[] region = new int[worst.length];
    for (int f = 0; f < worst.length; f++) {
      region[f] = index[worst[f] == null ? sound : worst[f].ordinal()];
    }
    return PaintedSurface.of("faults", mesh, region, entries);
  }

  private static RegionColour faultColour(int number) {
    RegionColour colour = RegionColour.number(number);
    return colour == RegionColour.GREY ? RegionColour.VERMILION : colour;
  }

  /** The worst fault of a face that shows without its crossings, null if there is none. */
  private static Kind alone(MeshDiagnosis found, int f) {
    if (found.leftOut(f)) {
      return found.mesh().faceAreaMm2(f) == 0 ? Kind.DEGENERATE : Kind.DUPLICATE;
    }
    if (found.bodies().get(found.bodyOf(f)).inner()) {
      return Kind.INNER_SHELL;
    }
    if (found.bodies().get(found.bodyOf(f)).volumeMm3() < 0) {
      return Kind.INSIDE_OUT;
    }
    Kind worst = found.stitched(f) ? Kind.STITCHED : null;
    for (int k = 0; k < 3; k++) {
      int mate = found.mate(3 * f + k);
      Kind kind = null;
      if (mate == MeshDiagnosis.OPEN) {
        kind = Kind.OPEN_EDGE;
      } else if (mate < 0) {
        kind = Kind.NON_MANIFOLD;
      } else if (found.mesh().corner(f, k) == found.mesh().corners()[mate]) {
        kind = Kind.FLIPPED;
      }
      if (kind != null && (worst == null || kind.ordinal() > worst.ordinal())) {
        worst = kind;
      }
    }
    return worst;
  }
}
