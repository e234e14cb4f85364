package org.amperskin.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.amperskin.io.common.WholeFile;
import org.amperskin.units.Dimension;
import org.amperskin.yaml.YamlFault;
import org.amperskin.yaml.YamlMap;

/**
 * Keeps the count of one step on the disk, so that it outlives the program that counts.
 *
 * <p>Definition: one small YAML file for each step of each job that is under way, in the user's
 * folder. Guaranteed: what was kept is whole on the disk when {@link #keep} returns. Not
 * guaranteed: that two programs that count the same step at once agree; the last one is kept.
 */
public final class RunKeeper {
  private static final Set<String> KEYS =
      Set.of("job", "step", "elapsed", "charge", "of", "read", "going", "seen");
  private static final int NAME_DIGITS = 16;

  private final Path file;
  private final String job;
  private final String step;

  /**
   * For one step.
   *
   * @param folder where counts are kept
   * @param job the job file
   * @param names of the job's steps
   * @param number place of the step in the job, from 1; steps put before it do not matter later
   */
  public RunKeeper(Path folder, Path job, List<String> names, int number) {
    String name = names.get(number - 1);
    long nth = names.subList(0, number).stream().filter(name::equals).count();
    this.job = job.toAbsolutePath().normalize().toString();
    this.step = name + (nth == 1 ? "" : ", number " + nth + " of that name");
    this.file = folder.resolve(named(this.job + "\n" + this.step) + ".yaml");
  }

  /** The file it is kept in, there or not. */
  public Path file() {
    return file;
  }

  /**
   * How it stood when it was last seen; empty if it was not begun or came to its end.
   *
   * @throws IOException if that cannot be read, with what to do
   */
  public Optional<KeptRun> kept() throws IOException {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    try {
      YamlMap map = YamlMap.of(Files.readString(file), file.toString(), "kept run");
      map.onlyKeys(KEYS);
      map.word("job");
      map.word("step");
      double charge = map.quantity("charge", Dimension.CHARGE) / 3600;
      double elapsed = map.quantity("elapsed", Dimension.TIME);
      if (!(charge >= 0 && elapsed >= 0)) {
        throw map.fault("charge", charge + " A.h after " + elapsed + " s are not a count");
      }
      OptionalDouble read = map.maybePositive("read", Dimension.CURRENT);
      return Optional.of(
          new KeptRun(
              elapsed,
              charge,
              read,
              map.maybePositive("of", Dimension.CHARGE, "A.h"),
              map.yesNo("going"),
              Instant.parse(map.word("seen"))));
    } catch (YamlFault | DateTimeException | java.nio.charset.CharacterCodingException damaged) {
      throw new IOException(
          file
              + " keeps the count of step "
              + step
              + " and is damaged ("
              + damaged.getMessage()
              + "): take what you need from it, then delete it",
          damaged);
    }
  }

  /** Keeps how it stands. */
  public void keep(KeptRun run) throws IOException {
    Files.createDirectories(file.getParent());
    StringBuilder text =
        new StringBuilder("# A step that is under way; amperskin run keeps this.\n");
    text.append("job: ").append(quoted(job)).append('\n');
    text.append("step: ").append(quoted(step)).append('\n');
    text.append("elapsed: ").append(run.elapsedS()).append(" s\n");
    text.append("charge: ").append(run.passedAh()).append(" A.h\n");
    run.wholeAh().ifPresent(q -> text.append("of: ").append(q).append(" A.h\n"));
    run.readA().ifPresent(a -> text.append("read: ").append(a).append(" A\n"));
    text.append("going: ").append(run.going() ? "true" : "false").append('\n');
    text.append("seen: ").append(quoted(run.seen().toString())).append('\n');
    WholeFile.writeThrough(
        file, out -> out.write(text.toString().getBytes(StandardCharsets.UTF_8)));
  }

  /** Forgets it: it came to its end, or begins anew. */
  public void forget() throws IOException {
    Files.deleteIfExists(file);
  }

  private static String quoted(String text) {
    return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }

  private static String named(String what) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(what.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash).substring(0, NAME_DIGITS);
    } catch (NoSuchAlgorithmException never) {
      throw new IllegalStateException("every Java platform has SHA-256", never);
    }
  }
}
