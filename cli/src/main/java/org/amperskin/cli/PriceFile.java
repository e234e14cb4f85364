package org.amperskin.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.amperskin.bench.Prices;
import org.amperskin.job.OrdinaryFile;
import org.amperskin.yaml.YamlFault;

/** Reads a price file. */
final class PriceFile {
  private PriceFile() {}

  static Prices read(Path from) throws IOException, YamlFault {
    OrdinaryFile.require(from, "a price file");
    return Prices.read(Files.readString(from, StandardCharsets.UTF_8), from.toString());
  }
}
