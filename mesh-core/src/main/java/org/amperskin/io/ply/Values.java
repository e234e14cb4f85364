package org.amperskin.io.ply;

import java.io.IOException;
import org.amperskin.io.common.PrintFileException;

/** The numbers after a PLY header, one after the other, whatever way they are written. */
abstract class Values {
  final ByteSource in;
  private PlyHeader.Element element;
  private long index;

  Values(ByteSource in) {
    this.in = in;
  }

  /** Goes to an element, counted from 0. */
  void begin(PlyHeader.Element of, long number) {
    element = of;
    index = number;
  }

  /** Takes a number; it may be not finite. */
  abstract double number(PlyType type) throws IOException, PrintFileException;

  /** Passes over numbers. */
  abstract void skip(PlyType type, long count) throws IOException, PrintFileException;

  /** Passes over elements that have no list. */
  abstract void skipAll(PlyHeader.Element of) throws IOException, PrintFileException;

  /** Checks that the element is over. */
  abstract void end() throws IOException, PrintFileException;

  /** Most numbers of a type that what is left of the file can hold. */
  abstract long room(PlyType type);

  /** Refuses a claim that the file is too small for. */
  abstract void checkRoom(PlyHeader.Element of) throws PrintFileException;

  /** Number of bytes that follow and say nothing. */
  abstract long trailing() throws IOException;

  /** A fault at the place reached. */
  abstract PrintFileException fault(String format, Object... values);

  final PrintFileException ends() {
    return fault("the file ends inside %s", at());
  }

  /** The element reached, as "face 11 of 12". */
  final String at() {
    return element.name() + " " + (index + 1) + " of " + element.count();
  }

  /** Takes a list's length. */
  final int length(PlyHeader.Property list) throws IOException, PrintFileException {
    double n = number(list.count());
    if (!(n >= 0) || n != Math.rint(n)) {
      throw fault("%s: list %s cannot have length %s", at(), list.name(), shown(n));
    }
    long room = room(list.type());
    if (n > room || n > Integer.MAX_VALUE - 16) {
      throw fault(
          "the file ends inside %s: list %s of %s numbers, the %d bytes left have room for %d",
          at(), list.name(), shown(n), in.left(), room);
    }
    return (int) n;
  }

  final void skip(PlyHeader.Property p) throws IOException, PrintFileException {
    skip(p.type(), p.list() ? length(p) : 1);
  }

  static String shown(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
