package org.amperskin.pattern;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.zip.CRC32;

/**
 * The chunks of a PNG file that matter here, each with its check sum tested.
 *
 * <p>Source: W3C Portable Network Graphics (Second Edition), sections 5.3 and 11.
 *
 * @param width pixels
 * @param height pixels
 * @param colourType 0 grey, 2 RGB, 3 palette, 4 grey and alpha, 6 RGBA
 * @param perMetreX pixels per metre, 0 if not told
 * @param perMetreY pixels per metre, 0 if not told
 * @param clear transparent grey or RGB sample values, or null
 */
record PngFile(
    int width,
    int height,
    int colourType,
    long perMetreX,
    long perMetreY,
    java.util.List<Integer> clear) {
  private static final long SIGNATURE = 0x89504E470D0A1A0AL;

  static boolean looksLike(byte[] bytes) {
    return bytes.length >= 4 && ByteBuffer.wrap(bytes).getInt() == (int) (SIGNATURE >>> 32);
  }

  static PngFile read(byte[] bytes, Path path) throws ArtworkFileException {
    if (bytes.length < 8 || ByteBuffer.wrap(bytes).getLong() != SIGNATURE) {
      throw fault(path, 0, "the PNG signature of 8 bytes", "something else");
    }
    int width = 0;
    int height = 0;
    int colourType = -1;
    long perMetreX = 0;
    long perMetreY = 0;
    java.util.List<Integer> clear = null;
    boolean data = false;
    int at = 8;
    while (true) {
      if (bytes.length - at < 12) {
        throw fault(path, at, "a chunk of 12 bytes or more", (bytes.length - at) + " bytes");
      }
      ByteBuffer in = ByteBuffer.wrap(bytes, at, bytes.length - at);
      long length = in.getInt() & 0xffffffffL;
      if (length > bytes.length - at - 12) {
        throw fault(
            path, at, "a chunk of " + length + " bytes", (bytes.length - at - 12) + " left");
      }
      String type = new String(bytes, at + 4, 4, StandardCharsets.ISO_8859_1);
      CRC32 crc = new CRC32();
      crc.update(bytes, at + 4, (int) length + 4);
      int told = ByteBuffer.wrap(bytes).getInt(at + 8 + (int) length);
      if ((int) crc.getValue() != told) {
        throw fault(
            path,
            at,
            "check sum " + Integer.toHexString(told) + " of chunk " + type.replaceAll("\\W", "?"),
            Long.toHexString(crc.getValue()));
      }
      in.getInt();
      if (at == 8 && (!type.equals("IHDR") || length != 13)) {
        throw fault(path, at, "chunk IHDR of 13 bytes first", type.replaceAll("\\W", "?"));
      }
      switch (type) {
        case "IHDR" -> {
          width = in.getInt();
          height = in.getInt();
          in.get();
          colourType = in.get();
          if (width <= 0 || height <= 0) {
            throw fault(path, at + 8, "width and height above 0", width + " x " + height);
          }
        }
        case "pHYs" -> {
          if (length == 9) {
            long x = in.getInt() & 0xffffffffL;
            long y = in.getInt() & 0xffffffffL;
            boolean metre = in.get() == 1;
            perMetreX = metre ? x : 0;
            perMetreY = metre ? y : 0;
          }
        }
        case "tRNS" -> {
          if (colourType == 0 && length >= 2) {
            clear = java.util.List.of((int) in.getChar());
          } else if (colourType == 2 && length >= 6) {
            clear = java.util.List.of((int) in.getChar(), (int) in.getChar(), (int) in.getChar());
          }
        }
        case "IDAT" -> data = true;
        default -> {}
      }
      if (type.equals("IEND")) {
        break;
      }
      at += 12 + (int) length;
    }
    if (!data) {
      throw fault(path, at, "a chunk IDAT before IEND", "none");
    }
    return new PngFile(width, height, colourType, perMetreX, perMetreY, clear);
  }

  private static ArtworkFileException fault(Path path, int at, String expected, String found) {
    return new ArtworkFileException(
        path, "byte " + at, "expected " + expected + ", found " + found);
  }
}
