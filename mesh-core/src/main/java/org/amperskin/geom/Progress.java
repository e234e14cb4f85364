package org.amperskin.geom;

/** Is told how far long work has come. Calls may come from any thread. */
@FunctionalInterface
public interface Progress {
  /** Tells nobody. */
  Progress SILENT = (what, fraction) -> {};

  /**
   * Work went on.
   *
   * @param what what is being done, a few words
   * @param fraction done part of it, 0 to 1, or NaN if not known
   */
  void at(String what, double fraction);
}
