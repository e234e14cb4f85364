package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;
import org.amperskin.units.Unit;

/**
 * Parts that hang in one tank on one supply.
 *
 * <p>Definition: all at one density, so each draws current by its area; each stays until its charge
 * has passed and is then taken out, current on, while the supply is turned down to what the rest
 * needs. Guaranteed: the charge of all stages is the charge of all parts. Not guaranteed: that
 * parts share by area alone: nearer to an anode or on a better contact they draw more.
 *
 * @param parts in the order given
 * @param stages from each moment on, what to set
 * @param bathL volume of the bath, told or advised (L)
 * @param warnings what does not fit, with numbers and a remedy
 */
public record Rack(List<Hung> parts, List<Stage> stages, double bathL, List<String> warnings) {
  private static final Unit LITRE = Unit.of("L");
  private static final double SAME_S = 1;

  /**
   * A part on the rack.
   *
   * @param name its name
   * @param areaDm2 what takes metal, wire included (dm2)
   * @param currentA its share of the current, once it is up (A)
   * @param chargeAh its charge (A.h)
   * @param timeS when it is done (s)
   * @param ramp its slow start; empty if set at once
   */
  public record Hung(
      String name,
      double areaDm2,
      double currentA,
      double chargeAh,
      double timeS,
      List<RampPoint> ramp) {
    public Hung {
      ramp = List.copyOf(ramp);
    }

    /** A part whose tank step is worked out. */
    public static Hung of(String name, StepEstimate step) {
      double current = step.currentA().orElseThrow();
      return new Hung(
          name,
          current / step.densityADm2().orElseThrow(),
          current,
          step.chargeAh().orElseThrow(),
          step.timeS().orElseThrow(),
          step.ramp());
    }

    private double at(double s) {
      if (s >= timeS) {
        return 0;
      }
      double now = currentA;
      for (RampPoint point : ramp) {
        if (point.atS() <= s) {
          now = point.currentA();
        }
      }
      return now;
    }
  }

  /**
   * From a moment on.
   *
   * @param atS when (s)
   * @param out what is taken out first
   * @param setA what to set (A), 0 at the end
   * @param areaDm2 what is left in the bath (dm2)
   * @param chargeAh charge until the next stage (A.h)
   * @param forgottenADm2 density on what is left if the supply is not turned down, empty where
   *     nothing was taken out or nothing is left (A/dm2)
   */
  public record Stage(
      double atS,
      List<String> out,
      double setA,
      double areaDm2,
      double chargeAh,
      OptionalDouble forgottenADm2) {
    public Stage {
      out = List.copyOf(out);
    }
  }

  public Rack {
    parts = List.copyOf(parts);
    stages = List.copyOf(stages);
    warnings = List.copyOf(warnings);
  }

  /**
   * Hangs parts in a bath.
   *
   * @param recipe the bath
   * @param parts at least one
   * @param toldL volume of the bath, if it is told (L)
   */
  public static Rack of(Recipe recipe, List<Hung> parts, OptionalDouble toldL) {
    List<Stage> stages = stages(parts);
    double area = parts.stream().mapToDouble(Hung::areaDm2).sum();
    double most = stages.stream().mapToDouble(Stage::setA).max().orElse(0);
    Figure load = recipe.needed(FigureKey.TANK_LOAD);
    Figure current = recipe.needed(FigureKey.BATH_CURRENT);
    double m2 = Unit.of("dm2").toSi(area);
    double least = LITRE.fromSi(Math.max(m2 / load.highSi(), most / current.highSi()));
    double advised = LITRE.fromSi(Math.max(m2 / load.typicalSi(), most / current.typicalSi()));
    List<String> warnings = new ArrayList<>();
    if (toldL.isPresent() && toldL.getAsDouble() < least * (1 - 1e-9)) {
      warnings.add(
          "a bath of "
              + Quantity.plain(toldL.getAsDouble(), 3)
              + " L is small for "
              + Quantity.plain(area, 3)
              + " dm2 and "
              + Quantity.plain(most, 3)
              + " A together: take at least "
              + Quantity.plain(least, 3)
              + " L, or hang "
              + fewer(parts, toldL.getAsDouble() / least)
              + " at a time (rule of thumb)");
    }
    long slow = parts.stream().filter(p -> !p.ramp().isEmpty()).count();
    if (slow > 0 && slow < parts.size()) {
      warnings.add(
          slow
              + " of "
              + parts.size()
              + " parts start slowly, on paint or as asked: on one supply the others take their share"
              + " from them; plate the slow ones alone until covered, then hang the rest");
    }
    return new Rack(parts, stages, toldL.orElse(advised), warnings);
  }

  private static String fewer(List<Hung> parts, double share) {
    long fit = (long) Math.floor(share * parts.size());
    return fit >= 1 ? fit + " of the " + parts.size() : "none of them";
  }

  private static List<Stage> stages(List<Hung> parts) {
    TreeSet<Double> moments = new TreeSet<>();
    moments.add(0.0);
    for (Hung part : parts) {
      moments.add(part.timeS());
      part.ramp().forEach(point -> moments.add(point.atS()));
    }
    List<Double> at = new ArrayList<>();
    for (double moment : moments) {
      if (at.isEmpty() || moment - at.get(at.size() - 1) >= SAME_S) {
        at.add(moment);
      }
    }
    List<Stage> stages = new ArrayList<>();
    double before = 0;
    for (int k = 0; k < at.size(); k++) {
      double now = at.get(k);
      double next = k + 1 < at.size() ? at.get(k + 1) : Double.POSITIVE_INFINITY;
      List<String> out =
          now == 0
              ? List.of()
              : parts.stream()
                  .filter(p -> p.timeS() >= now && p.timeS() < now + SAME_S)
                  .map(Hung::name)
                  .toList();
      List<Hung> staying =
          parts.stream().filter(p -> p.timeS() > now && !out.contains(p.name())).toList();
      double set = staying.stream().mapToDouble(p -> p.at(now)).sum();
      double left = staying.stream().mapToDouble(Hung::areaDm2).sum();
      OptionalDouble forgotten =
          out.isEmpty() || left == 0 ? OptionalDouble.empty() : OptionalDouble.of(before / left);
      double hours = k + 1 < at.size() ? (next - now) / 3600 : 0;
      stages.add(new Stage(now, out, set, left, set * hours, forgotten));
      before = set;
    }
    return stages;
  }

  /** Area of all parts (dm2). */
  public double areaDm2() {
    return parts.stream().mapToDouble(Hung::areaDm2).sum();
  }

  /** The largest current to set (A). */
  public double mostA() {
    return stages.stream().mapToDouble(Stage::setA).max().orElse(0);
  }

  /** Charge of all parts (A.h). */
  public double chargeAh() {
    return parts.stream().mapToDouble(Hung::chargeAh).sum();
  }

  /**
   * How the supply falls short, with the remedy; empty if it does not.
   *
   * @param supplyA what it gives (A)
   * @param leastADm2 the lowest density that the bath allows (A/dm2)
   */
  public Optional<String> shortOf(double supplyA, double leastADm2) {
    double most = mostA();
    if (most <= supplyA) {
      return Optional.empty();
    }
    double slower = most / areaDm2() * supplyA / most;
    return Optional.of(
        "all together want "
            + Quantity.show(most, Dimension.CURRENT)
            + ", the supply gives "
            + Quantity.show(supplyA, Dimension.CURRENT)
            + ": hang "
            + fewer(parts, supplyA / most)
            + " at a time"
            + (slower < leastADm2
                ? "; at "
                    + Quantity.plain(slower, 3)
                    + " A/dm2 all together it may not cover (lowest "
                    + Quantity.plain(leastADm2, 3)
                    + ")"
                : ", or run at "
                    + Quantity.plain(slower, 3)
                    + " A/dm2, which takes "
                    + Quantity.plain(most / supplyA, 3)
                    + " times as long"));
  }
}
