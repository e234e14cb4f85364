package org.amperskin.plating;

/**
 * The anode of a tank bath.
 *
 * @param kind material and bag
 * @param soluble whether it dissolves and feeds the bath
 * @param mark how far it can be trusted
 * @param source where it comes from
 */
public record Anode(String kind, boolean soluble, Mark mark, String source) {
  public Anode {
    if (kind.isBlank() || source.isBlank()) {
      throw new IllegalArgumentException("anode needs kind and source: '" + kind + "'");
    }
  }
}
