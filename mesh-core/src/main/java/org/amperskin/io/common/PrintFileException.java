package org.amperskin.io.common;

/** A file is not what it claims to be: says where, what was expected and what was found. */
public final class PrintFileException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String where;

  private PrintFileException(String where, String message) {
    super(where.isEmpty() ? message : where + ": " + message);
    this.where = where;
  }

  /** A fault of the file as a whole. */
  public static PrintFileException whole(String format, Object... values) {
    return new PrintFileException("", text(format, values));
  }

  /** A fault at a byte. */
  public static PrintFileException atByte(long offset, String format, Object... values) {
    return new PrintFileException("byte " + offset, text(format, values));
  }

  /** A fault in a line, counted from 1. */
  public static PrintFileException atLine(long line, String format, Object... values) {
    return new PrintFileException("line " + line, text(format, values));
  }

  private static String text(String format, Object... values) {
    return String.format(java.util.Locale.ROOT, format, values);
  }

  /** "byte N", "line N" or empty. */
  public String where() {
    return where;
  }
}
