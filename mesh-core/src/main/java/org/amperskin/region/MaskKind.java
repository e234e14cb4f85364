package org.amperskin.region;

import java.util.EnumSet;
import java.util.Set;

/** What decides which skin a mask leaves bare. */
public enum MaskKind {
  /** Tape or lacquer: closed where it covers, everything else open, unreached skin too. */
  STOP_OFF("stop-off", EnumSet.of(RegionKind.EXPOSED, RegionKind.UNREACHED)),
  /** Film over positive resist: open where light reaches, everything else stays closed. */
  POSITIVE_RESIST("film, positive resist", EnumSet.of(RegionKind.EXPOSED)),
  /** Film over negative resist: closed where light reaches, everything else washes open. */
  NEGATIVE_RESIST("film, negative resist", EnumSet.of(RegionKind.EXPOSED, RegionKind.UNREACHED));

  private final String label;
  private final Set<RegionKind> open;

  MaskKind(String label, EnumSet<RegionKind> open) {
    this.label = label;
    this.open = open;
  }

  /** The words shown to people. */
  public String label() {
    return label;
  }

  Set<RegionKind> open() {
    return open;
  }

  /** Region of a piece with a light code of {@link FilmCut}. */
  RegionKind kindOf(int light) {
    return switch (this) {
      case STOP_OFF ->
          light == FilmCut.LIT
              ? RegionKind.EXPOSED
              : light == FilmCut.SHADED ? RegionKind.STOPPED_OFF : RegionKind.UNREACHED;
      case POSITIVE_RESIST ->
          light == FilmCut.LIT
              ? RegionKind.EXPOSED
              : light == FilmCut.SHADED ? RegionKind.MASKED : RegionKind.UNREACHED;
      case NEGATIVE_RESIST ->
          light == FilmCut.LIT
              ? RegionKind.MASKED
              : light == FilmCut.SHADED ? RegionKind.EXPOSED : RegionKind.UNREACHED;
    };
  }
}
