package org.amperskin.io.threemf;

/**
 * What a package may ask for.
 *
 * @param partBytes most bytes of one unpacked part
 * @param totalBytes most bytes of all unpacked parts
 * @param ratio most bytes unpacked from one, past the first 4 MiB of a part
 * @param entries most entries of the archive
 * @param triangles most triangles once every copy is counted
 * @param instances most copies of objects, nested ones included
 */
record Limits(
    long partBytes, long totalBytes, int ratio, int entries, long triangles, long instances) {
  static final Limits USUAL = new Limits(2L << 30, 4L << 30, 200, 20_000, 50_000_000L, 1_000_000L);
}
