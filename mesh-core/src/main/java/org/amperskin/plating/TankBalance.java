package org.amperskin.plating;

import java.util.Optional;
import org.amperskin.units.Charge;
import org.amperskin.units.Quantity;

/**
 * What a tank step takes from anode, bath and bench: metal, heat, drag-out, additive, and how near
 * it comes to the bath's limit.
 *
 * <p>Definition: charge Q passes anode and cathode alike; a soluble anode gives Q k of metal, the
 * cathode takes eps Q k, the bath keeps the rest. At an insoluble anode the bath gives all the
 * metal, oxygen leaves, and acid grows by the anion's share. All of volts times charge counts as
 * heat. The limiting density is n F D c / delta.
 *
 * <p>Guaranteed: anode metal = metal on part and wire + what the bath gains. Not guaranteed: losses
 * of heat to the room (the warming is an upper bound), the film of solution that is really carried
 * out. Sources: Faraday's law; drag-out after J. B. Kushner's tables (from memory); D of copper(II)
 * 6e-10 m2/s and layers of 75 um with air, 150 um stirred, 30 um in a jet (from memory).
 */
final class TankBalance {
  /** Anode metal that becomes sludge and film (common practice, no source). */
  static final double SLUDGE = 0.02;

  /** Solution that clings to a part, well to very poorly drained (Kushner, from memory). */
  static final double[] DRAG_OUT_ML_PER_DM2 = {0.16, 0.81, 1.63};

  /** Key of the metal that a soluble anode loses (g). */
  static final String ANODE = "anodeG";

  /** Key of the density that diffusion brings (A/dm2). */
  static final String LIMIT = "limitingADm2";

  private static final double STUB = 0.2;
  private static final double WATER_J_PER_L_K = 4180;
  private static final double SULFURIC_ACID_G_PER_MOL = 98.079;
  private static final double DIFFUSION = 6e-10;
  private static final double[] LAYER_M = {150e-6, 75e-6, 30e-6};
  private static final double SHARE_OF_LIMIT = 0.4;
  private static final double[] ADDITIVE_ML_PER_AH = {0.05, 0.15, 0.25};
  private static final double ROOM_K = 298.15;

  private final EstimateBuilder out;
  private final Recipe recipe;

  TankBalance(EstimateBuilder out, Recipe recipe) {
    this.out = out;
    this.recipe = recipe;
  }

  /**
   * Tells all of it.
   *
   * @param chargeAh charge of the step (A.h)
   * @param efficiency cathode efficiency (0 to 1)
   * @param volts voltage expected (V)
   * @param totalDm2 area that takes metal, wire included (dm2)
   * @param densityADm2 working density (A/dm2)
   * @param bathL volume of the bath (L)
   */
  void tell(
      double chargeAh,
      double efficiency,
      double volts,
      double totalDm2,
      double densityADm2,
      double bathL) {
    anode(chargeAh, efficiency, bathL);
    heat(chargeAh, volts, bathL);
    out.figure(
        "dragOutMl",
        "carried out",
        "mL",
        totalDm2,
        DRAG_OUT_ML_PER_DM2,
        Mark.MEMORY,
        "solution that leaves with the part, well to very poorly drained (Kushner)");
    boolean brightened = recipe.metal() == Metal.COPPER && !recipe.alkaline();
    if (brightened) {
      out.figure(
          "additiveMl",
          "brightener",
          "mL",
          chargeAh,
          ADDITIVE_ML_PER_AH,
          Mark.COMMON,
          "of each component, 50 to 250 mL in 1000 A.h; its maker's sheet goes before this");
    }
    limit(densityADm2);
  }

  private void anode(double chargeAh, double efficiency, double bathL) {
    if (recipe.anode().isEmpty()) {
      return;
    }
    String metal = recipe.metal().label();
    double all = chargeAh * recipe.ion().massPerAmpereHour().inGrams();
    double landed = efficiency * all;
    if (recipe.anode().get().soluble()) {
      out.figure(
          ANODE,
          "anode takes",
          all * (1 + SLUDGE),
          "g",
          Mark.COMPUTED,
          metal
              + " dissolved, 2 % sludge included; hang in "
              + Quantity.plain(all * (1 + SLUDGE) / (1 - STUB), 3)
              + " g, a stub of 20 % stays");
      out.figure(
          "bathGainGPerL",
          "bath gains",
          (all - landed) / bathL,
          "g/L",
          Mark.COMPUTED,
          metal + ": what the anode gives and the part does not take; drag-out takes some again");
      lasts((all - landed) / bathL, true);
      return;
    }
    out.figure(
        "bathLossGPerL",
        "bath loses",
        landed / bathL,
        "g/L",
        Mark.COMPUTED,
        metal + ": the anode gives none");
    lasts(landed / bathL, false);
    double acid =
        chargeAh * 3600 / (2 * Constant.FARADAY.si()) * SULFURIC_ACID_G_PER_MOL * efficiency;
    if (recipe.metal() == Metal.COPPER) {
      out.figure(
          "acidGainGPerL",
          "acid gains",
          acid / bathL,
          "g/L",
          Mark.COMPUTED,
          "sulfuric acid, 1.83 g an ampere-hour");
    }
    out.figure(
        "oxygenL",
        "oxygen",
        Faraday.hydrogen(new Charge(chargeAh * 3600), ROOM_K).inLitres() / 2,
        "L",
        Mark.COMPUTED,
        "at the anode, at 25 C: half of the hydrogen that the charge would make");
  }

  /** How many such parts bring the metal to the end of its range. */
  private void lasts(double perPartGPerL, boolean rises) {
    Optional<Figure> content = recipe.figure(FigureKey.METAL_CONTENT);
    if (content.isEmpty() || !(perPartGPerL > 0)) {
      return;
    }
    Figure c = content.get();
    double room = rises ? c.highSi() - c.typicalSi() : c.typicalSi() - c.lowSi();
    if (!(room > 0)) {
      return;
    }
    out.figure(
        "bathLastsParts",
        "bath lasts",
        room / perPartGPerL,
        "such parts",
        Mark.COMPUTED,
        "until its "
            + recipe.metal().label()
            + " "
            + (rises ? "rises" : "falls")
            + " from "
            + Quantity.plain(c.typicalSi(), 3)
            + " to "
            + Quantity.plain(rises ? c.highSi() : c.lowSi(), 3)
            + " g/L; drag-out, additions and additives left out");
  }

  private void heat(double chargeAh, double volts, double bathL) {
    double joules = volts * chargeAh * 3600;
    out.figure(
        "warmsK",
        "bath warms",
        joules / (WATER_J_PER_L_K * bathL),
        "K",
        Mark.COMPUTED,
        "at most: "
            + Quantity.plain(joules / 1000, 3)
            + " kJ of volts times charge, nothing lost to the room");
  }

  private void limit(double densityADm2) {
    if (recipe.figure(FigureKey.METAL_CONTENT).isEmpty() || recipe.metal() != Metal.COPPER) {
      return;
    }
    double gramsPerLitre = recipe.figure(FigureKey.METAL_CONTENT).get().typicalSi();
    double mol = gramsPerLitre * 1000 / Constant.WEIGHT_CU.value();
    double flux = recipe.ion().valence() * Constant.FARADAY.si() * DIFFUSION * mol / 100;
    double limit = flux / LAYER_M[1];
    double[] brought = {flux / LAYER_M[0], limit, flux / LAYER_M[2]};
    out.figure(
        LIMIT,
        "limit",
        "A/dm2",
        1,
        brought,
        Mark.MEMORY,
        "what diffusion brings with air; stirred least, in a jet most");
    if (densityADm2 > SHARE_OF_LIMIT * limit) {
      out.warn(
          Quantity.plain(densityADm2, 3)
              + " A/dm2 is above 0.4 of the "
              + Quantity.plain(limit, 3)
              + " A/dm2 that diffusion brings with air: edges burn; stay below "
              + Quantity.plain(SHARE_OF_LIMIT * limit, 2)
              + " A/dm2, stir harder, or take a richer bath (rule of thumb)");
    }
  }
}
