package org.amperskin.viewer;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.amperskin.film.FilmCheck;
import org.amperskin.job.CheckedFilm;
import org.amperskin.picture.FieldScale;
import org.amperskin.picture.Hatch;
import org.amperskin.picture.LineColour;
import org.amperskin.picture.RegionColour;
import org.amperskin.region.FaceField;
import org.amperskin.region.RegionKind;
import org.amperskin.region.SplitMesh;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.RegionEntry;

/** What is known of a film's print, as surfaces painted in bands of a scale. */
final class FieldSurface {
  /** What a surface can be painted by, regions first. */
  static final List<String> NAMES =
      List.of(
          ViewerModel.REGIONS,
          "vanishing lines",
          "gap",
          "edge blur",
          "light",
          "stretch",
          "open fraction");

  private static final int BANDS = 8;

  private FieldSurface() {}

  /** All that can be painted of a film, each named by what it shows. */
  static List<PaintedSurface> of(CheckedFilm film) {
    FilmCheck check = film.check();
    List<PaintedSurface> all = new ArrayList<>();
    all.add(fates(check));
    all.add(banded(NAMES.get(2), check.gapField()));
    all.add(banded(NAMES.get(3), check.blurField()));
    all.add(banded(NAMES.get(4), check.doseField()));
    all.add(banded(NAMES.get(5), check.stretchField()));
    film.open().ifPresent(map -> all.add(banded(NAMES.get(6), map.field())));
    return all;
  }

  /** A field in bands of equal height, the largest first in the legend. */
  static PaintedSurface banded(String name, FaceField field) {
    FieldScale scale = FieldScale.of(field);
    int[] palette = FieldScale.palette();
    int[] band = new int[field.mesh().faceCount()];
    double[] area = new double[BANDS + 1];
    for (int f = 0; f < band.length; f++) {
      int step = scale.index(field.value(f));
      band[f] = step == FieldScale.STEPS ? BANDS : BANDS - 1 - step * BANDS / FieldScale.STEPS;
      area[band[f]] += field.mesh().faceAreaMm2(f);
    }
    List<RegionEntry> entries = new ArrayList<>();
    int[] index = new int[BANDS + 1];
    for (int b = 0; b <= BANDS; b++) {
      if (area[b] > 0 || b == BANDS && entries.isEmpty()) {
        index[b] = entries.size();
        int step = (int) ((BANDS - 0.5 - b) * FieldScale.STEPS / BANDS);
        entries.add(
            b == BANDS
                ? new RegionEntry(
                    "not lit", area[b], "", RegionColour.GREY.argb(), RegionColour.GREY.hatch())
                : new RegionEntry(words(scale, b), area[b], "", palette[step], Hatch.SOLID));
      }
    }
    int[] region = Arrays.stream(band).map(b -> index[b]).toArray();
    return PaintedSurface.of(name, field.mesh(), region, entries);
  }

  private static String words(FieldScale scale, int band) {
    double height = (scale.high() - scale.low()) / BANDS;
    double from = scale.low() + (BANDS - 1 - band) * height;
    String unit = scale.unit().isEmpty() ? "" : " " + scale.unit();
    if (height == 0) {
      return figure(from) + unit;
    }
    return band == 0 && scale.clipped()
        ? figure(from) + unit + " or more"
        : figure(from) + " to " + figure(from + height) + unit;
  }

  private static String figure(double value) {
    BigDecimal digits = BigDecimal.valueOf(value).round(new MathContext(4));
    return digits.signum() == 0 ? "0" : digits.stripTrailingZeros().toPlainString();
  }

  /** Regions, with lines and spaces over them that vanish or may. */
  private static PaintedSurface fates(FilmCheck check) {
    SplitMesh split = check.region().split();
    int kinds = RegionKind.values().length;
    LineColour[] lines = LineColour.values();
    int[] code = new int[split.mesh().faceCount()];
    double[] area = new double[kinds + lines.length];
    for (int f = 0; f < code.length; f++) {
      double fate = check.fates().value(f);
      boolean open = split.isOpen(split.kind(f));
      code[f] =
          fate > 0 ? kinds + LineColour.of((int) fate, open).ordinal() : split.kind(f).ordinal();
      area[code[f]] += split.mesh().faceAreaMm2(f);
    }
    List<RegionEntry> entries = new ArrayList<>();
    int[] index = new int[area.length];
    for (int k = area.length - 1; k >= 0; k--) {
      if (area[k] > 0) {
        index[k] = entries.size();
        RegionKind kind = k < kinds ? RegionKind.values()[k] : null;
        LineColour line = k < kinds ? null : lines[k - kinds];
        entries.add(
            kind != null
                ? RegionEntry.of(kind, area[k], split.isOpen(kind))
                : new RegionEntry(line.label(), area[k], "", line.argb(), line.hatch()));
      }
    }
    int[] region = Arrays.stream(code).map(c -> index[c]).toArray();
    return PaintedSurface.of(NAMES.get(1), split.mesh(), region, entries);
  }
}
