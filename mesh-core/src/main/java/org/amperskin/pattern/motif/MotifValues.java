package org.amperskin.pattern.motif;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What was typed for a motif, as typed: {@code pitch} is {@code 4 mm}.
 *
 * <p>Guaranteed: {@link MotifKind#of} takes every value or refuses it with a {@link MotifFault}.
 */
public final class MotifValues {
  private final Map<MotifParameter, String> typed;

  /** Copies what was typed. */
  public MotifValues(Map<MotifParameter, String> typed) {
    this.typed = new EnumMap<>(MotifParameter.class);
    this.typed.putAll(typed);
  }

  /** True if the value was given. */
  public boolean has(MotifParameter parameter) {
    return typed.containsKey(parameter);
  }

  double number(MotifParameter parameter, double usual) {
    return has(parameter) ? parameter.number(typed.get(parameter)) : usual;
  }

  String word(MotifParameter parameter, String usual) {
    return typed.getOrDefault(parameter, usual);
  }

  void onlyFor(MotifKind kind, List<MotifParameter> known) {
    for (MotifParameter given : typed.keySet()) {
      if (!known.contains(given)) {
        throw new MotifFault(
            given,
            "'"
                + given.word()
                + "' is not for "
                + kind.word()
                + ", which take "
                + String.join(", ", known.stream().map(MotifParameter::word).toList()));
      }
    }
  }
}
