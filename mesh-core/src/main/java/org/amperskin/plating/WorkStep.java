package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Work without plating current: painting, resist, light, developing, stripping, etching.
 *
 * @param name name for people
 * @param region the region worked on, "" for all
 * @param surface what geometry says of it
 * @param kind what is done
 */
public record WorkStep(String name, String region, PlatedSurface surface, WorkKind kind)
    implements Step {
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
    EstimateBuilder out = new EstimateBuilder(name, region, kind.how(), surface, Optional.empty());
    List<Hazard> hazards = new ArrayList<>(kind.hazards());
    hazards.add(Hazard.WASTE);
    out.cautions.addAll(Caution.of(hazards));
    out.notes.add(kind.advice());
    return out.build();
  }
}
