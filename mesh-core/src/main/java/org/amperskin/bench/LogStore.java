package org.amperskin.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteOpenMode;

/**
 * The SQLite file under the bench log: opening, migrations, transactions.
 *
 * <p>Guaranteed: what a transaction wrote is on the disk when {@link #write} returns; a crash at
 * any moment leaves all of it or nothing; another process waits up to {@value #BUSY_S} s for its
 * turn. Not guaranteed: a disk that says it has written and has not; network folders, which cannot
 * share a write-ahead log. Method: write-ahead log with {@code synchronous} at its strongest, so
 * that any cut of the log is an earlier whole state; where the file system cannot carry one, SQLite
 * keeps its rollback journal and the directory is synced too. Migrations are numbered SQL files,
 * each run in one transaction with {@code user_version}. Cost: one or two disk syncs a transaction.
 */
final class LogStore implements AutoCloseable {
  /** How long to wait for another process (s). */
  static final int BUSY_S = 60;

  /** Marks the file as a bench log: the letters AmpL. */
  private static final int APPLICATION = 0x416d704c;

  private static final int FILE_IS_BUSY = 5;
  private static final int LATEST = 2;

  private final Path file;
  private final Connection connection;

  private LogStore(Path file, Connection connection) {
    this.file = file;
    this.connection = connection;
  }

  /** Something done with the connection. */
  interface Work<T> {
    /** Does it. */
    T with(Connection connection) throws SQLException;
  }

  /** Opens a file that is there. */
  static LogStore open(Path file) throws LogException {
    return open(file, LATEST);
  }

  /** Opens a file, made first if it is not there. */
  static LogStore openOrMake(Path file) throws LogException, IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    return connect(file, true, LATEST);
  }

  /** Opens a file and brings it no further than a version, for tests of the migrations. */
  static LogStore open(Path file, int version) throws LogException {
    if (!Files.exists(file)) {
      throw new LogException(
          file, "there is none yet; 'log job', 'weigh', 'coupon', 'bath' or 'counter' begins it");
    }
    return connect(file, false, version);
  }

  /** Makes a file of an old version, for tests of the migrations. */
  static LogStore make(Path file, int version) throws LogException {
    return connect(file, true, version);
  }

  private static LogStore connect(Path file, boolean make, int version) throws LogException {
    if (Files.isDirectory(file)) {
      throw new LogException(file, "this is a folder, a file was expected");
    }
    if (file.toString().contains("?")) {
      throw new LogException(file, "a question mark in the name cannot be used; rename the file");
    }
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_S * 1000);
    config.enforceForeignKeys(true);
    if (!make) {
      config.resetOpenMode(SQLiteOpenMode.CREATE);
    }
    Connection connection = null;
    try {
      connection = config.createConnection("jdbc:sqlite:" + file);
      LogStore store = new LogStore(file, connection);
      store.prepare(version);
      return store;
    } catch (SQLException broken) {
      closeQuietly(connection, broken);
      throw new LogException(file, broken);
    } catch (LogException | RuntimeException fault) {
      closeQuietly(connection, fault);
      throw fault;
    }
  }

  private static void closeQuietly(Connection connection, Exception because) {
    if (connection != null) {
      try {
        connection.close();
      } catch (SQLException also) {
        because.addSuppressed(also);
      }
    }
  }

  private void prepare(int version) throws SQLException, LogException {
    // in one view: another process may just be making the file
    int[] header =
        read(
            c ->
                new int[] {
                  number("PRAGMA application_id"),
                  number("PRAGMA user_version"),
                  number("SELECT count(*) FROM sqlite_schema")
                });
    int application = header[0];
    int found = header[1];
    boolean fresh = application == 0 && header[2] == 0;
    if (!fresh && application != APPLICATION) {
      throw new LogException(
          file, "this is a database of something else (application id " + application + ")");
    }
    if (found > LATEST) {
      throw new LogException(
          file,
          "it is of version "
              + found
              + ", this program knows up to "
              + LATEST
              + ": use the newer program that wrote it");
    }
    writeAhead();
    run("PRAGMA synchronous = EXTRA");
    if (found < version) {
      migrate(version);
    }
  }

  /** Switching to the write-ahead log does not wait for others by itself. */
  private void writeAhead() throws SQLException {
    for (int patience = BUSY_S * 50; ; patience--) {
      try {
        run("PRAGMA journal_mode = WAL");
        return;
      } catch (SQLException busy) {
        if ((busy.getErrorCode() & 0xff) != FILE_IS_BUSY || patience == 0) {
          throw busy;
        }
        pause();
      }
    }
  }

  private static void pause() throws SQLException {
    try {
      Thread.sleep(20);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new SQLException("interrupted while waiting", stopped);
    }
  }

  private void migrate(int version) throws SQLException, LogException {
    write(
        c -> {
          // another process may have done it while this one waited for its turn
          int from = number("PRAGMA user_version");
          for (int n = from + 1; n <= version; n++) {
            for (String statement : statements(n)) {
              run(statement);
            }
          }
          if (from < version) {
            run("PRAGMA application_id = " + APPLICATION);
            run("PRAGMA user_version = " + version);
          }
          return null;
        });
  }

  private static List<String> statements(int number) {
    String name = String.format(java.util.Locale.ROOT, "migration/%04d.sql", number);
    try (InputStream in = LogStore.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("resource " + name + " is missing");
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      List<String> statements = new ArrayList<>();
      for (String part : text.replaceAll("(?m)^--.*$", "").split(";")) {
        if (!part.isBlank()) {
          statements.add(part.strip());
        }
      }
      return statements;
    } catch (IOException broken) {
      throw new UncheckedIOException("resource " + name, broken);
    }
  }

  private void run(String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private int number(String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      return rows.next() ? rows.getInt(1) : 0;
    }
  }

  /** Reads in one consistent view. */
  <T> T read(Work<T> work) throws LogException {
    return inside("BEGIN DEFERRED", work);
  }

  /** Writes all or nothing; on the disk when it returns. */
  <T> T write(Work<T> work) throws LogException {
    return inside("BEGIN IMMEDIATE", work);
  }

  private <T> T inside(String begin, Work<T> work) throws LogException {
    try {
      run(begin);
      try {
        T result = work.with(connection);
        run("COMMIT");
        return result;
      } catch (SQLException | RuntimeException fault) {
        rollBack(fault);
        throw fault;
      }
    } catch (SQLException broken) {
      throw new LogException(file, broken);
    }
  }

  private void rollBack(Exception because) {
    try {
      run("ROLLBACK");
    } catch (SQLException also) {
      because.addSuppressed(also); // SQLite has rolled back by itself
    }
  }

  /** One statement outside any transaction. */
  void alone(String sql, String... values) throws LogException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setString(i + 1, values[i]);
      }
      statement.execute();
    } catch (SQLException broken) {
      throw new LogException(file, broken);
    }
  }

  /** What SQLite finds wrong with the file, empty if nothing. */
  List<String> faults() throws LogException {
    return read(
        c -> {
          List<String> faults = new ArrayList<>();
          try (Statement s = c.createStatement();
              ResultSet rows = s.executeQuery("PRAGMA integrity_check")) {
            while (rows.next()) {
              if (!rows.getString(1).equals("ok")) {
                faults.add(rows.getString(1));
              }
            }
          }
          try (Statement s = c.createStatement();
              ResultSet rows = s.executeQuery("PRAGMA foreign_key_check")) {
            while (rows.next()) {
              faults.add("a row of " + rows.getString(1) + " names one that is not there");
            }
          }
          return faults;
        });
  }

  /** The journal SQLite really keeps, {@code wal} where the file system can carry one. */
  String journal() throws LogException {
    try (Statement s = connection.createStatement();
        ResultSet rows = s.executeQuery("PRAGMA journal_mode")) {
      return rows.getString(1);
    } catch (SQLException broken) {
      throw new LogException(file, broken);
    }
  }

  Path file() {
    return file;
  }

  @Override
  public void close() throws LogException {
    try {
      connection.close();
    } catch (SQLException broken) {
      throw new LogException(file, broken);
    }
  }
}
