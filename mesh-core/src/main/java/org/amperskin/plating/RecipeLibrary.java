package org.amperskin.plating;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.amperskin.units.NearestWord;

/**
 * The recipes at hand, by id.
 *
 * <p>Guaranteed: a fixed order; each recipe checked. The standard recipes are resources of this
 * package; more may be added, and replace those of the same id. Cost: {@link #standard()} reads all
 * files each time.
 */
public final class RecipeLibrary {
  private static final String FOLDER = "recipes/";

  private final Map<String, Recipe> byId = new LinkedHashMap<>();

  private RecipeLibrary(List<Recipe> recipes) {
    recipes.forEach(recipe -> byId.put(recipe.id(), recipe));
  }

  /** The recipes that come with the program. */
  public static RecipeLibrary standard() {
    List<Recipe> recipes = new ArrayList<>();
    for (String id : resource("index.txt").lines().filter(line -> !line.isBlank()).toList()) {
      String file = id + ".yaml";
      try {
        Recipe recipe = RecipeReader.read(resource(file), file);
        if (!recipe.id().equals(id)) {
          throw new IllegalStateException("recipe file " + file + " holds " + recipe.id());
        }
        recipes.add(recipe);
      } catch (RecipeException ours) {
        throw new IllegalStateException(ours.getMessage(), ours);
      }
    }
    return new RecipeLibrary(recipes);
  }

  private static String resource(String name) {
    try (InputStream in = RecipeLibrary.class.getResourceAsStream(FOLDER + name)) {
      if (in == null) {
        throw new IllegalStateException("resource " + FOLDER + name + " is missing");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException broken) {
      throw new UncheckedIOException("resource " + FOLDER + name, broken);
    }
  }

  /** This library with more recipes; one of the same id replaces the one here. */
  public RecipeLibrary with(List<Recipe> more) {
    List<Recipe> all = new ArrayList<>(byId.values());
    all.addAll(more);
    return new RecipeLibrary(all);
  }

  /** All recipes in order. */
  public List<Recipe> all() {
    return List.copyOf(byId.values());
  }

  /**
   * The recipe with this id.
   *
   * @throws IllegalArgumentException naming the nearest id, or all of them
   */
  public Recipe find(String id) {
    Recipe recipe = byId.get(id);
    if (recipe == null) {
      String hint =
          NearestWord.of(id, byId.keySet())
              .map(near -> ", did you mean '" + near + "'?")
              .orElse("; there are " + String.join(", ", byId.keySet()));
      throw new IllegalArgumentException("recipe '" + id + "' is not known" + hint);
    }
    return recipe;
  }
}
