package org.amperskin.io.threemf;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Enumeration;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.io.common.ProgressStream;

/**
 * The archive: parts by name and the relationships between them.
 *
 * <p>Definition: part names are compared without regard to case, as the Open Packaging Conventions
 * (ECMA-376 part 2) say, with escapes undone.
 *
 * <p>Guaranteed: {@link Limits} hold while a part is unpacked; its size and CRC are checked; zip64,
 * stored entries and data descriptors are read, by way of the archive's directory. The directory is
 * held in memory: at most twice the file's size.
 */
final class ModelPackage implements AutoCloseable {
  private final ZipFile zip;
  private final Limits limits;
  private final Progress progress;
  private final Map<String, ZipEntry> entries = new HashMap<>();
  private final Set<String> twice = new HashSet<>();
  private final Map<String, ModelPart> models = new HashMap<>();
  private final Set<String> encrypted = new HashSet<>();
  private boolean hasKeys;
  private long unpacked;

  private ModelPackage(ZipFile zip, Limits limits, Progress progress) throws PrintFileException {
    this.zip = zip;
    this.progress = progress;
    this.limits = limits;
    if (zip.size() > limits.entries()) {
      throw PrintFileException.whole(
          "the archive has %d entries, at most %d are read", zip.size(), limits.entries());
    }
    Enumeration<? extends ZipEntry> all = zip.entries();
    while (all.hasMoreElements()) {
      ZipEntry e = all.nextElement();
      String key = key("/" + e.getName());
      if (!e.isDirectory() && entries.putIfAbsent(key, e) != null) {
        twice.add(key);
      }
    }
  }

  static ModelPackage open(Path file, Limits limits, Progress progress)
      throws IOException, PrintFileException {
    ZipFile zip;
    try {
      zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8);
    } catch (ZipException | EOFException | IllegalArgumentException e) {
      throw PrintFileException.whole(
          "damaged ZIP archive of %d bytes: %s", Files.size(file), e.getMessage());
    }
    try {
      return new ModelPackage(zip, limits, progress);
    } catch (PrintFileException e) {
      zip.close();
      throw e;
    } catch (RuntimeException e) {
      // The JDK's reader meets some broken directories with unchecked exceptions.
      zip.close();
      throw PrintFileException.whole("damaged ZIP archive of %d bytes: %s", Files.size(file), e);
    }
  }

  /** The part that the package starts with, read. */
  ModelPart root() throws IOException, PrintFileException {
    String start = null;
    if (has("/_rels/.rels")) {
      start = relations("/_rels/.rels", "/");
      if (start == null) {
        throw PrintFileException.whole(
            "a ZIP archive without a 3D model: no relationship of type %s in /_rels/.rels",
            Namespaces.MODEL_RELATION);
      }
    } else if (has("/3D/3dmodel.model")) {
      start = "/3D/3dmodel.model";
    } else {
      throw PrintFileException.whole(
          "a ZIP archive of %d entries without a 3D model (no /_rels/.rels)", entries.size());
    }
    int slash = start.lastIndexOf('/');
    String own = start.substring(0, slash + 1) + "_rels/" + start.substring(slash + 1) + ".rels";
    if (has(own)) {
      relations(own, start);
    }
    return model(start, true);
  }

  /** A model part, read once. */
  ModelPart model(String path) throws IOException, PrintFileException {
    return model(resolve(path, "/"), false);
  }

  private ModelPart model(String path, boolean root) throws IOException, PrintFileException {
    ModelPart known = models.get(key(path));
    if (known != null) {
      return known;
    }
    if (encrypted.contains(key(path))) {
      throw PrintFileException.whole(
              "the part is encrypted (relationship %s); this cannot be read",
              Namespaces.ENCRYPTED_RELATION)
          .in(path);
    }
    try (GuardedStream in = open(path)) {
      ModelPart model = ModelReader.read(path, in, root);
      models.put(key(path), model);
      unpacked += in.count();
      return model;
    } catch (PrintFileException e) {
      if (hasKeys) {
        throw PrintFileException.whole(
            "%s (the package has a key store, %s: it may be encrypted)",
            e.getMessage(), Namespaces.KEYS_RELATION);
      }
      throw e;
    }
  }

  /** Reads relationships and returns the first model they name, resolved; null if none. */
  private String relations(String path, String source) throws IOException, PrintFileException {
    String first = null;
    try (GuardedStream in = open(path)) {
      XmlCursor x = new XmlCursor(path, in);
      x.root();
      if (!x.is(Namespaces.RELATIONS, "Relationships")) {
        throw x.fault("expected Relationships, found %s", x.name());
      }
      int depth = x.depth();
      while (x.child(depth)) {
        String type = x.attribute("Type");
        String target = x.attribute("Target");
        if (Namespaces.KEYS_RELATION.equals(type)) {
          hasKeys = true;
        } else if (Namespaces.ENCRYPTED_RELATION.equals(type) && target != null) {
          encrypted.add(key(resolve(target, source)));
        } else if (Namespaces.MODEL_RELATION.equals(type) && target != null && first == null) {
          first = resolve(target, source);
        }
        x.leave();
      }
      x.finish();
      unpacked += in.count();
    }
    return first;
  }

  private boolean has(String path) {
    return entries.containsKey(key(path));
  }

  private GuardedStream open(String path) throws IOException, PrintFileException {
    ZipEntry entry = entries.get(key(path));
    if (entry == null) {
      throw PrintFileException.whole("the archive has no part %s", path);
    }
    if (twice.contains(key(path))) {
      throw PrintFileException.whole("the archive has two parts %s", path);
    }
    if (entry.getSize() > limits.partBytes()) {
      throw PrintFileException.whole(
              "unpacks to %d bytes, the limit is %d", entry.getSize(), limits.partBytes())
          .in(path);
    }
    try {
      InputStream raw = zip.getInputStream(entry);
      if (raw == null) {
        throw PrintFileException.whole("damaged ZIP archive: the entry cannot be found").in(path);
      }
      InputStream told = new ProgressStream(raw, entry.getSize(), progress);
      return new GuardedStream(told, path, entry, limits, unpacked);
    } catch (IOException | RuntimeException e) {
      throw PrintFileException.whole("damaged ZIP archive: the entry cannot be opened: %s", e)
          .in(path);
    }
  }

  /** The absolute name a target has, seen from a part. */
  private static String resolve(String target, String source) {
    String full =
        target.startsWith("/") ? target : source.substring(0, source.lastIndexOf('/') + 1) + target;
    Deque<String> steps = new ArrayDeque<>();
    for (String step : full.split("/")) {
      if (step.equals("..")) {
        steps.pollLast();
      } else if (!step.isEmpty() && !step.equals(".")) {
        steps.addLast(step);
      }
    }
    return "/" + String.join("/", steps);
  }

  private static String key(String path) {
    String plain = unescaped(path.replace('\\', '/')).toLowerCase(Locale.ROOT);
    return plain.startsWith("//") ? plain.substring(1) : plain;
  }

  private static String unescaped(String text) {
    if (text.indexOf('%') < 0) {
      return text;
    }
    byte[] in = text.getBytes(StandardCharsets.UTF_8);
    byte[] out = new byte[in.length];
    int to = 0;
    for (int i = 0; i < in.length; i++) {
      int high = i + 2 < in.length ? Character.digit(in[i + 1], 16) : -1;
      int low = i + 2 < in.length ? Character.digit(in[i + 2], 16) : -1;
      if (in[i] == '%' && high >= 0 && low >= 0) {
        out[to++] = (byte) (16 * high + low);
        i += 2;
      } else {
        out[to++] = in[i];
      }
    }
    return new String(out, 0, to, StandardCharsets.UTF_8);
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }
}
