package org.amperskin.job;

import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.amperskin.film.FilmStock;
import org.amperskin.film.Light;
import org.amperskin.film.Resist;
import org.amperskin.pattern.motif.MotifDesign;
import org.amperskin.plating.ContactWire;
import org.amperskin.plating.PrintMaterial;
import org.amperskin.plating.TankShape;
import org.amperskin.region.MaskKind;
import org.amperskin.region.Placement;
import org.amperskin.region.Selector;
import org.amperskin.skin.Skin;
import org.amperskin.units.Length;
import org.amperskin.units.NearestWord;
import org.amperskin.yaml.Place;

/**
 * What the user asks for: the part, its masks and the steps to take, as read and checked from a job
 * file or made up by a command.
 *
 * <p>Everything that can be checked without the print file is checked; nothing is computed.
 *
 * @param name short name, from the file
 * @param part the print file
 * @param paint the conductive paint, if there is one
 * @param contacts the contact wire
 * @param tank the tank
 * @param supply the power supply
 * @param resistUm thickness of the resist (um), if given
 * @param prices a file of prices, if one is named
 * @param light the lamp and what the resist needs
 * @param films films and stop-offs by name
 * @param regions regions by name; every film is a region of its own name too
 * @param done steps that were taken before, so that the order of the rest can be judged
 * @param steps in working order
 */
public record Job(
    String name,
    PartSpec part,
    Optional<PaintSpec> paint,
    ContactSpec contacts,
    TankSpec tank,
    SupplySpec supply,
    OptionalDouble resistUm,
    Optional<Path> prices,
    LightSpec light,
    Map<String, FilmSpec> films,
    Map<String, RegionSpec> regions,
    List<StepSpec> done,
    List<StepSpec> steps) {

  /**
   * The print file.
   *
   * @param file path
   * @param unit unit of its coordinates, empty if to be assumed
   * @param scale further factor on its coordinates
   * @param material what it is printed of, empty if not told
   * @param pick names of groups or numbers of bodies to take; empty for everything
   * @param open what to make of bodies with open edges
   * @param inside how its inside is printed
   * @param place where it stands in the job, if it stands in one
   */
  public record PartSpec(
      Path file,
      Optional<String> unit,
      double scale,
      Optional<String> material,
      List<String> pick,
      Skin.OpenBodies open,
      InsideSpec inside,
      Optional<Place> place) {
    /** Copies the list. */
    public PartSpec {
      pick = List.copyOf(pick);
    }

    /** A whole file with nothing told about it. */
    public static PartSpec of(Path file) {
      return of(file, Optional.empty(), 1);
    }

    /** A whole file whose unit and scale are told. */
    public static PartSpec of(Path file, Optional<String> unit, double scale) {
      return new PartSpec(
          file,
          unit,
          scale,
          Optional.empty(),
          List.of(),
          Skin.OpenBodies.CLOSED,
          InsideSpec.NONE,
          Optional.empty());
    }

    /**
     * The same with some parts picked and open bodies taken in a way.
     *
     * @param parts names of groups or numbers of bodies; empty for everything
     * @param bodies what to make of bodies with open edges
     */
    public PartSpec with(List<String> parts, Skin.OpenBodies bodies) {
      return new PartSpec(file, unit, scale, material, parts, bodies, inside, place);
    }

    /** What is known of the plastic it is printed of. */
    Optional<PrintMaterial> print() {
      return material.flatMap(PrintMaterial::find);
    }
  }

  /**
   * How the inside of a print is filled.
   *
   * @param infill share that is plastic (0 to 1)
   * @param wallMm thickness of the printed walls (mm)
   */
  public record InsideSpec(OptionalDouble infill, OptionalDouble wallMm) {
    /** Nothing told. */
    public static final InsideSpec NONE =
        new InsideSpec(OptionalDouble.empty(), OptionalDouble.empty());
  }

  /**
   * The conductive paint.
   *
   * @param sheetResistanceOhm sheet resistance (ohm/sq)
   * @param everywhere true if it is brought everywhere, not only where a spray reaches
   * @param also where it is brought besides
   * @param not where it is kept away
   * @param place where it stands in the job
   */
  public record PaintSpec(
      OptionalDouble sheetResistanceOhm,
      boolean everywhere,
      List<Selector> also,
      List<Selector> not,
      Place place) {}

  /**
   * The contact wire.
   *
   * @param wireM diameter (m)
   * @param lengthM bare length under the solution (m)
   * @param farthestMm distance (mm) from a contact to the farthest painted place
   */
  public record ContactSpec(
      OptionalDouble wireM, OptionalDouble lengthM, OptionalDouble farthestMm) {
    /** Nothing told. */
    public static final ContactSpec NONE =
        new ContactSpec(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    /** The wire under the solution, if it is told. */
    Optional<ContactWire> wire() {
      return wireM.isPresent()
          ? Optional.of(
              new ContactWire(new Length(wireM.getAsDouble()), new Length(lengthM.getAsDouble())))
          : Optional.empty();
    }
  }

  /**
   * The tank.
   *
   * @param volumeM3 volume of solution (m3)
   * @param spacingM clearance from part to anode (m)
   * @param inner its inner size
   * @param bathDensity density of the solution (kg/m3)
   */
  public record TankSpec(
      OptionalDouble volumeM3,
      OptionalDouble spacingM,
      Optional<TankShape.Inner> inner,
      OptionalDouble bathDensity) {
    /** Nothing told. */
    public static final TankSpec NONE =
        new TankSpec(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty());
  }

  /**
   * The power supply.
   *
   * @param currentA most it gives (A)
   * @param voltageV most it gives (V)
   * @param currentStepA smallest step of its current that can be set or read (A)
   * @param voltageStepV smallest step of its voltage (V)
   */
  public record SupplySpec(
      OptionalDouble currentA,
      OptionalDouble voltageV,
      OptionalDouble currentStepA,
      OptionalDouble voltageStepV) {
    /** Nothing told. */
    public static final SupplySpec NONE =
        new SupplySpec(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());
  }

  /**
   * The lamp and the resist that it exposes.
   *
   * @param light the lamp
   * @param resist the resist
   * @param assumed what was not told
   */
  public record LightSpec(Light light, Resist resist, List<String> assumed) {
    /** Nothing told. */
    public static final LightSpec USUAL =
        new LightSpec(
            Light.USUAL,
            Resist.USUAL,
            List.of(
                "lamp's half-angle 5 deg (rule of thumb)",
                "resist 8 um (rule of thumb)",
                "clearing dose 150 mJ/cm2 (from memory, 100 to 300)"));

    /** Copies the list. */
    public LightSpec {
      assumed = List.copyOf(assumed);
    }
  }

  /**
   * What a film is made of.
   *
   * @param film its layers
   * @param assumed what was not told
   */
  public record StockSpec(FilmStock film, List<String> assumed) {
    /** Nothing told. */
    public static final StockSpec USUAL =
        new StockSpec(FilmStock.USUAL, List.of("one layer", "black of density 2 (rule of thumb)"));

    /** Copies the list. */
    public StockSpec {
      assumed = List.copyOf(assumed);
    }
  }

  /**
   * Artwork and how it lies on the part.
   *
   * @param artwork path of the drawing, empty if a motif is drawn instead
   * @param motif the motif to draw, empty if there is a drawing
   * @param dpi dots an inch of a PNG, NaN to believe the file
   * @param threshold lightness below which a pixel or colour is opaque (0 to 1)
   * @param smoothMm width over which a picture's outlines are smoothed (mm), 0 for none
   * @param placement how it lies
   * @param patch the film covers only skin in all of these; empty for all
   * @param surroundClear whether light passes beside the film
   * @param kind what covering means
   * @param stock what it is made of
   * @param place where it stands in the job
   */
  public record FilmSpec(
      Optional<Path> artwork,
      Optional<MotifSpec> motif,
      double dpi,
      double threshold,
      double smoothMm,
      Placement placement,
      List<Selector> patch,
      boolean surroundClear,
      MaskKind kind,
      StockSpec stock,
      Place place) {
    /** The same with a motif in place of its artwork. */
    public FilmSpec with(MotifSpec newMotif) {
      return new FilmSpec(
          Optional.empty(),
          Optional.of(newMotif),
          dpi,
          threshold,
          smoothMm,
          placement,
          patch,
          surroundClear,
          kind,
          stock,
          place);
    }
  }

  /**
   * A motif to be drawn for a film.
   *
   * @param design the motif, its angle and which of it is opaque
   * @param widthMm width of the sheet (mm); empty to cover what the film faces
   * @param heightMm height of the sheet (mm); given if the width is
   * @param open share of the region that is to be open (0 to 1), which the line is solved for
   * @param region where that counts; empty for all that the film reaches
   * @param place where it stands in the job
   */
  public record MotifSpec(
      MotifDesign design,
      OptionalDouble widthMm,
      OptionalDouble heightMm,
      OptionalDouble open,
      Optional<String> region,
      Place place) {}

  /**
   * A region.
   *
   * @param films names of its films and stop-offs
   * @param within selectors that must all hold
   * @param except selectors of which none may hold
   * @param place where it stands in the job
   */
  public record RegionSpec(
      List<String> films, List<Selector> within, List<Selector> except, Place place) {}

  /** The same job with one film more or another in its place; it is a region of its name too. */
  public Job with(String filmName, FilmSpec film) {
    Map<String, FilmSpec> moreFilms = new LinkedHashMap<>(films);
    moreFilms.put(filmName, film);
    Map<String, RegionSpec> moreRegions = new LinkedHashMap<>(regions);
    moreRegions.putIfAbsent(
        filmName, new RegionSpec(List.of(filmName), List.of(), List.of(), film.place()));
    return with(
        Collections.unmodifiableMap(moreFilms),
        Collections.unmodifiableMap(moreRegions),
        done,
        steps);
  }

  /** The same job with other steps. */
  public Job with(List<StepSpec> otherSteps) {
    return with(done, otherSteps);
  }

  /**
   * Number of a step, from 1.
   *
   * @param told its name, or its number
   * @throws IllegalArgumentException if there is none, or if more than one is called so
   */
  public int numberOf(String told) {
    List<Integer> called =
        IntStream.rangeClosed(1, steps.size())
            .filter(n -> steps.get(n - 1).name().equals(told))
            .boxed()
            .toList();
    if (called.size() == 1) {
      return called.get(0);
    }
    if (called.size() > 1) {
      throw new IllegalArgumentException(
          called.size() + " steps are called '" + told + "': tell its number, one of " + called);
    }
    if (told.matches("[0-9]{1,4}")) {
      int number = Integer.parseInt(told);
      if (number >= 1 && number <= steps.size()) {
        return number;
      }
      throw new IllegalArgumentException(
          "step " + number + ": the job has " + steps.size() + " steps");
    }
    List<String> names = stepNames().stream().distinct().toList();
    throw new IllegalArgumentException(
        "step '"
            + told
            + "' is not in the job"
            + NearestWord.of(told, names)
                .map(near -> ", did you mean '" + near + "'?")
                .orElse("; it has " + String.join(", ", names)));
  }

  /** Names of its steps, in working order. */
  public List<String> stepNames() {
    return steps.stream().map(StepSpec::name).toList();
  }

  /** The same job with these steps taken and those to come. */
  Job with(List<StepSpec> taken, List<StepSpec> rest) {
    return with(films, regions, List.copyOf(taken), List.copyOf(rest));
  }

  /** The same part with this step alone, without films where the step works through none. */
  Job alone(StepSpec step) {
    RegionSpec region = regions.get(step.region());
    if (region != null && !region.films().isEmpty()) {
      return with(List.of(step)); // films may lean on one another
    }
    Map<String, RegionSpec> own = region == null ? Map.of() : Map.of(step.region(), region);
    return with(Map.of(), own, done, List.of(step));
  }

  private Job with(
      Map<String, FilmSpec> otherFilms,
      Map<String, RegionSpec> otherRegions,
      List<StepSpec> otherDone,
      List<StepSpec> otherSteps) {
    return new Job(
        name,
        part,
        paint,
        contacts,
        tank,
        supply,
        resistUm,
        prices,
        light,
        otherFilms,
        otherRegions,
        otherDone,
        otherSteps);
  }

  /**
   * The region that carries the pattern: that of the last plating or etching step through a film,
   * else the first film's; empty without films.
   */
  public Optional<String> patternRegion() {
    for (int i = steps.size() - 1; i >= 0; i--) {
      RegionSpec region = regions.get(steps.get(i).region());
      if (!(steps.get(i).doing() instanceof StepSpec.Work) && region != null) {
        for (String film : region.films()) {
          if (films.get(film).kind() != MaskKind.STOP_OFF) {
            return Optional.of(steps.get(i).region());
          }
        }
      }
    }
    return films.keySet().stream().findFirst();
  }

  /** The region that is the whole skin. */
  public static final String WHOLE_SKIN = "all";
}
