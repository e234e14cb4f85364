package org.amperskin.viewer;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.amperskin.geom.Box;
import org.amperskin.io.PrintFile;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.MeshProblem;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.region.RegionKind;
import org.amperskin.skin.Displacement;
import org.amperskin.skin.Skin;
import org.amperskin.skin.SprayReach;
import org.amperskin.viewer.part.FigureRow;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.PartSource;
import org.amperskin.viewer.part.ProblemException;
import org.amperskin.viewer.part.Progress;
import org.amperskin.viewer.part.RegionEntry;
import org.amperskin.viewer.part.StepCard;

/** Print files without a job: the surface as stored, its size and its faults. */
final class PrintFileSource implements PartSource {
  private static final double TRUE_SIZE = 1;

  /** Faces from which the part is shown as stored before its skin is worked out. */
  private static final int LARGE = 300_000;

  /** Faces up to which the skin is worked out; what it takes grows with them. */
  private static final int MOST = 6_000_000;

  @Override
  public LoadedPart load(Path file, Consumer<Progress> progress) throws ProblemException {
    return load(file, progress, part -> {});
  }

  @Override
  public LoadedPart load(Path file, Consumer<Progress> progress, Consumer<LoadedPart> sooner)
      throws ProblemException {
    String name = file.getFileName().toString();
    try {
      PrintFile print =
          PrintFile.read(
              file, TRUE_SIZE, (what, done) -> progress.accept(told("Reading " + name, done)));
      if (print.mesh().faceCount() == 0) {
        throw new ProblemException(
            "The file holds 0 triangles.", file.toString(), "Export the part again as a mesh.");
      }
      boolean full = print.mesh().faceCount() <= MOST;
      if (print.mesh().faceCount() > LARGE) {
        sooner.accept(asStored(name, print));
      }
      MeshDiagnosis found =
          MeshDiagnosis.of(
              print.mesh(),
              full ? MeshDiagnosis.Search.ALL : MeshDiagnosis.Search.NO_OVERLAPS,
              (what, done) -> progress.accept(told("Measuring " + name, done)));
      List<String> problems = new ArrayList<>();
      for (MeshProblem p : found.problems()) {
        problems.add(p.message());
      }
      problems.addAll(print.notes());
      List<FigureRow> rows = rows(print, found, print.fileUnit().orElse("mm, assumed"));
      if (full) {
        Skin skin =
            Skin.of(
                found,
                (what, done) -> progress.accept(told("Following the liquid on " + name, done)));
        SprayReach spray =
            SprayReach.of(skin, (what, done) -> progress.accept(told("Spraying " + name, done)));
        skin.parts().forEach(p -> problems.add(p.message()));
        skin.wettedAreaMm2()
            .ifPresent(a -> rows.add(1, new FigureRow("Wetted", number("%.4f", a / 1e4), "dm²")));
        rows.add(2, new FigureRow("Painted", number("%.4f", spray.areaMm2() / 1e4), "dm²"));
        displaced(skin).ifPresent(row -> rows.add(3, row));
        PaintedSurface painted = SkinSurface.of(found.mesh(), skin, spray);
        if (found.problems().isEmpty()) {
          return new LoadedPart(name, List.of(painted), rows, List.of(), problems);
        }
        List<PaintedSurface> both = List.of(painted, FaultSurface.of(found));
        return new LoadedPart(name, both, rows, List.of(faults(found)), problems);
      }
      problems.add(
          number("more than %,d faces: the skin was not looked for; measure the file", MOST));
      return new LoadedPart(
          name, List.of(whole(found.mesh(), found.areaMm2())), rows, List.of(), problems);
    } catch (PrintFileException e) {
      throw new ProblemException(
          e.getMessage() + ".",
          file + (e.where().isEmpty() ? "" : ", " + e.where()),
          "Export it again as STL, OBJ, PLY or 3MF, or open another file.",
          e);
    } catch (NoSuchFileException e) {
      throw new ProblemException(
          "There is no such file.", file.toString(), "Look for it with Open…", e);
    } catch (IOException e) {
      throw new ProblemException(
          "The file cannot be read: " + e.getMessage() + ".",
          file.toString(),
          "See whether the disk is there and you may read the file.",
          e);
    }
  }

  /** What is known once the file is read. */
  private static LoadedPart asStored(String name, PrintFile print) {
    double area = 0;
    for (int f = 0; f < print.mesh().faceCount(); f++) {
      area += print.mesh().faceAreaMm2(f);
    }
    List<FigureRow> rows =
        List.of(
            new FigureRow("Surface as stored", number("%.4f", area / 1e4), "dm²"),
            new FigureRow("Triangles", number("%,d", print.mesh().faceCount()), ""));
    return new LoadedPart(name, List.of(whole(print.mesh(), area)), rows, List.of(), print.notes());
  }

  private static PaintedSurface whole(SurfaceMesh mesh, double areaMm2) {
    RegionEntry whole = RegionEntry.of(RegionKind.EXPOSED, areaMm2, true);
    return PaintedSurface.of("whole surface", mesh, new int[mesh.faceCount()], List.of(whole));
  }

  /** A card that shows where the faults are. */
  private static StepCard faults(MeshDiagnosis found) {
    List<FigureRow> counts = new ArrayList<>();
    List<String> places = new ArrayList<>();
    for (MeshProblem p : found.problems()) {
      counts.add(new FigureRow(p.kind().label(), number("%,d", p.count()), ""));
      String where =
          p.where() == null
              ? ""
              : String.format(
                  Locale.ROOT,
                  " At %.4g, %.4g, %.4g mm.",
                  p.where().x(),
                  p.where().y(),
                  p.where().z());
      places.add(p.message() + "." + where);
    }
    return new StepCard(
        "faults of the file",
        "none",
        "where they are",
        1,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        "",
        counts,
        List.of(),
        places,
        List.of(),
        Optional.empty());
  }

  static Progress told(String stage, double done) {
    return Double.isNaN(done) ? Progress.of(stage) : Progress.of(stage, Math.min(1, done));
  }

  static List<FigureRow> rows(PrintFile print, MeshDiagnosis found, String unit) {
    Box box = found.box();
    List<FigureRow> rows = new ArrayList<>();
    rows.add(new FigureRow("Surface as stored", number("%.4f", found.areaMm2() / 1e4), "dm²"));
    found
        .volumeMm3()
        .ifPresent(v -> rows.add(new FigureRow("Volume", number("%.3f", v / 1e3), "cm³")));
    rows.add(new FigureRow("Width, x", number("%.2f", box.maxX() - box.minX()), "mm"));
    rows.add(new FigureRow("Depth, y", number("%.2f", box.maxY() - box.minY()), "mm"));
    rows.add(new FigureRow("Height, z", number("%.2f", box.maxZ() - box.minZ()), "mm"));
    rows.add(new FigureRow("Triangles", number("%,d", found.mesh().faceCount()), ""));
    rows.add(new FigureRow("Bodies", Integer.toString(found.bodies().size()), ""));
    rows.add(new FigureRow("Closed", found.closed() ? "yes" : "no", ""));
    rows.add(new FigureRow("Format", print.format().label(), ""));
    rows.add(new FigureRow("Unit of the file", unit, ""));
    return rows;
  }

  /** What the part pushes aside, with its error if there is one. */
  static Optional<FigureRow> displaced(Skin skin) {
    Displacement d = skin.displacement();
    if (d.volumeMm3().isEmpty()) {
      return Optional.empty();
    }
    String error = d.errorMm3() > 0 ? number(" ± %.3f", d.errorMm3() / 1e3) : "";
    String volume = number("%.3f", d.volumeMm3().getAsDouble() / 1e3);
    return Optional.of(new FigureRow("Liquid displaced", volume + error, "cm³"));
  }

  private static String number(String format, Object value) {
    return String.format(Locale.ROOT, format, value);
  }
}
