package org.amperskin.bench;

import java.util.ArrayList;
import java.util.List;
import org.amperskin.plating.Metal;
import org.amperskin.plating.Recipe;

/** The order of adding, and what to know; common practice, no source, unless said. */
final class MixSteps {
  private MixSteps() {}

  static List<String> of(List<Mix.Item> items, Recipe recipe) {
    List<String> steps = new ArrayList<>();
    steps.add(
        "Goggles, nitrile gloves, apron, air. Take about 60 % of the volume as distilled water,"
            + " in a plastic or glass tank that stands heat.");
    for (Mix.Item item : items) {
      switch (item.formula()) {
        case "H2SO4" ->
            steps.add(
                "Acid into water, never water into acid: pour the "
                    + item.name()
                    + " slowly, in small portions, stirring; it heats, let it cool in between.");
        case "HCl" ->
            steps.add(
                "Measure the few drops of "
                    + item.name()
                    + " by syringe or pipette into the cooled bath: too much chloride cannot be"
                    + " taken out again.");
        case "NaCl" ->
            steps.add(
                "Weigh the sodium chloride to 1 mg, or dissolve ten times as much in water and take"
                    + " a tenth of that; plain salt, without iodine or flow agent.");
        case "H3BO3" ->
            steps.add(
                "Dissolve the boric acid in the warm bath, 50-60 C; cold it hardly dissolves.");
        default ->
            steps.add("Dissolve the " + item.name() + " in the warm water (40-50 C), stirring.");
      }
    }
    steps.add("Let it cool, top up with distilled water to the volume, stir.");
    if (recipe.metal() == Metal.NICKEL) {
      steps.add(
          "Set pH 3.5-4.5: down with a little dilute sulfuric (Watts) or sulfamic acid, up with"
              + " nickel carbonate.");
    }
    steps.add("Filter, add brightener or wetting agent as their maker says, label with the date.");
    return steps;
  }

  static List<String> notes(Recipe recipe, AcidStrength sulfuric, List<Mix.Item> items) {
    List<String> notes = new ArrayList<>();
    for (Mix.Item item : items) {
      if (!item.inRange()) {
        notes.add(
            String.format(
                "%s %s g/L is outside the %s-%s g/L of %s",
                item.counts(),
                Plain.of(item.strengthGPerL()),
                Plain.of(item.lowGPerL()),
                Plain.of(item.highGPerL()),
                item.source()));
      }
      if (item.formula().equals("H2SO4")) {
        notes.add(
            sulfuric
                + " taken as "
                + Plain.of(sulfuric.gPerMl())
                + " g/mL at 20 C (Perry's Chemical Engineers' Handbook, from memory); weighing is"
                + " surer than measuring");
      }
      if (item.formula().startsWith("Ni(SO3NH2)2")) {
        notes.add(
            "Nickel sulfamate is mostly sold as a concentrate: take nickel by its label's g/L.");
      }
    }
    notes.add("Masses are of pure chemicals; what a label gives as purity divides them.");
    return notes;
  }
}
