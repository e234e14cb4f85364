package org.amperskin.io.ply;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.amperskin.io.common.PrintFileException;

/**
 * Numbers of a PLY body in text: each element begins a line and may run over several.
 *
 * <p>Guaranteed: numbers left over in an element's last line are refused, so that a file whose
 * lines do not fit its header is not read askew.
 */
final class AsciiValues extends Values {
  private static final int LONGEST_WORD = 1024;

  private final byte[] word = new byte[LONGEST_WORD];
  private int length;
  private long line;
  private boolean afterReturn;

  AsciiValues(ByteSource in, long headerLines) {
    super(in);
    line = headerLines + 1;
  }

  @Override
  double number(PlyType type) throws IOException, PrintFileException {
    word();
    try {
      return JavaDoubleParser.parseDouble(word, 0, length);
    } catch (NumberFormatException e) {
      throw fault("%s: expected a number, found \"%s\"", at(), shown());
    }
  }

  @Override
  void skip(PlyType type, long count) throws IOException, PrintFileException {
    for (long i = 0; i < count; i++) {
      word();
    }
  }

  @Override
  void skipAll(PlyHeader.Element of) throws IOException, PrintFileException {
    if (of.properties().isEmpty()) {
      return;
    }
    for (long i = 0; i < of.count(); i++) {
      begin(of, i);
      skip(PlyType.INT8, of.properties().size());
      end();
    }
  }

  @Override
  void end() throws IOException, PrintFileException {
    int c = in.peek();
    while (c == ' ' || c == '\t') {
      in.next();
      c = in.peek();
    }
    if (c >= 0 && c != '\n' && c != '\r') {
      word();
      throw fault("%s: more numbers than its properties, found \"%s\"", at(), shown());
    }
  }

  @Override
  long room(PlyType type) {
    return (in.left() + 1) / 2;
  }

  @Override
  void checkRoom(PlyHeader.Element of) throws PrintFileException {
    int numbers = of.properties().size();
    long room = (in.left() + 1) / 2;
    if (numbers > 0 && of.count() > room / numbers) {
      throw PrintFileException.atLine(
          of.line(),
          "the header says %d %s of at least %d numbers each, found %d bytes",
          of.count(),
          of.name(),
          numbers,
          in.left());
    }
  }

  @Override
  long trailing() throws IOException {
    while (in.peek() >= 0) {
      int c = in.peek();
      if (c > ' ') {
        return in.left();
      }
      in.next();
    }
    return 0;
  }

  @Override
  PrintFileException fault(String format, Object... values) {
    return PrintFileException.atLine(line, format, values);
  }

  private void word() throws IOException, PrintFileException {
    long last = line;
    int c = in.next();
    while (c >= 0 && c <= ' ') {
      if (c == '\r' || c == '\n' && !afterReturn) {
        line++;
      }
      afterReturn = c == '\r';
      c = in.next();
    }
    afterReturn = false;
    length = 0;
    if (c < 0) {
      line = last; // what ends is the line begun, not the one after it
      throw ends();
    }
    while (true) {
      if (length == LONGEST_WORD) {
        throw fault("%s: a word longer than %d bytes", at(), LONGEST_WORD);
      }
      word[length++] = (byte) c;
      c = in.peek();
      if (c <= ' ') {
        return;
      }
      in.next();
    }
  }

  private String shown() {
    return new String(word, 0, Math.min(length, 60), StandardCharsets.UTF_8);
  }
}
