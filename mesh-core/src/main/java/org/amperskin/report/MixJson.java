package org.amperskin.report;

import java.util.Optional;
import org.amperskin.bench.Mix;

/** A weighed-out solution as JSON. */
public final class MixJson {
  private MixJson() {}

  /** The answer. */
  public static String of(Mix mix) {
    return Json.object(
        j ->
            j.text("schema", "amperskin.mix/1")
                .text("solution", mix.solution())
                .number("volumeL", mix.volumeL())
                .number("waterL", mix.waterL())
                .objects(
                    "items",
                    mix.items(),
                    (o, i) ->
                        o.text("name", i.name())
                            .text("formula", i.formula())
                            .number("massG", i.massG())
                            .maybe("volumeMl", i.volumeMl())
                            .text("counts", i.counts())
                            .number("strengthGPerL", i.strengthGPerL())
                            .range("rangeGPerL", true, i.lowGPerL(), i.highGPerL())
                            .flag("inRange", i.inRange())
                            .text("mark", i.mark().letter())
                            .text("source", i.source()))
                .maybeText("metal", Optional.of(mix.metalSymbol()).filter(s -> !s.isEmpty()))
                .maybe("metalGPerL", mix.metalGPerL())
                .range(
                    "metalRangeGPerL",
                    mix.metalLowGPerL().isPresent(),
                    mix.metalLowGPerL().orElse(0),
                    mix.metalHighGPerL().orElse(0))
                .maybe("molPerLitre", mix.molPerLitre())
                .texts("steps", mix.steps())
                .texts("notes", mix.notes())
                .objects(
                    "cautions",
                    mix.cautions(),
                    (o, c) ->
                        o.text("hazard", c.hazard())
                            .text("text", c.text())
                            .text("mark", c.mark().letter())
                            .text("source", c.source())));
  }
}
