package org.amperskin.plating;

/**
 * A sentence with its mark and source.
 *
 * @param text the sentence
 * @param mark how far it can be trusted
 * @param source where it comes from
 */
public record Note(String text, Mark mark, String source) {
  public Note {
    if (text.isBlank() || source.isBlank()) {
      throw new IllegalArgumentException("note needs text and source: '" + text + "'");
    }
  }
}
