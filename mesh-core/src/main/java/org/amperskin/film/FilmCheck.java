package org.amperskin.film;

import java.util.Optional;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.LineWidths;
import org.amperskin.pattern.Sheets;
import org.amperskin.region.FaceField;
import org.amperskin.region.FilmForm;
import org.amperskin.region.LaidFilm;
import org.amperskin.region.Region;

/**
 * Whether a film as it lies will print and develop: gap, blur, light, stretch, and what becomes of
 * its lines and spaces.
 *
 * <p>Definition: at a place of the skin, an edge may move to each side by {@link
 * FilmStock#edgeShiftMm} of the gap there; both it and the width are taken on the skin, square to
 * the edge. A line or space not wider than twice its edges' shift vanishes; one that is wider by no
 * more than {@link Light#diffractionMm} is at risk. Figures by area are of skin that is turned to
 * the film, not wholly in shadow, and under the sheet.
 *
 * <p>Guaranteed: exact for flat faces and a film of the told form; the same figures on any machine.
 * Not guaranteed: how well the film is pressed on; light that scatters; constrictions shorter than
 * the spacing of {@link LineWidths}. Where skin is partly in shadow, a place counts as lit.
 *
 * <p>Cost: linear in pieces and in samples of the artwork's edges.
 */
public final class FilmCheck {
  private static final double MARGIN_MM = 25;

  private final Region region;
  private final LaidFilm laid;
  private final Light light;
  private final FilmStock stock;
  private final Resist resist;
  private final Spread gap;
  private final Spread blur;
  private final Spread dose;
  private final Spread stretch;
  private final double litMm2;
  private final double shadowMm2;
  private final Fates lines;
  private final Fates spaces;
  private final FaceField fates;

  private FilmCheck(Region region, LaidFilm laid, Light light, FilmStock stock, Resist resist) {
    this.region = region;
    this.laid = laid;
    this.light = light;
    this.stock = stock;
    this.resist = resist;
    double scale = laid.film().placement().scale();
    Artwork tiled =
        Sheets.repeated(
            laid.film().artwork(),
            laid.film().placement().columns(),
            laid.film().placement().rows());
    double halfWidth = tiled.widthMm() / 2;
    double halfHeight = tiled.heightMm() / 2;
    PieceFinder finder = new PieceFinder(laid, halfWidth * 1.0001, halfHeight * 1.0001);
    Spread.Sum gaps = new Spread.Sum();
    Spread.Sum doses = new Spread.Sum();
    Spread.Sum stretches = new Spread.Sum();
    double shadow = 0;
    double[] s = new double[2];
    for (int f = 0; f < laid.pieceCount(); f++) {
      if (!finder.meets(f)) {
        continue;
      }
      double unreached = laid.unreachedShare(laid.parent(f));
      double area = UnderSheet.gaps(laid, f, halfWidth, halfHeight, 1 - unreached, gaps);
      shadow += unreached * area;
      if (area > 0 && !finder.dark(f)) {
        laid.stretch(f, s);
        doses.add(laid.dose(f), (1 - unreached) * area);
        stretches.add(1 / s[1], (1 - unreached) * area);
        stretches.reach(1 / s[0]);
      }
    }
    shadowMm2 = shadow;
    litMm2 = gaps.area();
    if (!(litMm2 > 0)) {
      throw new IllegalArgumentException(
          "film "
              + laid.film().name()
              + " lights "
              + litMm2
              + " mm2 under its sheet of "
              + 2 * halfWidth * scale
              + " x "
              + 2 * halfHeight * scale
              + " mm: it does not face the part");
    }
    gap = gaps.spread();
    blur =
        new Spread(
            shift(gap.least()),
            shift(gap.low()),
            shift(gap.mean()),
            shift(gap.high()),
            shift(gap.most()));
    dose = doses.spread();
    stretch = stretches.spread();
    double margin = MARGIN_MM / scale;
    Artwork sheet =
        Sheets.surrounded(
            tiled,
            tiled.widthMm() + 2 * margin,
            tiled.heightMm() + 2 * margin,
            !laid.film().surroundClear());
    LineFates found = new LineFates(this, finder, LineWidths.of(sheet));
    lines = found.lines();
    spaces = found.spaces();
    fates = found.field();
  }

  private double shift(double gapMm) {
    return stock.edgeShiftMm(gapMm, light);
  }

  /**
   * Checks a film of a region.
   *
   * @param film number of the film in the region's rule
   * @throws IllegalArgumentException if the film lights nothing
   */
  public static FilmCheck of(Region region, int film, Light light, FilmStock stock, Resist resist) {
    return new FilmCheck(region, region.laid().get(film), light, stock, resist);
  }

  /** The region that the film makes, alone or with others. */
  public Region region() {
    return region;
  }

  /** The film as it lies. */
  public LaidFilm laid() {
    return laid;
  }

  /** The lamp. */
  public Light light() {
    return light;
  }

  /** What the film is made of. */
  public FilmStock stock() {
    return stock;
  }

  /** The resist. */
  public Resist resist() {
    return resist;
  }

  /** Distance between film and skin along the light (mm). */
  public Spread gapMm() {
    return gap;
  }

  /** How far an edge may move to each side, square to the light (mm); diffraction not in it. */
  public Spread blurMm() {
    return blur;
  }

  /** Light on the skin over light on the film, 0 to 1. */
  public Spread dose() {
    return dose;
  }

  /**
   * Skin millimetres for one millimetre of film: spread of the larger one of a place, from the
   * smallest in any direction on.
   */
  public Spread stretch() {
    return stretch;
  }

  /** Skin under the sheet that its light reaches (mm2). */
  public double litMm2() {
    return litMm2;
  }

  /** Skin under the sheet and turned to it that its light does not reach (mm2). */
  public double shadowMm2() {
    return shadowMm2;
  }

  /** What becomes of the opaque lines. */
  public Fates lines() {
    return lines;
  }

  /** What becomes of the clear spaces. */
  public Fates spaces() {
    return spaces;
  }

  /**
   * What becomes of each piece of the region's split mesh: 0 holds, 1 at risk, 2 vanishes, NaN
   * where the film decides nothing; ordinals of {@link Feature.Fate}.
   */
  public FaceField fates() {
    return fates;
  }

  /** What of the drawing a line or space belongs to; empty for patterns and pictures. */
  public Optional<String> drawn(Feature f) {
    Artwork tile = laid.film().artwork();
    return tile.drawnAt(
        withinTile(f.artworkX(), tile.widthMm(), laid.film().placement().columns()),
        withinTile(f.artworkY(), tile.heightMm(), laid.film().placement().rows()));
  }

  private static double withinTile(double at, double side, int count) {
    double from = at + count * side / 2;
    return from - Math.floor(from / side) * side - side / 2;
  }

  /** The exposure that this film allows; least light is what 95 % of the area have. */
  public ExposureWindow exposure() {
    boolean pane = laid.form() instanceof FilmForm.Plane;
    return new ExposureWindow(stock, light, resist, Math.max(1e-6, dose.low()), dose.most(), pane);
  }

  /** Distance between film and skin of each piece of the laid film (mm). */
  public FaceField gapField() {
    return field("gap", "mm", laid::gapMm);
  }

  /** How far an edge may move to each side (mm). */
  public FaceField blurField() {
    return field("edge blur", "mm", f -> shift(laid.gapMm(f)));
  }

  /** Light on the skin over light on the film. */
  public FaceField doseField() {
    return field("light over square-on", "", laid::dose);
  }

  /** Skin millimetres for one of film, in the direction where that is most. */
  public FaceField stretchField() {
    double[] s = new double[2];
    return field(
        "skin over film",
        "",
        f -> {
          laid.stretch(f, s);
          return 1 / s[1];
        });
  }

  private FaceField field(String label, String unit, java.util.function.IntToDoubleFunction at) {
    SurfaceMesh mesh = laid.mesh();
    double[] values = new double[mesh.faceCount()];
    for (int f = 0; f < values.length; f++) {
      boolean lit = laid.faces(f) && laid.unreachedShare(laid.parent(f)) < 1 - 1e-9;
      values[f] = lit ? at.applyAsDouble(f) : Double.NaN;
    }
    return FaceField.of(mesh, label, unit, values);
  }
}
