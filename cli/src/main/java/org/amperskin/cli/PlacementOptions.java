package org.amperskin.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.amperskin.geom.Vec3;
import org.amperskin.job.Directions;
import org.amperskin.region.DrapedPlacement;
import org.amperskin.region.FlatPlacement;
import org.amperskin.region.Placement;
import org.amperskin.region.Selector;
import org.amperskin.region.WrappedPlacement;
import org.amperskin.units.Dimension;
import org.amperskin.unroll.ConeFit;
import picocli.CommandLine.Option;

/** How artwork lies on the part, as options. */
final class PlacementOptions {
  private static final double CREASE_DEGREES = 30;

  @Option(
      names = "--lies",
      paramLabel = "HOW",
      description = {
        "flat (usual), wrapped round a cylinder or cone,",
        "or draped, cut to follow."
      })
  private String lies = "flat";

  @Option(
      names = "--toward",
      paramLabel = "DIRECTION",
      description = "Where the light travels: -z, +y or \"0.2 0 -1\"; for flat.")
  private String toward;

  @Option(
      names = "--from",
      paramLabel = "POINT",
      description = {"The film covers skin round this point, \"0 0 20 mm\",", "up to the creases."})
  private String from;

  @Option(
      names = "--crease",
      paramLabel = "ANGLE",
      description = "Faces that turn by more part the skin; 30deg.")
  private String crease;

  @Option(
      names = "--axis",
      arity = "2",
      paramLabel = "POINT DIRECTION",
      hideParamSyntax = true,
      description = {"POINT DIRECTION of a cylinder to wrap round, as", "\"0 0 0 mm\" +z."})
  private String[] axis;

  @Option(
      names = "--up",
      paramLabel = "DIRECTION",
      description = "Upright of the artwork; +z, or +y for light along z.")
  private String up;

  @Option(
      names = "--centre",
      paramLabel = "POINT",
      description = "Where its centre lies, as \"0 12 0 mm\"; else on the centre of what it faces.")
  private String centre;

  @Option(names = "--turn", paramLabel = "ANGLE", description = "Counter-clockwise, as 30deg.")
  private String turn;

  @Option(
      names = "--film-scale",
      paramLabel = "PERCENT",
      description = "Size of the film over the artwork, as 100%%.")
  private String filmScale;

  @Option(names = "--mirror", description = "Mirror left and right.")
  private boolean mirror;

  @Option(names = "--repeat", paramLabel = "CxR", description = "Tiles, columns x rows, as 3x2.")
  private String repeat;

  /** The placement that the options ask for. */
  Placement placement() throws UsageFault {
    String how = lies.toLowerCase(Locale.ROOT);
    if (!List.of("flat", "wrapped", "draped").contains(how)) {
      throw new UsageFault("--lies " + lies + ": one of [flat, wrapped, draped] fits");
    }
    boolean flat = how.equals("flat");
    if (flat && toward == null) {
      throw new UsageFault("a flat film wants --toward, where the light travels, as -z");
    }
    if (!flat && toward != null) {
      throw new UsageFault(
          "--toward " + toward + " does not fit a " + how + " film: its light falls square on it");
    }
    if (axis != null && !how.equals("wrapped")) {
      throw new UsageFault("--axis " + axis[0] + " is for --lies wrapped, not for " + how);
    }
    if (!flat && from == null && axis == null) {
      throw new UsageFault("a " + how + " film wants --from, a point of the skin it covers");
    }
    if (crease != null && from == null) {
      throw new UsageFault("--crease " + crease + " goes with --from, a point of the skin");
    }
    try {
      return switch (how) {
        case "flat" -> flat();
        case "wrapped" -> wrapped();
        default ->
            new DrapedPlacement(
                upOr(new Vec3(0, 0, 1)), centre(), turn(), scale(), mirror, tiles()[0], tiles()[1]);
      };
    } catch (IllegalArgumentException bad) {
      throw new UsageFault(bad.getMessage());
    }
  }

  private Placement flat() throws UsageFault {
    Vec3 light = Directions.direction(toward);
    return new FlatPlacement(
        light,
        upOr(FlatPlacement.uprightFor(light)),
        centre(),
        turn(),
        scale(),
        mirror,
        tiles()[0],
        tiles()[1]);
  }

  private Placement wrapped() throws UsageFault {
    WrappedPlacement.Axis given =
        axis == null
            ? null
            : new WrappedPlacement.Axis(Directions.point(axis[0]), Directions.direction(axis[1]));
    return new WrappedPlacement(
        given,
        ConeFit.Form.BEST,
        upOr(WrappedPlacement.uprightFor(given)),
        centre(),
        turn(),
        scale(),
        mirror,
        tiles()[0],
        tiles()[1]);
  }

  /** The skin that the film covers; none for all. */
  List<Selector> patch() throws UsageFault {
    List<Selector> patch = new ArrayList<>();
    if (from != null) {
      try {
        double degrees =
            crease == null
                ? CREASE_DEGREES
                : Math.toDegrees(Verb.quantity("--crease", crease, Dimension.ANGLE));
        patch.add(new Selector.Grown(Directions.point(from), degrees));
      } catch (IllegalArgumentException bad) {
        throw new UsageFault("--from: " + bad.getMessage());
      }
    }
    return patch;
  }

  private Vec3 upOr(Vec3 usual) {
    return up == null ? usual : Directions.direction(up);
  }

  private Vec3 centre() {
    return centre == null ? null : Directions.point(centre);
  }

  private double turn() throws UsageFault {
    return turn == null ? 0 : Math.toDegrees(Verb.quantity("--turn", turn, Dimension.ANGLE));
  }

  private double scale() throws UsageFault {
    return filmScale == null ? 1 : Verb.positive("--film-scale", filmScale, Dimension.FRACTION);
  }

  private int[] tiles() throws UsageFault {
    if (repeat == null) {
      return new int[] {1, 1};
    }
    try {
      return Directions.tiles(repeat);
    } catch (IllegalArgumentException bad) {
      throw new UsageFault("--repeat " + bad.getMessage());
    }
  }
}
