package org.amperskin.cli;

import java.io.IOException;
import java.util.List;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.report.JsonReports;
import org.amperskin.report.RecipeText;
import org.amperskin.yaml.YamlFault;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin recipes}. */
@Command(
    name = "recipes",
    sortOptions = false,
    description = {"The solutions: windows, sources, marks, cautions.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin recipes",
      "  amperskin recipes palladium-brush",
      "",
      "Exit: 0 shown, 2 no such recipe."
    })
final class RecipesCommand extends Verb {
  @Parameters(paramLabel = "NAME", arity = "0..1", description = "One recipe, in full.")
  private String name;

  @Option(names = "--json", description = "Answer as JSON.")
  private boolean json;

  @Override
  public Integer call() throws IOException, UsageFault, YamlFault {
    RecipeLibrary library = library();
    if (name == null) {
      print(json ? JsonReports.recipes(library.all()) : RecipeText.list(library.all()));
      return ExitCode.ANSWER;
    }
    Recipe recipe;
    try {
      recipe = library.find(name);
    } catch (IllegalArgumentException unknown) {
      throw new UsageFault(unknown.getMessage());
    }
    print(json ? JsonReports.recipes(List.of(recipe)) : RecipeText.one(recipe));
    return ExitCode.ANSWER;
  }
}
