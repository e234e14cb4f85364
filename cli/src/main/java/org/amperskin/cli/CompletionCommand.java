package org.amperskin.cli;

import picocli.AutoComplete;
import picocli.CommandLine.Command;

/** {@code amperskin completion}. */
@Command(
    name = "completion",
    description = {"Prints a completion script for bash and zsh.", ""},
    footer = {"", "Example:", "  source <(amperskin completion)"})
final class CompletionCommand extends Verb {
  @Override
  public Integer call() {
    print(AutoComplete.bash("amperskin", Main.withAllVerbs()));
    return ExitCode.ANSWER;
  }
}
