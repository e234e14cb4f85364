package org.amperskin.plating;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;

/**
 * A sum over steps, with the spread that what is not known gives it.
 *
 * <p>An unknown that several steps share moves all of them together; different ones are
 * independent. Bands from a Sobol sequence: the same question gives the same bytes. Guaranteed:
 * percentiles within about 1 % of the band's width. Not guaranteed: tails; each unknown is taken as
 * a triangle. Cost: 4096 evaluations of each term, when asked. Method: Joe and Kuo, ACM Trans.
 * Math. Softw. 29 (2003) 49, as in Commons Math.
 */
public final class Total {
  private static final int SAMPLES = 4096;

  private final String name;
  private final String unit;
  private final List<Term> terms;

  private record Term(Uncertain of, double times) {}

  private Total(String name, String unit, List<Term> terms) {
    this.name = name;
    this.unit = unit;
    this.terms = List.copyOf(terms);
  }

  /** The sum of results of steps, each times a factor. */
  static Total of(String name, String unit, double times, List<Uncertain> results) {
    return new Total(name, unit, results.stream().map(r -> new Term(r, times)).toList());
  }

  /** An amount that is known. */
  static Total known(String name, String unit, double amount) {
    return of(name, unit, 1, List.of(Uncertain.known("", name, unit, amount)));
  }

  /**
   * The sum of totals, each times a factor: amounts to money.
   *
   * @param parts totals with their factors
   */
  public static Total sum(String name, String unit, Map<Total, Double> parts) {
    List<Term> terms = new ArrayList<>();
    parts.forEach(
        (total, times) -> total.terms.forEach(t -> terms.add(new Term(t.of, times * t.times))));
    return new Total(name, unit, terms);
  }

  /** This and another of the same kind together. */
  Total plus(Total other) {
    List<Term> both = new ArrayList<>(terms);
    both.addAll(other.terms);
    return new Total(name, unit, both);
  }

  /** What it is. */
  public String name() {
    return name;
  }

  /** Its unit. */
  public String unit() {
    return unit;
  }

  private List<Unknown> unknowns() {
    Set<Unknown> all = new LinkedHashSet<>();
    terms.forEach(t -> all.addAll(t.of.unknowns()));
    return List.copyOf(all);
  }

  /** The sum by values of its unknowns, in their order. */
  private ToDoubleFunction<double[]> value(List<Unknown> unknowns) {
    int[][] places =
        terms.stream()
            .map(t -> t.of.unknowns().stream().mapToInt(unknowns::indexOf).toArray())
            .toArray(int[][]::new);
    return x -> {
      double sum = 0;
      for (int k = 0; k < places.length; k++) {
        double[] own = Arrays.stream(places[k]).mapToDouble(place -> x[place]).toArray();
        sum += terms.get(k).times * terms.get(k).of.at(own);
      }
      return sum;
    };
  }

  /** The sum with everything typical. */
  public double typical() {
    List<Unknown> unknowns = unknowns();
    return value(unknowns).applyAsDouble(Unknown.typicals(unknowns));
  }

  /**
   * From the tenth to the ninetieth percentile, holding the typical sum; empty if nothing is
   * unknown.
   */
  public Optional<Band> band() {
    List<Unknown> unknowns = unknowns();
    if (unknowns.isEmpty()) {
      return Optional.empty();
    }
    ToDoubleFunction<double[]> value = value(unknowns);
    SobolSequenceGenerator sobol = new SobolSequenceGenerator(unknowns.size());
    sobol.nextVector(); // its first point is the corner, where every unknown is at its low end
    double[] sums = new double[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      double[] x = sobol.nextVector();
      for (int k = 0; k < x.length; k++) {
        x[k] = unknowns.get(k).range().quantile(x[k]);
      }
      sums[i] = value.applyAsDouble(x);
    }
    Percentile percentile = new Percentile();
    percentile.setData(sums);
    return Optional.of(new Band(percentile.evaluate(10), percentile.evaluate(90)).with(typical()));
  }

  /** How far each unknown moves it, most first; named with the steps that it works through. */
  public List<Swing> swings() {
    List<Unknown> unknowns = unknowns();
    List<Unknown> named =
        unknowns.stream()
            .map(u -> new Unknown(u.name() + ", " + steps(u), u.range(), u.remedy()))
            .toList();
    return Unknown.swings(name, unit, value(unknowns), named).stream()
        .sorted(Comparator.comparingDouble(s -> -s.share()))
        .toList();
  }

  private String steps(Unknown u) {
    return terms.stream()
        .filter(t -> t.of.unknowns().contains(u))
        .map(t -> t.of.step())
        .distinct()
        .collect(Collectors.joining(", "));
  }
}
