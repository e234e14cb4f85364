package org.amperskin.job;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.geom.Progress;
import org.amperskin.io.PrintFile;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.skin.Skin;
import org.amperskin.skin.SprayReach;

/**
 * A print file, read, diagnosed and with its skin.
 *
 * @param file where it was read from
 * @param unit unit of its coordinates: as told, else the file's own, else mm
 * @param unitAssumed whether nobody told that unit
 * @param print the file's content
 * @param diagnosis what it measures and what is wrong with it
 * @param skin the surface taken as wetted
 * @param spray what of it sprayed paint reaches, if that was looked at
 */
public record MeasuredPart(
    Path file,
    String unit,
    boolean unitAssumed,
    PrintFile print,
    MeshDiagnosis diagnosis,
    Skin skin,
    Optional<SprayReach> spray) {
  /** The unit taken when neither the file nor the user tells one. */
  public static final String USUAL_UNIT = "mm";

  /** Reads and measures a part. */
  public static MeasuredPart of(
      Job.PartSpec part, MeshDiagnosis.Search search, boolean spray, Progress progress)
      throws IOException, PrintFileException {
    OrdinaryFile.require(part.file(), "a print file");
    PrintFile print = PrintFile.read(part.file(), unitMm(part), part.scale(), progress);
    MeshDiagnosis diagnosis = MeshDiagnosis.of(print.mesh(), search, progress);
    Skin skin = Skin.of(diagnosis, progress);
    return new MeasuredPart(
        part.file(),
        part.unit().or(print::fileUnit).orElse(USUAL_UNIT),
        part.unit().isEmpty() && print.fileUnit().isEmpty(),
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

  private static OptionalDouble unitMm(Job.PartSpec part) {
    return part.unit().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(Directions.millimetresPer(part.unit().get()));
  }
}
