package org.amperskin.cli;

import picocli.CommandLine.IVersionProvider;

/** The version, from the jar's manifest. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {text()};
  }

  static String text() {
    String version = Main.class.getPackage().getImplementationVersion();
    return "amperskin " + (version == null ? "(from classes)" : version);
  }
}
