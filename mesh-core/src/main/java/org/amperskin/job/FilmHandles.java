package org.amperskin.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.amperskin.geom.Vec3;
import org.amperskin.region.FlatPlacement;
import org.amperskin.region.LaidFilm;
import org.amperskin.region.WrappedPlacement;
import org.amperskin.units.Quantity;

/**
 * What of a film's placement a user may move, in the words and units of the job file.
 *
 * @param film name of the film
 * @param lies flat, wrapped or draped
 * @param handles the values, in the order to show them
 * @param laid the film as it lies, to move it by its own directions
 */
public record FilmHandles(String film, String lies, List<Handle> handles, LaidFilm laid) {
  /**
   * One value.
   *
   * @param key its key in the job file
   * @param text how it stands there; empty if it is left out
   * @param usual what holds when it is left out
   */
  public record Handle(String key, String text, String usual) {}

  /** Copies the list. */
  public FilmHandles {
    handles = List.copyOf(handles);
  }

  /** Handles of every film of a job that was worked out from a text. */
  public static List<FilmHandles> of(JobText text, Estimate e) {
    List<FilmHandles> all = new ArrayList<>();
    for (String film : e.job().films().keySet()) {
      LaidFilm laid = e.regions().get(film).laid().get(0);
      boolean flat = laid.film().placement() instanceof FlatPlacement;
      boolean wrapped = laid.film().placement() instanceof WrappedPlacement;
      List<Handle> handles = new ArrayList<>();
      handles.add(handle(text, film, "centre", "middle of what it faces"));
      handles.add(handle(text, film, "turn", "0 deg"));
      handles.add(handle(text, film, "scale", "100 %"));
      handles.add(handle(text, film, "up", flat ? "+z, +y if lit along z" : "+z"));
      if (flat) {
        handles.add(handle(text, film, "toward", ""));
      }
      if (wrapped) {
        handles.add(handle(text, film, "form", "best"));
      }
      handles.add(handle(text, film, "mirror", "false"));
      all.add(new FilmHandles(film, flat ? "flat" : wrapped ? "wrapped" : "draped", handles, laid));
    }
    return List.copyOf(all);
  }

  private static Handle handle(JobText text, String film, String key, String usual) {
    return new Handle(key, text.film(film, key).orElse(""), usual);
  }

  /**
   * The centre that moves the film along itself: the point of the skin so far from where the
   * artwork's centre lies now.
   *
   * @param across to the artwork's right (mm of film)
   * @param upward to its top (mm of film)
   * @return the value for {@code centre}; empty if no skin lies behind that place
   */
  public Optional<String> centreMovedBy(double across, double upward) {
    double scale = laid.film().placement().scale();
    double x = across / scale;
    double y = upward / scale;
    for (int piece = 0; piece < laid.pieceCount(); piece++) {
      if (!laid.faces(piece)) {
        continue;
      }
      double ax = laid.x(piece, 0);
      double ay = laid.y(piece, 0);
      double ux = laid.x(piece, 1) - ax;
      double uy = laid.y(piece, 1) - ay;
      double vx = laid.x(piece, 2) - ax;
      double vy = laid.y(piece, 2) - ay;
      double det = ux * vy - uy * vx;
      double s = ((x - ax) * vy - (y - ay) * vx) / det;
      double t = ((y - ay) * ux - (x - ax) * uy) / det;
      if (s >= 0 && t >= 0 && s + t <= 1) {
        return Optional.of(told(piece, s, t));
      }
    }
    return Optional.empty();
  }

  private String told(int piece, double s, double t) {
    Vec3 a = corner(piece, 0);
    Vec3 at = a.plus(corner(piece, 1).minus(a).times(s)).plus(corner(piece, 2).minus(a).times(t));
    return hundredths(at.x()) + " " + hundredths(at.y()) + " " + hundredths(at.z()) + " mm";
  }

  private static String hundredths(double mm) {
    String text = String.format(Locale.ROOT, "%.2f", Math.rint(100 * mm) / 100 + 0.0);
    return text.replaceAll("\\.?0+$", "");
  }

  private Vec3 corner(int piece, int k) {
    int v = laid.mesh().corner(piece, k);
    return laid.mesh().point(v);
  }

  /**
   * A turn by some degrees more.
   *
   * @return the value for {@code turn}
   */
  public String turnedBy(double degrees) {
    double turn = (laid.film().placement().turnDegrees() + degrees) % 360;
    return Quantity.plain(turn, 6).replaceAll("(\\.\\d*?)0+$", "$1").replaceAll("\\.$", "")
        + " deg";
  }
}
