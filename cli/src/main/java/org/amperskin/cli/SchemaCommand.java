package org.amperskin.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.amperskin.report.JsonReports;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin schema}. */
@Command(
    name = "schema",
    sortOptions = false,
    description = {"Prints the JSON Schema of a verb's --json answer.", ""},
    footer = {"", "Example:", "  amperskin schema plan", "  amperskin schema plan --sample"})
final class SchemaCommand extends Verb {
  private static final List<String> VERBS =
      List.of(
          "measure", "mask", "pattern", "plan", "compare", "rack", "film", "stencil", "recipes",
          "mix", "log", "run");

  @Parameters(
      paramLabel = "VERB",
      arity = "0..1",
      description =
          "measure, mask, pattern, plan, compare, rack, film, stencil, recipes, mix, log, run.")
  private String verb;

  @Option(names = "--sample", description = "A literal example of the answer instead.")
  private boolean sample;

  @Override
  public Integer call() throws IOException, UsageFault {
    if (verb == null) {
      throw new UsageFault("of which verb? These have a JSON answer: " + String.join(", ", VERBS));
    }
    if (!VERBS.contains(verb)) {
      throw new UsageFault(
          "verb '" + verb + "' has no JSON answer; these have: " + String.join(", ", VERBS));
    }
    String name = "schema/" + verb + (sample ? ".sample.json" : ".schema.json");
    try (InputStream in = JsonReports.class.getResourceAsStream(name)) {
      print(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    }
    return ExitCode.ANSWER;
  }
}
