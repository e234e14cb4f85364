package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;

/**
 * What a part as a body asks of the tank: room, fill, float and ballast.
 *
 * <p>Worked out by {@link TankRoom} and {@link Buoyancy}.
 *
 * @param figures its numbers
 * @param warnings what does not fit, with a remedy
 */
public record PartInBath(List<StepFigure> figures, List<String> warnings) {
  /** No step of the plan works in a tank. */
  public static final PartInBath NONE = new PartInBath(List.of(), List.of());

  public PartInBath {
    figures = List.copyOf(figures);
    warnings = List.copyOf(warnings);
  }

  /** Of a part in a tank; none if no step of the plan works in one. */
  public static PartInBath of(PartBody part, TankShape tank, List<StepEstimate> steps) {
    if (steps.stream().noneMatch(StepEstimate::bathed)) {
      return NONE;
    }
    double deposit = steps.stream().mapToDouble(s -> s.massG().orElse(0)).sum();
    TankRoom room = new TankRoom(part, tank);
    Buoyancy buoyancy = new Buoyancy(part, tank.bathDensity());
    List<StepFigure> figures = new ArrayList<>(room.figures());
    figures.addAll(buoyancy.figures(deposit));
    List<String> warnings = new ArrayList<>(room.warnings());
    warnings.addAll(buoyancy.warnings());
    return new PartInBath(figures, warnings);
  }
}
