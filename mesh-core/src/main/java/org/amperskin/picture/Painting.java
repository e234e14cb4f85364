package org.amperskin.picture;

import java.util.Objects;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.region.FaceField;
import org.amperskin.region.RegionKind;
import org.amperskin.region.SplitMesh;

/**
 * A mesh and the colour of each of its faces.
 *
 * <p>Definition: face {@code f} has the colour {@code argb(colourOf(f))}. The alpha of a colour is
 * not used: faces are opaque. The arrays are owned by the painting.
 */
public final class Painting {
  private final SurfaceMesh mesh;
  private final int[] colours;
  private final int[] palette;

  private Painting(SurfaceMesh mesh, int[] colours, int[] palette) {
    this.mesh = mesh;
    this.colours = colours;
    this.palette = palette;
  }

  /**
   * Paints a mesh by a palette.
   *
   * @param mesh the faces
   * @param colours {@code colours[f]}, index into the palette; kept, not copied
   * @param palette {@code palette[i]}, 0xAARRGGBB; copied
   */
  public static Painting of(SurfaceMesh mesh, int[] colours, int[] palette) {
    Objects.requireNonNull(mesh, "mesh");
    if (colours.length != mesh.faceCount()) {
      throw new IllegalArgumentException(
          colours.length + " colours for " + mesh.faceCount() + " faces");
    }
    for (int c : colours) {
      if (c < 0 || c >= palette.length) {
        throw new IllegalArgumentException("colour " + c + " of " + palette.length);
      }
    }
    return new Painting(mesh, colours, palette.clone());
  }

  /** Paints the whole mesh in one colour (0xAARRGGBB). */
  public static Painting plain(SurfaceMesh mesh, int argb) {
    return new Painting(mesh, new int[mesh.faceCount()], new int[] {argb});
  }

  /** Paints each piece of a split by its region; palette index = {@link RegionKind#ordinal()}. */
  public static Painting regions(SplitMesh split) {
    int[] colours = new int[split.mesh().faceCount()];
    for (int f = 0; f < colours.length; f++) {
      colours[f] = split.kind(f).ordinal();
    }
    int[] palette = new int[RegionKind.values().length];
    for (RegionKind kind : RegionKind.values()) {
      palette[kind.ordinal()] = RegionColour.of(kind).argb();
    }
    return new Painting(split.mesh(), colours, palette);
  }

  /** Paints a field by a scale; palette of {@link FieldScale#palette()}. */
  public static Painting field(FaceField field, FieldScale scale) {
    int[] colours = new int[field.mesh().faceCount()];
    for (int f = 0; f < colours.length; f++) {
      colours[f] = scale.index(field.value(f));
    }
    return new Painting(field.mesh(), colours, FieldScale.palette());
  }

  /**
   * Paints regions with what becomes of lines over them: palette index = that of {@link #regions},
   * then {@link LineColour}s from {@link RegionKind}'s count on.
   *
   * @param fates 1 for pieces at risk, 2 for those that vanish, on the split's mesh
   */
  public static Painting fates(SplitMesh split, FaceField fates) {
    Painting plain = regions(split);
    int kinds = RegionKind.values().length;
    int[] colours = new int[split.mesh().faceCount()];
    for (int f = 0; f < colours.length; f++) {
      int fate = Double.isNaN(fates.value(f)) ? 0 : (int) fates.value(f);
      boolean open = split.isOpen(split.kind(f));
      colours[f] = fate == 0 ? plain.colours[f] : kinds + LineColour.of(fate, open).ordinal();
    }
    int[] palette = java.util.Arrays.copyOf(plain.palette, kinds + LineColour.values().length);
    for (LineColour line : LineColour.values()) {
      palette[kinds + line.ordinal()] = line.argb();
    }
    return new Painting(split.mesh(), colours, palette);
  }

  /** The faces. */
  public SurfaceMesh mesh() {
    return mesh;
  }

  /** Palette index of a face. */
  public int colourOf(int face) {
    return colours[face];
  }

  /** Number of colours. */
  public int colourCount() {
    return palette.length;
  }

  /** Colour of a palette index, 0xAARRGGBB. */
  public int argb(int colour) {
    return palette[colour];
  }

  /** The same faces with another palette, at least as long as needed by the faces. */
  public Painting recoloured(int... other) {
    if (other.length < palette.length) {
      throw new IllegalArgumentException(other.length + " colours in place of " + palette.length);
    }
    return new Painting(mesh, colours, other.clone());
  }
}
