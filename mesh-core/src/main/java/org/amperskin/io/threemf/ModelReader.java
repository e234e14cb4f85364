package org.amperskin.io.threemf;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.amperskin.io.common.PrintFileException;

/**
 * Reads one model part: resources and, for the root part, the build.
 *
 * <p>Guaranteed: elements of name spaces that are not known are passed over, unless the part
 * requires them; indices are in range; the part is read to its end, so that its CRC holds.
 */
final class ModelReader {
  private final XmlCursor x;
  private final ModelPart model;
  private final boolean root;

  private ModelReader(String path, GuardedStream stream, boolean root) throws PrintFileException {
    this.x = new XmlCursor(path, stream);
    this.model = new ModelPart(path);
    this.root = root;
  }

  /**
   * Reads a part.
   *
   * @param root whether the package names it as the start: only its build counts
   */
  static ModelPart read(String path, GuardedStream stream, boolean root) throws PrintFileException {
    ModelReader reader = new ModelReader(path, stream, root);
    reader.model();
    return reader.model;
  }

  private void model() throws PrintFileException {
    x.root();
    if (!x.isCore("model")) {
      throw x.fault(
          "expected the element model of %s, found %s of %s",
          Namespaces.CORE, x.name(), x.space().isEmpty() ? "no name space" : x.space());
    }
    checkRequired();
    String unit = x.attribute("unit");
    if (unit != null) {
      model.unit =
          FileUnit.named(unit.strip())
              .orElseThrow(
                  () ->
                      x.fault(
                          "unit \"%s\" is not one of micron, millimeter, centimeter, inch, foot,"
                              + " meter",
                          cut(unit)));
      model.unitTold = true;
    }
    int depth = x.depth();
    while (x.child(depth)) {
      if (x.isCore("resources")) {
        resources();
      } else if (x.isCore("build") && root) {
        model.hasBuild = true;
        build();
      } else {
        x.leave();
      }
    }
    x.finish();
  }

  private void checkRequired() throws PrintFileException {
    String required = x.attribute("requiredextensions");
    if (required == null) {
      return;
    }
    for (String prefix : required.strip().split("\\s+")) {
      if (prefix.isEmpty()) {
        continue;
      }
      String uri = x.spaceOf(prefix);
      if (uri == null) {
        throw x.fault(
            "requires the extension with prefix \"%s\", which is not declared", cut(prefix));
      }
      if (Namespaces.SECURE.equals(uri)) {
        throw x.fault("the file is encrypted (it requires %s); this cannot be read", uri);
      }
      if (!Namespaces.understood(uri)) {
        throw x.fault("the file requires an extension that is not read: %s", cut(uri));
      }
    }
  }

  private void resources() throws PrintFileException {
    int depth = x.depth();
    while (x.child(depth)) {
      if (x.isCore("object")) {
        object();
      } else if (x.isCore("basematerials")) {
        members("base", "name", "displaycolor", "material");
      } else if (x.is(Namespaces.MATERIAL, "colorgroup")) {
        members("color", "color", "color", "colour");
      } else if (x.is(Namespaces.MATERIAL, "texture2dgroup")) {
        layer("texture");
      } else if (x.is(Namespaces.MATERIAL, "compositematerials")) {
        layer("mixture");
      } else if (x.is(Namespaces.MATERIAL, "multiproperties")) {
        layer("layers");
      } else {
        x.leave();
      }
    }
  }

  /** A property group whose members have names of their own. */
  private void members(String element, String first, String second, String kind)
      throws PrintFileException {
    int id = id("id");
    List<String> names = new ArrayList<>();
    int depth = x.depth();
    while (x.child(depth)) {
      if (x.name().equals(element)) {
        String name = x.attribute(first);
        if (name == null || name.isBlank()) {
          name = x.attribute(second);
        }
        names.add(
            name == null || name.isBlank() ? kind + " " + id + "." + names.size() : label(name));
      }
      x.leave();
    }
    group(id, names);
  }

  /** A property group whose members differ from point to point: one name for all. */
  private void layer(String kind) throws PrintFileException {
    int id = id("id");
    String name = kind + " " + id;
    List<String> names = new ArrayList<>();
    int depth = x.depth();
    while (x.child(depth)) {
      names.add(name);
      x.leave();
    }
    group(id, names);
  }

  private void group(int id, List<String> names) throws PrintFileException {
    if (model.properties.put(id, names) != null) {
      throw x.fault("property group %d a second time", id);
    }
  }

  private void object() throws PrintFileException {
    ModelObject o = new ModelObject(model, id("id"), x.line());
    if (model.objects.put(o.id, o) != null) {
      throw x.fault("object %d a second time", o.id);
    }
    String name = x.attribute("name");
    o.name = name == null ? "" : label(name);
    o.type = type(x.attribute("type"), o.id);
    o.propertyGroup = optional("pid", 0);
    o.propertyIndex = optional("pindex", 0);
    o.sliced = x.attribute(Namespaces.SLICE, "slicestackid") != null;
    o.lowResolution = "lowres".equals(x.attribute(Namespaces.SLICE, "meshresolution"));
    int depth = x.depth();
    while (x.child(depth)) {
      if (x.isCore("mesh")) {
        if (o.hasMesh) {
          throw x.fault("object %d has a second mesh", o.id);
        }
        o.hasMesh = true;
        new MeshReader(x, o).mesh();
      } else if (x.isCore("components")) {
        o.components = components(o);
      } else {
        if (!Namespaces.core(x.space())) {
          o.foreignShape = x.name() + " of " + cut(x.space());
        }
        x.leave();
      }
    }
  }

  private ModelObject.Type type(String word, int id) throws PrintFileException {
    if (word == null) {
      return ModelObject.Type.MODEL;
    }
    for (ModelObject.Type t : ModelObject.Type.values()) {
      if (t.word().equals(word.strip().toLowerCase(Locale.ROOT))) {
        return t;
      }
    }
    throw x.fault(
        "object %d: type \"%s\" is not one of model, solidsupport, support, surface, other",
        id, cut(word));
  }

  private List<Reference> components(ModelObject o) throws PrintFileException {
    List<Reference> all = new ArrayList<>();
    int depth = x.depth();
    while (x.child(depth)) {
      if (x.isCore("component")) {
        Reference r = reference("component of object " + o.id);
        if (r.path() != null && !root) {
          throw x.fault(
              "object %d points to %s; only the root model part may point to other parts",
              o.id, cut(r.path()));
        }
        all.add(r);
      }
      x.leave();
    }
    return List.copyOf(all);
  }

  private void build() throws PrintFileException {
    int depth = x.depth();
    while (x.child(depth)) {
      if (x.isCore("item")) {
        model.items.add(reference("item " + (model.items.size() + 1) + " of the build"));
        if ("0".equals(x.attribute("printable"))) {
          model.unprintableItems++;
        }
      }
      x.leave();
    }
  }

  private Reference reference(String what) throws PrintFileException {
    String path = x.attribute(Namespaces.PRODUCTION, "path");
    String matrix = x.attribute("transform");
    Transform t = matrix == null ? Transform.IDENTITY : transform(matrix, what);
    return new Reference(path, id("objectid"), t, x.line());
  }

  private Transform transform(String text, String what) throws PrintFileException {
    String[] words = text.strip().split("\\s+");
    if (words.length != 12) {
      throw x.fault("%s: a transform has 12 numbers, found %d", what, words.length);
    }
    double[] m = new double[12];
    for (int i = 0; i < 12; i++) {
      m[i] = Numbers.real(words[i]);
      if (!Double.isFinite(m[i])) {
        throw x.fault("%s: \"%s\" in the transform is not a number", what, cut(words[i]));
      }
    }
    Transform t = Transform.of(m);
    if (t.singular()) {
      throw x.fault(
          "%s: the transform is singular (determinant %s), which flattens the object",
          what, t.determinant());
    }
    return t;
  }

  private int id(String attribute) throws PrintFileException {
    String text = x.attribute(attribute);
    if (text == null) {
      throw x.fault("%s without %s", x.name(), attribute);
    }
    int id = Numbers.index(text);
    if (id < 1) {
      throw x.fault(
          "%s: \"%s\" of %s is not a whole number above 0", x.name(), cut(text), attribute);
    }
    return id;
  }

  private int optional(String attribute, int otherwise) throws PrintFileException {
    String text = x.attribute(attribute);
    if (text == null) {
      return otherwise;
    }
    int value = Numbers.index(text);
    if (value < 0) {
      throw x.fault("%s: \"%s\" of %s is not a whole number", x.name(), cut(text), attribute);
    }
    return value;
  }

  /** A name for people: one line, not endless. */
  private static String label(String text) {
    return cut(text.strip().replaceAll("\\s+", " "));
  }

  static String cut(String text) {
    return text.length() > 100 ? text.substring(0, 100) + "..." : text;
  }
}
