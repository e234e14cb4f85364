package org.amperskin.plating;

/** A recipe file that cannot be used; the message gives file, line, column and the remedy. */
public final class RecipeException extends Exception {
  private static final long serialVersionUID = 1L;

  private final int line;
  private final int column;

  /**
   * @param file name of the file
   * @param line line, from 1
   * @param column column, from 1
   * @param what what is wrong
   */
  public RecipeException(String file, int line, int column, String what) {
    super(file + ":" + line + ":" + column + ": " + what);
    this.line = line;
    this.column = column;
  }

  /** Line of the fault, from 1. */
  public int line() {
    return line;
  }

  /** Column of the fault, from 1. */
  public int column() {
    return column;
  }
}
