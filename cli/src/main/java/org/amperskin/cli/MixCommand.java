package org.amperskin.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.amperskin.bench.AcidStrength;
import org.amperskin.bench.Chemical;
import org.amperskin.bench.Mix;
import org.amperskin.bench.Mixer;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.report.MixJson;
import org.amperskin.report.MixText;
import org.amperskin.units.Dimension;
import org.amperskin.units.Mass;
import org.amperskin.units.NearestWord;
import org.amperskin.units.Quantity;
import org.amperskin.units.QuantityException;
import org.amperskin.units.Unit;
import org.amperskin.yaml.YamlFault;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code amperskin mix}. */
@Command(
    name = "mix",
    sortOptions = false,
    description = {"Weighs out a developer or a bath, with the order of adding.", ""},
    footer = {
      "",
      "Example:",
      "  amperskin mix copper-acid-high-throw 2L",
      "  amperskin mix copper-acid-high-throw 2L --acid 37%% --chloride NaCl",
      "  amperskin mix developer 500mL",
      "  amperskin mix developer --have \"NaOH 10 g\"",
      "",
      "Exit: 0 weighed out, 1 not mixed here, 2 usage."
    })
final class MixCommand extends Verb {
  @Parameters(
      index = "0",
      paramLabel = "SOLUTION",
      description = "developer, or a recipe with a make-up.")
  private String solution;

  @Parameters(index = "1", arity = "0..1", paramLabel = "AMOUNT", description = "As 2L or 500mL.")
  private String amount;

  @Option(
      names = "--have",
      paramLabel = "WHAT",
      description = "Use up a chemical instead: \"copper sulfate 150 g\", \"NaOH 10 g\".")
  private String have;

  @Option(
      names = "--acid",
      paramLabel = "PERCENT",
      description = "Sulfuric acid at hand, by weight: 96%% (usual), battery acid 37%%.")
  private String acid;

  @Option(
      names = "--chloride",
      paramLabel = "FROM",
      description = "HCl (usual) or NaCl brings the chloride.")
  private String chloride;

  @Option(
      names = "--hydrochloric",
      paramLabel = "PERCENT",
      description = "Hydrochloric acid at hand, by weight; 37%% is usual.")
  private String hydrochloric;

  @Option(
      names = "--strength",
      paramLabel = "WHAT",
      description = "Another strength: \"sulfuric acid 210 g/L\"; may be repeated.")
  private List<String> strengths = List.of();

  @Option(names = "--json", description = "Answer as JSON.")
  private boolean json;

  @Override
  public Integer call() throws IOException, UsageFault, YamlFault {
    if ((amount == null) == (have == null)) {
      throw new UsageFault("mix wants an AMOUNT, as 2L, or --have, one of them");
    }
    Mixer mixer = mixer();
    Mix mix;
    if (solution.equals(Mixer.DEVELOPER)) {
      mix = asked(() -> developer(mixer));
    } else {
      Recipe recipe = recipe(mixer);
      if (!mixer.solutions().contains(recipe.id())) {
        try {
          mixer.bath(recipe, 1);
        } catch (IllegalArgumentException bought) {
          complain(bought.getMessage());
        }
        return ExitCode.REFUSAL;
      }
      mix = asked(() -> bath(mixer, recipe));
    }
    print(json ? MixJson.of(mix) : MixText.of(mix));
    return ExitCode.ANSWER;
  }

  /** Something the mixer is asked; what it will not do is a fault of usage. */
  private interface Asked {
    Mix mix() throws UsageFault;
  }

  private static Mix asked(Asked question) throws UsageFault {
    try {
      return question.mix();
    } catch (IllegalArgumentException cannot) {
      throw new UsageFault(cannot.getMessage());
    }
  }

  private Recipe recipe(Mixer mixer) throws IOException, UsageFault, YamlFault {
    RecipeLibrary library = library();
    if (!library.ids().contains(solution)) {
      List<String> known = new ArrayList<>(mixer.solutions());
      throw new UsageFault(
          "solution '"
              + solution
              + "' is not known"
              + NearestWord.of(solution, known)
                  .map(near -> ", did you mean '" + near + "'?")
                  .orElse("; these are mixed: " + String.join(", ", known)));
    }
    return library.find(solution);
  }

  private Mixer mixer() throws UsageFault {
    Mixer mixer = new Mixer();
    try {
      if (acid != null) {
        mixer.sulfuric(positive("--acid", acid, Dimension.FRACTION));
      }
      if (hydrochloric != null) {
        mixer.hydrochloric(positive("--hydrochloric", hydrochloric, Dimension.FRACTION));
      }
      if (chloride != null) {
        mixer.chloride(
            Chemical.find(chloride)
                .orElseThrow(
                    () -> new UsageFault("--chloride " + chloride + " is not HCl or NaCl")));
      }
    } catch (IllegalArgumentException wrong) {
      throw new UsageFault(wrong.getMessage());
    }
    for (String strength : strengths) {
      String[] split = split("--strength", strength, "sulfuric acid 210 g/L");
      double gPerL = positive("--strength " + split[0], split[1], Dimension.CONCENTRATION);
      mixer.strength(split[0], gPerL);
    }
    return mixer;
  }

  /** A name, then a quantity. */
  private static String[] split(String option, String text, String example) throws UsageFault {
    java.util.regex.Matcher m =
        java.util.regex.Pattern.compile("(.*\\S)\\s+([0-9.]+\\s*\\S.*)").matcher(text.strip());
    if (!m.matches()) {
      throw new UsageFault(option + " '" + text + "' has not the shape '" + example + "'");
    }
    return new String[] {m.group(1), m.group(2)};
  }

  private Mix developer(Mixer mixer) throws UsageFault {
    if (have == null) {
      return mixer.developer(litres());
    }
    String[] jar = split("--have", have, "NaOH 10 g");
    if (Chemical.find(jar[0]).orElse(null) != Chemical.SODIUM_HYDROXIDE) {
      throw new UsageFault("--have '" + jar[0] + "': developer is made of sodium hydroxide (NaOH)");
    }
    return mixer.developerWith(new Mass(positive("--have " + jar[0], jar[1], Dimension.MASS)));
  }

  private double litres() throws UsageFault {
    return Unit.of("L").fromSi(positive("AMOUNT", amount, Dimension.VOLUME));
  }

  private Mix bath(Mixer mixer, Recipe recipe) throws UsageFault {
    if (have == null) {
      return mixer.bath(recipe, litres());
    }
    String[] jar = split("--have", have, "copper sulfate 150 g");
    Optional<Chemical> chemical = Chemical.find(jar[0]);
    if (chemical.isEmpty() || !mixer.chemicals(recipe).contains(chemical.get())) {
      List<String> names =
          mixer.chemicals(recipe).stream().flatMap(c -> c.names().stream()).toList();
      throw new UsageFault(
          "--have '"
              + jar[0]
              + "' is not in "
              + recipe.id()
              + NearestWord.of(jar[0], names)
                  .map(near -> ", did you mean '" + near + "'?")
                  .orElse("; " + names + " are"));
    }
    return mixer.bathWith(recipe, chemical.get(), grams(mixer, chemical.get(), jar));
  }

  private static double grams(Mixer mixer, Chemical chemical, String[] jar) throws UsageFault {
    Optional<AcidStrength> bottle = mixer.bottle(chemical);
    if (bottle.isPresent()) {
      try {
        double ml = Unit.of("mL").fromSi(Quantity.parse(jar[1], Dimension.VOLUME).si());
        return ml * bottle.get().gPerMl();
      } catch (QuantityException notOne) {
        // read as a mass, whose message says what fits
      }
    }
    return Unit.of("g").fromSi(positive("--have " + jar[0], jar[1], Dimension.MASS));
  }
}
