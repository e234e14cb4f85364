package org.amperskin.viewer;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import org.amperskin.job.RunKeeper;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.picture.SampleParts;
import org.amperskin.plating.PlatedSurface;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.Schedule;
import org.amperskin.plating.StepRun;
import org.amperskin.plating.TankStep;
import org.amperskin.plating.Target;
import org.amperskin.region.RegionKind;
import org.amperskin.viewer.part.FigureRow;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.PartSource;
import org.amperskin.viewer.part.ProblemException;
import org.amperskin.viewer.part.Progress;
import org.amperskin.viewer.part.RegionEntry;
import org.amperskin.viewer.part.RunStart;
import org.amperskin.viewer.part.StepCard;

/**
 * Makes parts by name, for tests: {@code plate}, {@code dome}, {@code lattice} (a finer dome),
 * {@code million}, {@code broken}, {@code slow}. All invented; the figures of the steps are made up
 * and only have to look right.
 */
public final class SampleSource implements PartSource {
  public static final int COLUMNS = 60;
  public static final int ROWS = 40;

  /** Lets {@code slow} go on. */
  public final CountDownLatch gate = new CountDownLatch(1);

  @Override
  public LoadedPart load(Path file, Consumer<Progress> progress) throws ProblemException {
    String name = file.getFileName().toString();
    progress.accept(Progress.of("Reading " + name, 0.1));
    return switch (name) {
      case "plate" -> plate();
      case "dome" -> dome(260, 90);
      case "lattice" -> dome(400, 100);
      case "million" -> million(progress);
      case "slow" -> slow(progress);
      case "broken" ->
          throw new ProblemException(
              "The file ends in the middle of triangle 12 of 400.",
              "/home/maker/parts/shoulder-plate.stl, byte 684",
              "Copy it again from where it came, or export the part once more as STL.");
      default -> throw new ProblemException("There is no sample.", name, "Ask for another.");
    };
  }

  /** A flat plate, a third of it exposed in stripes. */
  public static LoadedPart plate() {
    SurfaceMesh mesh = SampleParts.plate(COLUMNS, ROWS);
    return part(
        "Test plate",
        mesh,
        SampleParts.stripes(COLUMNS, ROWS, 6, 2),
        List.of(
            RegionEntry.of(RegionKind.EXPOSED, COLUMNS * ROWS / 3.0, true),
            RegionEntry.of(RegionKind.MASKED, COLUMNS * ROWS * 2 / 3.0, false)),
        List.of(new FigureRow("Surface", "0.2400", "dm²")),
        List.of(),
        List.of());
  }

  /** A curved shell with four regions and three steps. */
  private static LoadedPart dome(int around, int high) {
    SurfaceMesh shell = Shells.visor(90, 44, 1.6, around, high);
    int[] regions = new int[shell.faceCount()];
    double[] areas = new double[4];
    for (int f = 0; f < regions.length; f++) {
      regions[f] = Shells.visorRegion(shell, f);
      areas[regions[f]] += shell.faceAreaMm2(f);
    }
    double whole = areas[0] + areas[1] + areas[2] + areas[3];
    return part(
        "Visor, diamond lattice",
        shell,
        regions,
        List.of(
            RegionEntry.of(RegionKind.EXPOSED, areas[0], true),
            RegionEntry.of(RegionKind.MASKED, areas[1], false),
            RegionEntry.of(RegionKind.STOPPED_OFF, areas[2], false),
            RegionEntry.of(RegionKind.UNREACHED, areas[3], false)),
        List.of(
            new FigureRow("Surface", String.format("%.4f", whole / 1e4), "dm²"),
            new FigureRow("Open to plating", String.format("%.4f", areas[0] / 1e4), "dm²"),
            new FigureRow("Closed", String.format("%.4f", (whole - areas[0]) / 1e4), "dm²"),
            new FigureRow("Error of the areas", "± 0.0012", "dm²"),
            new FigureRow("Volume", "41.27", "cm³"),
            new FigureRow("Width × depth × height", "180.0 × 92.4 × 88.0", "mm"),
            new FigureRow("Triangles", String.format("%,d", shell.faceCount()), "")),
        steps(),
        List.of(
            "2 edges are open near (41.20, -12.05, 33.90) mm; a slicer closes them, about"
                + " 0.0004 dm² is assumed there.",
            "The unit is not in the file; 1 mm is assumed."));
  }

  private static LoadedPart part(
      String title,
      SurfaceMesh mesh,
      int[] regionOfFace,
      List<RegionEntry> regions,
      List<FigureRow> rows,
      List<StepCard> steps,
      List<String> problems) {
    PaintedSurface masked = PaintedSurface.of("lattice", mesh, regionOfFace, regions);
    double whole = regions.stream().mapToDouble(RegionEntry::areaMm2).sum();
    PaintedSurface all =
        PaintedSurface.of(
            "whole skin",
            mesh,
            new int[mesh.faceCount()],
            List.of(RegionEntry.of(RegionKind.EXPOSED, whole, true)));
    Schedule schedule =
        new Schedule(
            List.of(
                new Schedule.Entry(1, "Bright acid copper", 0, 0, 10_800),
                new Schedule.Entry(2, "Palladium barrier", 10_800, 600, 0)),
            List.of());
    return new LoadedPart(
        title,
        List.of(masked, all),
        rows,
        steps,
        problems,
        Optional.empty(),
        Optional.of(schedule));
  }

  /** A folder of this very run, so that nothing is left over from another. */
  private static final RunKeeper KEEPER =
      new RunKeeper(
          Path.of(
              System.getProperty("java.io.tmpdir"),
              "amperskin-sample-" + ProcessHandle.current().pid()),
          Path.of("sample.yaml"),
          List.of("Bright acid copper"),
          1);

  private static List<StepCard> steps() {
    return List.of(
        new StepCard(
            "Bright acid copper",
            "copper",
            "tank",
            1,
            OptionalDouble.of(2.417),
            OptionalDouble.of(5443),
            OptionalDouble.of(4.322),
            "60 µm (52 to 71)",
            List.of(
                new FigureRow("Time, 8 in 10 cases", "4720–6290", "s"),
                new FigureRow("Open area", "1.2086", "dm²"),
                new FigureRow("Current density", "2.000", "A/dm²"),
                new FigureRow("Allowed", "1.0–5.0", "A/dm²"),
                new FigureRow("Voltage, estimate", "2.1", "V"),
                new FigureRow("Charge", "3.654", "A·h"),
                new FigureRow("Plating rate", "39.7", "µm/h"),
                new FigureRow("Anode area, least", "1.813", "dm²")),
            List.of(
                "Sulfuric acid burns skin and eyes: goggles, gloves, apron; acid into water.",
                "Copper solutions harm water life: collect rinses as waste."),
            List.of("Start at a quarter of the current for 3 min while the paint is covered."),
            List.of(),
            StepRun.of(
                    TankStep.of(
                            "Bright acid copper",
                            RecipeLibrary.standard().find("copper-acid-decorative"),
                            PlatedSurface.bare(12_085),
                            Target.um(60))
                        .build()
                        .estimate())
                .map(run -> new RunStart(run, KEEPER))),
        new StepCard(
            "Palladium barrier",
            "palladium",
            "brush",
            0,
            OptionalDouble.of(0.6),
            OptionalDouble.of(754),
            OptionalDouble.of(0.1278),
            "1.2 µm (1.0 to 1.5)",
            List.of(
                new FigureRow("Swab contact", "0.1200", "dm²"),
                new FigureRow("Open fraction", "0.412", ""),
                new FigureRow("Solution used", "0.081", "L")),
            List.of("Palladium salts can make you allergic: gloves, no bare skin contact."),
            List.of(),
            List.of(),
            Optional.empty()),
        new StepCard(
            "Dark trivalent chromium",
            "chromium",
            "brush",
            0,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            "",
            List.of(),
            List.of(
                "Vapour and mist: work under extraction.",
                "Hydrogen is set free: no flames, no sparks."),
            List.of(
                "No figure without a coupon: plate and weigh a coupon first, then enter its"
                    + " A·h/dm²."),
            List.of(),
            Optional.empty()));
  }

  private static LoadedPart million(Consumer<Progress> progress) {
    SurfaceMesh mesh = SampleParts.sphere(50, 1000, 501);
    progress.accept(Progress.of("Measuring", 0.6));
    int[] regions = new int[mesh.faceCount()];
    for (int f = 0; f < regions.length; f++) {
      regions[f] = f / 40_000 % 2;
    }
    return part(
        "A million faces",
        mesh,
        regions,
        List.of(
            RegionEntry.of(RegionKind.EXPOSED, 100, true),
            RegionEntry.of(RegionKind.MASKED, 100, false)),
        List.of(),
        List.of(),
        List.of());
  }

  private LoadedPart slow(Consumer<Progress> progress) {
    for (int i = 0; i < 1000; i++) {
      progress.accept(Progress.of("Reading slowly", i / 1000.0));
      try {
        if (gate.await(20, java.util.concurrent.TimeUnit.MILLISECONDS)) {
          return plate();
        }
      } catch (InterruptedException e) {
        throw new java.util.concurrent.CancellationException("interrupted");
      }
    }
    return plate();
  }
}
