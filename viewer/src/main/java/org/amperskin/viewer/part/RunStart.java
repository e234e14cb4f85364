package org.amperskin.viewer.part;

import org.amperskin.job.RunKeeper;
import org.amperskin.plating.StepRun;

/**
 * A step that can be run.
 *
 * @param fresh it at its start
 * @param keeper keeps its count on the disk
 */
public record RunStart(StepRun fresh, RunKeeper keeper) {}
