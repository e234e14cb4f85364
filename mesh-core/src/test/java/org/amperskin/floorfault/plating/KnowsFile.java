package org.amperskin.floorfault.plating;

import java.nio.file.Path;

/** Physics that needs a file. */
public final class KnowsFile {
  private KnowsFile() {}

  /** Asks the disk. */
  public static boolean ask(Path path) {
    return path.isAbsolute();
  }
}
