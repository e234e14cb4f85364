package org.amperskin.units;

import java.util.List;

/**
 * A kind of quantity that people type and read: its SI-coherent unit, the units that fit it, and
 * the units it is shown in, from small to large.
 */
public enum Dimension {
  LENGTH("length", "m", "um mm cm m in mil ft", "nm um mm m"),
  AREA("area", "m2", "mm2 cm2 dm2 m2 in2 ft2", "mm2 cm2 dm2 m2"),
  VOLUME("volume", "m3", "mL L mm3 cm3 dm3 m3 in3 gal", "uL mL L"),
  TIME("time", "s", "s min h", "s min h"),
  MASS("mass", "kg", "mg g kg oz", "mg g kg"),
  CHARGE("charge", "C", "C A.s A.min A.h mA.h", "mA.h A.h"),
  CURRENT("current", "A", "mA A", "mA A"),
  CURRENT_DENSITY("current density", "A/m2", "A/dm2 A/cm2 mA/cm2 A/m2 A/ft2 ASF A/in2", "A/dm2"),
  VOLTAGE("voltage", "V", "mV V", "mV V"),
  RESISTANCE("resistance", "ohm", "mohm ohm kohm", "mohm ohm kohm"),
  SHEET_RESISTANCE("sheet resistance", "ohm/sq", "mohm/sq ohm/sq", "mohm/sq ohm/sq"),
  CONDUCTIVITY("conductivity", "S/m", "S/m mS/cm S/cm", "S/m"),
  CONCENTRATION("concentration", "kg/m3", "g/L mg/L oz/gal", "mg/L g/L"),
  DENSITY("density of a material", "kg/m3", "g/cm3 kg/m3 g/mL", "g/cm3"),
  FRACTION("fraction", "%", "% ppm", "%"),
  ANGLE("angle", "rad", "deg mrad rad", "deg"),
  TEMPERATURE("temperature", "K", "C K F", "C"),
  SPEED("speed", "m/s", "m/min ft/min mm/s m/s", "m/min"),
  CHARGE_PER_AREA("charge per area", "C/m2", "A.h/dm2 A.h/ft2 A.h/in2 C/cm2", "A.h/dm2"),
  CHARGE_PER_LIQUID("charge per volume of solution", "C/m3", "A.h/L A.h/gal", "A.h/L"),
  ENERGY_FACTOR(
      "charge per area and thickness",
      "C/m3",
      "A.h/(dm2.um) A.h/(cm2.um) A.h/in3 A.h/(ft2.mil)",
      "A.h/(dm2.um)"),
  AREA_PER_LIQUID("area per volume of bath", "m2/m3", "dm2/L ft2/gal", "dm2/L"),
  CURRENT_PER_LIQUID("current per volume of bath", "A/m3", "A/L A/gal", "A/L"),
  LIQUID_PER_CHARGE("liquid per charge", "m3/C", "mL/(kA.h) L/(kA.h) mL/(A.h)", "mL/(kA.h)"),
  IRRADIANCE("irradiance", "W/m2", "mW/cm2 W/m2", "mW/cm2"),
  DOSE("light dose", "J/m2", "mJ/cm2 J/m2", "mJ/cm2");

  private final String label;
  private final Unit siUnit;
  private final List<String> fitting;
  private final List<Unit> shown;

  Dimension(String label, String siUnit, String fitting, String shown) {
    this.label = label;
    this.siUnit = Unit.of(siUnit);
    this.fitting = List.of(fitting.split(" "));
    this.shown = List.of(shown.split(" ")).stream().map(Dimension::shownUnit).toList();
  }

  /** Degrees Celsius share a symbol with the coulomb; {@link Quantity} applies the offset. */
  private static Unit shownUnit(String text) {
    return Unit.of(text);
  }

  /** What it is called in messages. */
  public String label() {
    return label;
  }

  /** Units a person may type, as examples; any other of the same kind is read as well. */
  public List<String> fitting() {
    return fitting;
  }

  Unit siUnit() {
    return siUnit;
  }

  List<Unit> shown() {
    return shown;
  }

  /** Whether a value in this unit is of this dimension. */
  boolean fits(Unit unit) {
    return siUnit.sameKind(unit);
  }
}
