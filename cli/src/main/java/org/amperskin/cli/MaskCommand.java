package org.amperskin.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.amperskin.film.FilmStock;
import org.amperskin.film.Light;
import org.amperskin.film.Resist;
import org.amperskin.io.PrintFileWriter;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.job.CheckedFilm;
import org.amperskin.job.MeasuredPart;
import org.amperskin.job.OrdinaryFile;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.ArtworkFile;
import org.amperskin.pattern.ArtworkFileException;
import org.amperskin.region.MaskFilm;
import org.amperskin.region.MaskKind;
import org.amperskin.region.Placement;
import org.amperskin.region.Region;
import org.amperskin.region.RegionRule;
import org.amperskin.region.Selector;
import org.amperskin.report.JsonReports;
import org.amperskin.report.MaskText;
import org.amperskin.units.Dimension;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin mask}. */
@Command(
    name = "mask",
    sortOptions = false,
    description = {"Exposed and masked area of one placement of artwork.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin mask test-meshes/demo/visor.stl \\",
      "      --artwork test-meshes/demo/visor-lattice.svg --toward +y",
      "  amperskin mask test-meshes/demo/visor.stl \\",
      "      --artwork test-meshes/demo/visor-lattice.svg --light 3deg \\",
      "      --lies wrapped --from \"0 -60 0 mm\" --crease 30deg",
      "",
      "Exit: 0 counted, 2 usage, 3 a file that cannot be read."
    })
final class MaskCommand extends Verb {
  @Parameters(paramLabel = "FILE", description = "Print file: STL, OBJ, PLY or 3MF.")
  private Path file;

  @Option(
      names = "--artwork",
      required = true,
      paramLabel = "DRAWING",
      description = "SVG, PNG or JPEG; darker than half is opaque.")
  private Path artwork;

  @Mixin private PlacementOptions place = new PlacementOptions();

  @Option(
      names = "--use",
      paramLabel = "USE",
      description = {
        "positive (usual) or negative: film over such resist;",
        "stop-off: tape or lacquer."
      })
  private String use = "positive";

  @Option(
      names = "--surround",
      paramLabel = "HOW",
      description = "Beside the film: opaque (usual) or clear.")
  private String surround = "opaque";

  @Option(names = "--dpi", paramLabel = "N", description = "Dots an inch of a PNG or JPEG.")
  private String dpi;

  @Option(
      names = "--threshold",
      paramLabel = "PERCENT",
      description = "Darker than this is opaque; 50%%.")
  private String threshold;

  @Option(
      names = "--smooth",
      paramLabel = "LENGTH",
      description = "Smooth a picture's outlines over this width, as 0.1mm.")
  private String smooth;

  @Mixin private LightOptions lamp = new LightOptions();

  @Option(names = "--unit", paramLabel = "UNIT", description = "Unit of the print file's numbers.")
  private String unit;

  @Option(names = "--scale", paramLabel = "PERCENT", description = "Scale the part, as 102.5%%.")
  private String scale;

  @Option(
      names = "--out",
      paramLabel = "OBJ",
      description = "Write the split mesh, a group for each region (.obj).")
  private Path out;

  @Option(names = "--json", description = "Answer as JSON.")
  private boolean json;

  @Override
  public Integer call() throws UsageFault, IOException, ArtworkFileException, UnreadableFile {
    checkOut();
    Placement placement = place.placement();
    List<Selector> patch = place.patch();
    MaskKind kind = kind();
    boolean clear = choice("--surround", surround, "clear", "opaque").equals("clear");
    OrdinaryFile.require(artwork, "an SVG, PNG or JPEG drawing");
    Light light = lamp.light();
    FilmStock stock = lamp.stock();
    Resist resist = lamp.resist();
    Artwork drawing = ArtworkFile.read(artwork, options());
    MeasuredPart part;
    Region region;
    Optional<CheckedFilm> checked = Optional.empty();
    List<String> unlit = new ArrayList<>();
    try (ProgressLine progress = progress()) {
      part = MeasuredPart.of(part(file, unit, scale), MeshDiagnosis.Search.ALL, true, progress);
      MaskFilm film = new MaskFilm("film", drawing, placement, kind, clear, patch);
      RegionRule rule = new RegionRule("mask", List.of(film), List.of(), List.of());
      region = region(rule, part, progress);
      try {
        checked = CheckedFilm.of(region, light, stock, resist, lamp.assumed());
      } catch (IllegalArgumentException lightsNothing) {
        unlit.add(lightsNothing.getMessage());
      }
    } catch (PrintFileException bad) {
      throw new UnreadableFile(file, bad);
    }
    List<String> notes =
        java.util.stream.Stream.of(
                drawing.notes().stream(),
                region.hint().stream(),
                unlit.stream(),
                part.skin().doubts().stream().map(d -> "area not certified: " + d),
                part.unitAssumed()
                    ? java.util.stream.Stream.of("unit mm assumed for " + file.getFileName())
                    : java.util.stream.Stream.<String>of())
            .flatMap(s -> s)
            .toList();
    if (out != null) {
      // written before anything is shown: no answer without the file
      PrintFileWriter.write(region.split().grouped(), out, "skin of " + file.getFileName());
    }
    print(json ? JsonReports.mask(region, checked, notes) : MaskText.of(region, checked, notes));
    return ExitCode.ANSWER;
  }

  /** Before the work rather than after it. */
  private void checkOut() throws UsageFault {
    if (out == null) {
      return;
    }
    if (!out.toString().toLowerCase(Locale.ROOT).endsWith(".obj")) {
      throw new UsageFault("--out " + out + ": a name ending in .obj fits, it keeps the regions");
    }
    Path folder = out.toAbsolutePath().getParent();
    if (!Files.isDirectory(folder)) {
      throw new UsageFault("--out " + out + ": there is no folder " + folder);
    }
  }

  private static Region region(RegionRule rule, MeasuredPart part, ProgressLine progress)
      throws UsageFault {
    try {
      return Region.of(rule, part.skin(), part.spray().orElseThrow(), progress);
    } catch (IllegalArgumentException cannotLie) {
      throw new UsageFault(cannotLie.getMessage());
    }
  }

  private MaskKind kind() throws UsageFault {
    return switch (choice("--use", use, "positive", "negative", "stop-off")) {
      case "positive" -> MaskKind.POSITIVE_RESIST;
      case "negative" -> MaskKind.NEGATIVE_RESIST;
      default -> MaskKind.STOP_OFF;
    };
  }

  private static String choice(String option, String text, String... known) throws UsageFault {
    String word = text.toLowerCase(Locale.ROOT);
    if (!List.of(known).contains(word)) {
      throw new UsageFault(option + " " + text + ": one of " + List.of(known) + " fits");
    }
    return word;
  }

  private ArtworkFile.Options options() throws UsageFault {
    try {
      ArtworkFile.Options options = ArtworkFile.Options.standard();
      if (dpi != null) {
        options = options.withDpi(Double.parseDouble(dpi));
      }
      if (threshold != null) {
        double share = quantity("--threshold", threshold, Dimension.FRACTION);
        if (!(share > 0 && share <= 1)) {
          throw new UsageFault("--threshold " + threshold + ": above 0 % to 100 % fits");
        }
        options = options.withThreshold(share);
      }
      if (smooth != null) {
        options = options.withSmoothMm(1000 * quantity("--smooth", smooth, Dimension.LENGTH));
      }
      return options;
    } catch (NumberFormatException bad) {
      throw new UsageFault("--dpi '" + dpi + "' is not a number of dots an inch, as 600");
    } catch (IllegalArgumentException bad) {
      throw new UsageFault(bad.getMessage());
    }
  }
}
