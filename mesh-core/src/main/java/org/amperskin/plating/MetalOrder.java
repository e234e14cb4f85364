package org.amperskin.plating;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.amperskin.units.Area;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;

/**
 * Which metals lie where so far, under resist or not, and what a step meets there.
 *
 * <p>Each place of the part has layers of its own, by the regions that hold it; what goes wrong on
 * part of a region only is told with that part's area.
 */
final class MetalOrder {
  /** Share of a layer that a mean depth may reach, since current is uneven (rule of thumb). */
  private static final double DEEPEST_SHARE = 0.5;

  /** Metals that hydrochloric acid dissolves with hydrogen (potentials below hydrogen's). */
  private static final Set<Metal> EATEN_BY_ACID =
      EnumSet.of(Metal.ZINC, Metal.TIN, Metal.IRON, Metal.COBALT);

  private static final double THICKEST_BARRIER_UM = 0.5;

  /** Less of a region than this is not worth telling; the borders of regions are not exact. */
  private static final double SMALLEST_SHARE = 0.01;

  /** What a step did to a region, or to all of the part. */
  private record Change(Optional<String> region, UnaryOperator<Layers> to) {
    boolean reaches(Overlap.Patch patch) {
      return region.map(patch.regions()::contains).orElse(true);
    }
  }

  private final Overlap overlap;
  private final List<String> warnings;
  private final List<Change> changes = new ArrayList<>();

  /**
   * @param warnings receives what is found
   */
  MetalOrder(Overlap overlap, List<String> warnings) {
    this.overlap = overlap;
    this.warnings = warnings;
  }

  /** New paint lies on whatever was there. */
  void paint(Step step) {
    change(step, layers -> Layers.NONE);
  }

  void resist(Step step) {
    change(step, layers -> layers.under(true));
  }

  void strip() {
    changes.add(new Change(Optional.empty(), layers -> layers.under(false)));
  }

  /** Openings where no resist was laid are no openings: their surroundings are as bare. */
  void openings(Step step) {
    tell(
        step,
        layers ->
            layers.resist()
                ? Optional.empty()
                : Optional.of(
                    "works through openings where 0 um of resist was laid: what lies beside them"
                        + " is as bare as they are; lay resist on all of the pattern"));
  }

  void plate(Step step, Recipe recipe, OptionalDouble um) {
    tell(step, MetalOrder::holdsNothing);
    if (recipe.metal() == Metal.CHROMIUM) {
      tell(step, MetalOrder::chromiumOnCopper);
      tell(step, MetalOrder::hydrogenUnderChromium);
    }
    change(step, layers -> layers.and(recipe.metal(), um));
  }

  /** Metal that is taken off must be there, and must leave something to carry the current. */
  void etch(EtchStep step, double deepUm) {
    Metal metal = step.recipe().metal();
    step.layer()
        .ifPresent(
            l -> change(step, layers -> layers.orPresent(metal, OptionalDouble.of(l.inUm()))));
    tell(step, layers -> etchFault(layers, metal, deepUm));
    change(step, layers -> layers.orPresent(metal, OptionalDouble.empty()).less(metal, deepUm));
  }

  void chromiumOff(Step step) {
    tell(step, MetalOrder::chromiumOffFault);
    otherChromium(step);
    change(step, layers -> layers.without(Metal.CHROMIUM));
  }

  /** Palladium that is a cathode without being plated fills with hydrogen. */
  void hydrogen(Step step) {
    tell(
        step,
        layers ->
            layers.endsWith(Metal.PALLADIUM)
                ? Optional.of(
                    "makes hydrogen on palladium, which takes up several hundred times its volume"
                        + " and cracks: clean before the palladium, or activate 30 s in dilute acid"
                        + " at 0 A")
                : Optional.empty());
  }

  /** Whatever lies on top goes. */
  void scourOff(Step step) {
    change(step, layers -> layers.top().map(t -> layers.without(t.metal())).orElse(layers));
  }

  /** The acid takes bare chromium wherever the part goes in. */
  private void otherChromium(Step step) {
    for (String region : changes.stream().flatMap(c -> c.region().stream()).distinct().toList()) {
      double mm2 =
          overlap.of(region).stream()
              .filter(p -> !p.regions().contains(step.region()))
              .filter(p -> at(p).endsWith(Metal.CHROMIUM) && !at(p).resist())
              .mapToDouble(Overlap.Patch::areaMm2)
              .sum();
      if (mm2 > SMALLEST_SHARE * step.surface().openAreaMm2()) {
        warnings.add(
            "step '"
                + step.name()
                + "' dips the part, and about "
                + Quantity.show(Area.ofMm2(mm2).squareMetres(), Dimension.AREA, 2)
                + " of chromium outside its region go too: stop them off first, or work with a"
                + " swab");
        return;
      }
    }
  }

  private static Optional<String> chromiumOffFault(Layers layers) {
    if (layers.top().isEmpty()) {
      return Optional.empty();
    }
    Optional<Layers.Layer> below = layers.without(Metal.CHROMIUM).top();
    if (!layers.endsWith(Metal.CHROMIUM)) {
      return Optional.of(
          "takes chromium off, and on top lies "
              + shown(below.orElseThrow())
              + ": do it before that step, or leave it out");
    }
    return below
        .filter(l -> EATEN_BY_ACID.contains(l.metal()))
        .map(
            l ->
                "brings hydrochloric acid to "
                    + shown(l)
                    + " under the chromium, which it eats within 1 min: scour the chromium off"
                    + " instead");
  }

  /** Where nothing holds: on chromium, and where an etch took all metal away. */
  private static Optional<String> holdsNothing(Layers layers) {
    Optional<Layers.Layer> top = layers.top();
    if (top.filter(Layers.Layer::gone).isPresent()) {
      return Optional.of(
          "plates where 0 um of metal are left: the etch before took all of it; etch less deep or"
              + " plate more first");
    }
    return top.filter(t -> t.metal() == Metal.CHROMIUM)
        .map(
            t ->
                "plates on "
                    + shown(t)
                    + ", which is passive within seconds: nothing holds on it; take it off first"
                    + " (work: chromium-off)");
  }

  private static Optional<String> chromiumOnCopper(Layers layers) {
    return layers.endsWith(Metal.COPPER)
        ? Optional.of(
            "puts chromium straight on copper: put a barrier between, such as"
                + " 0.1-0.5 um of palladium or 5 um of nickel (common practice)")
        : Optional.empty();
  }

  /** Chromium makes mostly hydrogen; a thin barrier bears it, a thick one cracks. */
  private static Optional<String> hydrogenUnderChromium(Layers layers) {
    double um = layers.topUm(Metal.PALLADIUM).orElse(0);
    return um > THICKEST_BARRIER_UM * (1 + 1e-9)
        ? Optional.of(
            "makes much hydrogen on "
                + Quantity.plain(um, 3)
                + " um of palladium, which takes it up and cracks: 0.1-0.5 um are enough as a"
                + " barrier (rule of thumb)")
        : Optional.empty();
  }

  /** What speaks against taking so much of a metal off. */
  private static Optional<String> etchFault(Layers layers, Metal metal, double deepUm) {
    if (layers.top().isEmpty()) {
      return Optional.of(
          "takes " + metal.label() + " off a part that has 0 um of metal: plate it first");
    }
    Layers.Layer top = layers.top().orElseThrow();
    if (top.metal() != metal) {
      return Optional.of(
          "is meant for "
              + metal.label()
              + ", but on top lies "
              + shown(top)
              + ", which this solution may not take off: etch before that step, or take the "
              + top.metal().label()
              + " off first");
    }
    double um = top.um().orElse(Double.POSITIVE_INFINITY);
    if (deepUm <= DEEPEST_SHARE * um) {
      return Optional.empty();
    }
    boolean more = layers.stack().size() > 1;
    String plate =
        "plate "
            + Quantity.plain(top.takenUm() + deepUm / DEEPEST_SHARE, 3)
            + " um (rule of thumb)";
    String goes =
        "goes "
            + Quantity.plain(deepUm, 3)
            + " um deep into "
            + Quantity.plain(um, 3)
            + " um of "
            + metal.label()
            + ": ";
    if (um == 0 || !more && deepUm >= um) {
      return Optional.of(goes + "all of it goes, and with it the way of the current; " + plate);
    }
    return Optional.of(
        goes
            + "where current crowds it breaks through "
            + (more ? "to what lies below" : "and cuts the rest off from it")
            + "; etch at most "
            + Quantity.plain(DEEPEST_SHARE * um, 3)
            + " um deep or "
            + plate);
  }

  private static String shown(Layers.Layer layer) {
    String um =
        layer.um().isPresent() ? Quantity.plain(layer.um().getAsDouble(), 3) + " um of " : "";
    return um + layer.metal().label();
  }

  private void change(Step step, UnaryOperator<Layers> to) {
    changes.add(new Change(Optional.of(step.region()), to));
  }

  private Layers at(Overlap.Patch patch) {
    Layers layers = Layers.NONE;
    for (Change change : changes) {
      if (change.reaches(patch)) {
        layers = change.to().apply(layers);
      }
    }
    return layers;
  }

  /** Warns of what a step meets, with the area where that is not all of its region. */
  private void tell(Step step, Function<Layers, Optional<String>> fault) {
    Map<String, Double> found = new LinkedHashMap<>();
    double all = 0;
    for (Overlap.Patch patch : overlap.of(step.region())) {
      all += patch.areaMm2();
      fault.apply(at(patch)).ifPresent(text -> found.merge(text, patch.areaMm2(), Double::sum));
    }
    for (Map.Entry<String, Double> each : found.entrySet()) {
      double share = all == 0 ? 1 : each.getValue() / all;
      if (share >= SMALLEST_SHARE) {
        warnings.add(
            "step '"
                + step.name()
                + "' "
                + each.getKey()
                + (share > 1 - SMALLEST_SHARE
                    ? ""
                    : "; so on about "
                        + Quantity.show(
                            Area.ofMm2(each.getValue()).squareMetres(), Dimension.AREA, 2)
                        + " of its "
                        + Quantity.show(Area.ofMm2(all).squareMetres(), Dimension.AREA, 2)));
      }
    }
  }
}
