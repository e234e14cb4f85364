package org.amperskin.bench;

import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * An acid as it stands in the bottle: strength by weight, and the density that goes with it.
 *
 * <p>Definition: density at 20 C by linear interpolation in the tables of Perry's Chemical
 * Engineers' Handbook, densities of aqueous inorganic solutions (from memory, to 0.5 %). Not
 * guaranteed: what a label does not say; weigh where it matters.
 *
 * @param acid sulfuric or hydrochloric acid
 * @param share mass of pure acid in a unit of mass (1 is 100 %)
 */
public record AcidStrength(Chemical acid, double share) {
  /** Strong laboratory acid. */
  public static final double SULFURIC_96 = 0.96;

  /** Strong laboratory acid. */
  public static final double HYDROCHLORIC_37 = 0.37;

  private static final PolynomialSplineFunction SULFURIC =
      new LinearInterpolator()
          .interpolate(
              new double[] {0, .1, .2, .3, .37, .4, .5, .6, .7, .8, .9, .94, .96, .98},
              new double[] {
                .9982, 1.0661, 1.1394, 1.2185, 1.2769, 1.3028, 1.3951, 1.4983, 1.6105, 1.7272,
                1.8144, 1.8312, 1.8355, 1.8361
              });
  private static final PolynomialSplineFunction HYDROCHLORIC =
      new LinearInterpolator()
          .interpolate(
              new double[] {0, .1, .2, .3, .36, .38},
              new double[] {.9982, 1.0474, 1.0980, 1.1493, 1.1789, 1.1885});

  public AcidStrength {
    double[] knots = table(acid).getKnots();
    double strongest = knots[knots.length - 1];
    if (!(share >= 0.01 && share <= strongest)) {
      throw new IllegalArgumentException(
          acid.label()
              + " of "
              + Plain.percent(share)
              + " is not from 1 to "
              + Plain.percent(strongest)
              + " by weight");
    }
  }

  private static PolynomialSplineFunction table(Chemical acid) {
    return switch (acid) {
      case SULFURIC_ACID -> SULFURIC;
      case HYDROCHLORIC_ACID -> HYDROCHLORIC;
      default -> throw new IllegalArgumentException(acid.label() + " is kept dry, not in solution");
    };
  }

  /** Density (g/mL). */
  public double gPerMl() {
    return table(acid).value(share);
  }

  /** Volume that holds a mass of pure acid (mL). */
  public double millilitres(double pureG) {
    return pureG / share / gPerMl();
  }

  /** As on a bottle, such as {@code sulfuric acid 96 %}. */
  @Override
  public String toString() {
    return acid.label() + " " + Plain.percent(share);
  }
}
