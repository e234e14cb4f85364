package org.amperskin.viewer;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.amperskin.bench.UserFolder;
import org.amperskin.bench.UserRecipes;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.job.CheckedFilm;
import org.amperskin.job.Estimate;
import org.amperskin.job.FilmHandles;
import org.amperskin.job.Job;
import org.amperskin.job.JobFile;
import org.amperskin.job.JobRun;
import org.amperskin.job.JobText;
import org.amperskin.job.MeasuredPart;
import org.amperskin.job.RunKeeper;
import org.amperskin.mesh.MeshProblem;
import org.amperskin.pattern.ArtworkFileException;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.StepEstimate;
import org.amperskin.region.Region;
import org.amperskin.region.RegionKind;
import org.amperskin.region.SplitMesh;
import org.amperskin.viewer.part.FigureRow;
import org.amperskin.viewer.part.JobEdits;
import org.amperskin.viewer.part.LoadedPart;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.PartSource;
import org.amperskin.viewer.part.ProblemException;
import org.amperskin.viewer.part.Progress;
import org.amperskin.viewer.part.RegionEntry;
import org.amperskin.viewer.part.StepCard;
import org.amperskin.yaml.YamlFault;

/** Jobs worked out, and print files as they are. */
final class JobSource implements PartSource {
  private static final String WHOLE = "whole skin";

  private final PartSource printFiles = new PrintFileSource();

  /** The last job's part, so that moving a film does not read and measure it again. */
  private volatile Measured last;

  private record Measured(Job.PartSpec as, MeasuredPart part) {}

  /** Those of the program and the user's beside them, as on the command line. */
  private static RecipeLibrary recipes() throws IOException, YamlFault {
    return UserRecipes.library(userFolder());
  }

  private static UserFolder userFolder() {
    return UserFolder.of(System.getenv(), Path.of(System.getProperty("user.home")));
  }

  private static List<StepCard> cards(JobText text, Estimate e, List<String> regions) {
    List<StepCard> cards = new ArrayList<>();
    for (StepEstimate step : e.plan().steps()) {
      RunKeeper keeper =
          new RunKeeper(userFolder().runs(), text.file(), e.job().stepNames(), cards.size() + 1);
      cards.add(StepCards.of(step, regions.indexOf(region(step)), keeper));
    }
    return cards;
  }

  @Override
  public LoadedPart load(Path file, Consumer<Progress> progress) throws ProblemException {
    return load(file, progress, part -> {});
  }

  @Override
  public LoadedPart load(Path file, Consumer<Progress> progress, Consumer<LoadedPart> sooner)
      throws ProblemException {
    if (!JobFile.looksLikeJob(file)) {
      return printFiles.load(file, progress, sooner);
    }
    return told(
        file,
        () -> {
          progress.accept(Progress.of("Reading " + file.getFileName()));
          last = null; // the print file may have changed
          return worked(JobText.read(file), progress);
        });
  }

  @Override
  public LoadedPart load(JobText text, Consumer<Progress> progress) throws ProblemException {
    return told(text.file(), () -> worked(text, progress));
  }

  private LoadedPart worked(JobText text, Consumer<Progress> progress)
      throws IOException, YamlFault, PrintFileException, ArtworkFileException {
    Job job = text.job(recipes());
    org.amperskin.geom.Progress told =
        (what, done) -> progress.accept(PrintFileSource.told(what, done));
    Estimate estimate;
    Measured before = last;
    if (before != null && job.part().equals(before.as())) {
      estimate = JobRun.of(job, before.part(), told);
    } else {
      estimate = JobRun.of(job, told);
      last = new Measured(job.part(), estimate.part());
    }
    return part(text, estimate);
  }

  /** A job's work. */
  private interface Work {
    LoadedPart run() throws IOException, YamlFault, PrintFileException, ArtworkFileException;
  }

  private static LoadedPart told(Path file, Work work) throws ProblemException {
    try {
      return work.run();
    } catch (YamlFault e) {
      String where = e.place().toString();
      String what = e.getMessage().substring(where.length() + 2);
      throw new ProblemException(
          "The job has a fault: " + what, where, "Correct the line and open the job again.", e);
    } catch (PrintFileException e) {
      throw new ProblemException(
          "The print file of the job cannot be read: " + e.getMessage(),
          file.toString(),
          "Export it again as STL, OBJ, PLY or 3MF, or name another file in the job.",
          e);
    } catch (ArtworkFileException e) {
      throw new ProblemException(
          "A drawing of the job cannot be read: " + e.getMessage(),
          e.path() + ", " + e.place(),
          "Save the drawing again as plain SVG, PNG or RGB JPEG.",
          e);
    } catch (NoSuchFileException e) {
      throw new ProblemException(
          "There is no such file: " + e.getFile(),
          file.toString(),
          "Paths in a job are relative to the job's own folder.",
          e);
    } catch (IOException e) {
      throw new ProblemException(
          "The file cannot be read: " + e.getMessage(),
          file.toString(),
          "See whether the disk is there and you may read the file.",
          e);
    }
  }

  private static LoadedPart part(JobText text, Estimate e) {
    List<String> names = new ArrayList<>();
    for (StepEstimate step : e.plan().steps()) {
      String region = region(step);
      if (!region.equals(Job.WHOLE_SKIN)) {
        names.remove(region);
        names.add(0, region);
      }
    }
    // the pattern comes first: it is what the part itself is shown with
    e.job()
        .patternRegion()
        .ifPresent(
            pattern -> {
              names.remove(pattern);
              names.add(0, pattern);
            });
    for (String region : e.regions().keySet()) {
      if (!names.contains(region)) {
        names.add(region);
      }
    }
    List<PaintedSurface> surfaces = new ArrayList<>();
    for (String name : names) {
      String shown = name.equals(Job.WHOLE_SKIN) ? WHOLE : name;
      PaintedSurface surface = surface(shown, e.regions().get(name));
      List<PaintedSurface> fields =
          e.films().stream()
              .filter(f -> f.name().equals(name))
              .flatMap(f -> FieldSurface.of(f).stream())
              .toList();
      surfaces.add(surface.with(fields));
    }
    List<String> problems = new ArrayList<>(e.warnings());
    for (MeshProblem p : e.part().diagnosis().problems()) {
      problems.add(p.message());
    }
    for (CheckedFilm film : e.films()) {
      film.warnings().forEach(w -> problems.add("film " + film.name() + ": " + w));
    }
    problems.addAll(e.artworkNotes());
    List<FigureRow> rows =
        PrintFileSource.rows(e.part().print(), e.part().diagnosis(), e.part().unit());
    PrintFileSource.displaced(e.part().skin()).ifPresent(row -> rows.add(1, row));
    return new LoadedPart(
        text.file().getFileName().toString(),
        surfaces,
        rows,
        cards(text, e, names),
        problems,
        Optional.of(new JobEdits(text, FilmHandles.of(text, e))),
        Optional.of(e.plan().schedule()));
  }

  private static String region(StepEstimate step) {
    return step.region().isEmpty() ? Job.WHOLE_SKIN : step.region();
  }

  private static PaintedSurface surface(String name, Region region) {
    SplitMesh split = region.split();
    int[] index = new int[RegionKind.values().length];
    List<RegionEntry> entries = new ArrayList<>();
    for (RegionKind kind : RegionKind.values()) {
      if (split.areaMm2(kind) > 0) {
        index[kind.ordinal()] = entries.size();
        entries.add(RegionEntry.of(kind, split.areaMm2(kind), split.isOpen(kind)));
      }
    }
    int[] regionOfFace = new int[split.mesh().faceCount()];
    for (int f = 0; f < regionOfFace.length; f++) {
      regionOfFace[f] = index[split.kind(f).ordinal()];
    }
    return PaintedSurface.of(name, split.mesh(), regionOfFace, entries);
  }
}
