package org.amperskin.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import org.amperskin.testmeshes.TestMeshes;

/** Runs the program as a shell at the root of the project would, without a new process. */
final class Cli {
  /** The root of the project. */
  static final Path ROOT = TestMeshes.folder().getParent();

  /** The user's folder of the tests; none of them writes into a home. */
  static final Path HOME = ROOT.resolve("cli/target/home");

  static {
    System.setProperty("amperskin.home", HOME.toString());
  }

  private Cli() {}

  /**
   * What a run left behind.
   *
   * @param code exit code
   * @param out standard output, with the root's path taken out of it
   * @param err standard error, likewise
   */
  record Result(int code, String out, String err) {}

  /** Runs with the words of a command line; paths below the root may be relative to it. */
  static Result run(String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] resolved = Arrays.stream(words).map(Cli::resolved).toArray(String[]::new);
    int code = Main.run(resolved, new PrintWriter(out), new PrintWriter(err, true));
    return new Result(code, relative(out.toString()), relative(err.toString()));
  }

  /** Tests run in the folder of the module, commands are written for the root. */
  private static String resolved(String word) {
    if (word.startsWith("bench-log-") || word.equals("log-tables")) {
      return HOME.resolve(word).toString(); // what the examples of backup and export write
    }
    return word.startsWith("test-meshes") ? ROOT.resolve(word).toString() : word;
  }

  private static String relative(String text) {
    return text.replace(ROOT + java.io.File.separator, "");
  }
}
