package org.amperskin.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.amperskin.units.NearestWord;

/**
 * The user's bench log: jobs run, weighings, coupons, baths, charge counters.
 *
 * <p>Guaranteed: an entry is on the disk, whole, when {@link #write} returns its number; two
 * programs at once wait for each other; nothing is ever taken out, wrong entries are struck. Not
 * guaranteed: a network folder; see {@link LogStore}. Cost: a few disk syncs an entry; reading is
 * linear in the log.
 */
public final class BenchLog implements AutoCloseable {
  private final LogStore store;

  private BenchLog(LogStore store) {
    this.store = store;
  }

  /** Opens a log that is there; never makes one. */
  public static BenchLog open(Path file) throws LogException {
    return new BenchLog(LogStore.open(file));
  }

  /** Opens a log, made first if there is none. */
  public static BenchLog openOrMake(Path file) throws LogException, IOException {
    return new BenchLog(LogStore.openOrMake(file));
  }

  /** The file. */
  public Path file() {
    return store.file();
  }

  /** Its baths in the order they were begun. */
  public List<Bath> baths() throws LogException {
    return store.read(BenchLog::baths);
  }

  private static List<Bath> baths(Connection c) throws SQLException {
    List<Bath> baths = new ArrayList<>();
    try (PreparedStatement s =
            c.prepareStatement("SELECT name, recipe, soluble_anode FROM bath ORDER BY id");
        ResultSet rows = s.executeQuery()) {
      while (rows.next()) {
        int soluble = rows.getInt(3);
        Optional<Boolean> anode = rows.wasNull() ? Optional.empty() : Optional.of(soluble == 1);
        baths.add(new Bath(rows.getString(1), Optional.ofNullable(rows.getString(2)), anode));
      }
    }
    return baths;
  }

  /**
   * The bath of this name.
   *
   * @throws IllegalArgumentException naming the nearest, or all there are
   */
  public Bath bath(String name) throws LogException {
    return find(name, baths());
  }

  private static Bath find(String name, List<Bath> baths) {
    return baths.stream()
        .filter(b -> b.name().equalsIgnoreCase(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(unknown(name, baths)));
  }

  private static String unknown(String name, List<Bath> baths) {
    List<String> names = baths.stream().map(Bath::name).toList();
    String hint =
        NearestWord.of(name, names)
            .map(near -> ", did you mean '" + near + "'?")
            .orElse(names.isEmpty() ? "; there is none yet" : "; there are " + names);
    return "bath '" + name + "' is not known" + hint + " ('log bath NAME --recipe' begins one)";
  }

  /** All entries by date, those of a day in the order of writing. */
  public List<LogEntry> entries() throws LogException {
    return store.read(LogRows::all);
  }

  /**
   * One entry.
   *
   * @throws IllegalArgumentException if there is no such number
   */
  public LogEntry entry(long number) throws LogException {
    List<LogEntry> all = entries();
    return all.stream()
        .filter(e -> e.head().number() == number)
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "entry " + number + " is not in the log; it has " + all.size()));
  }

  /**
   * Writes an entry; its number in the head does not count.
   *
   * @return its number
   * @throws IllegalArgumentException if it names a bath or job that is not in the log
   */
  public long write(LogEntry entry) throws LogException {
    return store.write(
        c -> {
          List<Bath> known = baths(c);
          entry.baths().forEach(name -> find(name, known));
          return LogRows.insert(c, entry);
        });
  }

  /**
   * Begins a bath or tells more of it, with what was found in it or put into it.
   *
   * @return the number of the entry, if there was one
   */
  public Optional<Long> write(Bath bath, Optional<LogEntry.BathReading> reading)
      throws LogException {
    return store.write(
        c -> {
          Optional<Bath> old =
              baths(c).stream().filter(b -> b.name().equalsIgnoreCase(bath.name())).findFirst();
          LogRows.put(c, old.map(o -> o.with(bath)).orElse(bath), old.isPresent());
          return reading.isPresent()
              ? Optional.of(LogRows.insert(c, reading.get()))
              : Optional.<Long>empty();
        });
  }

  /**
   * Strikes an entry out: it stays, and counts no more.
   *
   * @throws IllegalArgumentException if there is no such number, or it is struck already
   */
  public void strike(long number, String why) throws LogException {
    store.write(
        c -> {
          try (PreparedStatement s =
              c.prepareStatement("UPDATE entry SET struck = ? WHERE id = ? AND struck IS NULL")) {
            s.setString(1, why);
            s.setLong(2, number);
            if (s.executeUpdate() == 0) {
              throw new IllegalArgumentException(
                  "entry " + number + " is not in the log, or is struck out already");
            }
          }
          return null;
        });
  }

  /**
   * Charge of the steps of a job that was run, all runs together (A.h by name); struck entries do
   * not count.
   *
   * @param jobFile its file, as {@link #name} gives it
   */
  public Map<String, Double> charges(String jobFile) throws LogException {
    Map<String, Double> charges = new LinkedHashMap<>();
    for (LogEntry entry : entries()) {
      if (entry instanceof LogEntry.Job job
          && job.file().equals(jobFile)
          && job.head().struck().isEmpty()) {
        job.steps().forEach(s -> charges.merge(s.name(), s.chargeAh(), Double::sum));
      }
    }
    return charges;
  }

  /** How the log names a file, wherever it is asked from. */
  public static String name(Path file) {
    return file.toAbsolutePath().normalize().toString();
  }

  /** What SQLite finds wrong with the file, empty if nothing. */
  public List<String> faults() throws LogException {
    return store.faults();
  }

  /**
   * Copies the log as it stands, while others may go on writing, and checks the copy.
   *
   * @param copy a file that is not there yet
   */
  public void backUp(Path copy) throws LogException, IOException {
    LogCopy.backUp(store, copy);
  }

  /**
   * Writes every table as CSV (RFC 4180, UTF-8, a header line).
   *
   * @param folder made if it is not there
   * @return the files
   */
  public List<Path> export(Path folder, boolean replace) throws LogException, IOException {
    return LogCopy.export(store, folder, replace);
  }

  @Override
  public void close() throws LogException {
    store.close();
  }
}
