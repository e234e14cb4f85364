package org.amperskin.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.geom.Vec3;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.io.common.WholeFile;
import org.amperskin.job.Directions;
import org.amperskin.job.Job;
import org.amperskin.job.JobFile;
import org.amperskin.job.JobRun;
import org.amperskin.job.MeasuredPart;
import org.amperskin.job.OpenFit;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.ArtworkFileException;
import org.amperskin.pattern.ArtworkSvg;
import org.amperskin.pattern.motif.MotifDesign;
import org.amperskin.pattern.motif.MotifKind;
import org.amperskin.pattern.motif.MotifParameter;
import org.amperskin.pattern.motif.MotifValues;
import org.amperskin.region.FlatPlacement;
import org.amperskin.region.MaskKind;
import org.amperskin.report.PatternReport;
import org.amperskin.units.Dimension;
import org.amperskin.units.NearestWord;
import org.amperskin.yaml.Place;
import org.amperskin.yaml.YamlFault;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin pattern}. */
@Command(
    name = "pattern",
    sortOptions = false,
    description = {
      "Draws a pattern by rule, and solves its line for an open share.",
      "",
      "Motifs: bands, chevrons, hexagons, waves, woven, rosettes, dots, lettering.",
      "Open share = exposed / (exposed + masked) of a region on the part: unreached,",
      "stopped-off and unpainted skin counts in neither, skin beside an opaque sheet",
      "as masked. Without a part: clear / whole area of the flat sheet.",
      ""
    },
    footer = {
      "",
      "Example:",
      "  amperskin pattern woven --pitch 8mm --line 5mm --size 120x80mm",
      "  amperskin pattern chevrons --pitch 6mm --open 35%% \\",
      "      --job test-meshes/demo/visor.yaml --film chevrons",
      "  amperskin pattern dots --pitch 4mm --seed 7 --lines clear --open 35%% \\",
      "      --on test-meshes/demo/shoulder-plate.obj --toward +y",
      "",
      "Exit: 0 drawn, 1 that share cannot be had, 2 usage or a fault in a job,",
      "      3 a file that cannot be read."
    })
final class PatternCommand extends Verb {
  private static final Place HERE = new Place("command line", 1, 1);
  private static final String FILM = "film";

  @Parameters(paramLabel = "MOTIF", description = "One of those above.")
  private String word;

  @Option(names = "--pitch", paramLabel = "LENGTH", description = "From one line to the next.")
  private String pitch;

  @Option(names = "--line", paramLabel = "LENGTH", description = "Width of lines, size of dots.")
  private String line;

  @Option(names = "--angle", paramLabel = "ANGLE", description = "Turn of the pattern, as 30deg.")
  private String angle;

  @Option(
      names = "--lines",
      paramLabel = "WHICH",
      description = "Lines opaque (usual) or clear on an opaque sheet.")
  private String lines = "opaque";

  @Option(names = "--slope", paramLabel = "ANGLE", description = "Rise of chevrons; 40deg.")
  private String slope;

  @Option(names = "--length", paramLabel = "LENGTH", description = "Peak to peak, crest to crest.")
  private String length;

  @Option(
      names = "--height",
      paramLabel = "LENGTH",
      description = "Of waves, trough to crest; of capital letters.")
  private String height;

  @Option(names = "--gap", paramLabel = "LENGTH", description = "Where a band passes under.")
  private String gap;

  @Option(names = "--rings", paramLabel = "N", description = "Rings of a rosette, 3 to 12.")
  private String rings;

  @Option(names = "--diameter", paramLabel = "LENGTH", description = "Of a rosette.")
  private String diameter;

  @Option(names = "--radius", paramLabel = "LENGTH", description = "Of a rosette's ring.")
  private String radius;

  @Option(names = "--seed", paramLabel = "N", description = "Chooses a field of dots.")
  private String seed;

  @Option(names = "--tile", paramLabel = "LENGTH", description = "After which dots repeat.")
  private String tile;

  @Option(names = "--text", paramLabel = "TEXT", description = "What the lettering says.")
  private String text;

  @Option(
      names = "--font",
      paramLabel = "FONT",
      description = "An installed font, or a .ttf or .otf file.")
  private String font;

  @Option(
      names = "--size",
      paramLabel = "WxH",
      description = {
        "Of the sheet, as 120x80mm; else 100x100mm, or on",
        "a part what covers all that the film faces."
      })
  private String size;

  @Option(
      names = "--open",
      paramLabel = "PERCENT",
      description = "Solve the line so that this share is open.")
  private String open;

  @Option(names = "--job", paramLabel = "JOB", description = "On the part of a job (.yaml),")
  private Path job;

  @Option(names = "--film", paramLabel = "NAME", description = "in place of this film of it,")
  private String film;

  @Option(
      names = "--region",
      paramLabel = "NAME",
      description = "counted in this region; else in the film's own.")
  private String region;

  @Option(names = "--on", paramLabel = "FILE", description = "Or on a print file,")
  private Path on;

  @Option(
      names = "--toward",
      paramLabel = "DIRECTION",
      description = "lit toward there: -z, +y or \"0.2 0 -1\".")
  private String toward;

  @Option(names = "--up", paramLabel = "DIRECTION", description = "Upright of the artwork there.")
  private String up;

  @Option(names = "--unit", paramLabel = "UNIT", description = "Unit of the print file's numbers.")
  private String unit;

  @Option(names = "--out", paramLabel = "SVG", description = "Write the drawing, true size (.svg).")
  private Path out;

  @Option(names = "--json", description = "Answer as JSON.")
  private boolean json;

  @Override
  public Integer call()
      throws UsageFault, IOException, YamlFault, ArtworkFileException, UnreadableFile {
    checkOut();
    MotifDesign design = design();
    double[] sheet = size();
    OptionalDouble wanted = wanted(design);
    Optional<Job> onPart = onPart(spec(design, sheet, wanted));
    OpenFit fit;
    try {
      fit = onPart.isPresent() ? onPart(onPart.get()) : flat(design, sheet, wanted);
    } catch (IllegalArgumentException refused) {
      complain(refused.getMessage());
      return ExitCode.REFUSAL;
    }
    Artwork artwork = fit.artwork();
    if (out != null) {
      // written before anything is shown: no answer without the file
      String svg = ArtworkSvg.text(artwork, word, fit.design().told());
      WholeFile.write(out, o -> o.write(svg.getBytes(StandardCharsets.UTF_8)));
    }
    PatternReport report =
        new PatternReport(
            fit,
            artwork,
            onPart.map(j -> region == null ? filmName() : region),
            onPart.map(j -> j.part().file().toString()),
            Optional.ofNullable(out).map(Path::toString));
    print(json ? report.json() : report.text());
    return ExitCode.ANSWER;
  }

  private void checkOut() throws UsageFault {
    if (out == null) {
      return;
    }
    if (!out.toString().toLowerCase(Locale.ROOT).endsWith(".svg")) {
      throw new UsageFault("--out " + out + ": a name ending in .svg fits");
    }
    Path folder = out.toAbsolutePath().getParent();
    if (!Files.isDirectory(folder)) {
      throw new UsageFault("--out " + out + ": there is no folder " + folder);
    }
  }

  private MotifDesign design() throws UsageFault {
    MotifKind kind =
        MotifKind.find(word)
            .orElseThrow(
                () ->
                    new UsageFault(
                        "motif '"
                            + word
                            + "' is not known"
                            + NearestWord.of(word, MotifKind.words())
                                .map(near -> ", did you mean '" + near + "'?")
                                .orElse("; there are " + String.join(", ", MotifKind.words()))));
    if (!List.of("opaque", "clear").contains(lines)) {
      throw new UsageFault("--lines " + lines + ": one of [opaque, clear] fits");
    }
    double turn = angle == null ? 0 : Math.toDegrees(quantity("--angle", angle, Dimension.ANGLE));
    try {
      return new MotifDesign(kind.of(new MotifValues(typed())), turn, lines.equals("clear"));
    } catch (IllegalArgumentException bad) {
      throw new UsageFault(bad.getMessage());
    }
  }

  private Map<MotifParameter, String> typed() {
    Map<MotifParameter, String> typed = new EnumMap<>(MotifParameter.class);
    String[] given = {
      pitch, line, slope, length, height, gap, rings, diameter, radius, seed, tile, text, font
    };
    for (int i = 0; i < given.length; i++) {
      if (given[i] != null) {
        typed.put(MotifParameter.values()[i], given[i]);
      }
    }
    return typed;
  }

  private double[] size() throws UsageFault {
    if (size == null) {
      return null;
    }
    try {
      return Directions.size(size);
    } catch (IllegalArgumentException bad) {
      throw new UsageFault("--" + bad.getMessage());
    }
  }

  private OptionalDouble wanted(MotifDesign design) throws UsageFault {
    if (open == null) {
      return OptionalDouble.empty();
    }
    if (line != null) {
      throw new UsageFault("--line and --open are both given: --open solves the line");
    }
    double share = positive("--open", open, Dimension.FRACTION);
    if (!(share < 1)) {
      throw new UsageFault("--open " + open + ": above 0 %, below 100 % fits");
    }
    try {
      design.lined();
    } catch (IllegalArgumentException noLine) {
      throw new UsageFault("--open: " + noLine.getMessage());
    }
    return OptionalDouble.of(share);
  }

  private Job.MotifSpec spec(MotifDesign design, double[] sheet, OptionalDouble wanted) {
    return new Job.MotifSpec(
        design,
        sheet == null ? OptionalDouble.empty() : OptionalDouble.of(sheet[0]),
        sheet == null ? OptionalDouble.empty() : OptionalDouble.of(sheet[1]),
        wanted,
        Optional.ofNullable(region),
        HERE);
  }

  private String filmName() {
    return job == null ? FILM : film;
  }

  /** The job to draw for, if there is a part. */
  private Optional<Job> onPart(Job.MotifSpec motif) throws UsageFault, IOException, YamlFault {
    if (job != null && on != null) {
      throw new UsageFault("--job " + job + " and --on " + on + ": one part fits");
    }
    for (String only : new String[] {toward, up, unit}) {
      if (only != null && on == null) {
        throw new UsageFault("'" + only + "' is told for a print file, and there is no --on");
      }
    }
    for (String only : new String[] {film, region}) {
      if (only != null && job == null) {
        throw new UsageFault("'" + only + "' is of a job, and there is no --job");
      }
    }
    if (on != null) {
      return Optional.of(quick(motif));
    }
    if (job == null) {
      return Optional.empty();
    }
    Job read = JobFile.read(job, library());
    if (film == null || !read.films().containsKey(film)) {
      throw new UsageFault(
          "--film " + film + ": which film of " + job + "? It has " + read.films().keySet());
    }
    Job.RegionSpec counted = read.regions().get(region == null ? film : region);
    if (counted == null || !counted.films().contains(film)) {
      throw new UsageFault("--region " + region + " of " + job + " has not the film " + film);
    }
    if (read.films().get(film).kind() == MaskKind.STOP_OFF && open != null) {
      throw new UsageFault("--open " + open + ": film " + film + " is a stop-off, not a resist");
    }
    return Optional.of(read.with(film, read.films().get(film).with(motif)));
  }

  private Job quick(Job.MotifSpec motif) throws UsageFault {
    if (toward == null) {
      throw new UsageFault("--on " + on + " wants --toward, where the light travels, as +y");
    }
    FlatPlacement flat;
    try {
      Vec3 light = Directions.direction(toward);
      Vec3 upright = up == null ? FlatPlacement.uprightFor(light) : Directions.direction(up);
      flat = FlatPlacement.toward(light).withUp(upright);
    } catch (IllegalArgumentException bad) {
      throw new UsageFault(bad.getMessage());
    }
    Job.FilmSpec made =
        new Job.FilmSpec(
            Optional.empty(),
            Optional.of(motif),
            Double.NaN,
            0.5,
            0,
            flat,
            List.of(),
            false,
            MaskKind.POSITIVE_RESIST,
            Job.StockSpec.USUAL,
            HERE);
    return new Job(
            on.getFileName().toString(),
            part(on, unit, null),
            Optional.empty(),
            Job.ContactSpec.NONE,
            Job.TankSpec.NONE,
            Job.SupplySpec.NONE,
            OptionalDouble.empty(),
            Optional.empty(),
            Job.LightSpec.USUAL,
            Map.of(),
            Map.of(),
            List.of(),
            List.of())
        .with(FILM, made);
  }

  private OpenFit onPart(Job made)
      throws IOException, YamlFault, ArtworkFileException, UnreadableFile {
    try (ProgressLine progress = progress()) {
      boolean spray = !made.paint().map(Job.PaintSpec::everywhere).orElse(false);
      MeasuredPart part = MeasuredPart.of(made.part(), MeshDiagnosis.Search.ALL, spray, progress);
      return JobRun.motif(made, filmName(), part, progress);
    } catch (PrintFileException bad) {
      throw new UnreadableFile(made.part().file(), bad);
    }
  }

  private static OpenFit flat(MotifDesign design, double[] sheet, OptionalDouble wanted) {
    double w = sheet == null ? 100 : sheet[0];
    double h = sheet == null ? 100 : sheet[1];
    return wanted.isPresent()
        ? OpenFit.solve(design, w, h, wanted.getAsDouble(), OpenFit.Share::of)
        : OpenFit.asGiven(design, w, h, OpenFit.Share::of);
  }
}
