import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Writes a closed ring (60 mm and 25 mm radius) as a binary STL with about as many facets as asked.
 *
 * <p>Use: {@code java MakeTorus.java FILE FACETS}
 */
public final class MakeTorus {
  private static final double LARGE_MM = 60;
  private static final double SMALL_MM = 25;

  private MakeTorus() {}

  public static void main(String[] args) throws IOException {
    int around = (int) Math.round(Math.sqrt(Integer.parseInt(args[1]) / 2.0));
    int across = Integer.parseInt(args[1]) / 2 / around;
    ByteBuffer buffer = ByteBuffer.allocate(100).order(ByteOrder.LITTLE_ENDIAN);
    try (OutputStream out =
        new BufferedOutputStream(Files.newOutputStream(Path.of(args[0])), 1 << 20)) {
      out.write(new byte[80]);
      buffer.putInt(0, 2 * around * across);
      out.write(buffer.array(), 0, 4);
      for (int i = 0; i < around; i++) {
        for (int j = 0; j < across; j++) {
          float[] a = point(i, j, around, across);
          float[] b = point(i + 1, j, around, across);
          float[] c = point(i + 1, j + 1, around, across);
          float[] d = point(i, j + 1, around, across);
          buffer.clear();
          facet(buffer, a, b, c);
          facet(buffer, a, c, d);
          out.write(buffer.array());
        }
      }
    }
    System.out.printf("%s: %,d facets%n", args[0], 2 * around * across);
  }

  private static void facet(ByteBuffer to, float[]... corners) {
    to.putFloat(0).putFloat(0).putFloat(0);
    for (float[] corner : corners) {
      for (float c : corner) {
        to.putFloat(c);
      }
    }
    to.putShort((short) 0);
  }

  private static float[] point(int i, int j, int around, int across) {
    double u = 2 * Math.PI * (i % around) / around;
    double v = 2 * Math.PI * (j % across) / across;
    double r = LARGE_MM + SMALL_MM * Math.cos(v);
    return new float[] {
      (float) (r * Math.cos(u)), (float) (r * Math.sin(u)), (float) (SMALL_MM * Math.sin(v))
    };
  }
}
