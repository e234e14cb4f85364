package org.amperskin.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.amperskin.bench.Prices;
import org.amperskin.geom.Box;
import org.amperskin.io.PrintFile;
import org.amperskin.job.CheckedFilm;
import org.amperskin.job.Comparison;
import org.amperskin.job.Estimate;
import org.amperskin.job.MeasuredPart;
import org.amperskin.job.PartList;
import org.amperskin.job.RackJobs;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.plating.EfficiencyCurve;
import org.amperskin.plating.Figure;
import org.amperskin.plating.FigureKey;
import org.amperskin.plating.Material;
import org.amperskin.plating.Note;
import org.amperskin.plating.Rack;
import org.amperskin.plating.Recipe;
import org.amperskin.plating.Schedule;
import org.amperskin.plating.Total;
import org.amperskin.region.Region;
import org.amperskin.region.RegionKind;
import org.amperskin.region.RegionRule;
import org.amperskin.skin.Displacement;
import org.amperskin.skin.SprayReach;
import org.amperskin.units.Unit;

/**
 * Answers for machines: JSON whose keys carry units, each with the version of its shape under
 * {@code schema}. The shapes are written down as JSON Schema beside the class, in {@code schema}.
 */
public final class JsonReports {
  private JsonReports() {}

  /**
   * A part measured in full.
   *
   * @param list true to list its bodies and groups
   */
  public static String measure(MeasuredPart part, boolean list) {
    return Json.object(
        j -> {
          j.text("schema", "amperskin.measure/1");
          measured(j, part);
          if (list) {
            PartList parts = PartList.of(part.diagnosis());
            j.object("parts", k -> parts(k, parts));
          } else {
            j.none("parts");
          }
        });
  }

  private static void parts(Json j, PartList parts) throws IOException {
    j.objects(
        "bodies",
        parts.bodies(),
        (k, b) -> {
          k.count("number", b.number())
              .count("triangles", b.triangles())
              .number("areaMm2", b.areaMm2())
              .maybe("volumeMm3", b.volumeMm3());
          bounds(k, b.box());
          k.flag("closed", b.closed()).flag("inner", b.inner());
        });
    j.objects(
        "groups",
        parts.groups(),
        (k, g) -> {
          k.text("name", g.name()).count("triangles", g.triangles()).number("areaMm2", g.areaMm2());
          bounds(k, g.box());
        });
  }

  /** A part read and summed only; what was not looked at is null. */
  public static String quick(
      Path file, PrintFile.Quick quick, String unit, boolean unitAssumed, double scale) {
    return Json.object(
        j -> {
          j.text("schema", "amperskin.measure/1");
          j.text("file", file.toString())
              .text("format", quick.format().label())
              .text("unit", unit)
              .flag("unitAssumed", unitAssumed)
              .number("scale", scale)
              .count("triangles", quick.triangles())
              .number("vertices", Double.NaN)
              .maybeText("closed", Optional.empty())
              .number("bodies", Double.NaN)
              .number("areaMm2", quick.areaMm2())
              .number("wettedAreaMm2", Double.NaN)
              .number("wettedAreaErrorMm2", Double.NaN)
              .number("paintedAreaMm2", Double.NaN)
              .number("paintedAreaErrorMm2", Double.NaN)
              .number("volumeMm3", Double.NaN)
              .number("displacedVolumeMm3", Double.NaN)
              .number("displacedVolumeErrorMm3", Double.NaN);
          bounds(j, quick.box());
          j.objects("problems", List.<String>of(), (k, p) -> k.text("kind", p));
          j.texts("notes", List.of("read and summed only")).none("parts");
        });
  }

  private static void measured(Json j, MeasuredPart part) throws IOException {
    MeshDiagnosis d = part.diagnosis();
    OptionalDouble wetted = part.skin().wettedAreaMm2();
    Displacement displaced = part.skin().displacement();
    j.text("file", part.file().toString())
        .text("format", part.print().format().label())
        .text("unit", part.unit())
        .flag("unitAssumed", part.unitAssumed())
        .number("scale", part.scale())
        .count("triangles", d.mesh().faceCount())
        .count("vertices", d.mesh().vertexCount())
        .flag("closed", d.closed())
        .count("bodies", d.bodies().size())
        .number("areaMm2", d.areaMm2())
        .maybe("wettedAreaMm2", wetted)
        .number("wettedAreaErrorMm2", wetted.isPresent() ? part.skin().errorMm2() : Double.NaN)
        .number("paintedAreaMm2", painted(part, SprayReach::areaMm2))
        .number("paintedAreaErrorMm2", painted(part, SprayReach::errorMm2))
        .maybe("volumeMm3", d.volumeMm3())
        .maybe("displacedVolumeMm3", displaced.volumeMm3())
        .number(
            "displacedVolumeErrorMm3",
            displaced.volumeMm3().isPresent() ? displaced.errorMm3() : Double.NaN);
    bounds(j, d.box());
    j.objects(
        "problems",
        d.problems(),
        (k, p) -> {
          k.text("kind", p.kind().label()).count("count", p.count());
          if (p.where() == null) {
            k.numbers("where");
          } else {
            k.numbers("where", p.where().x(), p.where().y(), p.where().z());
          }
          k.number("areaMm2", p.areaMm2()).text("message", p.message());
        });
    j.texts(
        "notes",
        Stream.of(
                part.print().notes().stream(),
                part.skin().parts().stream().map(p -> p.kind().label() + ": " + p.message()),
                part.skin().doubts().stream(),
                part.sizeQuestion().stream())
            .flatMap(s -> s)
            .toList());
  }

  private static double painted(MeasuredPart part, ToDoubleFunction<SprayReach> figure) {
    return part.spray().map(figure::applyAsDouble).orElse(Double.NaN);
  }

  private static void bounds(Json j, Box b) throws IOException {
    j.object(
        "boundsMm",
        k ->
            k.numbers("min", b.minX(), b.minY(), b.minZ())
                .numbers("max", b.maxX(), b.maxY(), b.maxZ()));
  }

  /**
   * One mask on a part.
   *
   * @param film its film, if light passes it
   */
  public static String mask(Region region, Optional<CheckedFilm> film, List<String> notes) {
    return Json.object(
        j -> {
          j.text("schema", "amperskin.mask/1");
          j.number("skinAreaMm2", region.split().skinAreaMm2())
              .number("openAreaMm2", region.split().openAreaMm2())
              .number("closedAreaMm2", region.split().closedAreaMm2())
              .number("exposedAreaMm2", region.split().areaMm2(RegionKind.EXPOSED))
              .number("maskedAreaMm2", region.split().areaMm2(RegionKind.MASKED))
              .number("unreachedAreaMm2", region.split().areaMm2(RegionKind.UNREACHED))
              .number("unpaintedAreaMm2", region.split().areaMm2(RegionKind.UNPAINTED))
              .number("stoppedOffAreaMm2", region.split().areaMm2(RegionKind.STOPPED_OFF))
              .number("errorMm2", region.errorMm2())
              .number("openFraction", MaskText.fraction(region))
              .number("edgeLengthMm", region.edgeLengthMm());
          j.objects("films", film.stream().toList(), FilmCheckJson::write);
          j.texts("notes", notes);
        });
  }

  /** A worked-out job. */
  public static String plan(Estimate e) {
    return plan(e, Optional.empty());
  }

  /** A worked-out job with its cost, if there are prices. */
  public static String plan(Estimate e, Optional<Prices.Bill> bill) {
    return Json.object(
        j -> {
          j.text("schema", "amperskin.plan/1").text("job", e.job().name());
          planned(j, e);
          j.objects("costs", bill.stream().toList(), JsonReports::cost);
        });
  }

  private static void cost(Json j, Prices.Bill bill) throws IOException {
    j.text("currency", bill.currency())
        .objects(
            "rows",
            bill.rows(),
            (o, r) -> o.text("material", r.material().name()).maybe("cost", r.cost()))
        .number("total", bill.total());
    StepJson.band(j, "totalBand", bill.sum().band());
    j.objects("swings", bill.sum().swings(), StepJson::swing)
        .objects(
            "precious",
            bill.preciousMg().entrySet(),
            (o, p) -> o.text("metal", p.getKey()).number("massMg", p.getValue()))
        .texts("notes", bill.notes());
  }

  private static void planned(Json j, Estimate e) throws IOException {
    j.object("part", k -> measured(k, e.part()));
    j.objects(
        "regions",
        e.regions().entrySet(),
        (k, r) -> {
          k.text("name", r.getKey());
          region(k, r.getValue());
        });
    j.objects("films", e.films(), FilmCheckJson::write);
    j.objects("steps", e.plan().steps(), StepJson::write);
    j.objects("materials", e.plan().materials(), JsonReports::material);
    j.objects("inBath", e.inBath().figures(), StepJson::figure);
    j.number("chargeAh", e.plan().chargeAh()).number("timeS", e.plan().timeS());
    Total time = e.plan().platingTime();
    StepJson.band(j, "timeBandS", time.band());
    j.objects("timeSwings", time.swings(), StepJson::swing);
    Schedule schedule = e.plan().schedule();
    j.object(
        "schedule",
        k ->
            k.number("handsS", schedule.handsS())
                .number("elapsedS", schedule.elapsedS())
                .objects(
                    "entries",
                    schedule.entries(),
                    (l, s) ->
                        l.count("number", s.number())
                            .text("step", s.name())
                            .number("startS", s.startS())
                            .number("handsS", s.handsS())
                            .number("waitS", s.waitS())
                            .number("endS", s.endS()))
                .texts("untimed", schedule.untimed()));
    j.texts("notes", e.artworkNotes());
    j.texts("warnings", e.warnings());
  }

  /** A word that stays the same while labels for people may change. */
  private static String kind(RegionRule rule) {
    if (rule.films().isEmpty()) {
      return rule.within().isEmpty() && rule.except().isEmpty() ? "skin" : "selection";
    }
    List<String> kinds =
        rule.films().stream()
            .map(
                film ->
                    switch (film.kind()) {
                      case STOP_OFF -> "stop-off";
                      case POSITIVE_RESIST -> "film-positive";
                      case NEGATIVE_RESIST -> "film-negative";
                    })
            .distinct()
            .toList();
    return kinds.size() == 1 ? kinds.get(0) : "film-and-stop-off";
  }

  private static void region(Json j, Region r) throws IOException {
    j.text("kind", kind(r.rule()))
        .number("areaMm2", r.openAreaMm2())
        .number("errorMm2", r.errorMm2())
        .number("openFraction", MaskText.fraction(r))
        .number("maskedAreaMm2", r.split().areaMm2(RegionKind.MASKED))
        .number("stoppedOffAreaMm2", r.split().areaMm2(RegionKind.STOPPED_OFF))
        .number("unreachedAreaMm2", r.split().areaMm2(RegionKind.UNREACHED))
        .number("unpaintedAreaMm2", r.split().areaMm2(RegionKind.UNPAINTED))
        .number("edgeLengthMm", r.edgeLengthMm());
  }

  private static void material(Json j, Material m) throws IOException {
    j.text("name", m.name()).number("amount", m.amount());
    StepJson.band(j, "amountBand", m.band());
    j.text("unit", m.unit()).text("why", m.why());
    j.objects("swings", m.total().swings(), StepJson::swing);
  }

  /** Several parts in one tank. */
  public static String rack(RackJobs jobs) {
    return Json.object(
        j -> {
          Rack rack = jobs.rack();
          j.text("schema", "amperskin.rack/1")
              .text("recipe", jobs.recipe().id())
              .number("densityADm2", jobs.densityADm2())
              .number("areaDm2", rack.areaDm2())
              .number("mostA", rack.mostA())
              .number("chargeAh", rack.chargeAh())
              .number("bathL", rack.bathL());
          j.objects(
              "parts",
              rack.parts(),
              (k, p) ->
                  k.text("name", p.name())
                      .number("areaDm2", p.areaDm2())
                      .number("currentA", p.currentA())
                      .number("chargeAh", p.chargeAh())
                      .number("timeS", p.timeS()));
          j.objects(
              "stages",
              rack.stages(),
              (k, s) ->
                  k.number("atS", s.atS())
                      .texts("out", s.out())
                      .number("setA", s.setA())
                      .number("areaDm2", s.areaDm2())
                      .number("chargeAh", s.chargeAh())
                      .maybe("forgottenADm2", s.forgottenADm2()));
          j.texts("warnings", jobs.warnings());
        });
  }

  /** Jobs side by side. */
  public static String compare(Comparison comparison) {
    return Json.object(
        j -> {
          j.text("schema", "amperskin.compare/1");
          j.objects(
              "jobs",
              comparison.jobs(),
              (k, e) -> {
                k.text("job", e.job().name());
                planned(k, e);
              });
          j.objects(
              "differences",
              comparison.rows(),
              (k, row) ->
                  k.text("quantity", row.label())
                      .text("unit", row.unit())
                      .numbers(
                          "values",
                          row.values().stream().mapToDouble(v -> v.orElse(Double.NaN)).toArray())
                      .maybe("spread", row.spread()));
        });
  }

  /** Recipes with every number, mark and source. */
  public static String recipes(List<Recipe> recipes) {
    return Json.object(
        j -> {
          j.text("schema", "amperskin.recipes/1");
          j.objects("recipes", recipes, JsonReports::recipe);
        });
  }

  private static void recipe(Json j, Recipe r) throws IOException {
    j.text("id", r.id())
        .text("name", r.name())
        .text("how", r.how().key())
        .text("metal", r.metal().symbol())
        .count("valence", r.ion().valence())
        .flag("alkaline", r.alkaline())
        .text("claim", r.claim().key());
    j.objects(
        "figures",
        r.figures().entrySet(),
        (k, f) -> {
          Map.Entry<FigureKey, Figure> e = f;
          k.text("name", e.getKey().key())
              .number("low", e.getValue().low())
              .number("typical", e.getValue().typical())
              .number("high", e.getValue().high())
              .text("unit", e.getValue().unit().text())
              .text("mark", e.getValue().mark().letter())
              .text("source", e.getValue().source());
        });
    j.objects(
        "efficiencyByDensity",
        r.efficiencyByDensity().map(EfficiencyCurve::points).orElse(List.of()),
        (k, p) ->
            k.number("densityADm2", Unit.of("A/dm2").fromSi(p.densityAm2()))
                .number("efficiency", p.efficiency()));
    j.objects("makeUp", r.makeUp(), JsonReports::note);
    j.objects("notes", r.notes(), JsonReports::note);
    j.objects(
        "cautions",
        r.allCautions(),
        (k, c) ->
            k.text("hazard", c.hazard())
                .text("text", c.text())
                .text("mark", c.mark().letter())
                .text("source", c.source()));
  }

  static void note(Json j, Note n) throws IOException {
    j.text("text", n.text()).text("mark", n.mark().letter()).text("source", n.source());
  }
}
