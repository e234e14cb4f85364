package org.amperskin.io.ply;

import java.io.IOException;
import org.amperskin.io.common.PrintFileException;

/** Numbers of a binary PLY body, in either byte order. */
final class BinaryValues extends Values {
  private final boolean bigEndian;
  private final byte[] raw = new byte[8];

  BinaryValues(ByteSource in, boolean bigEndian) {
    super(in);
    this.bigEndian = bigEndian;
  }

  @Override
  double number(PlyType type) throws IOException, PrintFileException {
    int n = type.bytes;
    if (!in.take(raw, n)) {
      throw ends();
    }
    long bits = 0;
    for (int i = 0; i < n; i++) {
      bits = bits << 8 | raw[bigEndian ? i : n - 1 - i] & 0xff;
    }
    return switch (type) {
      case INT8 -> (byte) bits;
      case INT16 -> (short) bits;
      case INT32 -> (int) bits;
      case UINT8, UINT16, UINT32 -> bits;
      case FLOAT32 -> Float.intBitsToFloat((int) bits);
      case FLOAT64 -> Double.longBitsToDouble(bits);
    };
  }

  @Override
  void skip(PlyType type, long count) throws IOException, PrintFileException {
    if (!in.skip(count * type.bytes)) {
      throw ends();
    }
  }

  @Override
  void skipAll(PlyHeader.Element of) throws IOException, PrintFileException {
    long each = of.leastBytes();
    long start = in.offset();
    if (each > 0 && !in.skip(each * of.count())) {
      begin(of, (in.offset() - start) / each);
      throw ends();
    }
  }

  @Override
  void end() {}

  @Override
  long room(PlyType type) {
    return in.left() / type.bytes;
  }

  @Override
  void checkRoom(PlyHeader.Element of) throws PrintFileException {
    long each = of.leastBytes();
    if (each > 0 && of.count() > in.left() / each) {
      // A file cut short is told by the element it ends in, where elements have one size.
      boolean cut = !of.hasList() && in.left() >= each;
      String least = of.hasList() ? "at least " : "";
      throw PrintFileException.atByte(
          in.offset() + in.left(),
          "the header says %d %s of %s%d bytes each, found %d bytes%s",
          of.count(),
          of.name(),
          least,
          each,
          in.left(),
          cut ? ": the file ends inside " + of.name() + " " + (in.left() / each + 1) : "");
    }
  }

  @Override
  long trailing() {
    return in.left();
  }

  @Override
  PrintFileException fault(String format, Object... values) {
    return PrintFileException.atByte(in.offset(), format, values);
  }
}
