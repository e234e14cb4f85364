package org.amperskin.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.amperskin.plating.RecipeLibrary;
import org.amperskin.testmeshes.TestMeshes;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bench log: what is written is read, and what is wrong is told. */
class BenchLogTest {
  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void place() {
    file = folder.resolve("below/log.db");
  }

  private static List<LogEntry> entries(Path file) throws Exception {
    try (BenchLog log = BenchLog.open(file)) {
      assertThat(log.faults()).isEmpty();
      return log.entries();
    }
  }

  @Test
  void everyKindOfEntryIsReadAsItWasWritten() throws Exception {
    DemoLog.make(file);
    List<LogEntry> all = entries(file);
    assertThat(all).hasSize(14);
    assertThat(all)
        .extracting(LogEntry::kind)
        .containsOnly("bath", "weighing", "job", "coupon", "counter");
    try (BenchLog log = BenchLog.open(file)) {
      for (LogEntry entry : all) {
        long again = log.write(entry); // its number and strike are new, the rest is the same
        LogEntry read = log.entry(again);
        assertThat(read).usingRecursiveComparison().ignoringFields("head").isEqualTo(entry);
        assertThat(read.head().date()).isEqualTo(entry.head().date());
        assertThat(read.head().note()).isEqualTo(entry.head().note());
        assertThat(read.head().number()).isEqualTo(again);
      }
    }
  }

  @Test
  void theStoredDemoLogIsTheOneItsMakerMakes() throws Exception {
    DemoLog.make(file);
    Path copy = folder.resolve("stored.db");
    Files.copy(TestMeshes.folder().resolve("demo/bench-log.db"), copy);
    assertThat(entries(copy)).isEqualTo(entries(file));
    try (BenchLog a = BenchLog.open(copy);
        BenchLog b = BenchLog.open(file)) {
      assertThat(a.baths()).isEqualTo(b.baths());
    }
  }

  @Test
  void readingNeverMakesAFile() {
    assertThatThrownBy(() -> BenchLog.open(file))
        .isInstanceOf(LogException.class)
        .hasMessageContainingAll(file.toString(), "there is none yet", "begins it");
    assertThat(file).doesNotExist();
    assertThat(file.getParent()).doesNotExist();
  }

  @Test
  void whatIsNoLogIsToldAndLeftAlone() throws Exception {
    Path text = folder.resolve("notes.txt");
    Files.writeString(text, "not a database, but long enough to hold a header of one\n".repeat(9));
    byte[] before = Files.readAllBytes(text);
    fault(() -> BenchLog.open(text), "this is no SQLite database");
    fault(() -> BenchLog.openOrMake(text), "this is no SQLite database");
    assertThat(Files.readAllBytes(text)).isEqualTo(before);
    fault(() -> BenchLog.open(folder), "this is a folder");
    Path other = folder.resolve("other.db");
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + other);
        Statement s = c.createStatement()) {
      s.execute("CREATE TABLE stamps (x)");
    }
    byte[] stamps = Files.readAllBytes(other);
    fault(() -> BenchLog.openOrMake(other), "a database of something else");
    assertThat(Files.readAllBytes(other)).isEqualTo(stamps);
    fault(() -> BenchLog.openOrMake(folder.resolve("a?b.db")), "question mark");
  }

  private static void fault(
      org.assertj.core.api.ThrowableAssert.ThrowingCallable run, String word) {
    assertThatThrownBy(run).isInstanceOf(LogException.class).hasMessageContaining(word);
  }

  @Test
  void aLogOfANewerProgramIsToldAndLeftAlone() throws Exception {
    DemoLog.make(file);
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement s = c.createStatement()) {
      s.execute("PRAGMA user_version = 99");
    }
    fault(() -> BenchLog.open(file), "it is of version 99, this program knows up to 2");
  }

  /** A log of the first version, written by statements of its time, is brought up to date. */
  @Test
  void anOldLogIsBroughtUpToDateWithAllItHolds() throws Exception {
    Path old = folder.resolve("old.db");
    try (LogStore store = LogStore.make(old, 1)) {
      store.alone("INSERT INTO bath (name) VALUES ('old bath')");
      store.alone("INSERT INTO entry (kind, date) VALUES ('counter', '2025-12-31')");
      store.alone("INSERT INTO counter VALUES (1, 1, 2.5, NULL)");
      fault(() -> store.alone("SELECT struck FROM entry"), "no such column: struck");
    }
    LogEntry.Counter read = (LogEntry.Counter) entries(old).get(0);
    assertThat(read.head().struck()).isEmpty();
    assertThat(read.bath()).isEqualTo("old bath");
    assertThat(read.addedAh()).hasValue(2.5);
    try (BenchLog log = BenchLog.open(old)) {
      log.strike(1, "wrong bath");
      assertThat(log.entry(1).head().struck()).contains("wrong bath");
    }
  }

  @Test
  void theFileIsKeptByAWriteAheadLogAndIsOneFileWhenClosed() throws Exception {
    DemoLog.make(file);
    try (LogStore store = LogStore.open(file)) {
      assertThat(store.journal()).isEqualTo("wal");
    }
    try (Stream<Path> beside = Files.list(file.getParent())) {
      assertThat(beside).containsExactly(file);
    }
  }

  @Test
  void anEntryThatNamesWhatIsNotThereLeavesNothingBehind() throws Exception {
    DemoLog.make(file);
    try (BenchLog log = BenchLog.open(file)) {
      refused(
          () -> log.write(weighing(Optional.of("big coper"), OptionalLong.empty())),
          "bath 'big coper' is not known, did you mean 'big copper'?");
      refused(
          () -> log.write(weighing(Optional.empty(), OptionalLong.of(1))),
          "entry 1 is no job of the log");
      refused(() -> log.strike(99, "gone"), "entry 99 is not in the log");
      refused(() -> log.strike(8, "twice"), "struck out already");
      refused(() -> log.entry(99), "entry 99 is not in the log; it has 14");
      assertThat(log.entries()).hasSize(14);
      assertThat(log.write(weighing(Optional.of("BIG Copper"), OptionalLong.of(9)))).isEqualTo(15);
    }
  }

  private static void refused(
      org.assertj.core.api.ThrowableAssert.ThrowingCallable run, String word) {
    assertThatThrownBy(run).isInstanceOf(IllegalArgumentException.class).hasMessageContaining(word);
  }

  private static LogEntry.Weighing weighing(Optional<String> bath, OptionalLong job) {
    return new LogEntry.Weighing(
        LogEntry.Head.of(LocalDate.of(2026, 3, 20), Optional.empty()),
        "part, \"heavy\"\nsecond line; c\u00f4t\u00e9",
        10,
        11,
        0.01,
        OptionalDouble.empty(),
        bath,
        job);
  }

  @Test
  void valuesThatCannotBeAreRefusedWithTheirUnit() {
    LogEntry.Head head = LogEntry.Head.of(LocalDate.of(2026, 3, 1), Optional.empty());
    refused(() -> new LogEntry.Step("s", 0, Optional.empty()), "charge of step s (0.0 A.h)");
    refused(() -> new LogEntry.Addition("salt", 3, "kg", 0), "told in kg; g or mL fit");
    refused(() -> new LogEntry.Dose("b", Double.NaN), "dose of b (NaN mL/A.h)");
    refused(
        () -> new LogEntry.Counter(head, "b", OptionalDouble.of(1), OptionalDouble.of(2)),
        "a charge added or a reading, one of them");
    refused(() -> new Bath(" ", Optional.empty(), Optional.empty()), "a bath needs a name");
  }

  @Test
  void aBathKeepsWhatItWasToldUntilItIsToldOtherwise() throws Exception {
    try (BenchLog log = BenchLog.openOrMake(file)) {
      log.write(new Bath("Tub", Optional.of("nickel-watts"), Optional.empty()), Optional.empty());
      log.write(new Bath("tub", Optional.empty(), Optional.of(false)), Optional.empty());
      assertThat(log.baths())
          .containsExactly(new Bath("Tub", Optional.of("nickel-watts"), Optional.of(false)));
    }
  }

  @Test
  void aBackupTakenWhileAnotherWritesIsWholeAndSound() throws Exception {
    DemoLog.make(file);
    AtomicBoolean stop = new AtomicBoolean();
    Thread writer =
        new Thread(
            () -> {
              try (BenchLog log = BenchLog.open(file)) {
                while (!stop.get()) {
                  log.write(weighing(Optional.empty(), OptionalLong.empty()));
                }
              } catch (LogException broken) {
                throw new IllegalStateException(broken);
              }
            });
    writer.start();
    try (BenchLog log = BenchLog.open(file)) {
      for (int i = 0; i < 3; i++) {
        int before = log.entries().size();
        Path copy = folder.resolve("copies/copy-" + i + ".db");
        log.backUp(copy);
        assertThat(entries(copy).size()).isBetween(before, log.entries().size());
      }
      Path there = folder.resolve("copies/copy-0.db");
      assertThatThrownBy(() -> log.backUp(there)).isInstanceOf(FileAlreadyExistsException.class);
    } finally {
      stop.set(true);
      writer.join();
    }
    try (Stream<Path> copies = Files.list(folder.resolve("copies"))) {
      assertThat(copies).hasSize(3);
    }
  }

  @Test
  void tablesAreExportedAsTheyAreAndNeverOverOthersUnasked() throws Exception {
    DemoLog.make(file);
    Path tables = folder.resolve("tables");
    try (BenchLog log = BenchLog.open(file)) {
      log.write(weighing(Optional.of(DemoLog.COPPER), OptionalLong.of(9)));
      assertThat(log.export(tables, false)).hasSize(LogCopy.TABLES.size());
      assertThatThrownBy(() -> log.export(tables, false))
          .isInstanceOf(FileAlreadyExistsException.class)
          .hasMessageContaining("bath.csv");
      log.export(tables, true);
      try (CsvReader<NamedCsvRecord> csv =
          CsvReader.builder().ofNamedCsvRecord(tables.resolve("weighing.csv"))) {
        List<NamedCsvRecord> rows = csv.stream().toList();
        assertThat(rows).hasSize(7);
        List<LogEntry.Weighing> read =
            log.entries().stream()
                .filter(LogEntry.Weighing.class::isInstance)
                .map(LogEntry.Weighing.class::cast)
                .toList();
        for (int i = 0; i < rows.size(); i++) {
          assertThat(rows.get(i).getField("what")).isEqualTo(read.get(i).what());
          assertThat(Double.parseDouble(rows.get(i).getField("after_g")))
              .isEqualTo(read.get(i).afterG());
        }
      }
    }
    assertThat(Files.readString(tables.resolve("entry.csv"))).contains("2026-03-12");
    try (Stream<Path> files = Files.list(tables)) {
      assertThat(files).hasSize(LogCopy.TABLES.size());
    }
  }

  /** What the invented workshop's baths come to, by hand. */
  @Test
  void bathsAreReckonedByTheLog() throws Exception {
    DemoLog.make(file);
    RecipeLibrary recipes = RecipeLibrary.standard();
    try (BenchLog log = BenchLog.open(file)) {
      Calibration copper =
          Calibration.of(
              log.bath("Big Copper"),
              Optional.of(recipes.find("copper-acid-high-throw")),
              log.entries());
      // 22.6 A.h of the job and 1.00 of five strips; the sixth is struck out
      assertThat(copper.state().chargeAh()).isCloseTo(23.6, within(1e-9));
      // 150 mL/(kA.h) x 23.6 A.h = 3.54 mL, less the 2.5 mL added
      assertThat(copper.state().additives().get(0).dueMl()).isCloseTo(1.04, within(1e-9));
      // soluble anodes feed it
      assertThat(copper.state().metalGPerL().orElseThrow()).isCloseTo(17.3, within(1e-9));
      assertThat(copper.fit().orElseThrow().points()).hasSize(5);
      assertThat(copper.fit().orElseThrow().efficiency()).isCloseTo(0.983, within(0.002));
      Calibration nickel =
          Calibration.of(
              log.bath("small nickel"), Optional.of(recipes.find("nickel-watts")), log.entries());
      // insoluble: 6.5 A.h x 1.0950 g/A.h x 95 % = 6.761 g out of 2 L
      assertThat(nickel.state().drawnMetalG()).isCloseTo(6.761, within(0.002));
      assertThat(nickel.state().metalGPerL().orElseThrow()).isCloseTo(72 - 3.381, within(0.001));
      EfficiencyFit.Interval band = nickel.state().metalBandGPerL().orElseThrow();
      assertThat(band.low()).isCloseTo(72 - 6.5 * 1.0950 * 0.97 / 2, within(0.001));
      assertThat(band.high()).isCloseTo(72 - 6.5 * 1.0950 * 0.93 / 2, within(0.001));
    }
  }

  @Test
  void couponsToColourGiveCoverageAndNoEfficiency() throws Exception {
    DemoLog.make(file);
    try (BenchLog log = BenchLog.open(file)) {
      Calibration dark =
          Calibration.of(
              log.bath("dark brush"),
              Optional.of(RecipeLibrary.standard().find("chromium-brush-dark-trivalent")),
              log.entries());
      assertThat(dark.fit()).isEmpty();
      assertThat(dark.coverage().orElseThrow().meanAhPerDm2()).isCloseTo(0.87, within(1e-12));
      assertThat(dark.coverage().orElseThrow().interval()).isPresent();
    }
  }

  @Test
  void meterReadingsAdditionsAndVolumesCountInTheirOrder() throws Exception {
    try (BenchLog log = BenchLog.openOrMake(file)) {
      Bath bath = new Bath("tub", Optional.of("nickel-watts"), Optional.of(false));
      log.write(bath, Optional.of(reading(1, 10, 60, List.of())));
      log.write(counter(2, OptionalDouble.of(5), OptionalDouble.empty()));
      log.write(counter(3, OptionalDouble.empty(), OptionalDouble.of(20)));
      log.write(
          reading(4, 8, -1, List.of(new LogEntry.Addition("nickel sulfate", 100, "g", 22.33))));
      log.write(counter(5, OptionalDouble.empty(), OptionalDouble.of(12)));
      BathState state =
          Calibration.of(
                  bath, Optional.of(RecipeLibrary.standard().find("nickel-watts")), log.entries())
              .state();
      assertThat(state.chargeAh()).isCloseTo(12, within(1e-9));
      assertThat(state.notes().toString()).contains("the meter reads 12.00 A.h, the log had 20.00");
      // 600 g + 22.33 g - 12 A.h x 1.0950 x 0.95, in 8 L: water went, metal stayed
      assertThat(state.metalGPerL().orElseThrow())
          .isCloseTo((600 + 22.33 - 12.483) / 8, within(0.002));
      // an analysis starts anew
      log.write(reading(6, -1, 75, List.of()));
      BathState anew =
          Calibration.of(
                  bath, Optional.of(RecipeLibrary.standard().find("nickel-watts")), log.entries())
              .state();
      assertThat(anew.metalGPerL().orElseThrow()).isCloseTo(75, within(1e-9));
      assertThat(anew.chargeSinceAnalysisAh()).isZero();
      assertThat(anew.chargeAh()).isCloseTo(12, within(1e-9));
    }
  }

  private static LogEntry.BathReading reading(
      int day, double litres, double gPerL, List<LogEntry.Addition> additions) {
    return new LogEntry.BathReading(
        LogEntry.Head.of(LocalDate.of(2026, 1, day), Optional.empty()),
        "tub",
        litres > 0 ? OptionalDouble.of(litres) : OptionalDouble.empty(),
        gPerL > 0 ? OptionalDouble.of(gPerL) : OptionalDouble.empty(),
        additions,
        List.of());
  }

  private static LogEntry.Counter counter(int day, OptionalDouble added, OptionalDouble reading) {
    return new LogEntry.Counter(
        LogEntry.Head.of(LocalDate.of(2026, 1, day), Optional.empty()), "tub", added, reading);
  }

  @Test
  void theUsersFolderFollowsTheEnvironment() {
    Path home = Path.of("/home/somebody");
    UserFolder plain = UserFolder.of(Map.of(), home);
    assertThat(plain.log()).isEqualTo(home.resolve(".local/share/amperskin/bench-log.db"));
    assertThat(plain.recipes()).isEqualTo(home.resolve(".local/share/amperskin/recipes"));
    UserFolder set =
        UserFolder.of(Map.of("AMPERSKIN_HOME", "/w", "AMPERSKIN_LOG", "/x/l.db"), home);
    assertThat(set.recipes()).isEqualTo(Path.of("/w/recipes"));
    assertThat(set.log()).isEqualTo(Path.of("/x/l.db"));
    assertThat(UserFolder.of(Map.of("XDG_DATA_HOME", "/d", "AMPERSKIN_HOME", ""), home).home())
        .isEqualTo(Path.of("/d/amperskin"));
  }
}
