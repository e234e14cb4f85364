package org.amperskin.cli;

/** What the program's end tells the shell. */
final class ExitCode {
  static final int ANSWER = 0;
  static final int REFUSAL = 1;
  static final int USAGE = 2;
  static final int UNREADABLE = 3;
  static final int OWN_FAULT = 70;

  private ExitCode() {}
}
