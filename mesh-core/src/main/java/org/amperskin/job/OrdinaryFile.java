package org.amperskin.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Refuses folders where a file is wanted: reading one fails on every platform, on most without
 * telling its name.
 */
public final class OrdinaryFile {
  private OrdinaryFile() {}

  /**
   * Does nothing unless the path is a folder.
   *
   * @param path what was named
   * @param wanted what was expected, with its article
   * @throws IOException naming the path and what was expected
   */
  public static void require(Path path, String wanted) throws IOException {
    if (Files.isDirectory(path)) {
      throw new IOException(path + ": this is a folder, " + wanted + " was expected");
    }
  }
}
