package org.amperskin.pattern;

import java.awt.geom.AffineTransform;
import java.nio.file.Path;

/**
 * Reads an SVG drawing: finds the sheet's size, then lets {@link SvgPainter} paint the elements.
 *
 * <p>The sheet is the outermost viewport (width and height); SVG's y axis points down, the sheet's
 * up.
 */
final class SvgReader {
  private SvgReader() {}

  static Artwork read(byte[] bytes, Path path, ArtworkFile.Options options)
      throws ArtworkFileException {
    return read(bytes, path, options, SvgFonts.ofThisMachine());
  }

  static Artwork read(byte[] bytes, Path path, ArtworkFile.Options options, SvgFonts fonts)
      throws ArtworkFileException {
    SvgTree tree = SvgTree.read(bytes, path);
    SvgNode root = tree.root;
    SvgNotes notes = new SvgNotes();
    int[] line = {root.line};
    try {
      SvgFault.unless(
          root.name.equals("svg") && root.svg, "<svg> as outermost element", "<" + root.name + ">");
      if (!tree.hasNameSpace) {
        notes.add("the SVG name space is missing and was assumed");
      }
      return paint(tree, options, notes, fonts, line);
    } catch (SvgFault fault) {
      throw new ArtworkFileException(path, "line " + line[0], fault.getMessage());
    }
  }

  private static Artwork paint(
      SvgTree tree, ArtworkFile.Options options, SvgNotes notes, SvgFonts fonts, int[] line) {
    SvgNode root = tree.root;
    SvgViewBox box = SvgViewBox.of(root);
    SvgNumbers.Length width = size(root, "width");
    SvgNumbers.Length height = size(root, "height");
    double widthMm = sideMm(root, "width", width, box == null ? 0 : box.width(), options, notes);
    double heightMm =
        sideMm(root, "height", height, box == null ? 0 : box.height(), options, notes);
    boolean bare = width.unit().isEmpty() && height.unit().isEmpty();
    double unitMm = box == null && bare ? options.unitlessMm() : SvgNumbers.MM_PER_PX;
    AffineTransform toMm =
        new AffineTransform(1, 0, 0, -1, -widthMm / 2, heightMm / 2); // y down to y up
    double userWidth = widthMm / unitMm;
    double userHeight = heightMm / unitMm;
    if (box != null) {
      toMm.concatenate(
          box.onto(widthMm, heightMm, root.get("preserveAspectRatio", "xMidYMid meet")));
      userWidth = box.width();
      userHeight = box.height();
    } else {
      toMm.scale(unitMm, unitMm);
      if (!bare) {
        notes.add("no viewBox: numbers without unit taken as px, 25.4/96 mm");
      }
    }
    SvgPainter painter =
        new SvgPainter(
            tree, options, notes, new PaintStack(widthMm, heightMm, options.threshold()), fonts);
    RingSet rings = painter.paintRoot(toMm, userWidth, userHeight, unitMm, line);
    return Artwork.trusted(widthMm, heightMm, rings, painter.flatteningMm(), notes.list())
        .with(painter.drawn());
  }

  private static SvgNumbers.Length size(SvgNode root, String side) {
    String styled = SvgStyleSheet.declarations(root.get("style", "")).get(side);
    String text = styled != null ? styled : root.get(side, "100%");
    return SvgNumbers.length(text.equals("auto") ? "100%" : text);
  }

  private static double sideMm(
      SvgNode root,
      String side,
      SvgNumbers.Length length,
      double boxSide,
      ArtworkFile.Options options,
      SvgNotes notes) {
    double mm;
    if (length.unit().equals("%")) {
      SvgFault.unless(boxSide > 0, side + " with a unit, or a viewBox", root.get(side, "neither"));
      double units = length.value() / 100 * boxSide;
      mm =
          options.unitlessMm() == SvgNumbers.MM_PER_PX
              ? new SvgNumbers.Length(units, "px").mm()
              : units * options.unitlessMm();
      notes.add(
          "no "
              + side
              + ": the viewBox's "
              + boxSide
              + " taken at "
              + options.unitlessMm()
              + " mm");
    } else if (length.unit().isEmpty()) {
      mm =
          options.unitlessMm() == SvgNumbers.MM_PER_PX
              ? new SvgNumbers.Length(length.value(), "px").mm()
              : length.value() * options.unitlessMm();
      notes.add(
          side
              + " "
              + length.value()
              + " has no unit: taken as "
              + (options.unitlessMm() == SvgNumbers.MM_PER_PX
                  ? "px, 25.4/96 mm each"
                  : options.unitlessMm() + " mm each"));
    } else {
      // a sheet in font sizes counts in those of the initial font
      mm =
          length.ofFont()
              ? length.value()
                  * SvgStyle.MEDIUM_PX
                  * SvgNumbers.MM_PER_PX
                  / (length.unit().equals("ex") ? 2 : 1)
              : length.mm();
    }
    SvgFault.unless(
        mm > 0 && mm <= PaintStack.LARGEST_SIDE_MM,
        side + " above 0 and up to " + PaintStack.LARGEST_SIDE_MM + " mm",
        mm + " mm");
    return mm;
  }
}
