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

  /** The same fault, told to lie within a part of the file. */
  public PrintFileException in(String part) {
    String message = where.isEmpty() ? getMessage() : getMessage().substring(where.length() + 2);
    PrintFileException told =
        new PrintFileException(where.isEmpty() ? part : part + ", " + where, message);
    return told;
  }

  private static String text(String format, Object... values) {
    return String.format(java.util.Locale.ROOT, format, values);
  }

  /** "byte N", "line N" or empty, after the part of the file if it has parts. */
  public String where() {
    return where;
  }
}
