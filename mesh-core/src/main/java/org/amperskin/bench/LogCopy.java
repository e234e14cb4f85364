package org.amperskin.bench;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Copies of the log: a checked backup, and tables as text.
 *
 * <p>Guaranteed: nothing half-written under the name asked for; a backup is one consistent state,
 * opened and checked before it gets its name. Method: {@code VACUUM INTO} a file beside the target,
 * integrity check, sync, rename.
 */
final class LogCopy {
  /** The tables in the order of the migrations. */
  static final List<String> TABLES =
      List.of(
          "bath",
          "entry",
          "job",
          "job_step",
          "weighing",
          "coupon",
          "bath_reading",
          "addition",
          "dose",
          "counter");

  private LogCopy() {}

  static void backUp(LogStore store, Path copy) throws LogException, IOException {
    if (Files.exists(copy)) {
      throw new FileAlreadyExistsException(
          copy + ": there is such a file already; a backup never replaces one");
    }
    Path folder = copy.toAbsolutePath().getParent();
    Files.createDirectories(folder);
    Path draft = Files.createTempFile(folder, ".backup", ".part");
    try {
      long before = store.read(LogCopy::entries);
      Files.delete(draft);
      store.alone("VACUUM INTO ?", draft.toString());
      check(draft, before);
      try (FileChannel channel = FileChannel.open(draft, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      Files.move(draft, copy);
      syncFolder(folder);
    } finally {
      for (String rest : new String[] {"", "-wal", "-shm", "-journal"}) {
        Files.deleteIfExists(Path.of(draft + rest));
      }
    }
  }

  private static void check(Path draft, long atLeast) throws LogException {
    try (LogStore opened = LogStore.open(draft)) {
      List<String> faults = opened.faults();
      long copied = opened.read(LogCopy::entries);
      if (!faults.isEmpty() || copied < atLeast) {
        throw new LogException(
            draft,
            "the copy does not hold: "
                + copied
                + " of at least "
                + atLeast
                + " entries; SQLite found "
                + faults);
      }
    }
  }

  private static long entries(Connection c) throws SQLException {
    try (Statement s = c.createStatement();
        ResultSet rows = s.executeQuery("SELECT count(*) FROM entry")) {
      return rows.getLong(1);
    }
  }

  /** The name must be on the disk too; where folders cannot be opened it is left to the system. */
  private static void syncFolder(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException notHere) {
      // Windows does not open folders; its file system keeps names in its own journal
    }
  }

  static List<Path> export(LogStore store, Path folder, boolean replace)
      throws LogException, IOException {
    List<Path> files = TABLES.stream().map(t -> folder.resolve(t + ".csv")).toList();
    for (Path file : files) {
      if (!replace && Files.exists(file)) {
        throw new FileAlreadyExistsException(
            file + ": there is such a file already; --replace writes over it");
      }
    }
    Map<String, List<String[]>> tables = store.read(LogCopy::tables);
    Files.createDirectories(folder);
    Map<Path, Path> drafts = new LinkedHashMap<>();
    try {
      for (Path file : files) {
        Path draft = Files.createTempFile(folder, ".export", ".part");
        drafts.put(draft, file);
        String table = file.getFileName().toString().replace(".csv", "");
        try (CsvWriter csv = CsvWriter.builder().build(draft, StandardCharsets.UTF_8)) {
          tables.get(table).forEach(csv::writeRecord);
        }
      }
      for (Map.Entry<Path, Path> draft : drafts.entrySet()) {
        Files.move(draft.getKey(), draft.getValue(), StandardCopyOption.REPLACE_EXISTING);
      }
    } finally {
      for (Path draft : drafts.keySet()) {
        Files.deleteIfExists(draft);
      }
    }
    return files;
  }

  private static Map<String, List<String[]>> tables(Connection c) throws SQLException {
    Map<String, List<String[]>> tables = new LinkedHashMap<>();
    for (String table : TABLES) {
      List<String[]> lines = new ArrayList<>();
      try (Statement s = c.createStatement();
          ResultSet rows = s.executeQuery("SELECT * FROM " + table + " ORDER BY 1, 2")) {
        ResultSetMetaData meta = rows.getMetaData();
        String[] header = new String[meta.getColumnCount()];
        for (int i = 0; i < header.length; i++) {
          header[i] = meta.getColumnName(i + 1);
        }
        lines.add(header);
        while (rows.next()) {
          String[] line = new String[header.length];
          for (int i = 0; i < header.length; i++) {
            Object value = rows.getObject(i + 1);
            line[i] = value == null ? null : value.toString();
          }
          lines.add(line);
        }
      }
      tables.put(table, lines);
    }
    return tables;
  }
}
