package org.amperskin.yaml;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.amperskin.units.Dimension;
import org.amperskin.units.NearestWord;
import org.amperskin.units.Quantity;
import org.amperskin.units.QuantityException;
import org.amperskin.units.Unit;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * A YAML 1.2 mapping that remembers where each entry stands.
 *
 * <p>Guaranteed: keys given twice, unknown keys and values of the wrong kind are faults with line
 * and column; aliases that multiply are refused. Cost: linear in the text.
 */
public final class YamlMap {
  private static final int DEEPEST = 40;

  private final String file;
  private final Node self;
  private final Map<String, Node> keys = new LinkedHashMap<>();
  private final Map<String, Node> values = new LinkedHashMap<>();

  private YamlMap(String file, Node node, String what) throws YamlFault {
    this.file = file;
    this.self = node;
    if (!(node instanceof MappingNode mapping)) {
      throw at(node, what + " is not a mapping of keys to values, it is " + kind(node));
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

  /**
   * Reads a text.
   *
   * @param text the file's content
   * @param file the name to use in messages
   * @param what what the file is, for messages
   */
  public static YamlMap of(String text, String file, String what) throws YamlFault {
    LoadSettings settings =
        LoadSettings.builder()
            .setLabel(file)
            .setMaxAliasesForCollections(0)
            .setAllowNonScalarKeys(true)
            .build();
    Optional<Node> node;
    Optional<Place> alias = Optional.empty();
    try {
      alias = lookThrough(settings, text, file);
      node = new Compose(settings).composeString(text);
    } catch (MarkedYamlEngineException broken) {
      int line = broken.getProblemMark().map(m -> m.getLine() + 1).orElse(1);
      int column = broken.getProblemMark().map(m -> m.getColumn() + 1).orElse(1);
      throw new YamlFault(new Place(file, line, column), "not YAML: " + broken.getProblem());
    } catch (YamlEngineException broken) {
      if (alias.isPresent()) {
        throw new YamlFault(
            alias.get(), "an alias of a list or mapping is not read here; write the entries out");
      }
      throw new YamlFault(new Place(file, 1, 1), "not YAML: " + broken.getMessage());
    }
    if (node.isEmpty()) {
      throw new YamlFault(new Place(file, 1, 1), "the file is empty: a " + what + " was expected");
    }
    return new YamlMap(file, node.get(), what);
  }

  /**
   * Looks through the events before a tree is built: the tree's builder calls itself at each level,
   * and refuses aliases without telling where.
   */
  private static Optional<Place> lookThrough(LoadSettings settings, String text, String file)
      throws YamlFault {
    Optional<Place> alias = Optional.empty();
    int depth = 0;
    for (Event event : new Parse(settings).parseString(text)) {
      if (event instanceof CollectionStartEvent && ++depth > DEEPEST) {
        throw new YamlFault(
            place(event, file), "nested deeper than " + DEEPEST + " levels: nothing here is");
      } else if (event instanceof CollectionEndEvent) {
        depth--;
      } else if (event instanceof AliasEvent && alias.isEmpty()) {
        alias = Optional.of(place(event, file));
      }
    }
    return alias;
  }

  private static Place place(Event event, String file) {
    return event
        .getStartMark()
        .map(m -> new Place(file, m.getLine() + 1, m.getColumn() + 1))
        .orElse(new Place(file, 1, 1));
  }

  /** True if the key is there. */
  public boolean has(String key) {
    return values.containsKey(key);
  }

  /** Refuses any other key, with the nearest right one. */
  public void onlyKeys(Set<String> known) throws YamlFault {
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

  /** A value that is one plain word or text. */
  public String word(String key) throws YamlFault {
    Node node = values.get(key);
    if (node == null) {
      throw at(self, "key '" + key + "' is missing");
    }
    if (!(node instanceof ScalarNode scalar)) {
      throw at(node, "'" + key + "' is not one plain value, it is " + kind(node));
    }
    if (scalar.getValue().isBlank()) {
      throw at(node, "'" + key + "' has no value");
    }
    return scalar.getValue();
  }

  /** A whole number. */
  public int whole(String key) throws YamlFault {
    String word = word(key);
    try {
      return Integer.parseInt(word);
    } catch (NumberFormatException notWhole) {
      throw fault(key, key + " '" + word + "' is not a whole number");
    }
  }

  /** True or false. */
  public boolean yesNo(String key) throws YamlFault {
    String word = word(key);
    if (!word.equals("true") && !word.equals("false")) {
      throw fault(key, key + " '" + word + "' is neither true nor false");
    }
    return word.equals("true");
  }

  /** The choice whose spelling is {@code word}. */
  public <T> T oneOf(String key, String word, T[] choices, Function<T, String> spelled)
      throws YamlFault {
    for (T choice : choices) {
      if (spelled.apply(choice).equals(word)) {
        return choice;
      }
    }
    List<String> known = Arrays.stream(choices).map(spelled).toList();
    String hint = NearestWord.of(word, known).map(n -> ", did you mean '" + n + "'?").orElse("");
    throw fault(key, key + " '" + word + "' is not one of " + known + hint);
  }

  /** A mapping below a key. */
  public YamlMap map(String key) throws YamlFault {
    if (!has(key)) {
      throw at(self, "key '" + key + "' is missing");
    }
    return new YamlMap(file, values.get(key), key);
  }

  /** A list of mappings, empty if the key is not there. */
  public List<YamlMap> maps(String key) throws YamlFault {
    List<YamlMap> list = new ArrayList<>();
    for (Node item : items(key)) {
      list.add(new YamlMap(file, item, "an entry of " + key));
    }
    return list;
  }

  /** A list of words, empty if the key is not there. */
  public List<String> words(String key) throws YamlFault {
    List<String> list = new ArrayList<>();
    for (Node item : items(key)) {
      if (!(item instanceof ScalarNode scalar)) {
        throw at(item, "an entry of " + key + " is not a plain word");
      }
      list.add(scalar.getValue());
    }
    return list;
  }

  /** True if the value of a key is a list. */
  public boolean isList(String key) {
    return values.get(key) instanceof SequenceNode;
  }

  /** One word or a list of words, empty if the key is not there. */
  public List<String> wordOrWords(String key) throws YamlFault {
    return has(key) && !isList(key) ? List.of(word(key)) : words(key);
  }

  /**
   * A quantity in the SI-coherent unit of its dimension.
   *
   * @throws YamlFault if it is missing, has no fitting unit or is not a number
   */
  public double quantity(String key, Dimension dimension) throws YamlFault {
    try {
      return Quantity.parse(word(key), dimension).si();
    } catch (QuantityException bad) {
      throw fault(key, key + ": " + bad.getMessage());
    }
  }

  /** A quantity above zero. */
  public double positive(String key, Dimension dimension) throws YamlFault {
    double si = quantity(key, dimension);
    if (!(si > 0)) {
      throw fault(key, key + " '" + word(key) + "' is not above zero");
    }
    return si;
  }

  /** A quantity above zero, empty if the key is not there. */
  public OptionalDouble maybePositive(String key, Dimension dimension) throws YamlFault {
    return has(key) ? OptionalDouble.of(positive(key, dimension)) : OptionalDouble.empty();
  }

  /** A quantity above zero in a unit, empty if the key is not there. */
  public OptionalDouble maybePositive(String key, Dimension dimension, String unit)
      throws YamlFault {
    return has(key)
        ? OptionalDouble.of(Unit.of(unit).fromSi(positive(key, dimension)))
        : OptionalDouble.empty();
  }

  private List<Node> items(String key) throws YamlFault {
    Node node = values.get(key);
    if (node == null) {
      return List.of();
    }
    if (!(node instanceof SequenceNode sequence)) {
      throw at(
          node, "'" + key + "' is not a list with '- ' before each entry, it is " + kind(node));
    }
    return sequence.getValue();
  }

  /** A fault at the value of a key, or at the mapping when the key is not there. */
  public YamlFault fault(String key, String what) {
    return at(values.getOrDefault(key, self), what);
  }

  /** A fault at a key itself, or at the mapping when the key is not there. */
  public YamlFault faultAtKey(String key, String what) {
    return at(keys.getOrDefault(key, self), what);
  }

  private static String kind(Node node) {
    return node instanceof MappingNode
        ? "a mapping"
        : node instanceof SequenceNode
            ? "a list"
            : ((ScalarNode) node).getValue().isBlank() ? "empty" : "one plain value";
  }

  /** Where the value of a key stands, or the mapping if the key is not there. */
  public Place place(String key) {
    return place(values.getOrDefault(key, self));
  }

  /** The keys in file order. */
  public List<String> keys() {
    return List.copyOf(keys.keySet());
  }

  private YamlFault at(Node node, String what) {
    return new YamlFault(place(node), what);
  }

  private Place place(Node node) {
    int line = node.getStartMark().map(m -> m.getLine() + 1).orElse(1);
    int column = node.getStartMark().map(m -> m.getColumn() + 1).orElse(1);
    return new Place(file, line, column);
  }
}
