package org.amperskin.viewer.part;

import java.util.OptionalDouble;

/**
 * How far a piece of work is.
 *
 * @param stage what is being done, such as "Reading visor.stl"
 * @param done share done, 0 to 1; empty if not known
 */
public record Progress(String stage, OptionalDouble done) {
  /** Checks the share. */
  public Progress {
    if (done.isPresent() && !(done.getAsDouble() >= 0 && done.getAsDouble() <= 1)) {
      throw new IllegalArgumentException("progress " + done.getAsDouble() + " is not 0..1");
    }
  }

  /** A stage whose share is known. */
  public static Progress of(String stage, double done) {
    return new Progress(stage, OptionalDouble.of(done));
  }

  /** A stage of unknown length. */
  public static Progress of(String stage) {
    return new Progress(stage, OptionalDouble.empty());
  }
}
