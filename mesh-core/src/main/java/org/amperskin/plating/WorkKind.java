package org.amperskin.plating;

import java.util.List;
import java.util.Optional;

/** Work between the plating steps: what is done, how it is usually done, and how it can hurt. */
public enum WorkKind {
  FILL(
      How.PREPARE,
      "Fill seams and layer lines with a filler that the paint's solvent does not lift.",
      Hazard.SOLVENT,
      Hazard.DUST),
  SAND(How.PREPARE, "Sand wet, rinse, dry.", Hazard.DUST),
  SEAL(
      How.PREPARE,
      "Seal the print on all sides: bath that creeps into infill blisters the copper later. Leave a"
          + " vent hole or fill it.",
      Hazard.SOLVENT),
  PAINT(
      How.PREPARE,
      "Spray thin crossed coats of conductive paint; check the sheet resistance on a strip; paint"
          + " retreats from sharp edges, so round them.",
      Hazard.SOLVENT,
      Hazard.DUST),
  WIRE(
      How.PREPARE,
      "Wrap bare wire tight, no painted place far from it; check every turn with a meter."),
  CLEAN(How.PREPARE, "Degrease and rinse until water stays as an unbroken film.", Hazard.CAUSTIC),
  ELECTROCLEAN(
      How.PREPARE,
      "On copper forward at 8-12 V until water stays unbroken (FAA AC 43.13-1B 4-62), rinse, plate"
          + " at once. Not over resist: it is alkaline.",
      Hazard.CAUSTIC,
      Hazard.HYDROGEN,
      Hazard.ELECTRICITY),
  ACTIVATE(How.PREPARE, "Activate in dilute acid, rinse, plate before it dries.", Hazard.ACID),
  STOP_OFF(How.PREPARE, "Cover with tape or lacquer, press the edges down.", Hazard.SOLVENT),
  RESIST(
      How.PREPARE,
      "Spray positive resist in yellow light, about 8 um; dry 24 h at room temperature where the"
          + " print softens early. Runs and corners need more light.",
      Hazard.SOLVENT),
  EXPOSE(
      How.PREPARE,
      "Expose through the film at 365-405 nm; the time comes from a test strip.",
      Hazard.UV),
  DEVELOP(
      How.PREPARE,
      "7 g/L sodium hydroxide at 20-25 C, 30-120 s, fresh each day; rinse well.",
      Hazard.CAUSTIC),
  STRIP(How.PREPARE, "Strip resist with acetone or an ester, rinse.", Hazard.SOLVENT),
  ETCH(
      How.ETCH,
      "Etch without current as the etchant's data sheet says, rinse at once. With current:"
          + " a step with recipe: copper-etch, which tells depth, charge and undercut.",
      Hazard.ACID),
  CHROMIUM_OFF(
      How.ETCH,
      "Dip in hydrochloric acid 1:1 by volume with water (acid into water) at 20-25 C, no current,"
          + " until it stops gassing and the metal below shows; a dark film takes longer than a"
          + " bright one. Through open resist too. Copper, nickel and palladium below stay for"
          + " minutes, not hours. Never the part on plus: that makes hexavalent chromium.",
      Hazard.ACID,
      Hazard.TRIVALENT_CHROMIUM,
      Hazard.HYDROGEN),
  SCOUR_OFF(
      How.PREPARE,
      "Rub the layer off wet with 1000 grit or a grey pad until the metal below shows everywhere;"
          + " edges and high places lose the metal below first, so go easy there. Rinse.",
      Hazard.DUST),
  RINSE(How.PREPARE, "Rinse twice, the last time in deionised water; keep the first rinse."),
  DRY(How.PREPARE, "Dry with clean air or a lint-free cloth, no heat above what the print bears."),
  OIL(How.PREPARE, "Wipe on a thin oil or wax: it deepens the dark and keeps fingerprints off.");

  private final How how;
  private final String advice;
  private final List<Hazard> hazards;

  WorkKind(How how, String advice, Hazard... hazards) {
    this.how = how;
    this.advice = advice;
    this.hazards = List.of(hazards);
  }

  /** The word used in files. */
  public String key() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** Etch or prepare. */
  public How how() {
    return how;
  }

  /** How it is usually done. */
  public Note advice() {
    return new Note(advice, Mark.COMMON, Assumption.PRACTICE);
  }

  List<Hazard> hazards() {
    return hazards;
  }

  /** The kind with this word, if there is one. */
  public static Optional<WorkKind> find(String word) {
    for (WorkKind kind : values()) {
      if (kind.key().equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
