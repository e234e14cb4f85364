package org.amperskin.yaml;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * The text of a YAML file in which single values are exchanged while all else stays as it is.
 *
 * <p>Guaranteed: every character outside the exchanged value, or outside the line or entry that is
 * added, stays: comments, order, quotes, line ends. Not guaranteed: values that are lists or
 * mappings, or that stand behind an anchor or alias; those are refused. Method: the marks of the
 * tree that SnakeYAML Engine composes. Cost: linear in the text, once a change.
 *
 * @param text the whole file
 */
public record YamlText(String text) {
  /** A scalar that YAML takes as it stands: no sign of its own, and a dash only before a word. */
  private static final Pattern PLAIN =
      Pattern.compile("([\\w+.]|-\\S)[^\\r\\n#:\\[\\]{},&*!|>'\"`]*");

  /**
   * The value of a key.
   *
   * @param path keys from the outermost mapping inward
   * @return the value without quotes; empty if it is not there or no plain value
   */
  public Optional<String> get(List<String> path) {
    Node at = root();
    for (String key : path) {
      NodeTuple entry = at instanceof MappingNode mapping ? entry(mapping, key) : null;
      if (entry == null) {
        return Optional.empty();
      }
      at = entry.getValueNode();
    }
    return at instanceof ScalarNode scalar ? Optional.of(scalar.getValue()) : Optional.empty();
  }

  /**
   * The same with one value exchanged, or added at the end of its mapping.
   *
   * @param path keys from the outermost mapping inward; all but the last must be there
   * @param value one line of text that needs no quotes
   * @throws IllegalArgumentException if the value cannot be exchanged
   */
  public YamlText with(List<String> path, String value) {
    if (!PLAIN.matcher(value).matches()) {
      throw new IllegalArgumentException("'" + value + "' is not one plain value");
    }
    Node at = root();
    for (String key : path.subList(0, path.size() - 1)) {
      NodeTuple entry = at instanceof MappingNode mapping ? entry(mapping, key) : null;
      if (entry == null) {
        throw new IllegalArgumentException("there is no '" + key + "' in the file");
      }
      at = entry.getValueNode();
    }
    String last = path.get(path.size() - 1);
    if (!(at instanceof MappingNode mapping)) {
      throw new IllegalArgumentException("'" + last + "' does not stand in a mapping");
    }
    NodeTuple entry = entry(mapping, last);
    if (entry == null) {
      return added(mapping, last, value);
    }
    if (!(entry.getValueNode() instanceof ScalarNode old)
        || old.getAnchor().isPresent()
        || index(old.getStartMark()) < index(entry.getKeyNode().getEndMark())) {
      throw new IllegalArgumentException(
          "'" + last + "' is a list, a mapping, or shared by an anchor; change it in the file");
    }
    return exchanged(index(old.getStartMark()), index(old.getEndMark()), value);
  }

  private YamlText added(MappingNode mapping, String key, String value) {
    List<NodeTuple> entries = mapping.getValue();
    if (mapping.getFlowStyle() == FlowStyle.FLOW) {
      int end =
          entries.isEmpty()
              ? index(mapping.getStartMark()) + 1
              : index(entries.get(entries.size() - 1).getValueNode().getEndMark());
      return exchanged(end, end, (entries.isEmpty() ? "" : ", ") + key + ": " + value);
    }
    // before the first entry, so that no comment at the mapping's end is torn from it
    int first = index(entries.get(0).getKeyNode().getStartMark());
    int line = text.lastIndexOf('\n', first - 1) + 1;
    String indent = text.substring(line, first);
    if (!indent.isBlank()) {
      throw new IllegalArgumentException(
          "'" + key + "' cannot be added to a mapping that begins within a line");
    }
    String ending = text.contains("\r\n") ? "\r\n" : "\n";
    return exchanged(first, first, key + ": " + value + ending + indent);
  }

  private YamlText exchanged(int from, int to, String by) {
    return new YamlText(text.substring(0, from) + by + text.substring(to));
  }

  private static NodeTuple entry(MappingNode mapping, String key) {
    for (NodeTuple entry : mapping.getValue()) {
      if (entry.getKeyNode() instanceof ScalarNode word && word.getValue().equals(key)) {
        return entry;
      }
    }
    return null;
  }

  private Node root() {
    try {
      return new Compose(LoadSettings.builder().setMaxAliasesForCollections(0).build())
          .composeString(text)
          .orElseThrow(() -> new IllegalArgumentException("the file is empty"));
    } catch (YamlEngineException broken) {
      throw new IllegalArgumentException("not YAML: " + broken.getMessage(), broken);
    }
  }

  /** Marks count code points, strings count chars. */
  private int index(Optional<Mark> mark) {
    return text.offsetByCodePoints(0, mark.orElseThrow().getIndex());
  }
}
