package org.amperskin.pattern;

import java.nio.file.Path;

/** A file that is not the artwork it claims to be: where, what was expected, what was found. */
public final class ArtworkFileException extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient Path path;
  private final String place;
  private final String problem;

  /**
   * A fault in a file.
   *
   * @param path the file
   * @param place "line 12" or "byte 345", or the whole file as "whole file"
   * @param problem what was expected and what was found
   */
  public ArtworkFileException(Path path, String place, String problem) {
    super(path + ", " + place + ": " + problem);
    this.path = path;
    this.place = place;
    this.problem = problem;
  }

  /** Place and problem without the file's name. */
  String placeAndProblem() {
    return place + ": " + problem;
  }

  /** The file; null after serialisation. */
  public Path path() {
    return path;
  }

  /** Where in the file, in words. */
  public String place() {
    return place;
  }
}
