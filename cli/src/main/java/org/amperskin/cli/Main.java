package org.amperskin.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
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
    },
    subcommands = {
      MeasureCommand.class,
      MaskCommand.class,
      PlanCommand.class,
      CompareCommand.class,
      RecipesCommand.class,
      ViewCommand.class,
      SchemaCommand.class,
      CompletionCommand.class
    })
public final class Main implements Runnable {
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
    CommandLine line = new CommandLine(new Main());
    line.setOut(out);
    line.setErr(err);
    line.setUsageHelpWidth(80);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setParameterExceptionHandler(Faults::usage);
    line.setExecutionExceptionHandler(Faults::execution);
    return line.execute(args);
  }

  @Override
  public void run() {
    throw new CommandLine.ParameterException(spec.commandLine(), "which verb? See --help.");
  }
}
