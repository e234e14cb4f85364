package org.amperskin.io.threemf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a build leaves out or takes for granted, as notes for people. */
final class Told {
  private static final int MOST_NAMES = 5;

  private final Map<ModelObject.Type, List<String>> leftOut = new LinkedHashMap<>();
  private final List<String> surfaces = new ArrayList<>();
  private final List<String> lattices = new ArrayList<>();
  private final List<String> empty = new ArrayList<>();
  private final Set<ModelObject> reached = new LinkedHashSet<>();
  private final Set<String> units = new LinkedHashSet<>();
  private final Set<ModelPart> parts = new LinkedHashSet<>();

  /** An object that the build reaches. */
  void met(ModelObject o) {
    parts.add(o.part);
    reached.add(o);
    if (!o.components.isEmpty()) {
      return; // its type says nothing, by the standard
    }
    if (!o.counts()) {
      leftOut.computeIfAbsent(o.type, t -> new ArrayList<>()).add(o.title());
    } else if (o.type == ModelObject.Type.SURFACE) {
      surfaces.add(o.title());
    }
    if (o.counts() && o.beams > 0) {
      lattices.add(o.title());
    } else if (o.counts() && o.triangles() == 0) {
      empty.add(o.title());
    }
  }

  void otherUnit(ModelPart part, ModelPart from) {
    units.add(
        part.path + " is in " + part.unit.word() + ", " + from.path + " in " + from.unit.word());
  }

  /** Why there is no triangle. */
  String nothing() {
    List<String> why = new ArrayList<>();
    if (!lattices.isEmpty()) {
      why.add("only a beam lattice, which is not read, in " + names(lattices));
    }
    leftOut.forEach((type, titles) -> why.add("type " + type.word() + ": " + names(titles)));
    if (why.isEmpty()) {
      why.add("no triangles in " + names(empty));
    }
    return String.join("; ", why);
  }

  List<String> notes(ModelPart root) {
    List<String> notes = new ArrayList<>();
    if (!root.unitTold) {
      notes.add("the file names no unit: millimeter, as its standard says");
    }
    notes.addAll(units);
    leftOut.forEach(
        (type, titles) -> notes.add("left out as of type " + type.word() + ": " + names(titles)));
    if (!surfaces.isEmpty()) {
      notes.add("of type surface, read as it is: " + names(surfaces));
    }
    if (!lattices.isEmpty()) {
      notes.add("beam lattice left out, its beams are missing in the area: " + names(lattices));
    }
    if (!empty.isEmpty()) {
      notes.add("without a triangle: " + names(empty));
    }
    parts.add(root);
    List<String> unplaced = new ArrayList<>();
    for (ModelPart part : parts) {
      for (ModelObject o : part.objects.values()) {
        if (!reached.contains(o)) {
          unplaced.add(o.title() + (part == root ? "" : " of " + part.path));
        }
      }
    }
    if (!unplaced.isEmpty()) {
      notes.add("not in the build, left out: " + names(unplaced));
    }
    if (root.unprintableItems > 0) {
      notes.add(
          root.unprintableItems
              + " items are marked printable=\"0\", which is not of the standard; they are counted");
    }
    if (parts.stream().anyMatch(p -> p.gradients)) {
      notes.add("colour gradients: the colour of a face's first corner names its group");
    }
    return List.copyOf(notes);
  }

  private static String names(List<String> titles) {
    return titles.size() <= MOST_NAMES
        ? String.join(", ", titles)
        : String.join(", ", titles.subList(0, MOST_NAMES))
            + " and "
            + (titles.size() - MOST_NAMES)
            + " more";
  }
}
