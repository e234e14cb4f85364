package org.amperskin.job;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.geom.Progress;
import org.amperskin.io.PrintFile;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.skin.Skin;
import org.amperskin.skin.SprayReach;

/**
 * A print file, read, diagnosed and with its skin.
 *
 * @param file where it was read from
 * @param unit unit of its coordinates: as told, else the file's own, else mm
 * @param unitAssumed whether nobody told that unit
 * @param scale factor on its coordinates that was asked for
 * @param print the file's content
 * @param diagnosis what it measures and what is wrong with it
 * @param skin the surface taken as wetted
 * @param spray what of it sprayed paint reaches, if that was looked at
 */
public record MeasuredPart(
    Path file,
    String unit,
    boolean unitAssumed,
    double scale,
    PrintFile print,
    MeshDiagnosis diagnosis,
    Skin skin,
    Optional<SprayReach> spray) {
  private static final double SMALL_MM = 2;
  private static final double LARGE_MM = 1000;
  private static final double LIKELY_MM = 10;

  /** The unit taken when neither the file nor the user tells one. */
  public static final String USUAL_UNIT = "mm";

  /**
   * Reads and measures a part.
   *
   * @throws IllegalArgumentException if the file has no part of a name that was picked
   */
  public static MeasuredPart of(
      Job.PartSpec part, MeshDiagnosis.Search search, boolean spray, Progress progress)
      throws IOException, PrintFileException {
    OrdinaryFile.require(part.file(), "a print file");
    PrintFile print = PrintFile.read(part.file(), unitMm(part), part.scale(), progress);
    MeshDiagnosis diagnosis = MeshDiagnosis.of(print.mesh(), search, progress);
    if (!part.pick().isEmpty()) {
      SurfaceMesh picked = PartPick.of(print.mesh(), diagnosis, part.pick());
      diagnosis = MeshDiagnosis.of(picked, search, progress);
    }
    Skin skin = Skin.of(diagnosis, part.open(), progress);
    return new MeasuredPart(
        part.file(),
        part.unit().or(print::fileUnit).orElse(USUAL_UNIT),
        part.unit().isEmpty() && print.fileUnit().isEmpty(),
        part.scale(),
        print,
        diagnosis,
        skin,
        spray ? Optional.of(SprayReach.of(skin, progress)) : Optional.empty());
  }

  /** Reads and sums a part's file only. */
  public static PrintFile.Quick quick(Job.PartSpec part, Progress progress)
      throws IOException, PrintFileException {
    OrdinaryFile.require(part.file(), "a print file");
    return PrintFile.quick(part.file(), unitMm(part), part.scale(), progress);
  }

  /** A question about the unit, if the part would come out very small or very large. */
  public Optional<String> sizeQuestion() {
    double side = diagnosis.box().longestSide();
    if (!unitAssumed || side <= 0 || side >= SMALL_MM && side <= LARGE_MM) {
      return Optional.empty();
    }
    for (String likely : List.of("in", "m", "cm", "um")) {
      double other = side * Directions.millimetresPer(likely);
      if (other >= LIKELY_MM && other <= LARGE_MM / 2) {
        return Optional.of(
            String.format(
                Locale.ROOT,
                "the part would be %.4g mm long: are its numbers %s (%.4g mm)? Tell the unit",
                side,
                likely,
                other));
      }
    }
    return Optional.of(
        String.format(
            Locale.ROOT, "the part would be %.4g mm long: tell its unit if that is wrong", side));
  }

  private static OptionalDouble unitMm(Job.PartSpec part) {
    return part.unit().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(Directions.millimetresPer(part.unit().get()));
  }
}
