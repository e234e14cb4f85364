package org.amperskin.plating;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.amperskin.units.NearestWord;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** A YAML mapping that remembers where each entry stands. */
final class YamlMap {
  private final String file;
  private final Node self;
  private final Map<String, Node> keys = new LinkedHashMap<>();
  private final Map<String, Node> values = new LinkedHashMap<>();

  private YamlMap(String file, Node node, String what) throws RecipeException {
    this.file = file;
    this.self = node;
    if (!(node instanceof MappingNode mapping)) {
      throw at(node, what + " is not a mapping of keys to values");
    }
    for (NodeTuple entry : mapping.getValue()) {
      if (!(entry.getKeyNode() instanceof ScalarNode key)) {
        throw at(entry.getKeyNode(), "a key of " + what + " is not a plain word");
      }
      if (values.put(key.getValue(), entry.getValueNode()) != null) {
        throw at(key, "key '" + key.getValue() + "' is given twice");
      }
      keys.put(key.getValue(), key);
    }
  }

  static YamlMap of(String text, String file) throws RecipeException {
    LoadSettings settings =
        LoadSettings.builder().setLabel(file).setMaxAliasesForCollections(0).build();
    Optional<Node> node;
    try {
      node = new Compose(settings).composeString(text);
    } catch (MarkedYamlEngineException broken) {
      int line = broken.getProblemMark().map(m -> m.getLine() + 1).orElse(1);
      int column = broken.getProblemMark().map(m -> m.getColumn() + 1).orElse(1);
      throw new RecipeException(file, line, column, "not YAML: " + broken.getProblem());
    } catch (YamlEngineException broken) {
      throw new RecipeException(file, 1, 1, "not YAML: " + broken.getMessage());
    }
    if (node.isEmpty()) {
      throw new RecipeException(file, 1, 1, "the file is empty: a recipe was expected");
    }
    return new YamlMap(file, node.get(), "recipe");
  }

  boolean has(String key) {
    return values.containsKey(key);
  }

  void onlyKeys(Set<String> known) throws RecipeException {
    for (String key : keys.keySet()) {
      if (!known.contains(key)) {
        String hint =
            NearestWord.of(key, known)
                .map(near -> ", did you mean '" + near + "'?")
                .orElse(", known are " + new TreeSet<>(known));
        throw at(keys.get(key), "key '" + key + "' is not known" + hint);
      }
    }
  }

  String word(String key) throws RecipeException {
    Node node = values.get(key);
    if (node == null) {
      throw at(self, "key '" + key + "' is missing");
    }
    if (!(node instanceof ScalarNode scalar) || scalar.getValue().isBlank()) {
      throw at(node, "'" + key + "' has no value");
    }
    return scalar.getValue();
  }

  int whole(String key) throws RecipeException {
    String word = word(key);
    try {
      return Integer.parseInt(word);
    } catch (NumberFormatException notWhole) {
      throw fault(key, key + " '" + word + "' is not a whole number");
    }
  }

  boolean yesNo(String key) throws RecipeException {
    String word = word(key);
    if (!word.equals("true") && !word.equals("false")) {
      throw fault(key, key + " '" + word + "' is neither true nor false");
    }
    return word.equals("true");
  }

  <T> T oneOf(String key, String word, T[] choices, Function<T, String> spelled)
      throws RecipeException {
    for (T choice : choices) {
      if (spelled.apply(choice).equals(word)) {
        return choice;
      }
    }
    List<String> known = Arrays.stream(choices).map(spelled).toList();
    String hint = NearestWord.of(word, known).map(n -> ", did you mean '" + n + "'?").orElse("");
    throw fault(key, key + " '" + word + "' is not one of " + known + hint);
  }

  YamlMap map(String key) throws RecipeException {
    return new YamlMap(file, values.get(key), key);
  }

  List<YamlMap> maps(String key) throws RecipeException {
    List<YamlMap> list = new ArrayList<>();
    for (Node item : items(key)) {
      list.add(new YamlMap(file, item, "an entry of " + key));
    }
    return list;
  }

  List<String> words(String key) throws RecipeException {
    List<String> list = new ArrayList<>();
    for (Node item : items(key)) {
      if (!(item instanceof ScalarNode scalar)) {
        throw at(item, "an entry of " + key + " is not a plain word");
      }
      list.add(scalar.getValue());
    }
    return list;
  }

  private List<Node> items(String key) throws RecipeException {
    Node node = values.get(key);
    if (node == null) {
      return List.of();
    }
    if (!(node instanceof SequenceNode sequence)) {
      throw at(node, "'" + key + "' is not a list");
    }
    return sequence.getValue();
  }

  /** A fault at the value of a key, or at the mapping when the key is not there. */
  RecipeException fault(String key, String what) {
    return at(values.getOrDefault(key, self), what);
  }

  private RecipeException at(Node node, String what) {
    int line = node.getStartMark().map(m -> m.getLine() + 1).orElse(1);
    int column = node.getStartMark().map(m -> m.getColumn() + 1).orElse(1);
    return new RecipeException(file, line, column, what);
  }
}
