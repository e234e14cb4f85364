package org.amperskin.bench;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** Entries to rows and back. */
final class LogRows {
  private static final String BATH = "(SELECT id FROM bath WHERE name = ?)";

  private LogRows() {}

  static void put(Connection c, Bath bath, boolean known) throws SQLException {
    Object anode = bath.solubleAnode().map(s -> s ? 1 : 0).orElse(null);
    if (known) {
      run(
          c,
          "UPDATE bath SET recipe = ?, soluble_anode = ? WHERE name = ?",
          bath.recipe().orElse(null),
          anode,
          bath.name());
    } else {
      run(
          c,
          "INSERT INTO bath (name, recipe, soluble_anode) VALUES (?, ?, ?)",
          bath.name(),
          bath.recipe().orElse(null),
          anode);
    }
  }

  static long insert(Connection c, LogEntry entry) throws SQLException {
    run(
        c,
        "INSERT INTO entry (kind, date, note) VALUES (?, ?, ?)",
        entry.kind(),
        entry.head().date().toString(),
        entry.head().note().orElse(null));
    long number;
    try (PreparedStatement s = c.prepareStatement("SELECT last_insert_rowid()");
        ResultSet row = s.executeQuery()) {
      row.next();
      number = row.getLong(1);
    }
    if (entry instanceof LogEntry.Job job) {
      insert(c, number, job);
    } else if (entry instanceof LogEntry.Weighing weighing) {
      insert(c, number, weighing);
    } else if (entry instanceof LogEntry.Coupon coupon) {
      insert(c, number, coupon);
    } else if (entry instanceof LogEntry.BathReading reading) {
      insert(c, number, reading);
    } else if (entry instanceof LogEntry.Counter counter) {
      run(
          c,
          "INSERT INTO counter VALUES (?, " + BATH + ", ?, ?)",
          number,
          counter.bath(),
          boxed(counter.addedAh()),
          boxed(counter.readingAh()));
    }
    return number;
  }

  private static void insert(Connection c, long number, LogEntry.Job job) throws SQLException {
    run(c, "INSERT INTO job VALUES (?, ?)", number, job.file());
    int position = 0;
    for (LogEntry.Step step : job.steps()) {
      run(
          c,
          "INSERT INTO job_step VALUES (?, ?, ?, ?, " + BATH + ")",
          number,
          ++position,
          step.name(),
          step.chargeAh(),
          step.bath().orElse(null));
    }
  }

  private static void insert(Connection c, long number, LogEntry.Weighing w) throws SQLException {
    if (w.job().isPresent()) {
      try (PreparedStatement s = c.prepareStatement("SELECT 1 FROM job WHERE entry = ?")) {
        s.setLong(1, w.job().getAsLong());
        try (ResultSet row = s.executeQuery()) {
          if (!row.next()) {
            throw new IllegalArgumentException(
                "entry " + w.job().getAsLong() + " is no job of the log");
          }
        }
      }
    }
    run(
        c,
        "INSERT INTO weighing VALUES (?, ?, ?, ?, ?, ?, " + BATH + ", ?)",
        number,
        w.what(),
        w.beforeG(),
        w.afterG(),
        w.balanceG(),
        boxed(w.chargeAh()),
        w.bath().orElse(null),
        w.job().isPresent() ? w.job().getAsLong() : null);
  }

  private static void insert(Connection c, long number, LogEntry.Coupon coupon)
      throws SQLException {
    run(
        c,
        "INSERT INTO coupon VALUES (?, ?, ?, ?, ?, ?, ?, " + BATH + ")",
        number,
        coupon.what(),
        coupon.coverageAhPerDm2(),
        boxed(coupon.areaDm2()),
        boxed(coupon.chargeAh()),
        coupon.colour().orElse(null),
        coupon.photo().orElse(null),
        coupon.bath().orElse(null));
  }

  private static void insert(Connection c, long number, LogEntry.BathReading r)
      throws SQLException {
    run(
        c,
        "INSERT INTO bath_reading VALUES (?, " + BATH + ", ?, ?)",
        number,
        r.bath(),
        boxed(r.volumeL()),
        boxed(r.metalGPerL()));
    int position = 0;
    for (LogEntry.Addition a : r.additions()) {
      run(
          c,
          "INSERT INTO addition VALUES (?, ?, ?, ?, ?, ?)",
          number,
          ++position,
          a.what(),
          a.amount(),
          a.unit(),
          a.metalG());
    }
    for (LogEntry.Dose d : r.doses()) {
      run(c, "INSERT INTO dose VALUES (?, ?, ?)", number, d.additive(), d.mlPerAh());
    }
  }

  private static Object boxed(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }

  private static void run(Connection c, String sql, Object... values) throws SQLException {
    try (PreparedStatement s = c.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        s.setObject(i + 1, values[i]);
      }
      s.executeUpdate();
    }
  }

  /** Reads a row that belongs to an entry. */
  private interface Row<T> {
    T of(ResultSet row) throws SQLException;
  }

  /** The rows of a table by the number of their entry. */
  private static <T> Map<Long, List<T>> rows(Connection c, String sql, Row<T> reader)
      throws SQLException {
    Map<Long, List<T>> map = new LinkedHashMap<>();
    try (PreparedStatement s = c.prepareStatement(sql);
        ResultSet rows = s.executeQuery()) {
      while (rows.next()) {
        map.computeIfAbsent(rows.getLong("entry"), n -> new ArrayList<>()).add(reader.of(rows));
      }
    }
    return map;
  }

  static List<LogEntry> all(Connection c) throws SQLException {
    Map<Long, List<LogEntry.Step>> steps =
        rows(
            c,
            "SELECT s.entry, s.name, charge_ah, b.name AS bath_name FROM job_step s"
                + " LEFT JOIN bath b ON b.id = s.bath ORDER BY s.entry, position",
            r -> new LogEntry.Step(r.getString("name"), r.getDouble("charge_ah"), bath(r)));
    Map<Long, List<LogEntry.Addition>> additions =
        rows(
            c,
            "SELECT * FROM addition ORDER BY entry, position",
            r ->
                new LogEntry.Addition(
                    r.getString("what"),
                    r.getDouble("amount"),
                    r.getString("unit"),
                    r.getDouble("metal_g")));
    Map<Long, List<LogEntry.Dose>> doses =
        rows(
            c,
            "SELECT * FROM dose ORDER BY entry, additive",
            r -> new LogEntry.Dose(r.getString("additive"), r.getDouble("ml_per_ah")));
    Map<Long, List<LogEntry>> read = new LinkedHashMap<>();
    read.putAll(
        rows(
            c,
            "SELECT entry.*, job.* FROM job JOIN entry ON id = entry",
            r ->
                new LogEntry.Job(
                    head(r),
                    r.getString("file"),
                    steps.getOrDefault(r.getLong("entry"), List.of()))));
    read.putAll(rows(c, joined("weighing"), LogRows::weighing));
    read.putAll(rows(c, joined("coupon"), LogRows::coupon));
    read.putAll(
        rows(
            c,
            joined("bath_reading"),
            r ->
                new LogEntry.BathReading(
                    head(r),
                    r.getString("bath_name"),
                    maybe(r, "volume_l"),
                    maybe(r, "metal_g_per_l"),
                    additions.getOrDefault(r.getLong("entry"), List.of()),
                    doses.getOrDefault(r.getLong("entry"), List.of()))));
    read.putAll(
        rows(
            c,
            joined("counter"),
            r ->
                new LogEntry.Counter(
                    head(r),
                    r.getString("bath_name"),
                    maybe(r, "added_ah"),
                    maybe(r, "reading_ah"))));
    List<LogEntry> all = new ArrayList<>();
    try (PreparedStatement s = c.prepareStatement("SELECT id FROM entry ORDER BY date, id");
        ResultSet rows = s.executeQuery()) {
      while (rows.next()) {
        all.addAll(read.getOrDefault(rows.getLong(1), List.of()));
      }
    }
    return all;
  }

  private static String joined(String table) {
    return "SELECT e.*, t.*, b.name AS bath_name FROM "
        + table
        + " t JOIN entry e ON e.id = t.entry LEFT JOIN bath b ON b.id = t.bath";
  }

  private static LogEntry.Weighing weighing(ResultSet r) throws SQLException {
    long job = r.getLong("job");
    OptionalLong ofJob = r.wasNull() ? OptionalLong.empty() : OptionalLong.of(job);
    return new LogEntry.Weighing(
        head(r),
        r.getString("what"),
        r.getDouble("before_g"),
        r.getDouble("after_g"),
        r.getDouble("balance_g"),
        maybe(r, "charge_ah"),
        bath(r),
        ofJob);
  }

  private static LogEntry.Coupon coupon(ResultSet r) throws SQLException {
    return new LogEntry.Coupon(
        head(r),
        r.getString("what"),
        r.getDouble("coverage_ah_per_dm2"),
        maybe(r, "area_dm2"),
        maybe(r, "charge_ah"),
        Optional.ofNullable(r.getString("colour")),
        Optional.ofNullable(r.getString("photo")),
        bath(r));
  }

  private static LogEntry.Head head(ResultSet r) throws SQLException {
    return new LogEntry.Head(
        r.getLong("entry"),
        LocalDate.parse(r.getString("date")),
        Optional.ofNullable(r.getString("note")),
        Optional.ofNullable(r.getString("struck")));
  }

  private static Optional<String> bath(ResultSet r) throws SQLException {
    return Optional.ofNullable(r.getString("bath_name"));
  }

  private static OptionalDouble maybe(ResultSet r, String column) throws SQLException {
    double value = r.getDouble(column);
    return r.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
