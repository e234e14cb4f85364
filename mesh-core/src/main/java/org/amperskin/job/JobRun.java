package org.amperskin.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.pattern.Artwork;
import org.amperskin.pattern.ArtworkFile;
import org.amperskin.pattern.ArtworkFileException;
import org.amperskin.plating.Overlap;
import org.amperskin.plating.PartInBath;
import org.amperskin.plating.Plan;
import org.amperskin.plating.Step;
import org.amperskin.plating.WorkKind;
import org.amperskin.plating.Workpiece;
import org.amperskin.region.ChosenFaces;
import org.amperskin.region.FilmShapes;
import org.amperskin.region.MaskFilm;
import org.amperskin.region.Region;
import org.amperskin.region.RegionKind;
import org.amperskin.region.RegionOverlap;
import org.amperskin.region.RegionRule;
import org.amperskin.skin.SprayReach;
import org.amperskin.yaml.Place;
import org.amperskin.yaml.YamlFault;

/**
 * Works a job out: the one place that knows the order of things.
 *
 * <p>Order: read and diagnose the print file, take its skin, read the drawings, cut each region,
 * hand each step its surface, plan.
 */
public final class JobRun {
  private final Job job;
  private final FilmShapes shapes;
  private final Progress progress;
  private final List<String> artworkNotes = new ArrayList<>();
  private final Map<String, MaskFilm> films = new LinkedHashMap<>();

  private JobRun(Job job, MeasuredPart part, Progress progress) {
    this.job = job;
    this.shapes = FilmShapes.on(part.skin());
    this.progress = progress;
  }

  /**
   * Works a job out.
   *
   * @throws IOException if a file cannot be read
   * @throws PrintFileException if the print file is not what it claims
   * @throws ArtworkFileException if a drawing is not what it claims
   * @throws YamlFault if the job asks for what the part does not have
   */
  public static Estimate of(Job job, Progress progress)
      throws IOException, PrintFileException, ArtworkFileException, YamlFault {
    boolean spray = !job.paint().map(Job.PaintSpec::everywhere).orElse(false);
    MeasuredPart part;
    exists(job.part().file(), job.part().place());
    try {
      part = MeasuredPart.of(job.part(), MeshDiagnosis.Search.ALL, spray, progress);
    } catch (IllegalArgumentException noSuchPart) {
      throw new YamlFault(
          job.part().place().orElse(new Place("command line", 1, 1)), noSuchPart.getMessage());
    }
    return of(job, part, progress);
  }

  /** Works a job out on a part that is measured already. */
  public static Estimate of(Job job, MeasuredPart part, Progress progress)
      throws IOException, ArtworkFileException, YamlFault {
    return new JobRun(job, part, progress).run(part);
  }

  private Estimate run(MeasuredPart part) throws IOException, ArtworkFileException, YamlFault {
    SprayReach paint = paint(part);
    films(paint);
    Map<String, Region> regions = new LinkedHashMap<>();
    regions.put(
        Job.WHOLE_SKIN,
        Region.of(RegionRule.wholeSkin(Job.WHOLE_SKIN), part.skin(), paint, Progress.SILENT));
    for (Map.Entry<String, Job.RegionSpec> region : job.regions().entrySet()) {
      regions.put(region.getKey(), region(region.getKey(), region.getValue(), paint));
    }
    List<String> unlit = new ArrayList<>();
    List<CheckedFilm> checked = checked(regions, unlit);
    Surfaces surfaces = new Surfaces(part);
    List<Step> done = new ArrayList<>();
    for (StepSpec spec : job.done()) {
      done.add(StepMaker.make(spec, job, surfaces.of(regions.get(spec.region()), spec), checked));
    }
    List<Step> steps = new ArrayList<>();
    for (StepSpec spec : job.steps()) {
      steps.add(StepMaker.make(spec, job, surfaces.of(regions.get(spec.region()), spec), checked));
    }
    Workpiece piece =
        new Workpiece(
            job.part().print(), job.resistUm(), comesPainted(), Optional.of(overlap(regions)));
    Plan plan = Plan.of(done, steps, piece);
    List<String> warnings = new ArrayList<>();
    part.sizeQuestion().ifPresent(warnings::add);
    warnings.addAll(unlit);
    part.skin().doubts().forEach(d -> warnings.add("area not certified: " + d));
    if (part.skin().assumedMm2() > 0) {
      warnings.add(
          String.format(
              java.util.Locale.ROOT,
              "%.6g mm2 of the skin close holes where faces are missing: repair the print file",
              part.skin().assumedMm2()));
    }
    if (part.skin().wettedAreaMm2().isEmpty()) {
      warnings.add(
          String.format(
              java.util.Locale.ROOT,
              "the steps take the surface as stored, %.6g mm2; its error is not known",
              part.skin().areaMm2()));
    }
    regions.values().forEach(r -> r.hint().ifPresent(warnings::add));
    double bare = regions.get(Job.WHOLE_SKIN).split().areaMm2(RegionKind.UNPAINTED);
    if (bare > 0) {
      warnings.add(
          String.format(
              java.util.Locale.ROOT,
              "%.6g mm2 are wet but out of a spray's reach: no paint, no metal; bring paint there"
                  + " and say so under paint ('reach: everywhere', or 'also'), or let it be",
              bare));
    }
    warnings.addAll(plan.warnings());
    warnings.addAll(SupplyCheck.warnings(job.supply(), plan));
    PartInBath inBath = PartInBath.of(surfaces.body(job), Surfaces.tank(job), plan.steps());
    warnings.addAll(inBath.warnings());
    return new Estimate(
        job,
        part,
        Collections.unmodifiableMap(regions),
        checked,
        List.copyOf(artworkNotes),
        plan,
        inBath,
        List.copyOf(warnings));
  }

  /** Whether the paint is told of and no step sprays it: it is on the part from the start. */
  private boolean comesPainted() {
    return job.paint().isPresent()
        && Stream.concat(job.done().stream(), job.steps().stream())
            .noneMatch(s -> s.doing() instanceof StepSpec.Work w && w.kind() == WorkKind.PAINT);
  }

  /** How the regions that steps work on lie over one another, worked out when asked. */
  private Overlap overlap(Map<String, Region> regions) {
    Map<String, Region> used = new LinkedHashMap<>();
    Stream.concat(job.done().stream(), job.steps().stream())
        .forEach(s -> used.put(s.region(), regions.get(s.region())));
    RegionOverlap lie = new RegionOverlap(used);
    Map<String, List<Overlap.Patch>> known = new HashMap<>();
    return name ->
        known.computeIfAbsent(
            name,
            n -> {
              progress.at("comparing regions", Double.NaN);
              return lie.of(n).entrySet().stream()
                  .map(e -> new Overlap.Patch(e.getKey(), e.getValue()))
                  .toList();
            });
  }

  /** Tells where the job names a file that is not there. */
  private static void exists(Path file, Optional<Place> place) throws IOException {
    if (place.isPresent() && Files.notExists(file)) {
      throw new IOException(place.get() + ": " + file + ": there is no such file");
    }
  }

  /**
   * Cuts one film's motif on the part, its line solved if the job wants a share open.
   *
   * @param name the film, which has a motif
   */
  public static OpenFit motif(Job job, String name, MeasuredPart part, Progress progress)
      throws IOException, ArtworkFileException, YamlFault {
    Job.FilmSpec film = job.films().get(name);
    Job.MotifSpec motif = film.motif().orElseThrow();
    JobRun run = new JobRun(job, part, progress);
    SprayReach paint = run.paint(part);
    MotifFilms motifs = new MotifFilms(job, run.shapes, paint, run.films, progress);
    for (String other : job.regions().get(motif.region().orElse(name)).films()) {
      Job.FilmSpec spec = job.films().get(other);
      if (other.equals(name)) {
        continue;
      }
      if (spec.motif().isEmpty()) {
        run.films.put(other, film(other, spec, run.drawing(spec)));
      } else if (spec.motif().get().open().isEmpty()) {
        motifs.add(other, film(other, spec, MotifFilms.blank()), spec.motif().get());
      }
    }
    MaskFilm blank = film(name, film, MotifFilms.blank());
    return motifs.fit(name, blank, motif);
  }

  private void films(SprayReach paint) throws IOException, ArtworkFileException, YamlFault {
    for (Map.Entry<String, Job.FilmSpec> film : job.films().entrySet()) {
      if (film.getValue().motif().isEmpty()) {
        Artwork drawing = drawing(film.getValue());
        films.put(film.getKey(), film(film.getKey(), film.getValue(), drawing));
      }
    }
    MotifFilms motifs = new MotifFilms(job, shapes, paint, films, progress);
    for (boolean solved : new boolean[] {false, true}) {
      for (Map.Entry<String, Job.FilmSpec> film : job.films().entrySet()) {
        Job.MotifSpec motif = film.getValue().motif().orElse(null);
        if (motif != null && motif.open().isPresent() == solved) {
          MaskFilm blank = film(film.getKey(), film.getValue(), MotifFilms.blank());
          artworkNotes.addAll(motifs.add(film.getKey(), blank, motif));
        }
      }
    }
  }

  private Artwork drawing(Job.FilmSpec spec) throws IOException, ArtworkFileException {
    Path file = spec.artwork().orElseThrow();
    progress.at("reading artwork", Double.NaN);
    ArtworkFile.Options options =
        ArtworkFile.Options.standard()
            .withThreshold(spec.threshold())
            .withSmoothMm(spec.smoothMm());
    if (!Double.isNaN(spec.dpi())) {
      options = options.withDpi(spec.dpi());
    }
    exists(file, Optional.of(spec.place()));
    OrdinaryFile.require(file, "an SVG, PNG or JPEG drawing");
    Artwork artwork = ArtworkFile.read(file, options);
    for (String note : artwork.notes()) {
      artworkNotes.add(file.getFileName() + ": " + note);
    }
    return artwork;
  }

  private static MaskFilm film(String name, Job.FilmSpec spec, Artwork artwork) {
    return new MaskFilm(
        name, artwork, spec.placement(), spec.kind(), spec.surroundClear(), spec.patch());
  }

  /** The films that light passes; those that light nothing become a warning. */
  private List<CheckedFilm> checked(Map<String, Region> regions, List<String> unlit) {
    List<CheckedFilm> checked = new ArrayList<>();
    for (Map.Entry<String, Job.FilmSpec> film : job.films().entrySet()) {
      progress.at("checking films", Double.NaN);
      Job.LightSpec light = job.light();
      Job.StockSpec stock = film.getValue().stock();
      List<String> assumed = new ArrayList<>(stock.assumed());
      assumed.addAll(light.assumed());
      try {
        CheckedFilm.of(
                regions.get(film.getKey()), light.light(), stock.film(), light.resist(), assumed)
            .ifPresent(checked::add);
      } catch (IllegalArgumentException lightsNothing) {
        unlit.add(lightsNothing.getMessage());
      }
    }
    return List.copyOf(checked);
  }

  private SprayReach paint(MeasuredPart part) throws YamlFault {
    SprayReach spray = part.spray().orElseGet(() -> SprayReach.everything(part.skin()));
    if (job.paint().map(p -> p.also().isEmpty() && p.not().isEmpty()).orElse(true)) {
      return spray;
    }
    Job.PaintSpec told = job.paint().get();
    try {
      boolean[] also = ChosenFaces.of(part.skin().mesh(), told.also());
      boolean[] not = ChosenFaces.of(part.skin().mesh(), told.not());
      return spray.changed(part.skin(), f -> also[f], f -> not[f]);
    } catch (IllegalArgumentException bad) {
      throw new YamlFault(told.place(), bad.getMessage());
    }
  }

  private Region region(String name, Job.RegionSpec spec, SprayReach paint) throws YamlFault {
    List<MaskFilm> used = spec.films().stream().map(films::get).toList();
    try {
      RegionRule rule = new RegionRule(name, used, spec.within(), spec.except());
      return Region.of(rule, shapes, paint, progress);
    } catch (IllegalArgumentException bad) {
      throw new YamlFault(spec.place(), bad.getMessage());
    }
  }
}
