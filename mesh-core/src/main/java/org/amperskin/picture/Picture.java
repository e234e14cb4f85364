package org.amperskin.picture;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import javax.imageio.ImageIO;

/**
 * A picture and what each of its pixels shows.
 *
 * <p>Definition: {@code argb()[y*width+x]} is the colour (0xAARRGGBB, not premultiplied), {@code
 * faces()[y*width+x]} the face at the pixel's first sample or {@link #NO_FACE}; row 0 is the top.
 * With one sample a pixel that sample is the pixel's centre. Arrays are handed out as they are:
 * read only.
 */
public final class Picture {
  /** Stands in the face buffer where the background shows. */
  public static final int NO_FACE = -1;

  private final int width;
  private final int height;
  private final int[] argb;
  private final int[] faces;

  Picture(int width, int height, int[] argb, int[] faces) {
    this.width = width;
    this.height = height;
    this.argb = argb;
    this.faces = faces;
  }

  /** Pixels from left to right. */
  public int width() {
    return width;
  }

  /** Pixels from top to bottom. */
  public int height() {
    return height;
  }

  /** The colours, {@code argb()[y*width+x]}. Read only. */
  public int[] argb() {
    return argb;
  }

  /** The faces, {@code faces()[y*width+x]}. Read only. */
  public int[] faces() {
    return faces;
  }

  /** Colour of a pixel. */
  public int argb(int x, int y) {
    return argb[y * width + x];
  }

  /** Face at a pixel, or {@link #NO_FACE}. */
  public int face(int x, int y) {
    return faces[y * width + x];
  }

  /** A copy for drawing on or writing. */
  public BufferedImage image() {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
    image.setRGB(0, 0, width, height, argb, 0, width);
    return image;
  }

  /**
   * Writes a PNG file; nothing is left half-written.
   *
   * @param file the target, replaced if there
   * @throws IOException if the folder cannot be written
   */
  public void writePng(Path file) throws IOException {
    writePng(image(), file);
  }

  /**
   * Writes an image as a PNG file; nothing is left half-written.
   *
   * @throws IOException if the folder cannot be written
   */
  public static void writePng(BufferedImage image, Path file) throws IOException {
    Path target = file.toAbsolutePath();
    Path part = Files.createTempFile(target.getParent(), target.getFileName().toString(), ".part");
    try {
      try (OutputStream out = Files.newOutputStream(part)) {
        if (!ImageIO.write(image, "png", out)) {
          throw new IOException(file + ": no PNG writer for " + image);
        }
      }
      try {
        Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
      } catch (AtomicMoveNotSupportedException e) {
        Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
      }
    } finally {
      Files.deleteIfExists(part);
    }
  }
}
