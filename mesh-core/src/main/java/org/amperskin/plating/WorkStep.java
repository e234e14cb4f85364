package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Work without current: painting, resist, light, developing, stripping, etching in an etchant.
 *
 * @param name name for people
 * @param region the region worked on, "" for all
 * @param surface what geometry says of it
 * @param kind what is done
 * @param conditions what else its numbers depend on
 */
public record WorkStep(
    String name, String region, PlatedSurface surface, WorkKind kind, WorkConditions conditions)
    implements Step {
  /** Work of which nothing but its surface is known. */
  public WorkStep(String name, String region, PlatedSurface surface, WorkKind kind) {
    this(name, region, surface, kind, WorkConditions.unknown());
  }

  public WorkStep {
    if (name.isBlank()) {
      throw new IllegalArgumentException("step " + kind.key() + " has no name");
    }
  }

  @Override
  public How how() {
    return kind.how();
  }

  @Override
  public StepEstimate estimate() {
    return estimate(List.of());
  }

  /** Works it out, with hazards that it has from the steps before it, told first. */
  StepEstimate estimate(List<Hazard> owed) {
    EstimateBuilder out = new EstimateBuilder(name, region, kind.how(), surface, Optional.empty());
    List<Hazard> hazards = new ArrayList<>(kind.hazards());
    hazards.add(Hazard.WASTE);
    owed.forEach(hazard -> out.cautions.add(hazard.caution()));
    out.cautions.addAll(Caution.of(hazards));
    out.notes.add(kind.advice());
    new WorkFigures(out, surface, conditions).of(kind);
    return out.build();
  }
}
