package org.amperskin.io.ply;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.amperskin.io.common.PrintFileException;

/**
 * The header of a PLY file: its format and the elements in the order of their values.
 *
 * <p>Guaranteed: every line is known, or is named in the error; only before the first element,
 * where it cannot change what the values mean, a line of free text is passed over and told; counts
 * are whole and not negative; the line end is taken from the first line, so that a binary body is
 * found to the byte.
 *
 * @param format how the values are written
 * @param elements what they are
 * @param lines number of lines of the header
 * @param strange lines of free text passed over
 */
record PlyHeader(Format format, List<Element> elements, long lines, List<String> strange) {
  private static final int LONGEST_LINE = 1 << 16;
  private static final int MOST_LINES = 100_000;
  private static final int MOST_STRANGE = 20;

  PlyHeader {
    elements = List.copyOf(elements);
    strange = List.copyOf(strange);
  }

  enum Format {
    ASCII("ascii"),
    LITTLE_ENDIAN("binary_little_endian"),
    BIG_ENDIAN("binary_big_endian");

    private final String word;

    Format(String word) {
      this.word = word;
    }
  }

  /**
   * A property.
   *
   * @param name its name
   * @param count type of the list's length, null if the property is a single number
   * @param type type of the number or of the list's items
   */
  record Property(String name, PlyType count, PlyType type) {
    boolean list() {
      return count != null;
    }
  }

  /**
   * An element.
   *
   * @param name its name
   * @param count how many there are
   * @param line line of the header that says so
   * @param properties what each has
   */
  record Element(String name, long count, long line, List<Property> properties) {
    /** Bytes of each, if no list is longer than nothing. */
    long leastBytes() {
      long sum = 0;
      for (Property p : properties) {
        sum += p.list() ? p.count().bytes : p.type().bytes;
      }
      return sum;
    }

    boolean hasList() {
      return properties.stream().anyMatch(Property::list);
    }
  }

  static PlyHeader read(ByteSource in) throws IOException, PrintFileException {
    return new Reader(in).header();
  }

  private static final class Reader {
    private final ByteSource in;
    private final List<Element> elements = new ArrayList<>();
    private final List<String> strange = new ArrayList<>();
    private Format format;
    private long line;
    private boolean bareReturns;

    Reader(ByteSource in) {
      this.in = in;
    }

    PlyHeader header() throws IOException, PrintFileException {
      String magic = firstLine();
      if (magic.startsWith("\u00ef\u00bb\u00bf")) {
        magic = magic.substring(3); // byte order mark, as text editors leave it
      }
      if (!magic.strip().equals("ply")) {
        throw fault("expected \"ply\", found \"%s\"", cut(magic));
      }
      while (true) {
        String text = nextLine();
        String[] words = text.strip().split("\\s+");
        switch (words[0]) {
          case "comment", "obj_info", "" -> {}
          case "format" -> format(words);
          case "element" -> element(words);
          case "property" -> property(words);
          case "end_header" -> {
            return end();
          }
          default -> {
            if (elements.isEmpty() && strange.size() < MOST_STRANGE) {
              strange.add(
                  "line " + line + " of the header is not PLY's, passed over: " + cut(text));
              continue;
            }
            throw fault(
                "expected format, comment, obj_info, element, property or end_header, found"
                    + " \"%s\"",
                cut(text));
          }
        }
      }
    }

    private PlyHeader end() throws PrintFileException {
      if (format == null) {
        throw fault("the header ends without a format line");
      }
      return new PlyHeader(format, elements, line, strange);
    }

    private void format(String[] words) throws PrintFileException {
      for (Format f : Format.values()) {
        if (words.length == 3 && words[1].equals(f.word) && words[2].equals("1.0")) {
          format = f;
          return;
        }
      }
      throw fault(
          "expected format ascii, binary_little_endian or binary_big_endian and 1.0, found \"%s\"",
          cut(String.join(" ", words)));
    }

    private void element(String[] words) throws PrintFileException {
      if (words.length != 3 || !words[2].matches("[0-9]{1,18}")) {
        throw fault(
            "expected element, a name and a count, found \"%s\"", cut(String.join(" ", words)));
      }
      for (Element e : elements) {
        if (e.name().equals(words[1])) {
          throw fault("element %s a second time, the first is in line %d", cut(words[1]), e.line());
        }
      }
      elements.add(new Element(words[1], Long.parseLong(words[2]), line, new ArrayList<>()));
    }

    private void property(String[] words) throws PrintFileException {
      if (elements.isEmpty()) {
        throw fault("a property before any element: \"%s\"", cut(String.join(" ", words)));
      }
      boolean list = words.length > 1 && words[1].equals("list");
      if (words.length != (list ? 5 : 3)) {
        throw fault(
            "expected property, a type and a name, or property list, two types and a name, found"
                + " \"%s\"",
            cut(String.join(" ", words)));
      }
      PlyType count = list ? type(words[2]) : null;
      if (list && !count.whole()) {
        throw fault("a list's length is a whole number, found type %s", words[2]);
      }
      Property p = new Property(words[words.length - 1], count, type(words[words.length - 2]));
      elements.get(elements.size() - 1).properties().add(p);
    }

    private PlyType type(String word) throws PrintFileException {
      return PlyType.named(word)
          .orElseThrow(() -> fault("expected a type (%s), found \"%s\"", PlyType.NAMES, cut(word)));
    }

    private String firstLine() throws IOException, PrintFileException {
      StringBuilder text = new StringBuilder();
      line = 1;
      int c = in.next();
      while (c != '\n' && c != '\r') {
        append(text, c);
        c = in.next();
      }
      if (c == '\r' && in.peek() == '\n') {
        in.next();
      } else {
        bareReturns = c == '\r';
      }
      return text.toString();
    }

    private String nextLine() throws IOException, PrintFileException {
      StringBuilder text = new StringBuilder();
      line++;
      if (line > MOST_LINES) {
        throw fault("the header has more than %d lines", MOST_LINES);
      }
      int stop = bareReturns ? '\r' : '\n';
      for (int c = in.next(); c != stop; c = in.next()) {
        append(text, c);
      }
      return text.toString();
    }

    private void append(StringBuilder text, int c) throws PrintFileException {
      if (c < 0) {
        throw fault("the file ends inside the PLY header, after %d bytes", in.offset());
      }
      if (text.length() == LONGEST_LINE) {
        throw fault("a header line longer than %d bytes", LONGEST_LINE);
      }
      text.append((char) c);
    }

    private PrintFileException fault(String text, Object... values) {
      return PrintFileException.atLine(line, text, values);
    }

    private static String cut(String word) {
      String s = word.length() > 60 ? word.substring(0, 60) + "..." : word;
      return new String(s.getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8);
    }
  }
}
