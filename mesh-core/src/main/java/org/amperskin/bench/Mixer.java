package org.amperskin.bench;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.plating.Caution;
import org.amperskin.plating.DeveloperMix;
import org.amperskin.plating.Mark;
import org.amperskin.plating.Metal;
import org.amperskin.plating.Recipe;
import org.amperskin.units.Mass;
import org.amperskin.units.NearestWord;
import org.amperskin.units.Volume;

/**
 * Weighs out solutions by volume wanted or by what is in the jar.
 *
 * <p>Guaranteed: masses by the molar masses of {@link Chemical}; acids by weight at the strength of
 * the bottle; what a source's range does not hold is told. Not guaranteed: purity, additives, and
 * that the liquids fit the water: only what cannot fit at all is refused. Baths whose source gives
 * no make-up are bought ready-made, chromium ones first of all.
 */
public final class Mixer {
  /** The word for the resist's developer. */
  public static final String DEVELOPER = "developer";

  private static final double DEVELOPER_LOW = 5;
  private static final double DEVELOPER_HIGH = 10;

  private final Map<String, MakeUp> makeUps = MakeUp.all();
  private AcidStrength sulfuric =
      new AcidStrength(Chemical.SULFURIC_ACID, AcidStrength.SULFURIC_96);
  private AcidStrength hydrochloric =
      new AcidStrength(Chemical.HYDROCHLORIC_ACID, AcidStrength.HYDROCHLORIC_37);
  private Chemical chloride = Chemical.HYDROCHLORIC_ACID;
  private final Map<String, Double> strengths = new LinkedHashMap<>();

  /** What can be mixed here. */
  public List<String> solutions() {
    List<String> names = new ArrayList<>(List.of(DEVELOPER));
    names.addAll(makeUps.keySet());
    return List.copyOf(names);
  }

  /** The sulfuric acid at hand; 96 % unless told. */
  public Mixer sulfuric(double share) {
    sulfuric = new AcidStrength(Chemical.SULFURIC_ACID, share);
    return this;
  }

  /** The hydrochloric acid at hand; 37 % unless told. */
  public Mixer hydrochloric(double share) {
    hydrochloric = new AcidStrength(Chemical.HYDROCHLORIC_ACID, share);
    return this;
  }

  /** What brings the chloride: hydrochloric acid unless told, or sodium chloride. */
  public Mixer chloride(Chemical from) {
    if (from != Chemical.HYDROCHLORIC_ACID && from != Chemical.SODIUM_CHLORIDE) {
      throw new IllegalArgumentException(
          "chloride from " + from.label() + ": HCl or NaCl fit, they bring no other metal");
    }
    chloride = from;
    return this;
  }

  /**
   * Another strength than the usual.
   *
   * @param content a content of the make-up, or sodium hydroxide of the developer
   * @param gPerL its strength (g/L)
   */
  public Mixer strength(String content, double gPerL) {
    strengths.put(content, gPerL);
    return this;
  }

  /** Developer of a volume. */
  public Mix developer(double litres) {
    double gPerL = DeveloperMix.USUAL_G_PER_L;
    for (Map.Entry<String, Double> set : strengths.entrySet()) {
      if (Chemical.find(set.getKey()).orElse(null) != Chemical.SODIUM_HYDROXIDE) {
        throw new IllegalArgumentException(
            Chemical.unknown(set.getKey(), List.of(Chemical.SODIUM_HYDROXIDE)));
      }
      gPerL = set.getValue();
    }
    DeveloperMix mix = DeveloperMix.of(Volume.ofLitres(litres), gPerL);
    Chemical caustic = Chemical.SODIUM_HYDROXIDE;
    return new Mix(
        DEVELOPER,
        litres,
        List.of(
            new Mix.Item(
                caustic.label(),
                caustic.formula(),
                mix.sodiumHydroxide().inGrams(),
                OptionalDouble.empty(),
                gPerL,
                DEVELOPER_LOW,
                DEVELOPER_HIGH,
                caustic.label(),
                Mark.COMMON,
                "common practice, no source: 7 g/L; the resist maker's sheet goes before this")),
        litres,
        "",
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        "",
        OptionalDouble.of(mix.molPerLitre()),
        List.of(
            "Goggles and gloves first. Take cold water, a plastic or glass jar, never aluminium.",
            "Strew the sodium hydroxide into the water, little by little, stirring: it heats up."
                + " Never water onto the caustic.",
            "Top up to the volume, let it come to 20-25 C; label it. Make it fresh each day."),
        List.of("Air's carbon dioxide and resist use it up; stronger strips unexposed resist."),
        mix.cautions());
  }

  /** Developer that uses up what is in the jar. */
  public Mix developerWith(Mass sodiumHydroxide) {
    double gPerL = developer(1).items().get(0).strengthGPerL();
    return developer(sodiumHydroxide.inGrams() / gPerL);
  }

  /**
   * A bath of a volume.
   *
   * @throws IllegalArgumentException if its contents are not published, or cannot fit the volume
   */
  public Mix bath(Recipe recipe, double litres) {
    MakeUp makeUp = makeUp(recipe);
    checkNames(makeUp);
    Map<MakeUp.Content, Double> gPerL = new LinkedHashMap<>();
    for (MakeUp.Content c : makeUp.contents()) {
      gPerL.put(c, wanted(c));
    }
    List<Mix.Item> items = new ArrayList<>();
    Map<Chemical, Double> weighedGPerL = new EnumMap<>(Chemical.class);
    double liquidL = 0;
    for (Map.Entry<MakeUp.Content, Double> e : gPerL.entrySet()) {
      Mix.Item item = item(e.getKey(), e.getValue(), litres, weighedGPerL);
      items.add(item);
      liquidL += item.volumeMl().orElse(0) / 1000;
    }
    if (liquidL > litres) {
      throw new IllegalArgumentException(
          sulfuric
              + " is too weak: "
              + Plain.of(liquidL)
              + " L of it would have to go into "
              + Plain.of(litres)
              + " L of bath; take stronger acid");
    }
    double metal = 0;
    for (Map.Entry<Chemical, Double> e : weighedGPerL.entrySet()) {
      metal += e.getKey().metalShare() * e.getValue();
    }
    List<Caution> cautions = new ArrayList<>(recipe.allCautions());
    if (items.stream().anyMatch(i -> i.formula().equals("H2SO4")) && sulfuric.share() > 0.15) {
      cautions.add(
          cautions.size() - 1,
          new Caution(
              "acid on sale",
              "Sulfuric acid above 15 % is not for private persons without a licence in the"
                  + " European Union; other countries have rules of their own.",
              Mark.MEMORY,
              "Regulation (EU) 2019/1148, Annex I"));
    }
    return new Mix(
        recipe.id(),
        litres,
        items,
        Math.max(0, Math.min(0.6 * litres, litres - liquidL)),
        recipe.metal().symbol(),
        OptionalDouble.of(metal),
        OptionalDouble.of(makeUp.metalLowGPerL()),
        OptionalDouble.of(makeUp.metalHighGPerL()),
        makeUp.metalSource(),
        OptionalDouble.empty(),
        MixSteps.of(items, recipe),
        MixSteps.notes(recipe, sulfuric, items),
        cautions);
  }

  /** A bath that uses up what is in the jar; liquids by the strength of the bottle. */
  public Mix bathWith(Recipe recipe, Chemical have, double grams) {
    for (Mix.Item item : bath(recipe, 1).items()) {
      if (item.formula().equals(have.formula())) {
        return bath(recipe, grams / item.massG());
      }
    }
    throw new IllegalArgumentException(
        Chemical.unknown(have.label(), chemicals(makeUp(recipe))) + " " + recipe.id());
  }

  /** What goes into a solution. */
  public List<Chemical> chemicals(Recipe recipe) {
    return chemicals(makeUp(recipe));
  }

  /** The acid as it stands in the bottle, empty for what is kept dry. */
  public Optional<AcidStrength> bottle(Chemical chemical) {
    return switch (chemical) {
      case SULFURIC_ACID -> Optional.of(sulfuric);
      case HYDROCHLORIC_ACID -> Optional.of(hydrochloric);
      default -> Optional.empty();
    };
  }

  private List<Chemical> chemicals(MakeUp makeUp) {
    return makeUp.contents().stream().map(c -> c.chemical().orElse(chloride)).toList();
  }

  private MakeUp makeUp(Recipe recipe) {
    MakeUp makeUp = makeUps.get(recipe.id());
    if (makeUp == null) {
      String chromium =
          recipe.metal() == Metal.CHROMIUM && recipe.ion().valence() == 6
              ? " Chromic acid causes cancer and sets solvents alight: the ready-made solution is"
                  + " the safer way, a trivalent one safer still."
              : "";
      throw new IllegalArgumentException(
          recipe.id()
              + " has no make-up with a source here: its maker's solution is bought ready-made."
              + chromium
              + " These are mixed: "
              + String.join(", ", solutions()));
    }
    return makeUp;
  }

  private void checkNames(MakeUp makeUp) {
    List<String> names = makeUp.contents().stream().map(MakeUp.Content::name).toList();
    for (String set : strengths.keySet()) {
      if (makeUp.contents().stream().noneMatch(c -> isNamed(c, set))) {
        throw new IllegalArgumentException(
            "'"
                + set
                + "' is not in "
                + makeUp.recipe()
                + NearestWord.of(set, names)
                    .map(near -> ", did you mean '" + near + "'?")
                    .orElse("; " + names + " are"));
      }
    }
  }

  private static boolean isNamed(MakeUp.Content content, String word) {
    return content.name().equalsIgnoreCase(word)
        || (content.chemical().isPresent() && Chemical.find(word).equals(content.chemical()));
  }

  private double wanted(MakeUp.Content content) {
    return strengths.entrySet().stream()
        .filter(s -> isNamed(content, s.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse(content.typical());
  }

  private Mix.Item item(
      MakeUp.Content c, double gPerL, double litres, Map<Chemical, Double> weighedGPerL) {
    Chemical chemical = c.chemical().orElse(chloride);
    double pureGPerL =
        switch (c.counted()) {
          case SELF -> gPerL;
          case METAL -> gPerL / chemical.metalShare();
          case CHLORIDE -> gPerL / chemical.chlorideShare();
        };
    weighedGPerL.merge(chemical, pureGPerL, Double::sum);
    Optional<AcidStrength> bottle = bottle(chemical);
    double pureG = pureGPerL * litres;
    String counts =
        switch (c.counted()) {
          case SELF -> chemical.label();
          case METAL -> chemical.metal().orElseThrow().label();
          case CHLORIDE -> "chloride";
        };
    return new Mix.Item(
        bottle.map(AcidStrength::toString).orElse(chemical.label()),
        chemical.formula(),
        bottle.map(b -> pureG / b.share()).orElse(pureG),
        bottle.map(b -> OptionalDouble.of(b.millilitres(pureG))).orElse(OptionalDouble.empty()),
        gPerL,
        c.low(),
        c.high(),
        counts,
        c.mark(),
        c.source());
  }
}
