package org.amperskin.region;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.amperskin.geom.Progress;
import org.amperskin.skin.Skin;

/**
 * The shapes films take on one skin, each worked out once.
 *
 * <p>Bending and unrolling depend on placement and patch, not on the artwork; a job asks for the
 * same shape in every region that uses the film and in every try for an open share. Not safe for
 * several threads. Cost: keeps every shape as long as itself.
 */
public final class FilmShapes {
  private final Skin skin;
  private final Map<Key, FilmShape> known = new HashMap<>();

  private record Key(Placement placement, List<Selector> patch) {}

  private FilmShapes(Skin skin) {
    this.skin = skin;
  }

  /** None known yet. */
  public static FilmShapes on(Skin skin) {
    return new FilmShapes(skin);
  }

  Skin skin() {
    return skin;
  }

  FilmShape of(MaskFilm film, Progress progress) {
    Key key = new Key(film.placement(), film.patch());
    FilmShape shape = known.get(key);
    if (shape == null) {
      shape = FilmShape.of(film, skin.mesh(), skin.sound(), progress);
      known.put(key, shape);
    }
    return shape;
  }
}
