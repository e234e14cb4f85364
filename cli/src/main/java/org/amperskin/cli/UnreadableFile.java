package org.amperskin.cli;

import java.nio.file.Path;
import org.amperskin.io.common.PrintFileException;

/** A print file that is not what it claims, with its path before the message. */
final class UnreadableFile extends Exception {
  private static final long serialVersionUID = 1L;

  UnreadableFile(Path file, PrintFileException cause) {
    super(file + ": " + cause.getMessage(), cause);
  }
}
