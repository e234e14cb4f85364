package org.amperskin.plating;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the work between the plating steps depends on beside its surface; whatever is not known is
 * left out of the numbers.
 *
 * @param print what the part is printed of
 * @param sheetResistanceOhm of the conductive paint (ohm/sq)
 * @param wire the contact wire
 * @param resistUm thickness of the resist (um)
 * @param exposureS time that the least lit place under the film needs (s)
 * @param exposureLatestS time from which covered resist gets too much (s)
 */
public record WorkConditions(
    Optional<PrintMaterial> print,
    OptionalDouble sheetResistanceOhm,
    Optional<ContactWire> wire,
    OptionalDouble resistUm,
    OptionalDouble exposureS,
    OptionalDouble exposureLatestS) {
  /** Nothing known. */
  public static WorkConditions unknown() {
    OptionalDouble none = OptionalDouble.empty();
    return new WorkConditions(Optional.empty(), none, Optional.empty(), none, none, none);
  }
}
