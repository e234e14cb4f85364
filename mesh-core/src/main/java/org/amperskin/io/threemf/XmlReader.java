package org.amperskin.io.threemf;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * Decodes an XML part strictly: UTF-16 by its byte order mark or by how its first character is
 * written (W3C XML 1.0, appendix F), else UTF-8, the only two that Open Packaging Conventions
 * allow.
 *
 * <p>The XML reader must not decode: the JDK's writes what it cannot decode to the error stream.
 */
final class XmlReader {
  private XmlReader() {}

  static Reader of(InputStream raw) throws IOException {
    PushbackInputStream in = new PushbackInputStream(raw, 3);
    byte[] head = in.readNBytes(3);
    int first = head.length > 0 ? head[0] & 0xff : -1;
    int second = head.length > 1 ? head[1] & 0xff : -1;
    int third = head.length > 2 ? head[2] & 0xff : -1;
    int mark = 0;
    Charset charset = StandardCharsets.UTF_8;
    if (first == 0xff && second == 0xfe || first == 0xfe && second == 0xff) {
      charset = first == 0xff ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_16BE;
      mark = 2;
    } else if (first == '<' && second == 0) {
      charset = StandardCharsets.UTF_16LE;
    } else if (first == 0 && second == '<') {
      charset = StandardCharsets.UTF_16BE;
    } else if (first == 0xef && second == 0xbb && third == 0xbf) {
      mark = 3;
    }
    in.unread(head, mark, head.length - mark);
    if (charset.equals(StandardCharsets.UTF_8)) {
      return new PausingReader(in);
    }
    return new InputStreamReader(
        in,
        charset
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT));
  }
}
