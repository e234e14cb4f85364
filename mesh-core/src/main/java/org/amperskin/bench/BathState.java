package org.amperskin.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.plating.Anode;
import org.amperskin.plating.Figure;
import org.amperskin.plating.FigureKey;
import org.amperskin.plating.How;
import org.amperskin.plating.Ion;
import org.amperskin.plating.Recipe;

/**
 * What a bath holds now, as far as the log knows.
 *
 * <p>Definition: metal of the last analysis (or make-up), plus that of additions since, less what
 * the charge since has deposited if the anodes do not feed the bath; a new volume alone keeps the
 * metal, as water that dried up or was topped up. Charge: jobs, coupons, weighings that belong to
 * no job, and counter entries; a meter's reading replaces all charge before it. Not guaranteed:
 * drag-out, spills, anodes that feed more than is taken. An analysis goes before this. Cost: linear
 * in the log.
 *
 * @param bath which
 * @param volumeL last known volume (L)
 * @param metalGPerL metal now (g/L), if an analysis and a volume are known
 * @param metalBandGPerL its ends by the ends of the efficiency (g/L)
 * @param analysisGPerL the last analysis (g/L)
 * @param addedMetalG metal added since (g)
 * @param drawnMetalG metal deposited out of the bath since (g), 0 with soluble anodes
 * @param chargeAh all charge so far (A.h)
 * @param chargeSinceAnalysisAh charge since the last analysis (A.h)
 * @param additives what each additive owes
 * @param notes what to know about these numbers
 */
public record BathState(
    Bath bath,
    OptionalDouble volumeL,
    OptionalDouble metalGPerL,
    Optional<EfficiencyFit.Interval> metalBandGPerL,
    OptionalDouble analysisGPerL,
    double addedMetalG,
    double drawnMetalG,
    double chargeAh,
    double chargeSinceAnalysisAh,
    List<Due> additives,
    List<String> notes) {

  public BathState {
    additives = List.copyOf(additives);
    notes = List.copyOf(notes);
  }

  /**
   * An additive that charge uses up.
   *
   * @param additive its name
   * @param mlPerAh how fast (mL/A.h)
   * @param dueMl what should be added now (mL); negative if more was added than used
   */
  public record Due(String additive, double mlPerAh, double dueMl) {}

  /**
   * How the bath turns charge into metal.
   *
   * @param ion what it deposits
   * @param soluble whether its anodes feed it
   * @param low lower end of the efficiency (1 is 100 %)
   * @param typical the efficiency (1 is 100 %)
   * @param high upper end (1 is 100 %)
   */
  public record Chemistry(Ion ion, boolean soluble, double low, double typical, double high) {
    /** By the bath's recipe, and by its coupons where they are enough for an interval. */
    public static Optional<Chemistry> of(Bath bath, Recipe recipe, Optional<EfficiencyFit> fit) {
      Optional<Figure> figure = recipe.figure(FigureKey.EFFICIENCY);
      if (figure.isEmpty()) {
        return Optional.empty(); // a brush solution: its metal is counted by the litre
      }
      boolean soluble =
          bath.solubleAnode()
              .orElse(
                  // an etched part is the anode, and feeds the bath
                  recipe.how() == How.ETCH || recipe.anode().map(Anode::soluble).orElse(false));
      if (fit.isPresent() && fit.get().interval().isPresent()) {
        EfficiencyFit.Interval i = fit.get().interval().get();
        double typical = Math.min(1, fit.get().efficiency());
        return Optional.of(
            new Chemistry(
                recipe.ion(), soluble, Math.max(0, i.low()), typical, Math.min(1, i.high())));
      }
      Figure f = figure.get();
      return Optional.of(
          new Chemistry(recipe.ion(), soluble, f.lowSi(), f.typicalSi(), f.highSi()));
    }
  }

  /** The state after all entries, which must be in order of time. */
  public static BathState of(Bath bath, List<LogEntry> entries, Optional<Chemistry> chemistry) {
    Account account = new Account(bath);
    for (LogEntry entry : entries) {
      if (entry.head().struck().isEmpty()) {
        account.take(entry);
      }
    }
    return account.state(chemistry);
  }

  /** Walks through the entries. */
  private static final class Account {
    private final Bath bath;
    private final Map<String, Due> due = new LinkedHashMap<>();
    private final List<String> notes = new ArrayList<>();
    private OptionalDouble volumeL = OptionalDouble.empty();
    private OptionalDouble analysis = OptionalDouble.empty();
    private OptionalDouble metalG = OptionalDouble.empty();
    private boolean waitsForVolume;
    private double addedG;
    private double total;
    private double since;

    Account(Bath bath) {
      this.bath = bath;
    }

    private boolean mine(Optional<String> name) {
      return name.filter(bath.name()::equalsIgnoreCase).isPresent();
    }

    void take(LogEntry entry) {
      if (entry instanceof LogEntry.Job job) {
        job.steps().stream().filter(s -> mine(s.bath())).forEach(s -> charge(s.chargeAh()));
      } else if (entry instanceof LogEntry.Weighing w && mine(w.bath()) && w.job().isEmpty()) {
        charge(w.chargeAh().orElse(0));
      } else if (entry instanceof LogEntry.Coupon c && mine(c.bath())) {
        charge(c.chargeAh().orElse(0));
      } else if (entry instanceof LogEntry.Counter c && mine(Optional.of(c.bath()))) {
        c.addedAh().ifPresent(this::charge);
        c.readingAh().ifPresent(reading -> meter(c, reading));
      } else if (entry instanceof LogEntry.BathReading r && mine(Optional.of(r.bath()))) {
        reading(r);
      }
    }

    private void meter(LogEntry.Counter entry, double reading) {
      if (reading < total) {
        notes.add(
            String.format(
                Locale.ROOT,
                "entry %d: the meter reads %.4g A.h, the log had %.4g A.h before it",
                entry.head().number(),
                reading,
                total));
      }
      charge(reading - total);
    }

    private void charge(double ampereHours) {
      total += ampereHours;
      since += ampereHours;
      due.replaceAll(
          (key, d) -> new Due(d.additive(), d.mlPerAh(), d.dueMl() + d.mlPerAh() * ampereHours));
    }

    private void reading(LogEntry.BathReading r) {
      for (LogEntry.Addition a : r.additions()) {
        addedG += a.metalG();
        String key = a.what().toLowerCase(Locale.ROOT);
        Due d = due.get(key);
        if (d != null && a.unit().equals("mL")) {
          due.put(key, new Due(d.additive(), d.mlPerAh(), d.dueMl() - a.amount()));
        }
      }
      if (r.volumeL().isPresent()) {
        volumeL = r.volumeL();
      }
      if (r.metalGPerL().isPresent()) {
        analysis = r.metalGPerL();
        addedG = 0;
        since = 0;
        waitsForVolume = true;
      }
      if (waitsForVolume && volumeL.isPresent()) {
        metalG = OptionalDouble.of(analysis.getAsDouble() * volumeL.getAsDouble());
        waitsForVolume = false;
      }
      for (LogEntry.Dose d : r.doses()) {
        String key = d.additive().toLowerCase(Locale.ROOT);
        Due old = due.get(key);
        due.put(key, new Due(d.additive(), d.mlPerAh(), old == null ? 0 : old.dueMl()));
      }
    }

    BathState state(Optional<Chemistry> chemistry) {
      double perAh =
          chemistry
              .filter(c -> !c.soluble())
              .map(c -> c.ion().massPerAmpereHour().inGrams())
              .orElse(0.0);
      double drawn = chemistry.map(c -> since * perAh * c.typical()).orElse(0.0);
      OptionalDouble now = OptionalDouble.empty();
      Optional<EfficiencyFit.Interval> band = Optional.empty();
      if (metalG.isPresent()) {
        double held = metalG.getAsDouble() + addedG;
        double litres = volumeL.getAsDouble();
        now = OptionalDouble.of(floor((held - drawn) / litres));
        double most = chemistry.map(c -> since * perAh * c.high()).orElse(0.0);
        double least = chemistry.map(c -> since * perAh * c.low()).orElse(0.0);
        band =
            Optional.of(
                new EfficiencyFit.Interval(
                    Math.max(0, (held - most) / litres), Math.max(0, (held - least) / litres)));
      } else {
        notes.add(
            analysis.isPresent()
                ? "metal now wants the bath's volume: log bath NAME --volume"
                : "metal now wants an analysis or the make-up: log bath NAME --metal");
      }
      if (chemistry.isEmpty()) {
        notes.add(
            "its recipe is not told, so metal deposited is not taken off: log bath NAME --recipe");
      } else if (chemistry.get().soluble()) {
        notes.add(
            "soluble anodes feed the bath: metal is taken as fed back in full; drag-out lowers it,"
                + " an analysis goes before this");
      }
      return new BathState(
          bath,
          volumeL,
          now,
          band,
          analysis,
          addedG,
          drawn,
          total,
          since,
          List.copyOf(due.values()),
          notes);
    }

    private double floor(double gPerL) {
      if (gPerL < 0) {
        notes.add(
            String.format(
                Locale.ROOT,
                "more metal was drawn than the bath held (%.3g g/L short): analyse it",
                -gPerL));
      }
      return Math.max(0, gPerL);
    }
  }
}
