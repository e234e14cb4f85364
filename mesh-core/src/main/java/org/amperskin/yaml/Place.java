package org.amperskin.yaml;

/**
 * Where something stands in a text file.
 *
 * @param file the file's name
 * @param line line, from 1
 * @param column column, from 1
 */
public record Place(String file, int line, int column) {
  @Override
  public String toString() {
    return file + ":" + line + ":" + column;
  }
}
