package org.amperskin.plating;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Steps in working order with what they come to, what they use up and what their order risks.
 *
 * <p>Guaranteed: estimates in the order of the steps; materials summed in that order. Not
 * guaranteed: steps without a figure add nothing to the materials. Cost: that of the steps.
 *
 * @param steps an estimate for each step
 * @param materials what is used up
 * @param warnings what concerns more than one step
 */
public record Plan(List<StepEstimate> steps, List<Material> materials, List<String> warnings) {
  /** Figures of steps that are things to buy, and how they are called. */
  private static final Map<String, String> SUPPLIES =
      Map.of(
          "dipL", "hydrochloric acid 1:1",
          "sealMl", "sealer",
          "paintMl", "conductive paint",
          "resistMl", "resist",
          "sodiumHydroxideG", "sodium hydroxide",
          "solventMl", "solvent",
          "oilMl", "oil",
          "additiveMl", "brightener, each component");

  public Plan {
    steps = List.copyOf(steps);
    materials = List.copyOf(materials);
    warnings = List.copyOf(warnings);
  }

  /**
   * Works out all steps.
   *
   * @param steps in working order
   * @param piece what else is known of the part
   */
  public static Plan of(List<Step> steps, Workpiece piece) {
    return of(List.of(), steps, piece);
  }

  /**
   * Works out all steps that are left.
   *
   * @param done steps taken before, in working order: they tell what the others meet
   * @param steps in working order
   * @param piece what else is known of the part
   */
  public static Plan of(List<Step> done, List<Step> steps, Workpiece piece) {
    List<StepEstimate> estimates = new ArrayList<>();
    StepOrder order = new StepOrder(piece, done, steps);
    for (Step step : steps) {
      estimates.add(order.next(step));
    }
    return new Plan(estimates, materials(steps, estimates), order.warnings());
  }

  /** Charge of all steps together (A.h). */
  public double chargeAh() {
    return steps.stream().map(StepEstimate::chargeAh).mapToDouble(c -> c.orElse(0)).sum();
  }

  /** When its steps happen. */
  public Schedule schedule() {
    return Schedule.of(steps);
  }

  /** Time of all steps that have one (s). */
  public double timeS() {
    return steps.stream().map(StepEstimate::timeS).mapToDouble(t -> t.orElse(0)).sum();
  }

  /** Plating time of all steps with its spread (s). */
  public Total platingTime() {
    List<Uncertain> times = new ArrayList<>();
    for (StepEstimate e : steps) {
      if (!e.refused() && e.timeS().isPresent()) {
        double typical = e.timeS().getAsDouble();
        times.add(
            e.uncertain("time").orElseGet(() -> Uncertain.known(e.name(), "time", "s", typical)));
      }
    }
    return Total.of("plating time", "s", 1, times);
  }

  private static List<Material> materials(List<Step> steps, List<StepEstimate> estimates) {
    Map<String, Material> sums = new LinkedHashMap<>();
    for (int i = 0; i < steps.size(); i++) {
      StepEstimate e = estimates.get(i);
      if (e.refused()) {
        continue;
      }
      for (StepFigure f : e.figures()) {
        String name = SUPPLIES.get(f.key());
        if (name != null) {
          boolean millilitres = f.unit().equals("mL");
          add(
              sums,
              Total.of(
                  name,
                  millilitres ? "L" : f.unit(),
                  millilitres ? 1e-3 : 1,
                  List.of(Uncertain.of(e.name(), f))),
              "used up, see its step");
        }
      }
      if (steps.get(i) instanceof TankStep tank) {
        String metal = tank.recipe().metal().label();
        e.massG()
            .ifPresent(
                g -> add(sums, e, metal + Material.DEPOSITED, g, "g", "metal", "on the part"));
        e.figure(TankBalance.ANODE)
            .ifPresent(
                f ->
                    add(
                        sums,
                        e,
                        metal + " anode",
                        f.value(),
                        f.unit(),
                        TankBalance.ANODE,
                        "dissolves, 2 % sludge included"));
      } else if (steps.get(i) instanceof BrushStep brush) {
        String metal = brush.recipe().metal().label();
        e.massG()
            .ifPresent(
                g -> add(sums, e, metal + Material.DEPOSITED, g, "g", "metal", "on the part"));
        e.solutionL()
            .ifPresent(
                l ->
                    add(
                        sums,
                        e,
                        brush.recipe().name() + " solution",
                        l,
                        "L",
                        BrushEstimator.SOLUTION,
                        "used up, drips aside"));
      }
    }
    return List.copyOf(sums.values());
  }

  /** Adds an amount of a step, with its spread where the step tells one under that result. */
  private static void add(
      Map<String, Material> sums,
      StepEstimate e,
      String name,
      double amount,
      String unit,
      String result,
      String why) {
    Uncertain told =
        e.uncertain(result).orElseGet(() -> Uncertain.known(e.name(), result, unit, amount));
    add(sums, Total.of(name, unit, 1, List.of(told)), why);
  }

  private static void add(Map<String, Material> sums, Total total, String why) {
    sums.merge(
        total.name(),
        new Material(total, why),
        (a, b) -> new Material(a.total().plus(b.total()), why));
  }
}
