package org.amperskin.io.threemf;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.MeshBuilder;
import org.amperskin.io.common.PrintFileException;

/**
 * Places the objects of the build, each as often as it occurs.
 *
 * <p>Guaranteed: a mirrored object keeps its outward side; a cycle, a missing object and more
 * triangles than {@link Limits} allow are refused before anything is placed; nesting may be as deep
 * as it likes. Objects of type {@code support} and {@code solidsupport} come off the print and are
 * left out, {@code other} must not be printed and is left out, {@code surface} is read; all are
 * told.
 *
 * <p>Source: 3MF Core Specification 1.4, chapters 3 and 4; Production Extension 1.2, chapter 3.
 */
final class Assembly {
  private static final int OPEN = -1;

  private final ModelPackage parts;
  private final ModelPart root;
  private final Limits limits;
  private final MeshBuilder mesh = new MeshBuilder(1024);
  private final Told told = new Told();

  /** Triangles and copies below an object once its components are followed. */
  private final Map<ModelObject, long[]> sums = new IdentityHashMap<>();

  private final Map<String, Integer> labels = new HashMap<>();
  private int bodies;
  private long stored;

  private Assembly(ModelPackage parts, ModelPart root, Limits limits) {
    this.parts = parts;
    this.root = root;
    this.limits = limits;
  }

  static ThreeMfFile.Content of(
      ModelPackage parts, ModelPart root, Limits limits, Progress progress)
      throws IOException, PrintFileException {
    Assembly a = new Assembly(parts, root, limits);
    a.check();
    for (int i = 0; i < root.items.size(); i++) {
      Reference item = root.items.get(i);
      a.place(item);
      progress.at("placing", (i + 1.0) / root.items.size());
    }
    List<String> notes = a.told.notes(root);
    return new ThreeMfFile.Content(a.mesh, root.unit.symbol, a.stored, notes);
  }

  private void check() throws IOException, PrintFileException {
    if (root.items.isEmpty()) {
      throw PrintFileException.whole(
              "the build has no item, %d objects are not placed: nothing to measure",
              root.objects.size())
          .in(root.path);
    }
    long triangles = 0;
    long copies = 0;
    for (Reference item : root.items) {
      ModelObject o = object(item, root);
      count(o);
      triangles = Math.min(Long.MAX_VALUE / 4, triangles + sums.get(o)[0]);
      copies = Math.min(Long.MAX_VALUE / 4, copies + sums.get(o)[1]);
      if (triangles > limits.triangles() || copies > limits.instances()) {
        throw PrintFileException.whole(
                "%s and more triangles in %s copies of objects, at most %d in %d can be held",
                amount(triangles), amount(copies), limits.triangles(), limits.instances())
            .in(root.path);
      }
    }
    if (triangles == 0) {
      throw PrintFileException.whole(
              "the build places no triangle of the print: %s; nothing to measure", told.nothing())
          .in(root.path);
    }
  }

  private static String amount(long n) {
    return n >= Long.MAX_VALUE / 4 ? "over 10^18" : Long.toString(n);
  }

  private ModelObject object(Reference r, ModelPart from) throws IOException, PrintFileException {
    ModelPart part;
    try {
      part = r.path() == null ? from : parts.model(r.path());
    } catch (PrintFileException e) {
      throw r.path() == null ? e : e.in(from.path + ", line " + r.line());
    }
    ModelObject o = part.objects.get(r.objectId());
    if (o == null) {
      throw PrintFileException.atLine(
              r.line(), "points to object %d, which is not in %s", r.objectId(), part.path)
          .in(from.path);
    }
    return o;
  }

  /** Sums up below an object, depth first without recursion. */
  private void count(ModelObject top) throws IOException, PrintFileException {
    Deque<ModelObject> open = new ArrayDeque<>();
    Deque<int[]> at = new ArrayDeque<>();
    enter(top, open, at);
    while (!open.isEmpty()) {
      ModelObject o = open.element();
      int next = at.element()[0]++;
      if (next < o.components.size()) {
        Reference r = o.components.get(next);
        ModelObject below = object(r, o.part);
        long[] known = sums.get(below);
        if (known == null) {
          enter(below, open, at);
        } else if (known[1] == OPEN) {
          throw PrintFileException.atLine(
                  r.line(), "%s contains itself, by way of %s", below.title(), o.title())
              .in(o.part.path);
        }
        continue;
      }
      open.pop();
      at.pop();
      long triangles = o.counts() ? o.triangles() : 0;
      long copies = 1;
      for (Reference r : o.components) {
        long[] below = sums.get(object(r, o.part));
        triangles = Math.min(Long.MAX_VALUE / 4, triangles + below[0]);
        copies = Math.min(Long.MAX_VALUE / 4, copies + below[1]);
      }
      // Copies without a triangle are not followed, so they cost nothing.
      sums.put(o, new long[] {triangles, triangles == 0 ? 0 : copies});
    }
  }

  private void enter(ModelObject o, Deque<ModelObject> open, Deque<int[]> at)
      throws PrintFileException {
    if (o.hasMesh && !o.components.isEmpty()) {
      throw PrintFileException.atLine(o.line, "%s has both a mesh and components", o.title())
          .in(o.part.path);
    }
    if (!o.hasMesh && o.components.isEmpty() && o.foreignShape != null && o.counts()) {
      throw PrintFileException.atLine(
              o.line, "the shape of %s is not read: %s", o.title(), o.foreignShape)
          .in(o.part.path);
    }
    if (o.sliced && o.counts() && (o.lowResolution || o.hasMesh && o.triangles() == 0)) {
      throw PrintFileException.atLine(
              o.line,
              "%s has its true shape in slices (%s), which are not read",
              o.title(),
              Namespaces.SLICE)
          .in(o.part.path);
    }
    told.met(o);
    sums.put(o, new long[] {0, OPEN});
    open.push(o);
    at.push(new int[1]);
  }

  private record Placed(ModelObject object, Transform transform, String name) {}

  private void place(Reference item) throws IOException, PrintFileException {
    Deque<Placed> open = new ArrayDeque<>();
    open.push(placed(item, root, Transform.IDENTITY, ""));
    while (!open.isEmpty()) {
      Placed p = open.pop();
      ModelObject o = p.object();
      if (sums.get(o)[0] == 0) {
        continue;
      }
      if (o.components.isEmpty()) {
        add(p);
        continue;
      }
      for (int i = o.components.size() - 1; i >= 0; i--) {
        open.push(placed(o.components.get(i), o.part, p.transform(), p.name()));
      }
    }
  }

  private Placed placed(Reference r, ModelPart from, Transform outer, String outerName)
      throws IOException, PrintFileException {
    ModelObject o = object(r, from);
    Transform t = r.transform();
    if (o.part.unit != from.unit) {
      t = Transform.scale(o.part.unit.in(from.unit)).then(t);
      told.otherUnit(o.part, from);
    }
    return new Placed(o, t.then(outer), o.name.isEmpty() ? outerName : o.name);
  }

  private void add(Placed p) throws PrintFileException {
    ModelObject o = p.object();
    bodies++;
    String body = unique(p.name().isEmpty() ? "body " + bodies : p.name());
    stored += o.xyz.length / 3;
    int[] welded = new int[o.xyz.length / 3];
    Arrays.fill(welded, -1);
    boolean turn = p.transform().mirrors();
    if (p.transform().singular()) {
      throw PrintFileException.atLine(
              o.line,
              "%s is flattened by its transforms together (determinant %s)",
              o.title(),
              p.transform().determinant())
          .in(o.part.path);
    }
    Map<Long, String> groups = new HashMap<>();
    long last = -1;
    for (int t = 0; t < o.triangles(); t++) {
      long group = o.properties == null ? o.propertyGroup : o.properties[2 * t];
      long index = o.properties == null ? o.propertyIndex : o.properties[2 * t + 1];
      long key = group << 32 | index;
      if (t == 0 || key != last) {
        mesh.group(groups.computeIfAbsent(key, k -> group(body, o, (int) group, (int) index)));
        last = key;
      }
      int a = vertex(p, welded, o.corners[3 * t]);
      int b = vertex(p, welded, o.corners[3 * t + 1]);
      int c = vertex(p, welded, o.corners[3 * t + 2]);
      mesh.face(a, turn ? c : b, turn ? b : c);
    }
  }

  private static String group(String body, ModelObject o, int group, int index) {
    return group == 0 ? body : body + " / " + o.part.property(group, index);
  }

  private String unique(String name) {
    int times = labels.merge(name, 1, Integer::sum);
    if (times == 1) {
      return name;
    }
    return unique(name + " (" + times + ")");
  }

  private int vertex(Placed p, int[] welded, int v) throws PrintFileException {
    if (welded[v] < 0) {
      double[] xyz = p.object().xyz;
      double x = xyz[3 * v];
      double y = xyz[3 * v + 1];
      double z = xyz[3 * v + 2];
      if (!p.transform().identity()) {
        double tx = p.transform().apply(x, y, z, 0);
        double ty = p.transform().apply(x, y, z, 1);
        z = p.transform().apply(x, y, z, 2);
        x = tx;
        y = ty;
      }
      double farthest = Math.max(Math.abs(x), Math.max(Math.abs(y), Math.abs(z)));
      if (!(farthest <= MeshBuilder.MAX_COORDINATE)) {
        throw PrintFileException.atLine(
                p.object().line,
                "%s: a vertex goes to %s, %s, %s; a coordinate is finite and at most %s",
                p.object().title(),
                x,
                y,
                z,
                MeshBuilder.MAX_COORDINATE)
            .in(p.object().part.path);
      }
      welded[v] = mesh.vertex(x, y, z);
    }
    return welded[v];
  }
}
