package org.amperskin.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.MeshBuilder;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.io.obj.ObjFile;
import org.amperskin.io.ply.PlyFile;
import org.amperskin.io.stl.AsciiStl;
import org.amperskin.mesh.MeshDiagnosis;
import org.amperskin.mesh.MeshDiagnosis.Search;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.PackageBytes;
import org.amperskin.testmeshes.PrintBytes;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Damaged files give a {@link PrintFileException} or a finite answer, nothing else.
 *
 * <p>{@code -Damperskin.mutations=1000000} makes more of them, {@code -Damperskin.seed=N} begins at
 * another one.
 */
class ReaderAbuseTest {
  private static final int MUTATIONS = Integer.getInteger("amperskin.mutations", 20_000);
  private static final int FIRST_SEED = Integer.getInteger("amperskin.seed", 0);

  private static final List<String> WORDS =
      List.of(
          "nan",
          "inf",
          "1e999",
          "-1e999",
          "1e300",
          "1e-320",
          "-0",
          "0",
          "-1",
          "4294967296",
          "1e",
          "--1",
          "0x1p5",
          "1.5f",
          "\\\n",
          "\\",
          "#",
          "\r",
          "\n\n",
          " ",
          "\t",
          "\0",
          "\ufeff",
          "f ",
          "v ",
          "g ",
          "f 1 1 1 1",
          "f 1 2 3 4 5 6 7 8 7 6",
          "//",
          "/",
          "solid",
          "endsolid",
          "facet normal",
          "endloop",
          "endfacet",
          "vertex",
          "outer loop",
          "element face 4000000000\n",
          "element vertex 99999999999999999999\n",
          "property list uchar int vertex_indices\n",
          "end_header\n",
          "<",
          ">",
          "'",
          "/>",
          "&lt;",
          "&x;",
          "<!DOCTYPE a [<!ENTITY x 'y'>]>",
          "<object id='2'>",
          "<component objectid='1'/>",
          "<item objectid='2'/>",
          " transform='-1 0 0 0 1 0 0 0 1 1e9 0 0'",
          " pid='1' p1='7'",
          " type='support'",
          "9".repeat(400));

  @TempDir Path folder;
  private int written;

  /** A format with small sound files of it. */
  private enum Kind {
    BINARY {
      @Override
      List<byte[]> files() {
        return List.of(
            PrintBytes.stlBinary(Shapes.box(0, 0, 0, 1, 2, 3), ""),
            PrintBytes.stlBinary(Shapes.box(0, 0, 0, 1, 2, 3), "solid box"));
      }

      @Override
      MeshBuilder read(InputStream in, long bytes) {
        throw new UnsupportedOperationException("binary STL is read from a channel");
      }
    },
    ASCII {
      @Override
      List<byte[]> files() {
        SurfaceMesh box = Shapes.box(0, 0, 0, 1, 2, 3);
        String two = PrintBytes.stlAscii(box, "a", "\n") + PrintBytes.stlAscii(box, "b", "\r\n");
        return List.of(
            PrintBytes.stlAscii(box, "box", "\r\n").getBytes(StandardCharsets.UTF_8),
            two.getBytes(StandardCharsets.UTF_8));
      }

      @Override
      MeshBuilder read(InputStream in, long bytes) throws IOException, PrintFileException {
        return AsciiStl.read(in);
      }
    },
    OBJ {
      @Override
      List<byte[]> files() {
        String polygons =
            "\ufeff# a \u00e9\r\no part\nv 0 0 0 1 0 0\nv 2.5e0 0 0\nv 2 2 0\nv 1 .5 0\nv 0 2 \\\n 0\n"
                + "vt 0 0\nvn 0 0 1\ng side\nf 1/1/1 2//1 3/1 4 5\nf -1 -2 \\\r\n -3 # end\ns off\n";
        return List.of(
            PrintBytes.obj(Shapes.box(0, 0, 0, 1, 2, 3), "\n").getBytes(StandardCharsets.UTF_8),
            polygons.getBytes(StandardCharsets.UTF_8));
      }

      @Override
      MeshBuilder read(InputStream in, long bytes) throws IOException, PrintFileException {
        return ObjFile.read(in).mesh();
      }
    },

    PLY_ASCII {
      @Override
      List<byte[]> files() {
        String mixed =
            "ply\r\nformat ascii 1.0\r\ncomment \u00e9\r\nelement tristrips 1\r\n"
                + "property list int int vertex_index\r\nelement vertex 5\r\nproperty uchar red\r\n"
                + "property double z\r\nproperty float x\r\nproperty short y\r\nelement face 2\r\n"
                + "property list uchar uint vertex_indices\r\nproperty list uchar float uv\r\n"
                + "end_header\r\n9 0 1 2 3 -1 1 2 3 4\r\n255 0 0 0\r\n1 0 1.5 0\r\n1 0 1 1\r\n"
                + "0 1e-1 0 1\r\n9 2 2 2\r\n5 0 1 2 3 4 2 .5 .5\r\n3 0 1 2 0\r\n";
        return List.of(
            PrintBytes.plyAscii(Shapes.box(0, 0, 0, 1, 2, 3), "\n")
                .getBytes(StandardCharsets.UTF_8),
            mixed.getBytes(StandardCharsets.UTF_8));
      }

      @Override
      MeshBuilder read(InputStream in, long bytes) throws IOException, PrintFileException {
        return PlyFile.read(in, bytes).mesh();
      }
    },
    PLY_BINARY {
      @Override
      List<byte[]> files() {
        SurfaceMesh box = Shapes.box(0, 0, 0, 1, 2, 3);
        return List.of(PrintBytes.plyBinary(box, false), PrintBytes.plyBinary(box, true));
      }

      @Override
      MeshBuilder read(InputStream in, long bytes) throws IOException, PrintFileException {
        return PlyFile.read(in, bytes).mesh();
      }
    },
    PACKAGE {
      @Override
      List<byte[]> files() {
        Map<String, byte[]> parts = PackageBytes.withStart(Map.of(PackageBytes.ROOT, MODEL));
        return List.of(PackageBytes.zip(parts, true), PackageBytes.zip(parts, false));
      }

      @Override
      MeshBuilder read(InputStream in, long bytes) {
        throw new UnsupportedOperationException("an archive is read from a file");
      }
    },
    MODEL_PART {
      @Override
      List<byte[]> files() {
        return List.of(
            MODEL, new String(MODEL, StandardCharsets.UTF_8).getBytes(StandardCharsets.UTF_16));
      }

      @Override
      byte[] wrapped(byte[] damaged) {
        Map<String, byte[]> parts = PackageBytes.withStart(Map.of(PackageBytes.ROOT, damaged));
        return PackageBytes.zip(parts, true);
      }

      @Override
      MeshBuilder read(InputStream in, long bytes) {
        throw new UnsupportedOperationException("an archive is read from a file");
      }
    };

    /** A model with all that makes one: colours, components, a mirror, two items. */
    private static final byte[] MODEL =
        PackageBytes.model(
                "inch",
                "xmlns:m='http://schemas.microsoft.com/3dmanufacturing/material/2015/02'"
                    + " requiredextensions='m'",
                "<basematerials id='3'><base name='red' displaycolor='#FF0000'/></basematerials>"
                    + "<m:colorgroup id='4'><m:color color='#00FF00'/></m:colorgroup>"
                    + PackageBytes.object(
                            1, "name='box' pid='3' pindex='0'", Shapes.box(0, 0, 0, 1, 2, 3))
                        .replaceFirst("v3='1'/>", "v3='1' pid='4' p1='0'/>")
                    + "<object id='2'><components><component objectid='1'/><component objectid='1'"
                    + " transform='-1 0 0 0 2 0 0 0 1 9 0 0'/></components></object>",
                "<item objectid='2'/><item objectid='1' transform='1 0 0 0 1 0 0 0 1 0 0 20'/>")
            .getBytes(StandardCharsets.UTF_8);

    abstract List<byte[]> files();

    /** Two kinds of a format share its mutations. */
    int share() {
      return this == PLY_ASCII || this == PLY_BINARY || this == PACKAGE || this == MODEL_PART
          ? 2
          : 1;
    }

    /** The file that holds what was damaged. */
    byte[] wrapped(byte[] damaged) {
      return damaged;
    }

    abstract MeshBuilder read(InputStream in, long bytes) throws IOException, PrintFileException;
  }

  @ParameterizedTest
  @EnumSource(
      value = Kind.class,
      names = {"ASCII", "OBJ", "PLY_ASCII", "PLY_BINARY"})
  void oneByteARead(Kind kind) throws Exception {
    for (byte[] file : kind.files()) {
      SurfaceMesh whole = kind.read(new ByteArrayInputStream(file), file.length).build(1);
      SurfaceMesh trickled = kind.read(new Trickle(file), file.length).build(1);
      assertThat(trickled.positions()).isEqualTo(whole.positions());
      assertThat(trickled.corners()).isEqualTo(whole.corners());
      assertThat(trickled.groupNames()).isEqualTo(whole.groupNames());
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Kind.class,
      names = {"ASCII", "OBJ", "PLY_ASCII", "PLY_BINARY"})
  void errorsNameTheSameLineAtOneByteARead(Kind kind) {
    byte[] file = kind.files().get(1);
    for (int cut = 0; cut < file.length; cut += 7) {
      byte[] part = Arrays.copyOf(file, cut);
      assertThat(message(kind, new Trickle(part), cut))
          .isEqualTo(message(kind, new ByteArrayInputStream(part), cut));
    }
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void cutAtEveryOffset(Kind kind) throws Exception {
    for (byte[] file : kind.files()) {
      int refused = 0;
      for (int cut = 0; cut < file.length; cut++) {
        refused += survives(kind.wrapped(Arrays.copyOf(file, cut)), "cut at " + cut) ? 0 : 1;
      }
      assertThat(survives(kind.wrapped(file), "whole")).isTrue();
      assertThat(refused).isPositive();
      if (kind == Kind.BINARY
          || kind == Kind.PLY_BINARY
          || kind == Kind.PACKAGE) { // it knows its length; text may end at a harmless place
        assertThat(refused).isEqualTo(file.length);
      }
    }
  }

  @Test
  void asciiStlIsRefusedUnlessASolidIsWhole() throws Exception {
    byte[] file = Kind.ASCII.files().get(0);
    String text = new String(file, StandardCharsets.UTF_8);
    int end = text.lastIndexOf("endsolid") + "endsolid".length();
    for (int cut = 0; cut < file.length; cut++) {
      assertThat(survives(Arrays.copyOf(file, cut), "cut at " + cut))
          .as("%d", cut)
          .isEqualTo(cut >= end);
    }
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void randomDamage(Kind kind) throws Exception {
    List<byte[]> files = kind.files();
    int answers = 0;
    int mutations = Math.max(1, MUTATIONS / kind.share());
    for (int seed = FIRST_SEED; seed < FIRST_SEED + mutations; seed++) {
      Random random = new Random(seed);
      byte[] bytes = files.get(random.nextInt(files.size()));
      for (int n = 1 + random.nextInt(3); n > 0; n--) {
        bytes = damaged(bytes, random);
      }
      String repeat =
          String.format(
              "seed %d; to repeat: mvn -B -pl mesh-core test -Dtest=ReaderAbuseTest"
                  + " -Damperskin.seed=%d -Damperskin.mutations=1",
              seed, seed);
      answers += survives(kind.wrapped(bytes), repeat) ? 1 : 0;
    }
    if (MUTATIONS >= 1000) { // both outcomes are met
      assertThat(answers).isBetween(mutations / 100, mutations - mutations / 50);
    }
  }

  /** True if there is an answer, false if the file is refused; anything else fails. */
  private boolean survives(byte[] bytes, String what) throws Exception {
    // A new name each time: some file systems flush when a file is emptied and written again.
    Path path = Files.write(folder.resolve("damaged" + written++), bytes);
    try {
      PrintFile file = PrintFile.read(path, 1, Progress.SILENT);
      SurfaceMesh mesh = file.mesh();
      assertThat(mesh.faceCount()).as(what).isPositive();
      assertThat(Facts.areaMm2(mesh)).as(what).isFinite();
      MeshDiagnosis seen = MeshDiagnosis.of(mesh, Search.ALL, Progress.SILENT);
      assertThat(seen.areaMm2()).as(what).isFinite();
      assertThat(seen.volumeMm3().orElse(0)).as(what).isFinite();
      assertThat(seen.box().longestSide()).as(what).isFinite();
      double quick = PrintFile.quick(path, 1, Progress.SILENT).areaMm2();
      assertThat(quick).as(what).isFinite();
      return true;
    } catch (PrintFileException e) {
      assertThat(e.getMessage()).as(what).isNotBlank();
      return false;
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      return fail(what + " gave " + e, e);
    } finally {
      Files.delete(path);
    }
  }

  private static String message(Kind kind, InputStream in, long bytes) {
    try {
      return kind.read(in, bytes).faceCount() + " faces";
    } catch (PrintFileException e) {
      return e.getMessage();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static byte[] damaged(byte[] bytes, Random random) {
    int n = bytes.length;
    if (n == 0) {
      return new byte[] {(byte) random.nextInt(256)};
    }
    int at = random.nextInt(n);
    int length = Math.min(n - at, 1 + random.nextInt(random.nextBoolean() ? 4 : 60));
    byte[] changed = bytes.clone();
    switch (random.nextInt(8)) {
      case 0 -> changed[at] ^= (byte) (1 << random.nextInt(8));
      case 1 -> changed[at] = (byte) random.nextInt(256);
      case 2 -> changed = spliced(bytes, at, at + length, new byte[0]);
      case 3 -> changed = spliced(bytes, at, at, Arrays.copyOfRange(bytes, at, at + length));
      case 4 -> changed = Arrays.copyOf(bytes, at);
      case 5 -> {
        String word = WORDS.get(random.nextInt(WORDS.size()));
        byte[] in = word.getBytes(StandardCharsets.UTF_8);
        changed = spliced(bytes, at, random.nextBoolean() ? at : at + length, in);
      }
      case 6 -> {
        int from = random.nextInt(n);
        byte[] piece = Arrays.copyOfRange(bytes, from, Math.min(n, from + length));
        changed = spliced(bytes, at, at + length, piece);
      }
      default -> {
        int[] telling = {0, 0xff, 0x7f, 0x80};
        int value = telling[random.nextInt(4)];
        Arrays.fill(changed, at, Math.min(n, at + 1 + random.nextInt(4)), (byte) value);
      }
    }
    return changed;
  }

  private static byte[] spliced(byte[] bytes, int from, int to, byte[] with) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(bytes, 0, from);
    out.write(with, 0, with.length);
    out.write(bytes, to, bytes.length - to);
    return out.toByteArray();
  }

  /** Gives one byte a read. */
  private static final class Trickle extends InputStream {
    private final byte[] bytes;
    private int at;

    Trickle(byte[] bytes) {
      this.bytes = bytes;
    }

    @Override
    public int read() {
      return at < bytes.length ? bytes[at++] & 0xff : -1;
    }

    @Override
    public int read(byte[] to, int offset, int length) {
      if (at == bytes.length) {
        return -1;
      }
      to[offset] = bytes[at++];
      return 1;
    }
  }
}
