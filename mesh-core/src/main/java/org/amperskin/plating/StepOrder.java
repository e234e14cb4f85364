package org.amperskin.plating;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.amperskin.units.Area;
import org.amperskin.units.Dimension;
import org.amperskin.units.Quantity;

/** Walks the steps in order and tells what one does to another. */
final class StepOrder {
  private static final double ZERO_C = Quantity.parse("0 C", Dimension.TEMPERATURE).si();

  private static final double SMALLEST_BARE_SHARE = 0.01;
  private static final double WHOLLY_OPEN = 1e-9;

  private final Optional<PrintMaterial> print;
  private final OptionalDouble resistUm;
  private final List<String> warnings = new ArrayList<>();
  private boolean paintBare;
  private boolean resistOn;
  private boolean chromicAcid;
  private int rinsesSinceChromium;
  private boolean driedSinceChromium;
  private boolean resistSeen;
  private double wholeMm2;
  private double coveredMm2;
  private boolean exposed;
  private boolean developed;
  private boolean activatedSinceDeveloped;
  private boolean oiled;
  private final boolean takenUp;
  private final MetalOrder metals;

  /**
   * Begins after steps that were taken before; what they did is known, and not warned of again.
   *
   * @param steps those to come
   */
  StepOrder(Workpiece piece, List<Step> done, List<Step> steps) {
    this.print = piece.print();
    this.resistUm = piece.resistUm();
    this.takenUp = !done.isEmpty();
    this.paintBare = piece.painted();
    List<Step> all = Stream.concat(done.stream(), steps.stream()).toList();
    this.metals = new MetalOrder(piece.overlap().orElseGet(() -> Overlap.all(all)), warnings);
    done.forEach(this::next);
    warnings.clear();
  }

  List<String> warnings() {
    return warnings;
  }

  /** Notes the step and works it out, with a caution more where the order owes one. */
  StepEstimate next(Step step) {
    wholeMm2 = Math.max(wholeMm2, step.surface().traversedAreaMm2());
    if (step instanceof WorkStep work) {
      return work.estimate(work(work));
    }
    StepEstimate estimate = step.estimate();
    if (step instanceof TankStep tank) {
      if (tank.paint().isPresent() && tank.already().isEmpty()) {
        paintBare = true;
      }
      warmth(tank);
      plate(tank, estimate);
    } else if (step instanceof BrushStep brush) {
      if (paintBare) {
        warnings.add(
            "step '"
                + brush.name()
                + "' brushes on bare conductive paint: not accepted practice"
                + " (MIL-STD-2197A(SH) 4.5.5 refuses it on sprayed metal, by analogy); plate copper"
                + " in a tank first");
      }
      plate(brush, estimate);
    } else if (step instanceof EtchStep etch) {
      etch(etch, estimate);
    }
    return estimate;
  }

  /** Notes work; gives the hazards that what came before adds to it. */
  private List<Hazard> work(WorkStep work) {
    switch (work.kind()) {
      case PAINT -> {
        paintBare = true;
        metals.paint(work);
      }
      case RESIST -> {
        resistOn = true;
        metals.resist(work);
        coveredMm2 += work.surface().traversedAreaMm2();
        resistSeen = true;
        exposed = false;
        developed = false;
        activatedSinceDeveloped = false;
      }
      case EXPOSE -> {
        if (!resistOn) {
          warnings.add(
              "step '"
                  + work.name()
                  + "' lights a part with 0 um of resist on it: a step 'resist'"
                  + " comes before");
        }
        exposed = true;
      }
      case DEVELOP -> {
        if (!resistSeen) {
          warnings.add(
              "step '"
                  + work.name()
                  + "' develops a part with 0 um of resist on it: a step 'resist' comes before");
        }
        if (resistSeen && !exposed) {
          warnings.add(
              "step '"
                  + work.name()
                  + "' develops resist that has had 0 s of light: nothing opens;"
                  + " a step 'expose' comes before");
        }
        developed = true;
        activatedSinceDeveloped = false;
      }
      case ACTIVATE -> {
        activatedSinceDeveloped = true;
        soak(work.name());
      }
      case ELECTROCLEAN, CLEAN -> {
        soak(work.name());
        alkaliAtPinholes(work.name());
        oiled = false;
        if (work.kind() == WorkKind.ELECTROCLEAN) {
          metals.hydrogen(work);
        }
        if (resistOn) {
          alkaline(work.name(), work.kind().key());
        }
      }
      case RINSE -> {
        rinsesSinceChromium += 2;
        soak(work.name());
      }
      case DRY -> driedSinceChromium = true;
      case STRIP -> {
        resistOn = false;
        metals.strip();
        coveredMm2 = 0;
        solvent(work.name());
        if (chromicAcid && (rinsesSinceChromium < 2 || !driedSinceChromium)) {
          warnings.add(
              "step '"
                  + work.name()
                  + "' brings solvent to a part that has seen chromic acid:"
                  + " rinse until colourless (at least 2 rinses) and dry first, or it may catch"
                  + " fire");
        }
        if (chromicAcid) {
          return List.of(Hazard.CHROMIC_ACID_AND_SOLVENT);
        }
      }
      case CHROMIUM_OFF -> {
        soak(work.name());
        metals.chromiumOff(work);
      }
      case SCOUR_OFF -> metals.scourOff(work);
      case STOP_OFF -> {
        coveredMm2 += work.surface().traversedAreaMm2();
        metals.resist(work);
      }
      case OIL -> oiled = true;
      case FILL, SAND, SEAL, WIRE, ETCH -> {
        // change neither the skin's metal nor its mask, as far as the order is concerned
      }
    }
    return List.of();
  }

  /** Bare paint in a bath without current loses its flakes. */
  private void soak(String name) {
    if (paintBare) {
      warnings.add(
          "step '"
              + name
              + "' wets bare conductive paint without current: acid and water attack copper flake,"
              + " 5 min of it left parts uncovered (common practice); go from 0 min of soak straight"
              + " into the tank, current on");
    }
  }

  /** What strips the resist reaches the print wherever the copper has a pinhole. */
  private void solvent(String name) {
    print
        .filter(p -> p.name().equals("ABS") || p.name().equals("resin"))
        .ifPresent(
            p ->
                warnings.add(
                    "step '"
                        + name
                        + "' brings solvent to "
                        + p.name()
                        + ": at pinholes acetone dissolves or swells it within 30 s (common practice);"
                        + " wipe instead of dipping, try an ester on a scrap first"));
  }

  /**
   * Alkali splits the esters of some plastics and lifts paint wherever the copper has a pinhole.
   */
  private void alkaliAtPinholes(String name) {
    print
        .filter(PrintMaterial::polyester)
        .ifPresent(
            p ->
                warnings.add(
                    "step '"
                        + name
                        + "' brings alkali to "
                        + p.name()
                        + ": at pinholes it eats the print and lifts the paint (common practice); at"
                        + " most 2 min at 25 C, or degrease with a neutral detergent"));
  }

  /** Openings that were developed are covered by a film of what was left, and passive. */
  private void openings(CurrentStep step, boolean plates) {
    String name = step.name();
    if (resistOn && step.surface().openFraction() < 1 - WHOLLY_OPEN) {
      metals.openings(step);
    }
    if (resistOn && !developed) {
      warnings.add(
          "step '"
              + name
              + (plates ? "' plates" : "' etches")
              + " a part whose resist is not open: 0 steps 'develop' before it; nothing "
              + (plates ? "lands" : "goes")
              + " but where there is no resist");
    } else if (resistOn && !activatedSinceDeveloped) {
      warnings.add(
          "step '"
              + name
              + (plates ? "' plates" : "' etches")
              + " openings that were not activated since they were developed: dip 30 s in"
              + " dilute acid (not alkaline: it takes the resist), and look with a 10x lens that no"
              + " scum is left, a drop of water spreads in every opening");
    }
  }

  /** In a bath, whatever is bare goes with what is meant to. */
  private void etch(EtchStep step, StepEstimate estimate) {
    Recipe recipe = step.recipe();
    if (recipe.alkaline() && resistOn) {
      alkaline(step.name(), recipe.id());
    }
    openings(step, false);
    metals.etch(step, estimate.figure(EtchEstimator.DEPTH).map(StepFigure::value).orElse(0.0));
    double bare = wholeMm2 - Math.max(coveredMm2, step.surface().traversedAreaMm2());
    if (estimate.bathed() && bare > SMALLEST_BARE_SHARE * wholeMm2) {
      warnings.add(
          "step '"
              + step.name()
              + "' hangs the part in a bath with "
              + Quantity.show(Area.ofMm2(bare).squareMetres(), Dimension.AREA)
              + " of it neither under resist nor stopped off: that metal goes too; put resist on the"
              + " whole skin, or a step 'stop-off' on the rest");
    }
  }

  private void plate(CurrentStep step, StepEstimate estimate) {
    String name = step.name();
    Recipe recipe = step.recipe();
    if (recipe.alkaline() && resistOn) {
      alkaline(name, recipe.id());
    }
    openings(step, true);
    if (oiled) {
      warnings.add(
          "step '"
              + name
              + "' plates an oiled part, degreased 0 times since: a step 'clean' comes before, or"
              + " nothing holds");
    }
    metals.plate(step, recipe, added(estimate));
    boolean chromium = recipe.metal() == Metal.CHROMIUM;
    if (chromium) {
      rinsesSinceChromium = 0;
      driedSinceChromium = false;
    }
    if (resistOn && resistUm.isPresent() && estimate.thicknessUm().isPresent()) {
      double over = estimate.thicknessUm().getAsDouble() - resistUm.getAsDouble();
      if (over > 0) {
        warnings.add(
            "step '"
                + name
                + "' grows "
                + Quantity.plain(estimate.thicknessUm().getAsDouble(), 3)
                + " um through a resist of "
                + Quantity.plain(resistUm.getAsDouble(), 3)
                + " um: lines spread over its edge, wider by about "
                + Quantity.plain(2 * over, 3)
                + " um");
      }
    }
    chromicAcid |= chromium && recipe.ion().valence() == 6;
    paintBare = false;
  }

  /** What the step adds (um): of one that is taken up, the rest alone if its beginning is known. */
  private OptionalDouble added(StepEstimate estimate) {
    OptionalDouble whole = estimate.thicknessUm();
    double already = estimate.figure(StepBasics.ALREADY).map(StepFigure::value).orElse(0.0);
    return takenUp && whole.isPresent() ? OptionalDouble.of(whole.getAsDouble() - already) : whole;
  }

  private void alkaline(String name, String what) {
    warnings.add(
        "step '"
            + name
            + "' ("
            + what
            + ") is alkaline and resist lies on the part: it dissolves"
            + " positive resist within minutes (7 g/L caustic is its developer); use an acid or"
            + " neutral solution, or strip first");
  }

  private void warmth(TankStep tank) {
    if (print.isEmpty()) {
      return;
    }
    double bathC = tank.temperatureK() - ZERO_C;
    double limit = print.get().warmestBathC();
    if (bathC <= limit + 1e-9) {
      return;
    }
    Figure figure = tank.recipe().needed(FigureKey.TEMPERATURE);
    double coolest = figure.lowSi() - ZERO_C;
    String remedy =
        coolest <= limit
            ? "run it between "
                + Quantity.plain(coolest, 3)
                + " and "
                + Quantity.plain(limit, 3)
                + " C"
            : "its window begins at "
                + Quantity.plain(coolest, 3)
                + " C, so choose a cooler bath or another plastic";
    warnings.add(
        "step '"
            + tank.name()
            + "' bathes "
            + print.get().name()
            + " at "
            + Quantity.plain(bathC, 3)
            + " C; it softens at "
            + Quantity.plain(print.get().softeningC(), 3)
            + " C and should stay below "
            + Quantity.plain(limit, 3)
            + " C (rule of thumb: 20 C under): "
            + remedy);
  }
}
