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
import org.amperskin.yaml.YamlFault;

/**
 * The recipes at hand, by id.
 *
 * <p>Guaranteed: a fixed order; each recipe checked when it is read. The standard recipes are
 * resources of this package; more may be added, and replace those of the same id. Cost: a recipe is
 * read each time it is asked for, a few milliseconds, so that a job pays only for what it uses.
 */
public final class RecipeLibrary {
  private static final String FOLDER = "recipes/";

  private final List<String> ids;
  private final Map<String, Recipe> added;

  private RecipeLibrary(List<String> ids, Map<String, Recipe> added) {
    this.ids = List.copyOf(ids);
    this.added = added;
  }

  /** The recipes that come with the program. */
  public static RecipeLibrary standard() {
    List<String> ids = resource("index.txt").lines().filter(line -> !line.isBlank()).toList();
    return new RecipeLibrary(ids, Map.of());
  }

  private static Recipe read(String id) {
    String file = id + ".yaml";
    try {
      Recipe recipe = RecipeReader.read(resource(file), file);
      if (!recipe.id().equals(id)) {
        throw new IllegalStateException("recipe file " + file + " holds " + recipe.id());
      }
      return recipe;
    } catch (YamlFault ours) {
      throw new IllegalStateException(ours.getMessage(), ours);
    }
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
    List<String> allIds = new ArrayList<>(ids);
    Map<String, Recipe> all = new LinkedHashMap<>(added);
    for (Recipe recipe : more) {
      if (!allIds.contains(recipe.id())) {
        allIds.add(recipe.id());
      }
      all.put(recipe.id(), recipe);
    }
    return new RecipeLibrary(allIds, all);
  }

  /** The ids in order. */
  public List<String> ids() {
    return ids;
  }

  /** All recipes in order. */
  public List<Recipe> all() {
    return ids.stream().map(this::find).toList();
  }

  /**
   * The recipe with this id, which may be written with blanks: {@code my copper} for {@code
   * my-copper}.
   *
   * @throws IllegalArgumentException naming the nearest id, or all of them
   */
  public Recipe find(String word) {
    String id = ids.contains(word) ? word : word.strip().replaceAll("\\s+", "-");
    if (!ids.contains(id)) {
      String hint =
          NearestWord.of(id, ids)
              .map(near -> ", did you mean '" + near + "'?")
              .orElse("; there are " + String.join(", ", ids));
      throw new IllegalArgumentException("recipe '" + word + "' is not known" + hint);
    }
    Recipe own = added.get(id);
    return own != null ? own : read(id);
  }
}
