package org.amperskin.pattern;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The marker segments of a JPEG file that matter here: size, sort and resolution.
 *
 * <p>Sources: ITU-T T.81, annex B (markers, frame header); ITU-T T.871 section 10.1 (JFIF density);
 * CIPA DC-008 (Exif), tags 282, 283, 296 and 274. JFIF goes before Exif.
 *
 * @param width pixels
 * @param height pixels
 * @param frameAt byte of the frame header
 * @param perMmX pixels per mm, 0 if not told
 * @param perMmY pixels per mm, 0 if not told
 * @param notes what the file asks for and does not get
 */
record JpegFile(
    int width, int height, int frameAt, double perMmX, double perMmY, List<String> notes) {

  static boolean looksLike(byte[] bytes) {
    return bytes.length > 2
        && (bytes[0] & 255) == 0xff
        && (bytes[1] & 255) == 0xd8
        && (bytes[2] & 255) == 0xff;
  }

  static JpegFile read(byte[] bytes, Path path) throws ArtworkFileException {
    double[] jfif = {0, 0};
    double[] exif = {0, 0, 1};
    List<String> notes = new ArrayList<>();
    int at = 2;
    while (true) {
      while (at + 1 < bytes.length && (bytes[at] & 255) == 0xff && (bytes[at + 1] & 255) == 0xff) {
        at++; // fill bytes
      }
      if (at + 4 > bytes.length || (bytes[at] & 255) != 0xff) {
        throw fault(path, at, "a marker of a JPEG file before its frame header", "none");
      }
      int marker = bytes[at + 1] & 255;
      int length = ByteBuffer.wrap(bytes).getChar(at + 2);
      if (marker == 0xd9 || marker == 0xda || length < 2 || at + 2 + length > bytes.length) {
        throw fault(
            path,
            at,
            "a segment before the picture's data that ends within the file",
            "marker %02x of %d bytes".formatted(marker, length));
      }
      if (marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc) {
        return frame(bytes, path, at, marker, length, jfif, exif, notes);
      }
      if (marker == 0xe0 && starts(bytes, at + 4, length, "JFIF\0") && length >= 14) {
        int unit = bytes[at + 11];
        double perMm = unit == 1 ? 1 / SvgNumbers.MM_PER_IN : unit == 2 ? 0.1 : 0;
        jfif[0] = perMm * ByteBuffer.wrap(bytes).getChar(at + 12);
        jfif[1] = perMm * ByteBuffer.wrap(bytes).getChar(at + 14);
      } else if (marker == 0xe1 && starts(bytes, at + 4, length, "Exif\0\0")) {
        exif(ByteBuffer.wrap(bytes, at + 10, length - 8).slice(), exif);
      }
      at += 2 + length;
    }
  }

  private static JpegFile frame(
      byte[] bytes,
      Path path,
      int at,
      int marker,
      int length,
      double[] jfif,
      double[] exif,
      List<String> notes)
      throws ArtworkFileException {
    if (length < 8) {
      throw fault(path, at, "a frame header of 8 bytes or more", length + " bytes");
    }
    if (marker > 0xc2) {
      throw fault(
          path,
          at,
          "a baseline or progressive JPEG",
          "frame type %02x (lossless, hierarchical or arithmetic): save it as PNG"
              .formatted(marker));
    }
    int bits = bytes[at + 4] & 255;
    int height = ByteBuffer.wrap(bytes).getChar(at + 5);
    int width = ByteBuffer.wrap(bytes).getChar(at + 7);
    int components = bytes[at + 9] & 255;
    if (bits != 8) {
      throw fault(path, at, "8 bits a sample", bits + ": save it as PNG");
    }
    if (components != 1 && components != 3) {
      throw fault(
          path,
          at,
          "a grey or RGB picture",
          components + " components" + (components == 4 ? " (CMYK)" : "") + ": save it as RGB");
    }
    if (width == 0 || height == 0) {
      throw fault(path, at, "width and height above 0", width + " x " + height);
    }
    if (exif[2] != 1) {
      notes.add(
          "the picture asks to be turned (Exif orientation %.0f): not done, save it upright"
              .formatted(exif[2]));
    }
    boolean told = jfif[0] > 0 && jfif[1] > 0;
    return new JpegFile(
        width, height, at, told ? jfif[0] : exif[0], told ? jfif[1] : exif[1], List.copyOf(notes));
  }

  /** Fills {pixels per mm across, upward, orientation}; whatever is broken stays as it was. */
  private static void exif(ByteBuffer in, double[] out) {
    if (in.remaining() < 8) {
      return;
    }
    in.order(in.getChar(0) == 0x4949 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    long first = in.getInt(4) & 0xffffffffL;
    if (first > in.limit() - 2) {
      return;
    }
    int entries = in.getChar((int) first);
    double x = 0;
    double y = 0;
    int unit = 2;
    for (int k = 0; k < entries; k++) {
      int at = (int) first + 2 + 12 * k;
      if (at + 12 > in.limit()) {
        return;
      }
      int value = in.getChar(at + 8);
      switch (in.getChar(at)) {
        case 274 -> out[2] = value >= 1 && value <= 8 ? value : 1;
        case 282 -> x = ratio(in, at);
        case 283 -> y = ratio(in, at);
        case 296 -> unit = value;
        default -> {}
      }
    }
    double perMm = unit == 2 ? 1 / SvgNumbers.MM_PER_IN : unit == 3 ? 0.1 : 0;
    out[0] = perMm * x;
    out[1] = perMm * y;
  }

  private static double ratio(ByteBuffer in, int entry) {
    long place = in.getInt(entry + 8) & 0xffffffffL;
    if (place + 8 > in.limit()) {
      return 0;
    }
    double over = in.getInt((int) place) & 0xffffffffL;
    double under = in.getInt((int) place + 4) & 0xffffffffL;
    return under == 0 ? 0 : over / under;
  }

  private static boolean starts(byte[] bytes, int at, int length, String with) {
    byte[] wanted = with.getBytes(StandardCharsets.US_ASCII);
    if (length - 2 < wanted.length) {
      return false;
    }
    for (int i = 0; i < wanted.length; i++) {
      if (bytes[at + i] != wanted[i]) {
        return false;
      }
    }
    return true;
  }

  private static ArtworkFileException fault(Path path, int at, String expected, String found) {
    return new ArtworkFileException(
        path, "byte " + at, "expected " + expected + ", found " + found);
  }
}
