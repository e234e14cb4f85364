package org.amperskin.job;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.amperskin.plating.PrintMaterial;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.plating.TankShape;
import org.amperskin.region.MaskKind;
import org.amperskin.skin.Skin;
import org.amperskin.units.Dimension;
import org.amperskin.units.NearestWord;
import org.amperskin.yaml.Place;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/**
 * Reads a job file: YAML 1.2, paths relative to the file.
 *
 * <p>Guaranteed: a fault is told with line, column and the nearest right word; unknown keys are
 * faults. Parts of a job that this version does not use yet are refused by name rather than passed
 * over.
 */
public final class JobFile {
  private static final long LARGEST = 1 << 20;
  private static final Set<String> KEYS =
      Set.of(
          "part",
          "paint",
          "contacts",
          "tank",
          "supply",
          "resist",
          "prices",
          "light",
          "film",
          "region",
          "step");
  private static final Set<String> NOT_YET = Set.of("significant");

  private final Path folder;
  private final YamlMap top;
  private final RecipeLibrary recipes;

  private JobFile(Path folder, YamlMap top, RecipeLibrary recipes) {
    this.folder = folder;
    this.top = top;
    this.recipes = recipes;
  }

  /** True if a file is to be read as a job, by its name's ending. */
  public static boolean looksLikeJob(Path file) {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    return name.endsWith(".yaml") || name.endsWith(".yml");
  }

  /**
   * Reads a job.
   *
   * @throws YamlFault if something in it is wrong
   * @throws IOException if it cannot be read
   */
  public static Job read(Path file, RecipeLibrary recipes) throws IOException, YamlFault {
    return parse(text(bytes(file), file.toString()), file, recipes);
  }

  /** A job from the text of its file. */
  static Job parse(String text, Path file, RecipeLibrary recipes) throws YamlFault {
    Path folder = file.getParent() == null ? Path.of("") : file.getParent();
    String name = file.getFileName().toString().replaceFirst("\\.ya?ml$", "");
    return parse(text, file.toString(), name, folder, recipes);
  }

  /** What a job file holds. */
  static byte[] bytes(Path file) throws IOException {
    OrdinaryFile.require(file, "a job file");
    if (Files.size(file) > LARGEST) {
      throw new IOException(
          file + ": a job file of " + Files.size(file) + " bytes; " + LARGEST + " fit");
    }
    return Files.readAllBytes(file);
  }

  /** The text of a job file, without a byte order mark. */
  static String text(byte[] bytes, String label) throws YamlFault {
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length);
    CoderResult end = StandardCharsets.UTF_8.newDecoder().decode(in, out, true);
    String read = out.flip().toString();
    if (end.isError()) {
      int line = 1 + (int) read.chars().filter(c -> c == '\n').count();
      int column = read.length() - read.lastIndexOf('\n');
      throw new YamlFault(
          new Place(label, line, column),
          String.format(
              Locale.ROOT,
              "byte 0x%02x at offset %d is not UTF-8: a job is a text file",
              bytes[in.position()],
              in.position()));
    }
    return read.startsWith("\ufeff") ? read.substring(1) : read;
  }

  /** Reads a job from a text. */
  static Job parse(String text, String label, String name, Path folder, RecipeLibrary recipes)
      throws YamlFault {
    YamlMap top = YamlMap.of(text, label, "job");
    for (String key : top.keys()) {
      if (NOT_YET.contains(key)) {
        throw top.faultAtKey(key, "'" + key + "' is not used by this version; take it out");
      }
    }
    top.onlyKeys(KEYS);
    return new JobFile(folder, top, recipes).job(name);
  }

  private Job job(String name) throws YamlFault {
    Optional<Job.PaintSpec> paint = paint();
    boolean resistive = paint.isPresent() && paint.get().sheetResistanceOhm().isPresent();
    MaskKind resist = MaskKind.POSITIVE_RESIST;
    OptionalDouble resistUm = OptionalDouble.empty();
    if (top.has("resist")) {
      YamlMap map = section("resist", "kind", "thickness", "dose");
      if (map.has("kind")) {
        resist = kind(map, "kind", "positive", "negative");
      }
      resistUm = map.maybePositive("thickness", Dimension.LENGTH, "um");
    }
    Map<String, Job.FilmSpec> films = new LinkedHashMap<>();
    Map<String, Job.RegionSpec> regions = new LinkedHashMap<>();
    if (top.has("film")) {
      YamlMap map = top.map("film");
      for (String film : map.keys()) {
        if (film.equals(Job.WHOLE_SKIN)) {
          throw map.faultAtKey(film, "'" + film + "' is taken: it is the region of the whole skin");
        }
        films.put(film, new FilmReader(folder).read(map.map(film), resist));
        regions.put(film, new Job.RegionSpec(List.of(film), List.of(), List.of(), map.place(film)));
      }
    }
    if (top.has("region")) {
      YamlMap map = top.map("region");
      for (String region : map.keys()) {
        if (films.containsKey(region) || region.equals(Job.WHOLE_SKIN)) {
          throw map.faultAtKey(
              region,
              "'"
                  + region
                  + "' is taken: films and '"
                  + Job.WHOLE_SKIN
                  + "' are regions of that name already");
        }
        regions.put(region, RegionReader.read(map.map(region), films.keySet(), map.place(region)));
      }
    }
    MotifReader.check(films, regions);
    return new Job(
        name,
        part(),
        paint,
        contacts(),
        tank(),
        supply(),
        resistUm,
        top.has("prices") ? Optional.of(FilmReader.path(top, "prices", folder)) : Optional.empty(),
        LightReader.read(top),
        java.util.Collections.unmodifiableMap(films),
        java.util.Collections.unmodifiableMap(regions),
        List.of(),
        new StepReader(recipes, regions.keySet(), resistive).read(top));
  }

  private YamlMap section(String key, String... known) throws YamlFault {
    YamlMap map = top.map(key);
    map.onlyKeys(Set.of(known));
    return map;
  }

  private Job.PartSpec part() throws YamlFault {
    YamlMap map =
        section("part", "file", "unit", "scale", "material", "pick", "open", "infill", "walls");
    Optional<String> unit = Optional.empty();
    if (map.has("unit")) {
      unit = Optional.of(map.word("unit"));
      try {
        Directions.millimetresPer(unit.get());
      } catch (IllegalArgumentException bad) {
        throw map.fault("unit", "unit: " + bad.getMessage());
      }
    }
    double scale = map.has("scale") ? map.positive("scale", Dimension.FRACTION) : 1;
    Optional<String> material = Optional.empty();
    if (map.has("material")) {
      String word = map.word("material");
      if (PrintMaterial.find(word).isEmpty()) {
        List<String> known = PrintMaterial.known().stream().map(PrintMaterial::name).toList();
        String hint =
            NearestWord.of(word, known)
                .map(near -> ", did you mean '" + near + "'?")
                .orElse("; known are " + known);
        throw map.fault("material", "material '" + word + "' is not known" + hint);
      }
      material = Optional.of(word);
    }
    return new Job.PartSpec(
        FilmReader.path(map, "file", folder),
        unit,
        scale,
        material,
        map.wordOrWords("pick"),
        map.has("open")
            ? map.oneOf(
                "open",
                map.word("open"),
                Skin.OpenBodies.values(),
                o -> o.name().toLowerCase(java.util.Locale.ROOT))
            : Skin.OpenBodies.CLOSED,
        inside(map),
        Optional.of(map.place(map.has("pick") ? "pick" : "file")));
  }

  private static Job.InsideSpec inside(YamlMap map) throws YamlFault {
    OptionalDouble infill = OptionalDouble.empty();
    if (map.has("infill")) {
      double share = map.quantity("infill", Dimension.FRACTION);
      if (!(share >= 0 && share <= 1)) {
        throw map.fault("infill", "infill '" + map.word("infill") + "': 0 % to 100 % fit");
      }
      infill = OptionalDouble.of(share);
    }
    return new Job.InsideSpec(infill, map.maybePositive("walls", Dimension.LENGTH, "mm"));
  }

  private Optional<Job.PaintSpec> paint() throws YamlFault {
    if (!top.has("paint")) {
      return Optional.empty();
    }
    YamlMap map = section("paint", "sheet-resistance", "reach", "also", "not");
    if (map.keys().isEmpty()) {
      throw top.fault("paint", "paint says nothing: 'sheet-resistance' or 'reach' fit");
    }
    boolean everywhere = false;
    if (map.has("reach")) {
      Boolean[] both = {false, true};
      everywhere = map.oneOf("reach", map.word("reach"), both, e -> e ? "everywhere" : "spray");
    }
    return Optional.of(
        new Job.PaintSpec(
            map.maybePositive("sheet-resistance", Dimension.SHEET_RESISTANCE),
            everywhere,
            RegionReader.selectors(map, "also"),
            RegionReader.selectors(map, "not"),
            top.place("paint")));
  }

  private Job.ContactSpec contacts() throws YamlFault {
    if (!top.has("contacts")) {
      return Job.ContactSpec.NONE;
    }
    YamlMap map = section("contacts", "wire", "length", "farthest");
    OptionalDouble wire = map.maybePositive("wire", Dimension.LENGTH);
    OptionalDouble length = map.maybePositive("length", Dimension.LENGTH);
    if (wire.isPresent() != length.isPresent()) {
      throw top.faultAtKey(
          "contacts", "'wire' (diameter) and 'length' (bare, submerged) go together");
    }
    return new Job.ContactSpec(wire, length, map.maybePositive("farthest", Dimension.LENGTH, "mm"));
  }

  private Job.TankSpec tank() throws YamlFault {
    if (!top.has("tank")) {
      return Job.TankSpec.NONE;
    }
    YamlMap map = section("tank", "volume", "spacing", "size", "density");
    return new Job.TankSpec(
        map.maybePositive("volume", Dimension.VOLUME),
        map.maybePositive("spacing", Dimension.LENGTH),
        inner(map),
        map.maybePositive("density", Dimension.DENSITY));
  }

  private static Optional<TankShape.Inner> inner(YamlMap map) throws YamlFault {
    if (!map.has("size")) {
      return Optional.empty();
    }
    try {
      double[] mm = Directions.block(map.word("size"));
      return Optional.of(new TankShape.Inner(mm[0], mm[1], mm[2]));
    } catch (IllegalArgumentException bad) {
      throw map.fault("size", bad.getMessage());
    }
  }

  private Job.SupplySpec supply() throws YamlFault {
    if (!top.has("supply")) {
      return Job.SupplySpec.NONE;
    }
    YamlMap map = section("supply", "current", "voltage", "current-step", "voltage-step");
    return new Job.SupplySpec(
        map.maybePositive("current", Dimension.CURRENT),
        map.maybePositive("voltage", Dimension.VOLTAGE),
        map.maybePositive("current-step", Dimension.CURRENT),
        map.maybePositive("voltage-step", Dimension.VOLTAGE));
  }

  private static MaskKind kind(YamlMap map, String key, String positive, String negative)
      throws YamlFault {
    MaskKind[] kinds = {MaskKind.POSITIVE_RESIST, MaskKind.NEGATIVE_RESIST};
    return map.oneOf(
        key, map.word(key), kinds, k -> k == MaskKind.POSITIVE_RESIST ? positive : negative);
  }
}
