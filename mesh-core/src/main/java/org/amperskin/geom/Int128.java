package org.amperskin.geom;

/**
 * A whole number of 128 bits, two's complement: what products of two or three differences of
 * coordinates need.
 *
 * <p>Not guaranteed: results beyond 127 bits; callers bound their factors. Cost: a few nanoseconds
 * an operation, nothing stays on the heap.
 *
 * @param high upper 64 bits
 * @param low lower 64 bits, unsigned
 */
record Int128(long high, long low) {
  /** Exact product. */
  static Int128 product(long a, long b) {
    return new Int128(Math.multiplyHigh(a, b), a * b);
  }

  Int128 plus(Int128 o) {
    long sum = low + o.low;
    long carry = Long.compareUnsigned(sum, low) < 0 ? 1 : 0;
    return new Int128(high + o.high + carry, sum);
  }

  Int128 minus(Int128 o) {
    long borrow = Long.compareUnsigned(low, o.low) < 0 ? 1 : 0;
    return new Int128(high - o.high - borrow, low - o.low);
  }

  Int128 times(long b) {
    // the low half counts as unsigned, multiplyHigh takes it as signed
    long carried = Math.multiplyHigh(low, b) + (low < 0 ? b : 0);
    return new Int128(high * b + carried, low * b);
  }

  int signum() {
    return high != 0 ? Long.signum(high) : low != 0 ? 1 : 0;
  }
}
