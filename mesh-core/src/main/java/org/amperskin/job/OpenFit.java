package org.amperskin.job;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.motif.LinedMotif;
import org.amperskin.pattern.motif.MotifDesign;
import org.amperskin.region.Region;
import org.amperskin.region.RegionKind;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * A motif's line, and the share that is open with it.
 *
 * <p>Definition: on a part, open share = exposed / (exposed + masked) area of a region, as the
 * region counts them: unreached, stopped off and unpainted skin is in neither; what lies beside an
 * opaque sheet is masked. On a flat sheet, clear / whole area.
 *
 * <p>Guaranteed: every try cuts the whole region anew, so the share told is that of the line told,
 * with the error of the cut. A share that no line from {@value #FINEST_MM} mm (and no gap finer)
 * gives is refused with the range that can be had.
 *
 * <p>Method: the share runs steadily with the line, so a bracketing root finder applies: Brent,
 * "Algorithms for Minimization without Derivatives", 1973, chapter 4, as in commons-math3. Its
 * first guess comes from the motif's closed form. Cost: two cuts for the bracket and a few more.
 *
 * @param design the motif with that line
 * @param widthMm width of the sheet (mm)
 * @param heightMm height of the sheet (mm)
 * @param wanted share that was asked for (0 to 1), empty if the line was given
 * @param share what came of it
 * @param tries how often the sheet was drawn and cut
 */
public record OpenFit(
    MotifDesign design,
    double widthMm,
    double heightMm,
    OptionalDouble wanted,
    Share share,
    int tries) {
  /** Finest line and finest gap that are tried (mm). */
  public static final double FINEST_MM = 0.01;

  /** A share this close is taken (0.0001 points). */
  private static final double CLOSE = 1e-6;

  private static final int MOST_TRIES = 60;

  /**
   * Areas under a film.
   *
   * @param openMm2 exposed, or clear (mm2)
   * @param closedMm2 masked, or opaque (mm2)
   * @param errorMm2 largest error of the open area (mm2)
   */
  public record Share(double openMm2, double closedMm2, double errorMm2) {
    /** Of a region, without the part's own error, which the region tells. */
    public static Share of(Region region) {
      return new Share(
          region.split().areaMm2(RegionKind.EXPOSED),
          region.split().areaMm2(RegionKind.MASKED),
          region.errorMm2());
    }

    /** Of a flat sheet. */
    public static Share of(Artwork sheet) {
      double opaque = sheet.opaqueAreaMm2();
      return new Share(
          sheet.widthMm() * sheet.heightMm() - opaque,
          opaque,
          sheet.flatteningMm() * sheet.edgeLengthMm());
    }

    /** Open over both, 0 to 1. */
    public double open() {
      return openMm2 / (openMm2 + closedMm2);
    }

    /** What the error of the area makes of the share (0 to 1). */
    public double error() {
      return Math.min(1, errorMm2 / (openMm2 + closedMm2));
    }
  }

  /** The artwork on a sheet of this size. */
  public Artwork artwork() {
    return design.sheet(widthMm, heightMm);
  }

  /**
   * Takes a design as it is.
   *
   * @param cut tells the share that an artwork leaves open
   */
  public static OpenFit asGiven(
      MotifDesign design, double widthMm, double heightMm, Function<Artwork, Share> cut) {
    Share share = checked(cut.apply(design.sheet(widthMm, heightMm)));
    return new OpenFit(design, widthMm, heightMm, OptionalDouble.empty(), share, 1);
  }

  /**
   * Finds the line.
   *
   * @param start the motif; its line is only a beginning
   * @param wanted share to be open, between 0 and 1
   * @param cut tells the share that an artwork leaves open
   * @throws IllegalArgumentException if no line gives that share, naming the range that can be had;
   *     if the motif has no line; if the film reaches nothing
   */
  public static OpenFit solve(
      MotifDesign start,
      double widthMm,
      double heightMm,
      double wanted,
      Function<Artwork, Share> cut) {
    if (!(wanted > 0 && wanted < 1)) {
      throw new IllegalArgumentException(
          "open " + MotifDesign.number(100 * wanted) + " % does not fit: above 0 %, below 100 %");
    }
    Tries tries = new Tries(start, widthMm, heightMm, wanted, cut);
    double widest = start.lined().widestLineMm();
    double thin = Math.min(FINEST_MM, widest / 100);
    double wide = widest - thin;
    double atThin = tries.value(thin);
    double atWide = tries.value(wide);
    if (atThin * atWide > 0) {
      throw new IllegalArgumentException(
          "open %s %% cannot be had with %s: it runs from %s %% (line %s mm) to %s %% (line %s mm)"
              .formatted(
                  MotifDesign.number(100 * wanted),
                  start.motif().kind().word() + (start.clearLines() ? ", clear lines" : ""),
                  points(atThin + wanted),
                  MotifDesign.number(thin),
                  points(atWide + wanted),
                  MotifDesign.number(wide)));
    }
    if (atThin != 0 && atWide != 0) {
      double guess = guess(start.lined(), thin, wide, atThin / (atThin - atWide));
      new BrentSolver(1e-12, 1e-7 * widest).solve(MOST_TRIES, tries, thin, wide, guess);
    }
    return tries.best();
  }

  private static String points(double share) {
    return String.format(Locale.ROOT, "%.2f", 100 * share);
  }

  /** The line at which the motif's flat cover has run this part of its way. */
  private static double guess(LinedMotif motif, double thin, double wide, double part) {
    double low = thin;
    double high = wide;
    for (int i = 0; i < 30; i++) {
      double middle = (low + high) / 2;
      double from = cover(motif, thin);
      double way = (cover(motif, middle) - from) / (cover(motif, wide) - from);
      if (way < part) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private static double cover(LinedMotif motif, double lineMm) {
    return motif.withLine(lineMm).coverage().orElse(lineMm);
  }

  private static Share checked(Share share) {
    if (!(share.openMm2() + share.closedMm2() > 0)) {
      throw new IllegalArgumentException(
          "the film reaches 0 mm2 of the region, so no share of it can be open");
    }
    return share;
  }

  /** The distance from the wanted share, with a memory of the best line so far. */
  private static final class Tries implements UnivariateFunction {
    private final MotifDesign start;
    private final double widthMm;
    private final double heightMm;
    private final double wanted;
    private final Function<Artwork, Share> cut;
    private int count;
    private MotifDesign bestDesign;
    private Share bestShare;

    Tries(
        MotifDesign start,
        double widthMm,
        double heightMm,
        double wanted,
        Function<Artwork, Share> cut) {
      this.start = start;
      this.widthMm = widthMm;
      this.heightMm = heightMm;
      this.wanted = wanted;
      this.cut = cut;
    }

    @Override
    public double value(double lineMm) {
      MotifDesign design = start.withLine(lineMm);
      Share share = checked(cut.apply(design.sheet(widthMm, heightMm)));
      count++;
      double off = share.open() - wanted;
      if (bestShare == null || Math.abs(off) < Math.abs(bestShare.open() - wanted)) {
        bestDesign = design;
        bestShare = share;
      }
      return Math.abs(off) < CLOSE ? 0 : off;
    }

    OpenFit best() {
      return new OpenFit(
          bestDesign, widthMm, heightMm, OptionalDouble.of(wanted), bestShare, count);
    }
  }
}
