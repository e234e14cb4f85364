package org.amperskin.pattern;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Decodes an XML file strictly: encoding by byte order mark, by the first bytes, by the XML
 * declaration, else UTF-8 (W3C XML 1.0, appendix F). The first byte that does not fit is told.
 */
final class XmlText {
  private static final Pattern DECLARED =
      Pattern.compile("^<\\?xml[^>]*?encoding\\s*=\\s*[\"']([A-Za-z0-9._-]+)[\"']");

  private XmlText() {}

  static String decode(byte[] bytes, Path path) throws ArtworkFileException {
    Charset charset = charset(bytes, path);
    CharsetDecoder decoder =
        charset
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate((int) (bytes.length * decoder.maxCharsPerByte()) + 16);
    CoderResult result = decoder.decode(in, out, true);
    try {
      if (result.isError()) {
        result.throwException();
      }
    } catch (CharacterCodingException e) {
      throw new ArtworkFileException(
          path,
          "byte " + in.position(),
          "expected %s text, found byte %02x".formatted(charset, bytes[in.position()]));
    }
    decoder.flush(out);
    String text = out.flip().toString();
    return text.startsWith("\ufeff") ? text.substring(1) : text;
  }

  private static Charset charset(byte[] bytes, Path path) throws ArtworkFileException {
    int first = bytes.length > 0 ? bytes[0] & 255 : 0;
    int second = bytes.length > 1 ? bytes[1] & 255 : 0;
    if (first == 0xff && second == 0xfe || first == '<' && second == 0) {
      return StandardCharsets.UTF_16LE;
    }
    if (first == 0xfe && second == 0xff || first == 0 && second == '<') {
      return StandardCharsets.UTF_16BE;
    }
    String head = new String(bytes, 0, Math.min(200, bytes.length), StandardCharsets.ISO_8859_1);
    Matcher declared = DECLARED.matcher(head);
    if (!declared.find()
        || declared.group(1).toUpperCase(java.util.Locale.ROOT).startsWith("UTF-16")) {
      return StandardCharsets.UTF_8;
    }
    try {
      return Charset.forName(declared.group(1));
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      throw new ArtworkFileException(
          path, "line 1", "expected a known text encoding, found \"" + declared.group(1) + "\"");
    }
  }
}
