package org.amperskin.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Writers killed at random moments lose nothing they acknowledged. The full run of 200: {@code mvn
 * -pl mesh-core test -Dtest=LogCrashTest -Dkills=200}.
 */
class LogCrashTest {
  private static final int KILLS = Integer.getInteger("kills", 20);
  private static final int SEED = 20260301;
  private static final int HEADER = 32;
  private static final int FRAME = 24 + 4096;

  @TempDir private Path folder;

  /** All entries of a log that must be sound, by name. */
  private static Map<String, LogEntry.Weighing> sound(Path file, String when) throws Exception {
    try (BenchLog log = BenchLog.open(file)) {
      assertThat(log.faults()).as(when).isEmpty();
      return log.entries().stream()
          .map(LogEntry.Weighing.class::cast)
          .collect(Collectors.toMap(LogEntry.Weighing::what, Function.identity()));
    }
  }

  @Test
  void everyEntryAcknowledgedBeforeAHardKillIsThere() throws Exception {
    Random random = new Random(SEED);
    Path file = folder.resolve("log-0.db");
    TreeSet<Integer> kept = new TreeSet<>();
    int next = 0;
    int acknowledged = 0;
    int unanswered = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      if (kill % 5 == 0) { // a fresh log, killed while it is being made
        file = folder.resolve("log-" + kill + ".db");
        kept.clear();
      }
      int wanted = kill % 5 == 0 ? 0 : random.nextInt(25);
      int hold = 1 + random.nextInt(8);
      long delayMicros = random.nextInt(kill % 5 == 0 ? 400_000 : 30_000);
      Process writer = LogWriterProcess.start(folder, file, "e", next, 1_000_000, hold);
      int got = killAfter(writer, wanted, delayMicros, kept);
      acknowledged += got;
      String when = "kill " + kill + " of seed " + SEED;
      if (Files.exists(file)) {
        Map<String, LogEntry.Weighing> there = soundOrBegun(file, when);
        for (int n : kept) {
          LogEntry.Weighing entry = there.get("e" + n);
          assertThat(entry).as("%s: entry %d", when, n).isNotNull();
          assertThat(entry.head().note()).isEqualTo(LogWriterProcess.entry("e", n).head().note());
        }
        // at most the one entry under way is there without having been acknowledged
        int extra = there.size() - kept.size();
        assertThat(extra).as(when).isBetween(0, kill % 5 == 0 ? 1 : kill % 5 + 1);
        unanswered += extra;
        next = there.keySet().stream().mapToInt(LogCrashTest::number).max().orElse(next) + 1;
      } else {
        assertThat(kept).as(when).isEmpty();
      }
      clean();
    }
    System.out.printf(
        "%d kills, %d entries acknowledged and found, %d more found%n",
        KILLS, acknowledged, unanswered);
    assertThat(acknowledged).isGreaterThan(KILLS);
  }

  /** A log killed while it was being made has no table yet; opening it to write makes it whole. */
  private static Map<String, LogEntry.Weighing> soundOrBegun(Path file, String when)
      throws Exception {
    BenchLog.openOrMake(file).close();
    return sound(file, when);
  }

  private static int number(String name) {
    return Integer.parseInt(name.substring(1));
  }

  /** Waits for so many acknowledgements and a little more, kills, and reads what was said. */
  private static int killAfter(Process writer, int wanted, long micros, TreeSet<Integer> kept)
      throws Exception {
    int got = 0;
    try (BufferedReader said = writer.inputReader()) {
      assertThat(said.readLine()).isEqualTo("ready");
      String line = "";
      while (got < wanted && (line = said.readLine()) != null) {
        got += note(line, kept);
      }
      Thread.sleep(micros / 1000, (int) (micros % 1000) * 1000);
      writer
          .toHandle()
          .destroyForcibly(); // unlike the process's own, it leaves the pipe to be read
      while ((line = said.readLine()) != null) {
        got += note(line, kept);
      }
    }
    writer.waitFor();
    return got;
  }

  private static int note(String line, TreeSet<Integer> kept) {
    String[] words = line.split(" ");
    boolean whole = words.length == 3 && words[0].equals("kept") && words[2].equals(".");
    return whole && kept.add(Integer.parseInt(words[1])) ? 1 : 0;
  }

  /** Killed programs leave the unpacked library behind. */
  private void clean() throws Exception {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path left :
          files.filter(f -> f.getFileName().toString().startsWith("sqlite")).toList()) {
        Files.delete(left);
      }
    }
  }

  @Test
  void twoWritersAtOnceLoseNothing() throws Exception {
    Path file = folder.resolve("log.db");
    int each = 500;
    List<Process> writers = new ArrayList<>();
    for (String name : List.of("a", "b")) {
      // every writer lets go of the file now and then, so that both also begin and end at once
      writers.add(LogWriterProcess.start(folder, file, name, 0, each, 50));
    }
    for (Process writer : writers) {
      try (BufferedReader said = writer.inputReader()) {
        assertThat(said.lines().filter(l -> l.startsWith("kept "))).hasSize(each);
      }
      assertThat(writer.waitFor()).isZero();
    }
    Map<String, LogEntry.Weighing> there = sound(file, "two writers");
    assertThat(there.keySet())
        .containsExactlyInAnyOrderElementsOf(
            IntStream.range(0, each)
                .boxed()
                .flatMap(n -> Stream.of("a" + n, "b" + n))
                .collect(Collectors.toSet()));
  }

  /** Who finds a log that another is just beginning waits, and does not take it for a stranger. */
  @Test
  void manyWhoBeginOneLogAtOnceAgreeOnIt() throws Exception {
    int many = 6;
    Random random = new Random(1);
    ExecutorService pool = Executors.newFixedThreadPool(many);
    try {
      for (int round = 0; round < 150; round++) {
        Path file = folder.resolve("log" + round + ".db");
        CyclicBarrier together = new CyclicBarrier(many);
        List<Future<Long>> numbers = new ArrayList<>();
        for (int i = 0; i < many; i++) {
          LogEntry entry = LogWriterProcess.entry("w", i);
          int late = random.nextInt(25);
          numbers.add(
              pool.submit(
                  () -> {
                    together.await();
                    Thread.sleep(late);
                    try (BenchLog log = BenchLog.openOrMake(file)) {
                      return log.write(entry);
                    }
                  }));
        }
        List<Long> got = new ArrayList<>();
        for (Future<Long> number : numbers) {
          got.add(number.get());
        }
        assertThat(got).as("round %d", round).doesNotHaveDuplicates();
        assertThat(sound(file, "round " + round)).hasSize(many);
      }
    } finally {
      pool.shutdownNow();
    }
  }

  /**
   * The write-ahead log, cut. Its form is published (SQLite file format, section 4): a header of 32
   * bytes, then frames of 24 bytes and a page; an entry is there once its last frame is.
   */
  @Test
  void theJournalCutAnywhereIsAnEarlierWholeLog() throws Exception {
    Path file = folder.resolve("log.db");
    Path journal = folder.resolve("log.db-wal");
    int before = 5;
    int more = 12;
    try (LogStore other = openWith(file, before)) { // keeps the journal from being folded in
      assertThat(other.journal()).isEqualTo("wal");
      long[] ends = new long[more];
      try (BenchLog log = BenchLog.open(file)) {
        for (int i = 0; i < more; i++) {
          log.write(LogWriterProcess.entry("e", before + i));
          ends[i] = Files.size(journal);
        }
      }
      cutEverywhere(file, before, ends);
      // the same once the journal was folded in and is written over from its beginning
      other.alone("PRAGMA wal_checkpoint(RESTART)");
      byte[] old = Files.readAllBytes(journal);
      try (BenchLog log = BenchLog.open(file)) {
        log.write(LogWriterProcess.entry("e", before + more));
      }
      byte[] now = Files.readAllBytes(journal);
      assertThat(now).hasSameSizeAs(old).isNotEqualTo(old);
      cutEverywhere(file, before + more, new long[] {written(old, now)});
    }
  }

  /** Where the last frame ends in which the new journal differs from the old one. */
  private static long written(byte[] old, byte[] now) {
    int last = 0;
    for (int i = 0; i < now.length; i++) {
      last = old[i] == now[i] ? last : i;
    }
    return HEADER + ((last - HEADER) / FRAME + 1L) * FRAME;
  }

  private static LogStore openWith(Path file, int entries) throws Exception {
    try (BenchLog log = BenchLog.openOrMake(file)) {
      for (int n = 0; n < entries; n++) {
        log.write(LogWriterProcess.entry("e", n));
      }
    }
    LogStore store = LogStore.open(file);
    store.alone("PRAGMA wal_autocheckpoint = 0");
    return store;
  }

  private void cutEverywhere(Path file, int before, long[] ends) throws Exception {
    byte[] main = Files.readAllBytes(file);
    byte[] journal = Files.readAllBytes(Path.of(file + "-wal"));
    int cuts = 0;
    TreeSet<Integer> at = new TreeSet<>(List.of(0, 1, 31, 32, journal.length));
    for (int frame = HEADER; frame <= journal.length; frame += FRAME) {
      at.addAll(List.of(frame, Math.max(0, frame - 1), frame + 12, frame + 24, frame + 2000));
    }
    for (int cut : at) {
      if (cut > journal.length) {
        continue;
      }
      Path copy = Files.createDirectory(folder.resolve("cut")).resolve("log.db");
      Files.write(copy, main);
      Files.write(Path.of(copy + "-wal"), Arrays.copyOf(journal, cut));
      Map<String, LogEntry.Weighing> there = sound(copy, "journal cut at byte " + cut);
      int expected = before;
      for (long end : ends) {
        expected += cut >= end ? 1 : 0; // there exactly when all of its frames are
      }
      assertThat(there).as("journal cut at byte %d", cut).hasSize(expected);
      for (int n = 0; n < expected; n++) {
        assertThat(there.get("e" + n).head().note())
            .isEqualTo(LogWriterProcess.entry("e", n).head().note());
      }
      cuts++;
      for (String end : new String[] {"", "-wal", "-shm"}) {
        Files.deleteIfExists(Path.of(copy + end));
      }
      Files.delete(copy.getParent());
    }
    assertThat(cuts).isGreaterThan(ends.length * 3);
  }

  @Test
  void anEntryUnderWayIsNotThere() throws Exception {
    Path file = folder.resolve("log.db");
    try (LogStore store = openWith(file, 3)) {
      store.alone("PRAGMA cache_size = 1"); // pages go to the journal before the commit
      store.alone("BEGIN IMMEDIATE");
      for (int n = 0; n < 30; n++) {
        store.alone(
            "INSERT INTO entry (kind, date, note) VALUES ('job', '2026-03-01', ?)",
            "x".repeat(3000));
      }
      assertThat(Files.size(Path.of(file + "-wal"))).isGreaterThan(20 * 4096);
      cutEverywhere(file, 3, new long[] {Long.MAX_VALUE});
      store.alone("ROLLBACK");
    }
    assertThat(sound(file, "rolled back")).hasSize(3);
  }
}
