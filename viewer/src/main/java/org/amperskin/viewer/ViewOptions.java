package org.amperskin.viewer;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/** What the command line of the viewer says. */
@Command(
    name = "amperskin view",
    description = "Shows a part, its regions and its plating steps.",
    sortOptions = false,
    mixinStandardHelpOptions = false,
    footerHeading = "%nExamples:%n",
    footer = {
      "  amperskin view visor.stl",
      "  amperskin view visor.yaml --dark",
      "  amperskin view visor.yaml --picture visor.png --size 1280x800"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:the window was closed, or the picture is written",
      "2:the command line was not understood",
      "3:the file cannot be shown",
      "70:there is no display to open a window on"
    })
final class ViewOptions {
  @Parameters(
      paramLabel = "FILE",
      arity = "0..1",
      description = "A print file or a job; without it the window opens empty.")
  Path file;

  @Option(
      names = "--picture",
      paramLabel = "OUT.png",
      description = "Write a picture of the window instead of opening it, and end.")
  Path picture;

  @Option(
      names = "--size",
      paramLabel = "WxH",
      converter = SizeConverter.class,
      defaultValue = "1280x800",
      description = "Size of the window in pixels; ${DEFAULT-VALUE} if not given.")
  Size size;

  @Option(
      names = "--step",
      paramLabel = "N",
      defaultValue = "0",
      description = "Select a step, 1 for the first.")
  int step;

  @Option(
      names = "--paint",
      paramLabel = "WHAT",
      defaultValue = "regions",
      description = {
        "Paint a film's surface by regions (usual), \"vanishing lines\", gap,",
        "\"edge blur\", light, stretch or \"open fraction\"."
      })
  String paint;

  @Option(names = "--dark", description = "Dark instead of light.")
  boolean dark;

  @Option(names = "--flat", description = "Draw pictures, also where 3D is there.")
  boolean flat;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this and end.")
  boolean help;

  /** Width and height in pixels. */
  record Size(int width, int height) {}

  /** Reads "1280x800". */
  static final class SizeConverter implements ITypeConverter<Size> {
    private static final int LEAST = 200;
    private static final int MOST = 8192;

    @Override
    public Size convert(String text) {
      String[] parts = text.split("x", -1);
      try {
        if (parts.length == 2) {
          Size size = new Size(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
          if (Math.min(size.width, size.height) >= LEAST
              && Math.max(size.width, size.height) <= MOST) {
            return size;
          }
        }
      } catch (NumberFormatException e) {
        throw new TypeConversionException("'" + text + "' is no size such as 1280x800");
      }
      throw new TypeConversionException(
          "'" + text + "' is no size such as 1280x800, from " + LEAST + " to " + MOST + " px");
    }
  }
}
