package org.amperskin.report;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.amperskin.film.Outline;
import org.amperskin.film.Sheet;
import org.amperskin.io.common.WholeFile;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/**
 * Film sheets as a PDF at true size: vector fills, one page a sheet, print scaling off.
 *
 * <p>Definition: 1 mm is 72 / 25.4 pt. Every figure is one path, filled by winding number, between
 * marks that name what it is ({@code /film BMC ... EMC}). Text is in the PDF standard faces (ISO
 * 32000-1, 9.6.2.2), which are not embedded.
 *
 * <p>Guaranteed: coordinates to 1e-6 pt; the same sheets give the same bytes; the file is written
 * as a whole or not at all. Not guaranteed: that a printer's driver heeds the print scaling.
 */
public final class FilmPdf {
  private static final double PT_PER_MM = 72 / 25.4;
  private static final float PDF_VERSION = 1.6f; // print scaling came with it
  private static final String PLAIN = "F1";
  private static final String BOLD = "F2";

  private FilmPdf() {}

  /** Writes or replaces a file. */
  public static void write(List<Sheet> sheets, String title, Path target) throws IOException {
    WholeFile.write(target, out -> write(sheets, title, out));
  }

  /** Writes to a stream, which stays open. */
  static void write(List<Sheet> sheets, String title, OutputStream out) throws IOException {
    try (PDDocument document = new PDDocument()) {
      document.setVersion(PDF_VERSION);
      document.setDocumentId(1L); // else the clock goes into it
      document.getDocumentInformation().setTitle(title);
      document.getDocumentInformation().setProducer("Amperskin");
      PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
      preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
      preferences.setDisplayDocTitle(true);
      document.getDocumentCatalog().setViewerPreferences(preferences);
      PDResources resources = resources();
      for (Sheet sheet : sheets) {
        PDPage page =
            new PDPage(
                new PDRectangle(
                    (float) (sheet.widthMm() * PT_PER_MM), (float) (sheet.heightMm() * PT_PER_MM)));
        page.setResources(resources);
        byte[] content = content(sheet).getBytes(StandardCharsets.US_ASCII);
        page.setContents(
            new PDStream(document, new ByteArrayInputStream(content), COSName.FLATE_DECODE));
        document.addPage(page);
      }
      document.save(out);
    }
  }

  /** The two faces, named only: every reader of PDF has them. */
  private static PDResources resources() {
    COSDictionary fonts = new COSDictionary();
    fonts.setItem(COSName.getPDFName(PLAIN), face("Helvetica"));
    fonts.setItem(COSName.getPDFName(BOLD), face("Helvetica-Bold"));
    PDResources resources = new PDResources();
    resources.getCOSObject().setItem(COSName.FONT, fonts);
    return resources;
  }

  private static COSDictionary face(String name) {
    COSDictionary face = new COSDictionary();
    face.setItem(COSName.TYPE, COSName.FONT);
    face.setItem(COSName.SUBTYPE, COSName.TYPE1);
    face.setName(COSName.BASE_FONT, name);
    face.setItem(COSName.ENCODING, COSName.WIN_ANSI_ENCODING);
    return face;
  }

  private static String content(Sheet sheet) {
    StringBuilder out = new StringBuilder("0 g\n");
    for (Sheet.Ink ink : sheet.inks()) {
      out.append('/').append(ink.part().key()).append(" BMC\n");
      path(ink.shape(), out);
      out.append("f\nEMC\n");
    }
    sheet.letterings().forEach(l -> text(l, out));
    return out.toString();
  }

  private static void path(Outline shape, StringBuilder out) {
    for (double[] ring : shape.rings()) {
      for (int i = 0; i < ring.length; i += 2) {
        out.append(pt(ring[i])).append(' ').append(pt(ring[i + 1]));
        out.append(i == 0 ? " m\n" : " l\n");
      }
      out.append("h\n");
    }
  }

  private static void text(Sheet.Lettering l, StringBuilder out) {
    double x = l.xMm() + (l.mirrored() ? l.lengthMm() : 0);
    String matrix = l.upward() ? "0 1 -1 0" : l.mirrored() ? "-1 0 0 1" : "1 0 0 1";
    String escaped = l.text().replace("\\", "\\\\").replace("(", "\\(").replace(")", "\\)");
    out.append("BT /").append(l.bold() ? BOLD : PLAIN).append(' ').append(pt(l.sizeMm()));
    out.append(" Tf ").append(matrix).append(' ').append(pt(x)).append(' ').append(pt(l.yMm()));
    out.append(" Tm (").append(escaped).append(") Tj ET\n");
  }

  private static String pt(double mm) {
    return Decimals.of(mm * PT_PER_MM, 6);
  }
}
