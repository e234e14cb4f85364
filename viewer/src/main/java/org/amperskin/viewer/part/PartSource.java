package org.amperskin.viewer.part;

import java.nio.file.Path;
import java.util.function.Consumer;
import org.amperskin.job.JobText;

/** Where parts come from: reads a print file or a job and works it out. */
@FunctionalInterface
public interface PartSource {
  /**
   * Reads a file. Runs on a thread of its own, may take long, and should tell its progress several
   * times a second.
   *
   * <p>When the load is no longer wanted, {@code progress} throws {@link
   * java.util.concurrent.CancellationException} and the thread is interrupted; let both pass.
   *
   * @param file a print file or a job
   * @param progress told how far the work is
   * @return the part, ready to show
   * @throws ProblemException if the file cannot be shown, in words for people
   */
  LoadedPart load(Path file, Consumer<Progress> progress) throws ProblemException;

  /**
   * Reads a file and hands out what can be shown before all is worked out.
   *
   * @param file a print file or a job
   * @param progress told how far the work is
   * @param sooner given the part once, some time before the end, if its work takes long
   * @return the part, worked out
   * @throws ProblemException if the file cannot be shown, in words for people
   */
  default LoadedPart load(Path file, Consumer<Progress> progress, Consumer<LoadedPart> sooner)
      throws ProblemException {
    return load(file, progress);
  }

  /**
   * Works a job out anew from a changed text.
   *
   * @param text the job's text, not yet in its file
   * @throws ProblemException if it cannot be worked out so, in words for people
   */
  default LoadedPart load(JobText text, Consumer<Progress> progress) throws ProblemException {
    throw new ProblemException(
        "This file cannot be changed here.", text.file().toString(), "Change it in an editor.");
  }
}
