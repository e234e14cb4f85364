package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The awkward drawings with bytes changed, cut out and doubled by chance: each is read or refused
 * with the one exception, soon.
 */
class SvgFuzzTest {
  private static final int EACH = 25;

  @Test
  void changedDrawingsAreReadOrRefused() throws Exception {
    List<Path> files;
    try (Stream<Path> all = Files.list(AwkwardSvgTest.FOLDER)) {
      files = all.sorted().toList();
    }
    int read = 0;
    int refused = 0;
    for (int f = 0; f < files.size(); f++) {
      byte[] sound = Files.readAllBytes(files.get(f));
      for (int k = 0; k < EACH; k++) {
        long seed = 1000L * f + k;
        byte[] broken = broken(sound, new Random(seed * 0x9E3779B97F4A7C15L));
        String what = files.get(f).getFileName() + " seed " + seed;
        boolean sane =
            assertTimeoutPreemptively(Duration.ofSeconds(60), () -> reads(broken, what), what);
        read += sane ? 1 : 0;
        refused += sane ? 0 : 1;
      }
    }
    assertThat(read).isGreaterThan(100);
    assertThat(refused).isGreaterThan(100);
  }

  private static boolean reads(byte[] bytes, String what) {
    try {
      Artwork art =
          ArtworkFile.read(bytes, Path.of("x.svg"), ArtworkFile.Options.standard().withDpi(100));
      assertThat(art.opaqueFraction()).as(what).isBetween(-1e-9, 1 + 1e-9);
      return true;
    } catch (ArtworkFileException told) {
      return false;
    } catch (RuntimeException e) {
      throw new AssertionError(what + ": " + e, e);
    }
  }

  private static byte[] broken(byte[] sound, Random random) {
    byte[] bytes = sound.clone();
    int changes = 1 + random.nextInt(3);
    for (int i = 0; i < changes; i++) {
      int at = random.nextInt(bytes.length);
      switch (random.nextInt(4)) {
        case 0 -> bytes[at] = bytes[random.nextInt(bytes.length)];
        case 1 -> bytes[at] = (byte) ('0' + random.nextInt(10));
        case 2 -> {
          // a stretch from elsewhere over it
          int n = Math.min(1 + random.nextInt(30), bytes.length - at);
          System.arraycopy(bytes, random.nextInt(bytes.length - n + 1), bytes, at, n);
        }
        default -> bytes[at] = (byte) random.nextInt(128);
      }
    }
    return bytes;
  }
}
