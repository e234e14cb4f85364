package org.amperskin.pattern;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/**
 * Reads artwork from a file: SVG, gzipped SVG, PNG or JPEG, told apart by content.
 *
 * <p>Guaranteed: nothing but the file itself is opened (no external entity, style sheet or image);
 * whatever is not understood stands in {@link Artwork#notes}; a broken file gives one {@link
 * ArtworkFileException} with line or byte. Same bytes and options, same artwork.
 *
 * <p>Not guaranteed: filters, markers, animation, text on a path and gradients that are both dark
 * and light are skipped and named, not drawn. Text is drawn in a font of this machine and which one
 * is told; on another machine it may look different.
 *
 * <p>Sources: W3C SVG 1.1 (Second Edition) and SVG 2 (Candidate Recommendation 2018) for SVG; W3C
 * Portable Network Graphics (Second Edition) for PNG; ITU-T T.81 and T.871 for JPEG.
 *
 * <p>Cost: well under a second for 5,000 edges; at most {@value #LARGEST_BYTES} bytes, 4,000,000
 * points, 64,000,000 pixels.
 */
public final class ArtworkFile {
  /** Largest file, and largest unzipped file (bytes). */
  public static final int LARGEST_BYTES = 64 << 20;

  private ArtworkFile() {}

  /**
   * How a file is to be read.
   *
   * @param dpi pixels per inch of a picture, overriding what it says; NaN to believe the file
   * @param threshold darker than this is opaque (lightness, 0 black to 1 white), above 0 up to 1
   * @param unitlessMm millimetres of one unit where an SVG gives its size without a unit
   * @param flatteningMm largest distance between curve and polygon (mm)
   * @param smoothMm width over which the outlines of pictures are smoothed (mm), twice the standard
   *     deviation of the blur; 0 to follow the pixels
   */
  public record Options(
      double dpi, double threshold, double unitlessMm, double flatteningMm, double smoothMm) {
    /** Checks all values. */
    public Options {
      require(Double.isNaN(dpi) || dpi > 0 && dpi <= 1e6, "resolution (dpi)", dpi);
      require(threshold > 0 && threshold <= 1, "threshold (0 to 1)", threshold);
      require(unitlessMm > 0 && unitlessMm <= 1e6, "unit (mm)", unitlessMm);
      require(flatteningMm >= 1e-5 && flatteningMm <= 10, "flattening (mm)", flatteningMm);
      require(smoothMm >= 0 && smoothMm <= 1000, "smoothing (mm)", smoothMm);
    }

    /** Believe the file; half lightness; a bare number is 1 px = 25.4/96 mm; curves to 0.01 mm. */
    public static Options standard() {
      return new Options(Double.NaN, 0.5, SvgNumbers.MM_PER_PX, 0.01, 0);
    }

    /** The same with another resolution for pictures (pixels per inch). */
    public Options withDpi(double newDpi) {
      return new Options(newDpi, threshold, unitlessMm, flatteningMm, smoothMm);
    }

    /** The same with another threshold (lightness, 0 to 1). */
    public Options withThreshold(double newThreshold) {
      return new Options(dpi, newThreshold, unitlessMm, flatteningMm, smoothMm);
    }

    /** The same with another unit for bare numbers (mm). */
    public Options withUnitlessMm(double newUnitlessMm) {
      return new Options(dpi, threshold, newUnitlessMm, flatteningMm, smoothMm);
    }

    /** The same with another flattening (mm). */
    public Options withFlatteningMm(double newFlatteningMm) {
      return new Options(dpi, threshold, unitlessMm, newFlatteningMm, smoothMm);
    }

    /** The same with pictures' outlines smoothed over a width (mm), 0 for none. */
    public Options withSmoothMm(double newSmoothMm) {
      return new Options(dpi, threshold, unitlessMm, flatteningMm, newSmoothMm);
    }

    private static void require(boolean holds, String what, double found) {
      if (!holds) {
        throw new IllegalArgumentException(what + " cannot be " + found);
      }
    }
  }

  /**
   * Reads a file with {@link Options#standard}.
   *
   * @param file the file
   * @return the artwork
   * @throws ArtworkFileException if the file is not sound artwork, or too large
   * @throws IOException if the file cannot be read at all
   */
  public static Artwork read(Path file) throws ArtworkFileException, IOException {
    return read(file, Options.standard());
  }

  /**
   * Reads a file.
   *
   * @param file the file
   * @param options how
   * @return the artwork
   * @throws ArtworkFileException if the file is not sound artwork, or too large
   * @throws IOException if the file cannot be read at all
   */
  public static Artwork read(Path file, Options options) throws ArtworkFileException, IOException {
    byte[] bytes;
    try (InputStream in = Files.newInputStream(file)) {
      bytes = in.readNBytes(LARGEST_BYTES + 1);
    }
    return read(bytes, file, options);
  }

  /**
   * Reads artwork that is already in memory.
   *
   * @param bytes the file's content
   * @param name the path to name in messages
   * @param options how
   * @return the artwork
   * @throws ArtworkFileException if the content is not sound artwork, or too large
   */
  public static Artwork read(byte[] bytes, Path name, Options options) throws ArtworkFileException {
    if (bytes.length > LARGEST_BYTES) {
      throw new ArtworkFileException(
          name,
          "byte " + LARGEST_BYTES,
          "larger than the " + LARGEST_BYTES + " bytes that are read");
    }
    if (PictureFile.looksLikeOne(bytes)) {
      return PictureReader.read(bytes, name, options);
    }
    if (bytes.length > 1 && (bytes[0] & 255) == 0x1f && (bytes[1] & 255) == 0x8b) {
      byte[] unzipped = unzip(bytes, name);
      if (!looksLikeXml(unzipped)) {
        throw unknown(unzipped, name, "inside gzip, ");
      }
      return SvgReader.read(unzipped, name, options);
    }
    if (looksLikeXml(bytes)) {
      return SvgReader.read(bytes, name, options);
    }
    throw unknown(bytes, name, "");
  }

  private static ArtworkFileException unknown(byte[] bytes, Path name, String where) {
    String found =
        bytes.length == 0
            ? "nothing"
            : "bytes " + HexFormat.of().formatHex(bytes, 0, Math.min(8, bytes.length));
    return new ArtworkFileException(
        name, "byte 0", where + "expected SVG (starts with <), PNG or JPEG, found " + found);
  }

  private static byte[] unzip(byte[] bytes, Path name) throws ArtworkFileException {
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(bytes))) {
      byte[] out = in.readNBytes(LARGEST_BYTES + 1);
      if (out.length > LARGEST_BYTES) {
        throw new ArtworkFileException(
            name,
            "whole file",
            "unzips to more than the " + LARGEST_BYTES + " bytes that are read");
      }
      return out;
    } catch (ZipException | EOFException e) {
      throw new ArtworkFileException(
          name, "byte 0 to " + bytes.length, "expected sound gzip data, found: " + e.getMessage());
    } catch (IOException e) {
      throw new ArtworkFileException(name, "whole file", "cannot be unzipped: " + e.getMessage());
    }
  }

  /** A less-than sign first, after an optional byte order mark and white space; UTF-16 too. */
  private static boolean looksLikeXml(byte[] bytes) {
    for (byte each : bytes) {
      int b = each & 255;
      if (b == '<') {
        return true;
      }
      boolean mark = b == 0xef || b == 0xbb || b == 0xbf || b == 0xfe || b == 0xff || b == 0;
      if (!mark && b != ' ' && b != '\t' && b != '\r' && b != '\n') {
        return false;
      }
    }
    return false;
  }
}
