package org.amperskin.cli;

/** What was asked on the command line makes no sense; the message says what does. */
final class UsageFault extends Exception {
  private static final long serialVersionUID = 1L;

  UsageFault(String message) {
    super(message);
  }
}
