package org.amperskin.plating;

/**
 * A way in which the work can hurt, and the usual caution in one breath.
 *
 * <p>Cautions go with every step that has the hazard and cannot be switched off. They are
 * reminders: safety data sheets, local codes and licensed practice go before them.
 */
public enum Hazard {
  HEXAVALENT_CHROMIUM(
      "hexavalent chromium",
      "Hexavalent chromium causes cancer, asthma and skin ulcers. Workplace limit 5 ug/m3 of air"
          + " (8 h), action level 2.5. Mist and swab spatter carry it: local exhaust, full skin and"
          + " eye cover, never at a kitchen sink. Many countries allow it only under licence; a"
          + " trivalent or chromium-free dark finish is the safer choice.",
      Mark.READ,
      "29 CFR 1910.1026, Chromium (VI)"),
  CHROMIC_ACID_AND_SOLVENT(
      "solvent near chromic acid",
      "Chromic acid sets acetone, alcohol, oil and paper alight. Rinse until colourless and dry the"
          + " part before any solvent comes near; never leave chromium swabs in solvent or in a bin.",
      Mark.COMMON,
      "common practice, no source"),
  TRIVALENT_CHROMIUM(
      "trivalent chromium",
      "Trivalent chromium solutions irritate skin and eyes, and a wrong anode (lead, bare graphite in"
          + " the wrong bath) can turn part of it into hexavalent: use the anode the maker names.",
      Mark.MEMORY,
      "safety data sheets of trivalent chromium baths"),
  CAUSTIC(
      "caustic",
      "Sodium hydroxide blinds and burns; ceiling 2 mg/m3 in air. Add it to cold water, little by"
          + " little, it heats up. Goggles and gloves, eyewash at hand.",
      Mark.MEMORY,
      "NIOSH Pocket Guide to Chemical Hazards, sodium hydroxide"),
  ACID(
      "acid",
      "Acid burns skin and eyes. Acid into water, never water into acid. Goggles, nitrile gloves,"
          + " apron; never let an acid meet a cyanide or a hypochlorite bleach.",
      Mark.READ,
      "MIL-STD-2197A(SH) 4.6.5 for acid and cyanide; the rest common practice"),
  COPPER_SALTS(
      "copper salts",
      "Copper sulfate is harmful if swallowed and very toxic to life in water: not a drop to the"
          + " drain.",
      Mark.COMMON,
      "common practice, no source"),
  NICKEL(
      "nickel salts",
      "Nickel salts sensitise skin and airways for life and are a suspected or known carcinogen by"
          + " breathing; NIOSH limit 0.015 mg/m3. Nitrile gloves, no mist, no splashes.",
      Mark.MEMORY,
      "NIOSH Pocket Guide to Chemical Hazards, nickel"),
  PALLADIUM(
      "palladium salts",
      "Palladium(II) salts sensitise skin and airways. Nitrile gloves; keep swabs and rinses apart,"
          + " their metal has value.",
      Mark.COMMON,
      "common practice, no source"),
  AMMONIA(
      "ammonia",
      "Alkaline palladium solutions give off ammonia, and ammonia with bleach gives poison gas."
          + " Ventilate, keep bleach away.",
      Mark.COMMON,
      "common practice, no source"),
  SOLVENT(
      "solvents and aerosols",
      "Resist and paint aerosols and acetone flash below 0 C; acetone burns in air from 2.5 %. Work"
          + " outside or in a booth, no flame, no spark, no static; mask for organic vapour.",
      Mark.MEMORY,
      "makers' safety data sheets; NIOSH Pocket Guide, acetone"),
  UV(
      "ultraviolet light",
      "Lamps of 365 to 405 nm and foils that reflect them harm eyes and skin: shield both. Germicidal"
          + " lamps (254 nm) have no use here.",
      Mark.COMMON,
      "common practice, no source"),
  HYDROGEN(
      "hydrogen",
      "Hydrogen collects under a lid and burns in air from 4 %. Ventilate, no lid, no spark.",
      Mark.MEMORY,
      "safety data sheet of hydrogen"),
  DUST(
      "metal dust",
      "Sanding copper, nickel or conductive paint makes dust that must not be breathed: wet sanding,"
          + " particle mask.",
      Mark.COMMON,
      "common practice, no source"),
  BLADE(
      "blades",
      "Plotter blades and weeding hooks cut deep: hands off the carriage while it runs, cap the blade,"
          + " cut away from the hand.",
      Mark.COMMON,
      "common practice, no source"),
  ELECTRICITY(
      "electricity",
      "Low volts, but many amperes burn and light fires through a loose clip. Isolated supply, mains"
          + " behind a residual-current device, dry hands.",
      Mark.COMMON,
      "common practice, no source"),
  WASTE(
      "waste",
      "Spent solution, first rinses, swabs and wipes are hazardous waste in most countries: collect,"
          + " label, hand in to a licensed handler. Nothing to the drain.",
      Mark.READ,
      "MIL-STD-2197A(SH) 4.6.6; local rules go before this"),
  LOCAL_RULES(
      "local rules",
      "These are reminders. Safety data sheets, local codes and licensed practice go before them.",
      Mark.COMMON,
      "common practice, no source");

  private final String label;
  private final String text;
  private final Mark mark;
  private final String source;

  Hazard(String label, String text, Mark mark, String source) {
    this.label = label;
    this.text = text;
    this.mark = mark;
    this.source = source;
  }

  /** Short name. */
  public String label() {
    return label;
  }

  /** The key used in recipe files. */
  public String key() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  Caution caution() {
    return new Caution(label, text, mark, source);
  }
}
