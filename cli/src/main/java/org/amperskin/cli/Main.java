package org.amperskin.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/**
 * The program {@code amperskin}.
 *
 * <p>Exit codes: 0 answer, 1 refusal, 2 usage or a fault in a job, 3 unreadable file, 70 our own
 * fault.
 */
@Command(
    name = "amperskin",
    versionProvider = Version.class,
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = "From print file to plating settings.",
    synopsisSubcommandLabel = "VERB",
    commandListHeading = "%nVerbs:%n",
    footer = {
      "",
      "Example:",
      "  amperskin plan test-meshes/demo/visor.yaml",
      "",
      "amperskin VERB --help tells more of one verb."
    })
public final class Main implements Runnable {
  private static final Map<String, Supplier<Verb>> VERBS = verbs();

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  /** Runs the program. */
  public static void main(String[] args) {
    PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    int code = run(args, out, err);
    out.flush();
    err.flush();
    System.exit(out.checkError() && code == ExitCode.ANSWER ? ExitCode.OWN_FAULT : code);
  }

  /** Runs the program without ending the process. */
  public static int run(String[] args, PrintWriter out, PrintWriter err) {
    if (args.length == 1 && (args[0].equals("--version") || args[0].equals("-V"))) {
      out.println(Version.text()); // answered without the option parser, which takes longer
      return ExitCode.ANSWER;
    }
    CommandLine line = new CommandLine(new Main());
    String first = args.length == 0 ? "" : args[0];
    if (first.equals("view")) {
      return view(List.of(args).subList(1, args.length), err);
    }
    // Describing a verb takes longer than most of them run: only the one asked for is described.
    for (Map.Entry<String, Supplier<Verb>> verb : VERBS.entrySet()) {
      if (!VERBS.containsKey(first) || verb.getKey().equals(first)) {
        line.addSubcommand(verb.getKey(), verb.getValue().get());
      }
    }
    line.setOut(out);
    line.setErr(err);
    line.setUsageHelpWidth(80);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setParameterExceptionHandler(Faults::usage);
    line.setExecutionExceptionHandler(Faults::execution);
    return line.execute(args);
  }

  private static int view(List<String> arguments, PrintWriter err) {
    try {
      return ViewCommand.start(arguments);
    } catch (UsageFault | IOException fault) {
      err.println("amperskin: " + fault.getMessage());
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
    return ExitCode.OWN_FAULT;
  }

  private static Map<String, Supplier<Verb>> verbs() {
    Map<String, Supplier<Verb>> verbs = new LinkedHashMap<>();
    verbs.put("measure", MeasureCommand::new);
    verbs.put("mask", MaskCommand::new);
    verbs.put("pattern", PatternCommand::new);
    verbs.put("plan", PlanCommand::new);
    verbs.put("run", RunCommand::new);
    verbs.put("compare", CompareCommand::new);
    verbs.put("rack", RackCommand::new);
    verbs.put("film", FilmCommand::new);
    verbs.put("stencil", StencilCommand::new);
    verbs.put("recipes", RecipesCommand::new);
    verbs.put("mix", MixCommand::new);
    verbs.put("log", LogCommand::new);
    verbs.put("view", ViewCommand::new);
    verbs.put("schema", SchemaCommand::new);
    verbs.put("completion", CompletionCommand::new);
    return Collections.unmodifiableMap(verbs);
  }

  /** The whole command line with every verb described. */
  static CommandLine withAllVerbs() {
    CommandLine line = new CommandLine(new Main());
    VERBS.forEach((name, verb) -> line.addSubcommand(name, verb.get()));
    return line;
  }

  @Override
  public void run() {
    throw new CommandLine.ParameterException(spec.commandLine(), "which verb? See --help.");
  }
}
