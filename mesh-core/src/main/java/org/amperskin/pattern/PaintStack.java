package org.amperskin.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Paint laid on a white sheet layer over layer, and the outline of what ends up dark.
 *
 * <p>A figure is a set of closed rings with a fill rule; a layer paints a figure with a lightness
 * and an opacity, through clips, inside groups that are blended as one. A place on the sheet is
 * opaque if the light that the whole stack sends back there is below the threshold (white paper
 * sends 1).
 *
 * <p>Guaranteed: the outline of {@link #fold} is clean (see {@link Artwork}); every point stays
 * within {@link #GRID_MM} of where it was given. Order of layers is the order of calls.
 *
 * <p>Method: all rings are cut to the sheet (Sutherland and Hodgman 1974; winding numbers inside
 * the sheet stay) and go into one {@link Arrangement}; blending is simple alpha compositing as in
 * W3C "Compositing and Blending Level 1", section 5.1, done on lightness alone since that is linear
 * in the colour components.
 *
 * <p>Cost: one noding of all edges; O(n log n) for drawings whose edges cross a bounded number of
 * times.
 */
final class PaintStack {
  /** Points are rounded to whole multiples of this (mm), which makes noding robust. */
  static final double GRID_MM = 1e-8;

  /** Largest sheet side (mm); keeps grid multiples well within a double's 53 bits. */
  static final double LARGEST_SIDE_MM = 10_000;

  static final int NO_CLIP = -1;
  static final int NO_GROUP = -1;

  private record Layer(
      int figure, double lightness, double opacity, int clip, int group, int canvas) {}

  /** Paint passes where one of the figures is (within its own clip), or where the mask is light. */
  private record Clip(int[] anyOf, int[] theirClips, int mask, int outer) {}

  private record Group(double opacity, int parent, int depth) {}

  private final double halfWidthMm;
  private final double halfHeightMm;
  private final double threshold;
  private final List<List<double[]>> figures = new ArrayList<>();
  private final BitSet evenOdd = new BitSet();
  private final List<Layer> layers = new ArrayList<>();
  private final List<Clip> clips = new ArrayList<>();
  private final List<Group> groups = new ArrayList<>();

  /** Whether canvas c, a mask, counts by its cover instead of its light. Canvas 0 is the sheet. */
  private final BitSet byCover = new BitSet();

  private int canvases = 1;
  private int canvas;

  private int[][] layersOfFigure;
  private final BitSet activeFigures = new BitSet();
  private BitSet[] activeLayers;

  PaintStack(double widthMm, double heightMm, double threshold) {
    this.halfWidthMm = widthMm / 2;
    this.halfHeightMm = heightMm / 2;
    this.threshold = threshold;
  }

  /**
   * Adds a figure of closed rings {@code x0, y0, x1, y1, ...} (mm); it paints nothing by itself.
   */
  int figure(List<double[]> rings, boolean evenOddRule) {
    List<double[]> cut = new ArrayList<>();
    for (double[] ring : rings) {
      double[] inside = SheetCut.cut(ring, halfWidthMm, halfHeightMm);
      if (inside.length >= 6) {
        cut.add(inside);
      }
    }
    figures.add(cut);
    evenOdd.set(figures.size() - 1, evenOddRule);
    return figures.size() - 1;
  }

  /** A clip that lets paint through where any of the figures is, and the outer clip does too. */
  int clip(int[] anyOf, int outer) {
    int[] none = new int[anyOf.length];
    Arrays.fill(none, NO_CLIP);
    return clip(anyOf, none, outer);
  }

  /** The same, each figure cut by a clip of its own. */
  int clip(int[] anyOf, int[] theirClips, int outer) {
    clips.add(new Clip(anyOf, theirClips, 0, outer));
    return clips.size() - 1;
  }

  /** A clip that lets through what two others do. */
  int both(int inner, int outer) {
    int[] everywhere = {figure(List.of(border()), false)};
    return clip(everywhere, new int[] {inner}, outer);
  }

  private double[] border() {
    double x = halfWidthMm;
    double y = halfHeightMm;
    return new double[] {-x, -y, x, -y, x, y, -x, y};
  }

  /**
   * Turns to a new canvas, on which a mask is painted until {@link #endMask}.
   *
   * @param cover whether the mask lets through by its cover (alpha) instead of its light
   * @return what to give to {@link #endMask}
   */
  int beginMask(boolean cover) {
    int before = canvas;
    canvas = canvases++;
    byCover.set(canvas, cover);
    return before;
  }

  /** Ends the mask; the clip returned lets paint through where the mask is at least half light. */
  int endMask(int before, int outer) {
    clips.add(new Clip(new int[0], new int[0], canvas, outer));
    canvas = before;
    return clips.size() - 1;
  }

  /** Whether a mask is being painted. */
  boolean inMask() {
    return canvas != 0;
  }

  /** Opens a group whose layers are blended with each other first, then as one. */
  int group(double opacity, int parent) {
    groups.add(new Group(opacity, parent, parent == NO_GROUP ? 1 : groups.get(parent).depth + 1));
    return groups.size() - 1;
  }

  /** Paints a figure over everything painted so far. */
  void paint(int figure, double lightness, double opacity, int clip, int group) {
    if (opacity > 0 && !figures.get(figure).isEmpty()) {
      layers.add(new Layer(figure, lightness, opacity, clip, group, canvas));
    }
  }

  /** The outline of what is darker than the threshold. */
  RingSet fold() {
    indexLayers();
    boolean[] used = new boolean[figures.size()];
    for (Layer layer : layers) {
      used[layer.figure] = true;
      need(layer.clip, used);
    }
    List<List<double[]>> needed = new ArrayList<>();
    for (int f = 0; f < used.length; f++) {
      needed.add(used[f] ? figures.get(f) : List.of());
    }
    return new Arrangement(needed, new Judge()).outline();
  }

  private void need(int clip, boolean[] used) {
    for (int c = clip; c != NO_CLIP; c = clips.get(c).outer) {
      Clip each = clips.get(c);
      for (int i = 0; i < each.anyOf.length; i++) {
        used[each.anyOf[i]] = true;
        need(each.theirClips[i], used);
      }
    }
  }

  private void indexLayers() {
    activeLayers = new BitSet[canvases];
    for (int c = 0; c < canvases; c++) {
      activeLayers[c] = new BitSet();
    }
    int[] counts = new int[figures.size()];
    for (Layer layer : layers) {
      counts[layer.figure]++;
    }
    layersOfFigure = new int[figures.size()][];
    for (int f = 0; f < counts.length; f++) {
      layersOfFigure[f] = new int[counts[f]];
    }
    for (int l = layers.size() - 1; l >= 0; l--) {
      int f = layers.get(l).figure;
      layersOfFigure[f][--counts[f]] = l;
    }
  }

  /** Tells the arrangement which faces are opaque. */
  private final class Judge implements Arrangement.Judge {
    @Override
    public void winding(int figure, int winding) {
      boolean active = evenOdd.get(figure) ? (winding & 1) != 0 : winding != 0;
      if (active != activeFigures.get(figure)) {
        activeFigures.set(figure, active);
        for (int l : layersOfFigure[figure]) {
          activeLayers[layers.get(l).canvas].set(l, active);
        }
      }
    }

    @Override
    public boolean opaque() {
      return seen(0)[0] < threshold;
    }
  }

  private boolean letsThrough(int clip) {
    for (int c = clip; c != NO_CLIP; c = clips.get(c).outer) {
      Clip each = clips.get(c);
      boolean any = false;
      if (each.mask != 0) {
        any = activeLayers[each.mask].length() > 0 && passes(each.mask);
      }
      for (int i = 0; i < each.anyOf.length && !any; i++) {
        any = activeFigures.get(each.anyOf[i]) && letsThrough(each.theirClips[i]);
      }
      if (!any) {
        return false;
      }
    }
    return true;
  }

  private boolean passes(int mask) {
    double[] seen = seen(mask);
    return (byCover.get(mask) ? seen[1] : seen[0]) >= 0.5;
  }

  /** Light and cover of a canvas here; the sheet is white paper, a mask begins as nothing. */
  private double[] seen(int of) {
    double[] paper = of == 0 ? new double[] {1, 1} : new double[] {0, 0};
    return groups.isEmpty() ? fromTop(of, paper) : throughGroups(of, paper);
  }

  private double[] fromTop(int of, double[] paper) {
    BitSet active = activeLayers[of];
    double light = 0;
    double through = 1;
    for (int l = active.length() - 1;
        l >= 0 && through > 0;
        l = l == 0 ? -1 : active.previousSetBit(l - 1)) {
      Layer layer = layers.get(l);
      if (letsThrough(layer.clip)) {
        light += through * layer.opacity * layer.lightness;
        through *= 1 - layer.opacity;
      }
    }
    paper[0] = light + through * paper[0];
    paper[1] = 1 - through + through * paper[1];
    return paper;
  }

  /** Bottom to top, with one premultiplied (light, cover) pair per open group. */
  private double[] throughGroups(int of, double[] paper) {
    BitSet active = activeLayers[of];
    List<Integer> open = new ArrayList<>();
    List<double[]> pairs = new ArrayList<>();
    pairs.add(paper);
    for (int l = active.nextSetBit(0); l >= 0; l = active.nextSetBit(l + 1)) {
      Layer layer = layers.get(l);
      if (letsThrough(layer.clip)) {
        enter(layer.group, open, pairs);
        over(pairs.get(pairs.size() - 1), layer.opacity * layer.lightness, layer.opacity);
      }
    }
    enter(NO_GROUP, open, pairs);
    return pairs.get(0);
  }

  private void enter(int group, List<Integer> open, List<double[]> pairs) {
    int[] chain = new int[group == NO_GROUP ? 0 : groups.get(group).depth];
    for (int g = group, i = chain.length; g != NO_GROUP; g = groups.get(g).parent) {
      chain[--i] = g;
    }
    int same = 0;
    while (same < chain.length && same < open.size() && open.get(same) == chain[same]) {
      same++;
    }
    while (open.size() > same) {
      double opacity = groups.get(open.remove(open.size() - 1)).opacity;
      double[] done = pairs.remove(pairs.size() - 1);
      over(pairs.get(pairs.size() - 1), opacity * done[0], opacity * done[1]);
    }
    while (open.size() < chain.length) {
      open.add(chain[open.size()]);
      pairs.add(new double[] {0, 0});
    }
  }

  private static void over(double[] under, double light, double cover) {
    under[0] = light + under[0] * (1 - cover);
    under[1] = cover + under[1] * (1 - cover);
  }
}
