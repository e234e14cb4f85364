package org.amperskin.bench;

import java.nio.file.Path;
import java.sql.SQLException;

/** A bench log that cannot be used; the message gives the file, what was found and the remedy. */
public final class LogException extends Exception {
  private static final long serialVersionUID = 1L;

  /** A fault of a file. */
  public LogException(Path file, String what) {
    super("bench log " + file + ": " + what);
  }

  /** What the database said of a file. */
  LogException(Path file, SQLException cause) {
    super("bench log " + file + ": " + told(cause), cause);
  }

  private static String told(SQLException cause) {
    int code = cause.getErrorCode() & 0xff;
    String message = String.valueOf(cause.getMessage());
    return switch (code) {
      case 5, 6 ->
          "another program kept it busy for "
              + LogStore.BUSY_S
              + " s; nothing was written, try again ("
              + message
              + ")";
      case 8 -> "it is write-protected, nothing was written (" + message + ")";
      case 11 -> "it is damaged; take the last backup (" + message + ")";
      case 13 -> "the disk is full, nothing was written (" + message + ")";
      case 14 -> "it cannot be opened: is its folder there and writable? (" + message + ")";
      case 26 -> "this is no SQLite database (" + message + ")";
      default -> message;
    };
  }
}
