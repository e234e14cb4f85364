package org.amperskin.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** Every command that help or a document shows is one that runs. */
class HelpTest {
  /** The viewer is a process of its own with a window; its own tests start it. */
  private static final String VIEWER = "amperskin view";

  static Stream<String> verbs() {
    return Main.withAllVerbs().getSubcommands().keySet().stream();
  }

  /** The verbs of this module; the viewer, a process with a window, tells its own help. */
  static Stream<String> described() {
    return verbs().filter(v -> !v.equals("view"));
  }

  /** What the verb log can do, each with a help of its own. */
  static Stream<String> ofTheLog() {
    return Main.withAllVerbs().getSubcommands().get("log").getSubcommands().keySet().stream();
  }

  /** Examples of the log begin with an empty one. */
  @BeforeAll
  static void emptyHome() throws IOException {
    if (Files.exists(Cli.HOME)) {
      try (Stream<Path> files = Files.walk(Cli.HOME)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }

  private static List<String> helpCommands() {
    List<String> commands =
        new ArrayList<>(Words.commands(Cli.run("--help").out().replace("amperskin VERB", "")));
    described().forEach(v -> commands.addAll(Words.commands(Cli.run(v, "--help").out())));
    ofTheLog().forEach(v -> commands.addAll(Words.commands(Cli.run("log", v, "--help").out())));
    return commands;
  }

  static Stream<String> shownCommands() {
    List<String> commands = new ArrayList<>(helpCommands());
    for (Path document : documents()) {
      try {
        commands.addAll(Words.commands(Files.readString(document)));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return commands.stream()
        .map(c -> c.replaceFirst("^\\./", ""))
        .filter(c -> !c.startsWith(VIEWER))
        .filter(c -> !c.contains("VERB") && !c.contains("..."))
        .distinct();
  }

  private static List<Path> documents() {
    return Stream.of("README.md", "DEVELOPERS.md", "CHANGELOG.md", "test-meshes/README.md")
        .map(Cli.ROOT::resolve)
        .filter(Files::exists)
        .toList();
  }

  @Test
  void allVerbsAreThere() {
    assertThat(verbs().toList())
        .containsExactly(
            "measure",
            "mask",
            "pattern",
            "plan",
            "run",
            "compare",
            "rack",
            "film",
            "stencil",
            "recipes",
            "mix",
            "log",
            "view",
            "schema",
            "completion");
  }

  @ParameterizedTest
  @MethodSource("described")
  void everyVerbHasAnExampleAndTellsItsExitCodes(String verb) {
    String help = Cli.run(verb, "--help").out();
    assertThat(help).contains("Example:");
    assertThat(Words.commands(help)).as(help).isNotEmpty();
    if (!Set.of("schema", "completion").contains(verb)) {
      assertThat(help).contains("Exit: 0 ").contains("2 ");
    }
  }

  @ParameterizedTest
  @MethodSource("described")
  void everyOptionIsDescribed(String verb) {
    CommandLine line = Main.withAllVerbs().getSubcommands().get(verb);
    assertThat(line.getCommandSpec().options())
        .allSatisfy(o -> assertThat(o.description()).as(o.longestName()).isNotEmpty());
    assertThat(line.getCommandSpec().positionalParameters())
        .allSatisfy(p -> assertThat(p.description()).as(p.paramLabel()).isNotEmpty());
  }

  @ParameterizedTest
  @MethodSource("ofTheLog")
  void everyVerbOfTheLogIsDescribedWithAnExampleAndItsExitCodes(String verb) {
    String help = Cli.run("log", verb, "--help").out();
    assertThat(help).contains("Example:", "Exit: 0 ", "2 ", "3 ");
    CommandLine line = Main.withAllVerbs().getSubcommands().get("log").getSubcommands().get(verb);
    assertThat(line.getCommandSpec().options())
        .allSatisfy(o -> assertThat(o.description()).as(o.longestName()).isNotEmpty());
  }

  @Test
  void examplesAreCounted() {
    assertThat(helpCommands()).hasSize(26 + 5 + 4 + 18);
    assertThat(documents()).hasSizeGreaterThanOrEqualTo(2);
  }

  @TempDir private Path folder;

  @ParameterizedTest
  @MethodSource("shownCommands")
  void everyCommandShownRuns(String command) {
    // the shell takes the completion script from a pipe; the program sees only its verb
    String line =
        command.startsWith("source <(")
            ? command.substring("source <(".length(), command.length() - 1)
            : command.replaceFirst("\\s*[|>].*", "");
    String[] words = Words.of(line);
    assertThat(words[0]).isEqualTo("amperskin");
    for (int w = 1; w < words.length; w++) {
      // what a command writes goes where nobody else looks
      words[w] = words[w - 1].equals("--out") ? folder.resolve(words[w]).toString() : words[w];
    }
    Cli.Result shown = Cli.run(java.util.Arrays.copyOfRange(words, 1, words.length));
    assertThat(shown.code()).as("%s%n%s", command, shown.err()).isZero();
    assertThat(shown.out()).isNotBlank();
  }

  @Test
  void completionKnowsEveryVerbAndIsOneScript() {
    String script = Cli.run("completion").out();
    verbs().forEach(v -> assertThat(script).contains(v));
    assertThat(script).startsWith("#!").contains("complete ");
  }
}
