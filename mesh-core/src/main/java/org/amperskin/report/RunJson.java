package org.amperskin.report;

import java.io.IOException;
import java.util.Optional;
import java.util.OptionalDouble;
import org.amperskin.job.KeptRun;
import org.amperskin.plating.Pulse;
import org.amperskin.plating.RampPoint;
import org.amperskin.plating.StepFigure;
import org.amperskin.plating.StepRun;

/** A step while it is done, for machines. */
public final class RunJson {
  private RunJson() {}

  /**
   * A moment.
   *
   * @param job name of the job
   * @param number place of the step in the job, from 1
   * @param kept how the step stood when it was last seen, if it was begun
   */
  public static String of(String job, int number, StepRun run, Optional<KeptRun> kept) {
    return Json.object(
        j -> {
          j.text("schema", "amperskin.run/1")
              .text("job", job)
              .count("number", number)
              .text("name", run.step().name())
              .flag("electric", run.electric())
              .number("elapsedS", run.elapsedS())
              .number("leftS", run.leftS())
              .number("share", run.share())
              .flag("done", run.done())
              .flag("handsBusy", run.handsBusy())
              .maybe("setA", run.setA())
              .maybe("readA", run.readA())
              .maybe("pulsePeakA", figure(run.step().figure(Pulse.PEAK)))
              .maybe("voltageV", run.step().voltageV())
              .maybe("chargeAh", run.step().chargeAh())
              .number("passedAh", run.passedAh())
              .number("leftAh", run.leftAh())
              .number("overAh", run.overAh())
              .maybe("round", run.pass().map(p -> OptionalDouble.of(p[0])).orElse(NONE))
              .maybe("rounds", run.pass().map(p -> OptionalDouble.of(p[1])).orElse(NONE));
          if (run.next().isPresent()) {
            j.object("next", k -> point(k, run.next().get()));
          } else {
            j.none("next");
          }
          j.objects("settings", run.step().ramp(), RunJson::point);
          if (kept.isPresent()) {
            j.object("kept", k -> kept(k, kept.get()));
          } else {
            j.none("kept");
          }
          j.texts("watch", run.watch());
          j.texts(
              "hazards", run.step().cautions().stream().map(c -> c.hazard()).distinct().toList());
        });
  }

  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static OptionalDouble figure(Optional<StepFigure> figure) {
    return figure.map(f -> OptionalDouble.of(f.value())).orElse(NONE);
  }

  private static void point(Json j, RampPoint point) throws IOException {
    j.number("atS", point.atS()).number("currentA", point.currentA());
  }

  private static void kept(Json j, KeptRun kept) throws IOException {
    j.number("elapsedS", kept.elapsedS())
        .number("passedAh", kept.passedAh())
        .maybe("readA", kept.readA())
        .maybe("chargeAh", kept.wholeAh())
        .flag("going", kept.going())
        .text("seen", kept.seen().toString());
  }
}
