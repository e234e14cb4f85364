package org.amperskin.plating;

import java.util.Optional;
import java.util.Set;
import org.amperskin.units.Dimension;

/** The numbers a recipe may carry, and which of them it must. */
public enum FigureKey {
  /** Cathode current density; on a brush, of the contact area. */
  DENSITY("density", Dimension.CURRENT_DENSITY, true, true),
  EFFICIENCY("efficiency", Dimension.FRACTION, true, false),
  METAL_DENSITY("metal-density", Dimension.DENSITY, true, true),
  TEMPERATURE("temperature", Dimension.TEMPERATURE, true, false),
  CONDUCTIVITY("conductivity", Dimension.CONDUCTIVITY, true, false),
  /** Overpotentials of both electrodes together. */
  OVERPOTENTIAL("overpotential", Dimension.VOLTAGE, true, false),
  VOLTAGE("voltage", Dimension.VOLTAGE, true, true),
  /** Anode area over cathode area. */
  ANODE_RATIO("anode-ratio", Dimension.FRACTION, true, false),
  ANODE_DENSITY("anode-density", Dimension.CURRENT_DENSITY, false, false),
  TANK_LOAD("tank-load", Dimension.AREA_PER_LIQUID, true, false),
  BATH_CURRENT("bath-current", Dimension.CURRENT_PER_LIQUID, true, false),
  /** Charge per area and thickness; a brush solution without one needs a coupon. */
  FACTOR("factor", Dimension.ENERGY_FACTOR, false, false),
  SPEED("speed", Dimension.SPEED, false, true),
  /** Charge a litre of brush solution may pass: maximum recommended use. */
  MAX_USE("max-use", Dimension.CHARGE_PER_LIQUID, false, false),
  METAL_CONTENT("metal-content", Dimension.CONCENTRATION, false, false),
  USABLE_METAL("usable-metal", Dimension.FRACTION, false, false),
  /** Depth over undercut: 1 where metal goes as fast sideways as down. */
  ETCH_FACTOR("etch-factor", Dimension.FRACTION, false, false),
  /** The greatest thickness that may be promised. */
  THICKNESS_CAP("thickness-cap", Dimension.LENGTH, false, false);

  private static final Set<String> ETCH_NEEDS =
      Set.of("density", "efficiency", "metal-density", "voltage", "etch-factor");

  private final String key;
  private final Dimension dimension;
  private final boolean tankNeeds;
  private final boolean brushNeeds;

  FigureKey(String key, Dimension dimension, boolean tankNeeds, boolean brushNeeds) {
    this.key = key;
    this.dimension = dimension;
    this.tankNeeds = tankNeeds;
    this.brushNeeds = brushNeeds;
  }

  /** The word used in recipe files. */
  public String key() {
    return key;
  }

  /** What it measures. */
  public Dimension dimension() {
    return dimension;
  }

  boolean neededFor(How how) {
    return switch (how) {
      case TANK -> tankNeeds;
      case BRUSH -> brushNeeds;
      case ETCH -> ETCH_NEEDS.contains(key);
      case PREPARE -> false;
    };
  }

  static Optional<FigureKey> of(String word) {
    for (FigureKey figure : values()) {
      if (figure.key.equals(word)) {
        return Optional.of(figure);
      }
    }
    return Optional.empty();
  }
}
