package org.amperskin.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.amperskin.geom.Progress;
import org.amperskin.io.common.PrintFileException;
import org.amperskin.mesh.SurfaceMesh;
import org.amperskin.testmeshes.Facts;
import org.amperskin.testmeshes.PackageBytes;
import org.amperskin.testmeshes.PrintBytes;
import org.amperskin.testmeshes.Shapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file is what it holds, packed or not, and a name that says otherwise is told. */
class ContentTest {
  private static final SurfaceMesh BOX = Shapes.box(0, 0, 0, 1, 2, 3);

  @TempDir Path folder;

  private static Map<String, byte[]> files() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("stl", PrintBytes.stlBinary(BOX, ""));
    files.put("obj", text(PrintBytes.obj(BOX, "\n")));
    files.put("ply", PrintBytes.plyBinary(BOX, false));
    files.put("3mf", PackageBytes.of(PackageBytes.model("millimeter", BOX)));
    return files;
  }

  @Test
  void everyContentUnderEveryNamePackedAndPlain() throws Exception {
    int read = 0;
    for (Map.Entry<String, byte[]> file : files().entrySet()) {
      for (String named : List.of("stl", "OBJ", "ply", "3mf")) {
        boolean wrong = !named.equalsIgnoreCase(file.getKey());
        for (boolean packed : new boolean[] {false, true}) {
          byte[] bytes = packed ? gzip(file.getValue()) : file.getValue();
          for (String end : packed ? List.of("", ".gz") : List.of("")) {
            PrintFile print = read("p." + named + end, bytes);
            assertThat(Facts.areaMm2(print.mesh())).isEqualTo(22);
            assertThat(print.notes().stream().filter(n -> n.startsWith("named as")).count())
                .isEqualTo(wrong ? 1 : 0);
            assertThat(print.notes().stream().filter(n -> n.startsWith("gzip file")).count())
                .isEqualTo(packed ? 1 : 0);
            double quick =
                PrintFile.quick(folder.resolve("p." + named + end), 1, Progress.SILENT).areaMm2();
            assertThat(quick).isEqualTo(22);
            read++;
          }
        }
      }
    }
    assertThat(read).isEqualTo(48);
    assertThat(read("p.ply", files().get("stl")).notes())
        .containsExactly("named as PLY, but its content is STL: read as that");
    assertThat(read("p.stl", gzip(files().get("stl"))).notes())
        .containsExactly("gzip file, unpacked and read; its name \"p.stl\" does not say so");
    assertThat(read("p.stl.gz", gzip(files().get("stl"))).notes())
        .containsExactly("gzip file, unpacked and read");
    assertThat(read("p.dat", files().get("ply")).notes()).isEmpty();
  }

  @Test
  void textInSixteenBitsIsReadAsPlyToo() throws Exception {
    String text = "\ufeff" + PrintBytes.plyAscii(BOX, "\r\n");
    assertThat(Facts.areaMm2(read("a", text.getBytes(StandardCharsets.UTF_16LE)).mesh()))
        .isEqualTo(22);
    assertThat(Facts.areaMm2(read("b", text.getBytes(StandardCharsets.UTF_16BE)).mesh()))
        .isEqualTo(22);
    assertThat(Facts.areaMm2(read("c", text.getBytes(StandardCharsets.UTF_8)).mesh()))
        .isEqualTo(22);
  }

  @Test
  void damagedAndOverfullGzipFilesAreRefused() throws Exception {
    byte[] sound = gzip(files().get("stl"));
    for (int cut = 2; cut < sound.length; cut++) {
      assertThat(refusal(Arrays.copyOf(sound, cut))).hasMessageContaining("gzip");
    }
    byte[] crc = sound.clone();
    crc[crc.length - 6] ^= 1;
    assertThat(refusal(crc)).hasMessageContaining("damaged gzip file, after 684 unpacked bytes");
    long start = System.nanoTime();
    byte[] bomb = gzip(new byte[200 << 20]);
    assertThat(refusal(bomb))
        .hasMessageContaining("200 to 1")
        .hasMessageContaining("" + bomb.length);
    assertThat(System.nanoTime() - start).isLessThan(10_000_000_000L);
    assertThat(refusal(gzip(sound))).hasMessageContaining("gzip file within a gzip file");
    assertThat(refusal(gzip(text("hello, this is no print file")))).hasMessageContaining("28");
    assertThat(refusal(gzip(new byte[0]))).hasMessageContaining("0 bytes");
  }

  @Test
  void unpackedFilesAreCleanedUp() throws Exception {
    Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
    Set<Path> before = unpacked(temporary);
    read("a.stl.gz", gzip(files().get("stl")));
    refusal(gzip(text("nothing")));
    refusal(gzip(gzip(text("nothing"))));
    refusal(Arrays.copyOf(gzip(files().get("stl")), 60));
    // Another run on this machine may be unpacking as well, but not for long.
    Set<Path> left = unpacked(temporary);
    for (int i = 0; i < 50 && !before.containsAll(left); i++) {
      Thread.sleep(100);
      left.retainAll(unpacked(temporary));
    }
    left.removeAll(before);
    assertThat(left).isEmpty();
  }

  private static Set<Path> unpacked(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(p -> p.getFileName().toString().matches("amperskin.*\\.unpacked"))
          .collect(Collectors.toCollection(HashSet::new));
    }
  }

  private PrintFile read(String name, byte[] bytes) throws Exception {
    return PrintFile.read(Files.write(folder.resolve(name), bytes), 1, Progress.SILENT);
  }

  private PrintFileException refusal(byte[] bytes) throws Exception {
    Path path = Files.write(folder.resolve("refused.stl.gz"), bytes);
    PrintFileException e =
        catchThrowableOfType(
            PrintFileException.class, () -> PrintFile.read(path, 1, Progress.SILENT));
    assertThat(e).isNotNull();
    return e;
  }

  private static byte[] gzip(byte[] bytes) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (GZIPOutputStream zip = new GZIPOutputStream(out)) {
      zip.write(bytes);
    }
    return out.toByteArray();
  }

  private static byte[] text(String s) {
    return s.getBytes(StandardCharsets.UTF_8);
  }
}
