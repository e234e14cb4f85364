package org.amperskin.cli;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import org.amperskin.bench.LogException;
import org.amperskin.pattern.ArtworkFileException;
import org.amperskin.units.NearestWord;
import org.amperskin.yaml.YamlFault;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Turns what went wrong into one clear message and the right exit code. */
final class Faults {
  private Faults() {}

  static int usage(ParameterException fault, String[] args) {
    CommandLine line = fault.getCommandLine();
    PrintWriter err = line.getErr();
    err.println("amperskin: " + message(fault, line));
    boolean option =
        fault instanceof CommandLine.UnmatchedArgumentException unmatched
            && unmatched.isUnknownOption();
    if (!option || !CommandLine.UnmatchedArgumentException.printSuggestions(fault, err)) {
      err.println("See: " + line.getCommandSpec().qualifiedName() + " --help");
    }
    return ExitCode.USAGE;
  }

  /** What the option parser calls an unmatched argument is, where verbs are, a verb. */
  private static String message(ParameterException fault, CommandLine line) {
    if (!line.getSubcommands().isEmpty()
        && fault instanceof CommandLine.UnmatchedArgumentException unmatched
        && !unmatched.isUnknownOption()) {
      String word = unmatched.getUnmatched().get(0);
      return "verb '"
          + word
          + "' is not known"
          + NearestWord.of(word, line.getSubcommands().keySet())
              .map(near -> ", did you mean '" + near + "'?")
              .orElse("; there are " + String.join(", ", line.getSubcommands().keySet()));
    }
    return fault.getMessage();
  }

  static int execution(Exception fault, CommandLine line, ParseResult parsed) {
    PrintWriter err = line.getErr();
    int code = code(fault);
    if (code == ExitCode.OWN_FAULT) {
      err.println("amperskin: a fault of our own, please report it with the file: " + fault);
      fault.printStackTrace(err);
    } else {
      err.println("amperskin: " + message(fault));
    }
    return code;
  }

  private static int code(Exception fault) {
    if (fault instanceof YamlFault || fault instanceof UsageFault) {
      return ExitCode.USAGE;
    }
    if (fault instanceof UnreadableFile
        || fault instanceof LogException
        || fault instanceof ArtworkFileException
        || fault instanceof IOException) {
      return ExitCode.UNREADABLE;
    }
    return ExitCode.OWN_FAULT;
  }

  static String message(Exception fault) {
    if (fault instanceof NoSuchFileException || fault instanceof FileNotFoundException) {
      return fault.getMessage() + ": there is no such file";
    }
    if (fault instanceof AccessDeniedException) {
      return fault.getMessage() + ": reading it is not allowed";
    }
    return fault.getMessage();
  }
}
