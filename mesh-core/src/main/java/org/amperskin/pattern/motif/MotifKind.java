package org.amperskin.pattern.motif;

import static org.amperskin.pattern.motif.MotifParameter.DIAMETER;
import static org.amperskin.pattern.motif.MotifParameter.FONT;
import static org.amperskin.pattern.motif.MotifParameter.GAP;
import static org.amperskin.pattern.motif.MotifParameter.HEIGHT;
import static org.amperskin.pattern.motif.MotifParameter.LENGTH;
import static org.amperskin.pattern.motif.MotifParameter.LINE;
import static org.amperskin.pattern.motif.MotifParameter.PITCH;
import static org.amperskin.pattern.motif.MotifParameter.RADIUS;
import static org.amperskin.pattern.motif.MotifParameter.RINGS;
import static org.amperskin.pattern.motif.MotifParameter.SEED;
import static org.amperskin.pattern.motif.MotifParameter.SLOPE;
import static org.amperskin.pattern.motif.MotifParameter.TEXT;
import static org.amperskin.pattern.motif.MotifParameter.TILE;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/** The motifs by name, the values each takes, and what is taken when one is not given. */
public enum MotifKind {
  /** {@link Bands}. */
  BANDS("bands", "parallel bands", PITCH, LINE),
  /** {@link Chevrons}. */
  CHEVRONS("chevrons", "zigzag bands", PITCH, LINE, SLOPE, LENGTH),
  /** {@link Hexagons}. */
  HEXAGONS("hexagons", "honeycomb cells", PITCH, LINE),
  /** {@link Waves}. */
  WAVES("waves", "bands that swing in arcs", PITCH, LINE, LENGTH, HEIGHT),
  /** {@link Woven}. */
  WOVEN("woven", "bands over and under", PITCH, LINE, GAP),
  /** {@link Rosettes}. */
  ROSETTES("rosettes", "rings laced through each other", PITCH, LINE, RINGS, DIAMETER, RADIUS, GAP),
  /** {@link Dots}. */
  DOTS("dots", "scattered dots", PITCH, LINE, SEED, TILE),
  /** {@link Lettering}. */
  LETTERING("lettering", "a line of text", TEXT, FONT, HEIGHT);

  private static final double PITCH_MM = 4;
  private static final double ROSETTE_PITCH_MM = 20;
  private static final double LETTER_MM = 10;

  private final String word;
  private final String meaning;
  private final List<MotifParameter> parameters;

  MotifKind(String word, String meaning, MotifParameter... parameters) {
    this.word = word;
    this.meaning = meaning;
    this.parameters = List.of(parameters);
  }

  /** Its word in jobs and on the command line. */
  public String word() {
    return word;
  }

  /** What it is, in a few words. */
  public String meaning() {
    return meaning;
  }

  /** The values it takes. */
  public List<MotifParameter> parameters() {
    return parameters;
  }

  /** All words. */
  public static List<String> words() {
    return Arrays.stream(values()).map(MotifKind::word).toList();
  }

  /** The motif of a name. */
  public static Optional<MotifKind> find(String word) {
    return Arrays.stream(values()).filter(k -> k.word.equals(word)).findFirst();
  }

  /**
   * The motif with the values given; each other value is what usually looks well.
   *
   * @throws MotifFault if a value does not fit
   */
  public Motif of(MotifValues v) {
    v.onlyFor(this, parameters);
    double p = v.number(PITCH, this == ROSETTES ? ROSETTE_PITCH_MM : PITCH_MM);
    if (parameters.contains(PITCH)) {
      PITCH.check(p);
    }
    return switch (this) {
      case BANDS -> lined(v, p / 4, w -> new Bands(p, w));
      case CHEVRONS -> {
        double slope = v.number(SLOPE, 40);
        double length = v.number(LENGTH, 4 * p);
        yield lined(v, p / 4, w -> new Chevrons(p, w, slope, length));
      }
      case HEXAGONS -> lined(v, p / 6, w -> new Hexagons(p, w));
      case WAVES -> {
        double length = v.number(LENGTH, 6 * p);
        double height = v.number(HEIGHT, length / 6);
        yield lined(v, p / 4, w -> new Waves(p, w, length, height));
      }
      case WOVEN -> {
        double gap = v.number(GAP, p / 12);
        yield lined(v, p / 2, w -> new Woven(p, w, gap));
      }
      case ROSETTES -> rosettes(v, p);
      case DOTS -> {
        double tile = v.number(TILE, 16 * p);
        long seed = (long) v.number(SEED, 1);
        yield lined(v, p / 2, w -> new Dots(p, w, tile, seed));
      }
      case LETTERING ->
          new Lettering(
              v.word(TEXT, ""), v.word(FONT, Lettering.ANY_FONT), v.number(HEIGHT, LETTER_MM));
    };
  }

  private static Motif rosettes(MotifValues v, double p) {
    double count = v.number(RINGS, Rosettes.USUAL_RINGS);
    MotifFault.within(RINGS, count, Rosettes.FEWEST, Rosettes.MOST);
    double diameter = v.number(DIAMETER, 0.9 * p);
    double radius = v.number(RADIUS, diameter * Rosettes.usualRadius((int) count));
    double gap = v.number(GAP, p / 100);
    return lined(v, p / 25, w -> new Rosettes(p, w, (int) count, diameter, radius, gap));
  }

  /** With the line that was given, else with the usual one, made narrower until it fits. */
  private static LinedMotif lined(MotifValues v, double usualMm, DoubleFunction<LinedMotif> made) {
    if (v.has(LINE)) {
      return made.apply(v.number(LINE, usualMm));
    }
    MotifFault last = null;
    for (double mm = usualMm; mm > usualMm / 100; mm /= 2) {
      try {
        return made.apply(mm);
      } catch (MotifFault tooWide) {
        if (tooWide.parameter() != LINE) {
          throw tooWide;
        }
        last = tooWide;
      }
    }
    throw last;
  }
}
