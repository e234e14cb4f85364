package org.amperskin.report;

import java.nio.file.Path;
import java.util.Locale;
import org.amperskin.geom.Box;
import org.amperskin.io.PrintFile;
import org.amperskin.job.MeasuredPart;
import org.amperskin.job.PartList;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.MeshProblem;
import org.amperskin.skin.Displacement;
import org.amperskin.skin.SprayReach;

/** What a part measures, for people. */
public final class MeasureText {
  private MeasureText() {}

  /** A part measured in full. */
  public static String of(MeasuredPart part) {
    TextPage page = new TextPage();
    MeshDiagnosis d = part.diagnosis();
    page.heading(head(part.file(), part.print().format(), part.unit(), part.unitAssumed()));
    scale(page, part.scale());
    page.line(
        "triangles",
        "%s, on %s vertices (%s stored)",
        Figures.count(d.mesh().faceCount()),
        Figures.count(d.mesh().vertexCount()),
        Figures.count(part.print().storedVertices()));
    page.line(
        "bodies",
        "%s%s",
        Figures.count(d.bodies().size()),
        d.closed() ? ", surface closed" : ", surface open");
    page.line("box", "%s", box(d.box()));
    page.line(
        "volume",
        "%s",
        d.volumeMm3().isPresent()
            ? Figures.volume(d.volumeMm3().getAsDouble())
                + (d.has(MeshProblem.Kind.OVERLAP) ? ", what bodies share counted twice" : "")
            : "not given: the surface is open or its sides disagree");
    page.line("displaced", "%s", displaced(part.skin().displacement()));
    page.line("area", "%s (%.6g mm2), all faces as stored", Figures.area(d.areaMm2()), d.areaMm2());
    if (part.skin().wettedAreaMm2().isPresent()) {
      double wetted = part.skin().wettedAreaMm2().getAsDouble();
      double error = part.skin().errorMm2();
      page.line(
          "wetted area",
          "%s (%.6g mm2)%s",
          Figures.area(wetted),
          wetted,
          error > 0 ? ", off by " + Figures.area(error) + " at most" : "");
    } else {
      page.line("wetted area", "not given: %s", String.join("; ", part.skin().doubts()));
    }
    if (part.spray().isPresent()) {
      SprayReach spray = part.spray().get();
      page.line(
          "painted area",
          "%s (%.6g mm2)%s: what sprayed paint reaches",
          Figures.area(spray.areaMm2()),
          spray.areaMm2(),
          spray.errorMm2() > 0
              ? String.format(java.util.Locale.ROOT, ", not sure of %.3g mm2", spray.errorMm2())
              : "");
    }
    part.skin().parts().forEach(p -> page.line("", "%s: %s", p.kind().label(), p.message()));
    if (part.unitAssumed()) {
      page.line("unit", "mm is assumed: the file does not say; --unit tells another");
    }
    part.sizeQuestion().ifPresent(q -> page.item("?", q));
    part.print().notes().forEach(n -> page.line("note", "%s", n));
    if (d.problems().isEmpty()) {
      page.line("problems", "none found");
    }
    for (MeshProblem p : d.problems()) {
      page.item("!", p.kind().label() + ": " + p.message() + place(p));
    }
    return page.toString();
  }

  private static String displaced(Displacement d) {
    if (d.volumeMm3().isEmpty()) {
      return "not given: " + d.why();
    }
    return Figures.volume(d.volumeMm3().getAsDouble())
        + " of liquid"
        + (d.errorMm3() > 0 ? ", off by " + Figures.volume(d.errorMm3()) + " at most" : "");
  }

  /** Its bodies and groups, an item each. */
  public static String parts(MeasuredPart part) {
    TextPage page = new TextPage();
    PartList parts = PartList.of(part.diagnosis());
    for (PartList.Body b : parts.bodies()) {
      page.item(
          "-",
          String.format(
              Locale.ROOT,
              "body %d: %s faces, %.6g mm2, %s, box %s%s",
              b.number(),
              Figures.count(b.triangles()),
              b.areaMm2(),
              b.volumeMm3().isPresent()
                  ? "closed, volume " + Figures.volume(b.volumeMm3().getAsDouble())
                  : "open",
              box(b.box()),
              b.inner() ? ", inside another" : ""));
    }
    for (PartList.Group g : parts.groups()) {
      page.item(
          "-",
          String.format(
              Locale.ROOT,
              "group '%s': %s faces, %.6g mm2, box %s",
              g.name(),
              Figures.count(g.triangles()),
              g.areaMm2(),
              box(g.box())));
    }
    return page.toString();
  }

  private static void scale(TextPage page, double scale) {
    if (scale != 1) {
      page.line("scale", "%s %% of the file's size", Figures.number(100 * scale));
    }
  }

  /** A part read and summed only. */
  public static String quick(
      Path file, PrintFile.Quick quick, String unit, boolean unitAssumed, double scale) {
    TextPage page = new TextPage();
    page.heading(head(file, quick.format(), unit, unitAssumed));
    scale(page, scale);
    page.line("triangles", "%s", Figures.count(quick.triangles()));
    page.line("box", "%s", box(quick.box()));
    page.line(
        "area",
        "%s (%.6g mm2), all faces as stored; nothing else was looked at",
        Figures.area(quick.areaMm2()),
        quick.areaMm2());
    return page.toString();
  }

  static String head(Path file, PrintFile.Format format, String unit, boolean assumed) {
    return file.getFileName()
        + "  ("
        + format.label()
        + ", unit "
        + unit
        + (assumed ? " assumed)" : ")");
  }

  static String box(Box b) {
    return String.format(
        Locale.ROOT,
        "%s x %s x %s",
        Figures.number(b.maxX() - b.minX()),
        Figures.number(b.maxY() - b.minY()),
        Figures.length(b.maxZ() - b.minZ()));
  }

  private static String place(MeshProblem p) {
    return p.where() == null
        ? ""
        : String.format(
            Locale.ROOT,
            "; at %.4g, %.4g, %.4g mm",
            p.where().x() + 0.0,
            p.where().y() + 0.0,
            p.where().z() + 0.0);
  }
}
