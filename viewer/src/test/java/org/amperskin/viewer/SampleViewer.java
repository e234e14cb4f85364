package org.amperskin.viewer;

/** Starts the viewer on the samples, for looking at: {@code SampleViewer dome --picture a.png}. */
final class SampleViewer {
  private SampleViewer() {}

  public static void main(String[] args) {
    System.exit(Launcher.run(args, new SampleSource()));
  }
}
