package org.amperskin.region;

import java.util.List;

/**
 * What makes a region: films and stop-offs on the skin, and where it may lie.
 *
 * <p>Definition: a piece is outside the region's bounds, and counts as stopped off, unless it
 * satisfies every selector of {@code within} and none of {@code except}. Within them, stop-offs
 * cover first; light through any of the films decides the rest.
 *
 * @param name what the job calls it
 * @param films films and stop-offs; resist films all of one kind
 * @param within selectors that must all hold
 * @param except selectors of which none may hold
 */
public record RegionRule(
    String name, List<MaskFilm> films, List<Selector> within, List<Selector> except) {
  private static final int MOST_BITS = 30;

  /** Copies the lists and checks that the resist is of one kind. */
  public RegionRule {
    films = List.copyOf(films);
    within = List.copyOf(within);
    except = List.copyOf(except);
    if (2 * films.size() + within.size() + except.size() > MOST_BITS) {
      throw new IllegalArgumentException(
          "region "
              + name
              + ": "
              + films.size()
              + " films and "
              + (within.size() + except.size())
              + " selectors; at most "
              + MOST_BITS
              + ", films counted twice");
    }
    if (films.stream().map(MaskFilm::kind).filter(k -> k != MaskKind.STOP_OFF).distinct().count()
        > 1) {
      throw new IllegalArgumentException(
          "region " + name + ": films for positive and for negative resist cannot be combined");
    }
  }

  /** The whole skin, everything open. */
  public static RegionRule wholeSkin(String name) {
    return new RegionRule(name, List.of(), List.of(), List.of());
  }
}
