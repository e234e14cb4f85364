package org.amperskin.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.RecipeReader;
import org.amperskin.yaml.YamlFault;

/**
 * The recipes at hand: those of the program, and the user's beside them.
 *
 * <p>Definition: every file of the user's recipe folder that ends in {@code .yaml}, by name.
 * Guaranteed: each is checked as those of the program are; one of the same id goes before them.
 * Cost: reading the folder.
 */
public final class UserRecipes {
  private UserRecipes() {}

  /** The library with the user's recipes; no folder, no recipes. */
  public static RecipeLibrary library(UserFolder user) throws IOException, YamlFault {
    RecipeLibrary standard = RecipeLibrary.standard();
    Path folder = user.recipes();
    if (!Files.isDirectory(folder)) {
      return standard;
    }
    List<Path> files;
    try (Stream<Path> all = Files.list(folder)) {
      files = all.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
    }
    List<Recipe> own = new ArrayList<>();
    for (Path file : files) {
      own.add(RecipeReader.read(Files.readString(file, StandardCharsets.UTF_8), file.toString()));
    }
    return standard.with(own);
  }
}
