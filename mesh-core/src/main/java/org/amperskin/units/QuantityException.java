package org.amperskin.units;

/** A quantity a person typed that cannot be read; the message names the text and what would fit. */
public final class QuantityException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  /**
   * @param message what was typed, why it does not do, and what would
   */
  public QuantityException(String message) {
    super(message);
  }
}
