package org.amperskin.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.amperskin.bench.Prices;
import org.amperskin.job.Comparison;
import org.amperskin.job.Estimate;
import org.amperskin.plating.Band;
import org.amperskin.report.CompareText;
import org.amperskin.report.ComparisonPicture;
import org.amperskin.report.JsonReports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin compare}. */
@Command(
    name = "compare",
    sortOptions = false,
    description = {
      "Sets jobs side by side: exposed area, smallest lines, current, time, metal, cost.",
      ""
    },
    footer = {
      "",
      "Example:",
      "  amperskin compare test-meshes/demo/visor.yaml \\",
      "      test-meshes/demo/visor-lattice.yaml --picture layouts.png",
      "",
      "Exit: 0 compared, 1 a step has no figure, 2 usage or a fault in a job,",
      "      3 a file that cannot be read."
    })
final class CompareCommand extends Verb {
  @Parameters(paramLabel = "JOB", arity = "2..*", description = "Job files (.yaml).")
  private List<Path> files;

  @Option(
      names = "--picture",
      paramLabel = "PNG",
      description = "Draw the parts side by side, painted by region (.png).")
  private Path picture;

  @Option(
      names = "--prices",
      paramLabel = "FILE",
      description = "Price file (.yaml): adds what each costs; else each job's own.")
  private Path prices;

  @Option(names = "--json", description = "Answer as JSON.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    Outputs.check("--picture", picture, ".png");
    List<Estimate> jobs = new ArrayList<>();
    for (Path file : files) {
      jobFile(file, "jobs are compared");
    }
    for (Path file : files) {
      jobs.add(estimate(file));
    }
    Comparison comparison = Comparison.of(jobs);
    for (Comparison.Row cost : costs(jobs)) {
      comparison = comparison.and(cost);
    }
    if (picture != null) {
      ComparisonPicture.write(comparison, picture);
    }
    print(json ? JsonReports.compare(comparison) : CompareText.of(comparison));
    boolean refused = jobs.stream().anyMatch(Estimate::refused);
    return refused ? ExitCode.REFUSAL : ExitCode.ANSWER;
  }

  /** A row for each currency: what the jobs cost, and the ends of eight cases in ten. */
  private List<Comparison.Row> costs(List<Estimate> jobs) throws Exception {
    Map<String, List<Optional<Prices.Bill>>> bills = new LinkedHashMap<>();
    Map<Path, Prices> read = new HashMap<>();
    for (int k = 0; k < jobs.size(); k++) {
      Estimate job = jobs.get(k);
      Optional<Path> from = prices == null ? job.job().prices() : Optional.of(prices);
      if (from.isEmpty()) {
        continue;
      }
      if (!read.containsKey(from.get())) {
        read.put(from.get(), PriceFile.read(from.get()));
      }
      Prices.Bill bill = read.get(from.get()).bill(job.plan().materials());
      bills
          .computeIfAbsent(
              bill.currency(),
              c -> new ArrayList<>(Collections.nCopies(jobs.size(), Optional.empty())))
          .set(k, Optional.of(bill));
    }
    List<Comparison.Row> rows = new ArrayList<>();
    bills.forEach(
        (currency, all) -> {
          rows.add(row("cost", currency, all, b -> Optional.of(b.total())));
          rows.add(row("cost, P10", currency, all, b -> b.sum().band().map(Band::low)));
          rows.add(row("cost, P90", currency, all, b -> b.sum().band().map(Band::high)));
        });
    return rows;
  }

  private static Comparison.Row row(
      String label,
      String currency,
      List<Optional<Prices.Bill>> bills,
      Function<Prices.Bill, Optional<Double>> value) {
    List<OptionalDouble> values = new ArrayList<>();
    for (Optional<Prices.Bill> bill : bills) {
      Optional<Double> v = bill.flatMap(value);
      values.add(v.isPresent() ? OptionalDouble.of(v.get()) : OptionalDouble.empty());
    }
    return new Comparison.Row(label, currency, false, values);
  }
}
