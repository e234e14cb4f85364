package org.amperskin.viewer.part;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A step of the job as the viewer shows it.
 *
 * @param name its name in the job, such as "Bright copper"
 * @param metal what lands, such as "copper"; "none" for steps that only prepare
 * @param how tank, brush, etch or prepare
 * @param surface what it works on, index into {@link LoadedPart#surfaces()}
 * @param currentA current to set (A); empty where the tool gives no figure
 * @param timeS how long (s); empty where the tool gives no figure
 * @param massG metal that lands (g); empty where the tool gives no figure
 * @param thickness thickness with its unit and band, such as "30 um (24 to 36)"; empty for none
 * @param more further figures, in order
 * @param cautions hazards of this step; always shown
 * @param warnings what to look at in this job
 * @param notes how it is done
 * @param run what runs it; empty for what has no figure or no time
 */
public record StepCard(
    String name,
    String metal,
    String how,
    int surface,
    OptionalDouble currentA,
    OptionalDouble timeS,
    OptionalDouble massG,
    String thickness,
    List<FigureRow> more,
    List<String> cautions,
    List<String> warnings,
    List<String> notes,
    Optional<RunStart> run) {
  /** Copies the lists. */
  public StepCard {
    more = List.copyOf(more);
    cautions = List.copyOf(cautions);
    warnings = List.copyOf(warnings);
    notes = List.copyOf(notes);
  }
}
