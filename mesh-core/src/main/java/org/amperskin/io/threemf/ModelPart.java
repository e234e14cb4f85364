package org.amperskin.io.threemf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A model part as read: objects, property names and, in the root part, the build. */
final class ModelPart {
  final String path;
  FileUnit unit = FileUnit.MILLIMETER;
  boolean unitTold;
  boolean hasBuild;
  final Map<Integer, ModelObject> objects = new LinkedHashMap<>();
  final List<Reference> items = new ArrayList<>();

  /** Names of the members of each property group. */
  final Map<Integer, List<String>> properties = new HashMap<>();

  /** Items that carry {@code printable="0"}, which is not of the standard. */
  int unprintableItems;

  boolean gradients;

  ModelPart(String path) {
    this.path = path;
  }

  /** Name of a property, whether it was understood or not. */
  String property(int group, int index) {
    List<String> names = properties.get(group);
    return names != null && index >= 0 && index < names.size()
        ? names.get(index)
        : "property " + group + "." + index;
  }
}
