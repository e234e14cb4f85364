package org.amperskin.cli;

import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/**
 * {@code amperskin view}: starts the viewer as a process of its own, which reads all options
 * itself.
 */
@Command(name = "view", description = "Opens a job or a print file in the viewer.")
final class ViewCommand extends Verb {
  @CommandLine.Unmatched private List<String> arguments = new ArrayList<>();

  @Override
  public Integer call() throws IOException, InterruptedException, UsageFault {
    return start(arguments);
  }

  /** Starts the viewer and waits for its end. */
  static int start(List<String> arguments) throws IOException, InterruptedException, UsageFault {
    Path jar = viewerJar();
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-jar");
    command.add(jar.toString());
    command.addAll(arguments);
    return new ProcessBuilder(command).inheritIO().start().waitFor();
  }

  private static Path viewerJar() throws UsageFault {
    try {
      File here = new File(Main.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      Path root = here.toPath().getParent().getParent().getParent();
      Path folder = root.resolve("viewer").resolve("target");
      try (var files = Files.newDirectoryStream(folder, "viewer-*.jar")) {
        for (Path jar : files) {
          if (!jar.getFileName().toString().contains("-tests")) {
            return jar;
          }
        }
      }
      throw new UsageFault("no viewer in " + folder + "; build the project first");
    } catch (IOException | URISyntaxException missing) {
      throw new UsageFault("the viewer was not found: " + missing.getMessage());
    }
  }
}
