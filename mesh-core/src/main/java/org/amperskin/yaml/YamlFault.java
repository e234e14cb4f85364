package org.amperskin.yaml;

/** A file of ours that cannot be used; the message gives file, line, column and the remedy. */
public final class YamlFault extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient Place place;

  /** A fault at a place. */
  public YamlFault(Place place, String what) {
    super(place + ": " + what);
    this.place = place;
  }

  /** Where the fault is. */
  public Place place() {
    return place;
  }
}
