package org.amperskin.cli;

import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code amperskin view}: starts the viewer as a process of its own. */
@Command(
    name = "view",
    description = {"Opens a job or a print file in the viewer.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin view test-meshes/demo/visor.yaml",
      "  amperskin view part.stl --picture part.png",
      "",
      "amperskin view -- --help tells the viewer's own options.",
      "Exit: 0 closed, 2 usage, 3 a file that cannot be read, 70 no display."
    })
final class ViewCommand extends Verb {
  @Parameters(
      paramLabel = "FILE",
      arity = "0..*",
      description = "A job file or a print file, and options of the viewer.")
  private List<String> arguments = List.of();

  @Override
  public Integer call() throws IOException, InterruptedException, UsageFault {
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
