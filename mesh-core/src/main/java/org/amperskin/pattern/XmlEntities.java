package org.amperskin.pattern;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Replaces the plain words that a drawing program declares in the document type, such as {@code
 * <!ENTITY ns_svg "http://www.w3.org/2000/svg">}, and takes the document type away.
 *
 * <p>Guaranteed: only short plain words are taken: no markup, no word made of other words, nothing
 * outside the file, no parameter entity; whatever else stands there is refused by name with its
 * line. The text grows by at most {@value #MOST_GROWTH} characters, lines stay where they are.
 *
 * <p>Source: W3C Extensible Markup Language 1.0, sections 2.8 and 4.2, of which this is a part.
 */
final class XmlEntities {
  static final int MOST_WORDS = 200;
  static final int LONGEST_WORD = 1000;
  static final int MOST_GROWTH = 1_000_000;
  private static final Pattern DECLARATION =
      Pattern.compile(
          "<!ENTITY\\s+(%\\s+)?([\\p{L}_:][\\p{L}\\p{N}._:-]*)\\s+"
              + "(?:\"([^\"]*)\"|'([^']*)'|(SYSTEM|PUBLIC)\\b[^>]*)\\s*>");
  private static final Pattern REFERENCE =
      Pattern.compile("&([\\p{L}_:][\\p{L}\\p{N}._:-]*);|<!\\[CDATA\\[|<!--");

  private XmlEntities() {}

  static String replaced(String text, Path path) throws ArtworkFileException {
    int first = text.indexOf("<!ENTITY");
    if (first < 0) {
      return text;
    }
    int begin = text.indexOf("<!DOCTYPE");
    int bracket = begin < 0 ? -1 : text.indexOf('[', begin);
    int root = text.indexOf("<svg");
    if (begin < 0 || bracket < 0 || bracket > first || root >= 0 && root < begin) {
      throw fault(path, text, first, "expected no entity declarations here, found <!ENTITY");
    }
    Map<String, String> words = new HashMap<>();
    int end = declarations(text, bracket + 1, words, path);
    String kept = text.substring(0, begin) + blank(text.substring(begin, end));
    return kept + body(text, end, words, path);
  }

  /** Reads the part in brackets; returns the place after the closing {@code ]>}. */
  private static int declarations(String text, int from, Map<String, String> words, Path path)
      throws ArtworkFileException {
    int at = from;
    Matcher entity = DECLARATION.matcher(text);
    while (true) {
      while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
        at++;
      }
      if (text.startsWith("<!--", at)) {
        int close = text.indexOf("-->", at);
        at = close < 0 ? text.length() : close + 3;
      } else if (text.startsWith("<!ENTITY", at)) {
        entity.region(at, Math.min(text.length(), at + 3 * LONGEST_WORD));
        if (!entity.lookingAt()) {
          throw fault(path, text, at, "expected <!ENTITY name \"plain word\">, found another form");
        }
        word(entity, words, text, path);
        at = entity.end();
      } else if (text.startsWith("<!ATTLIST", at)
          || text.startsWith("<!ELEMENT", at)
          || text.startsWith("<!NOTATION", at)) {
        int close = text.indexOf('>', at);
        at = close < 0 ? text.length() : close + 1;
      } else if (text.startsWith("]", at)) {
        int close = text.indexOf('>', at);
        if (close < 0 || !text.substring(at + 1, close).isBlank()) {
          throw fault(path, text, at, "expected ]> at the end of the document type, found none");
        }
        return close + 1;
      } else {
        throw fault(path, text, at, "expected a declaration or ]> in the document type");
      }
    }
  }

  private static void word(Matcher entity, Map<String, String> words, String text, Path path)
      throws ArtworkFileException {
    String name = entity.group(2);
    String value = entity.group(3) != null ? entity.group(3) : entity.group(4);
    if (entity.group(1) != null || value == null) {
      throw fault(
          path,
          text,
          entity.start(),
          "entity "
              + name
              + " points outside the file or is a parameter entity: nothing else is opened;"
              + " save the drawing as plain SVG");
    }
    if (value.indexOf('<') >= 0 || value.indexOf('&') >= 0 || value.indexOf('%') >= 0) {
      throw fault(
          path,
          text,
          entity.start(),
          "expected a plain word as entity "
              + name
              + ", found markup or other entities in it; save the drawing as plain SVG");
    }
    if (value.length() > LONGEST_WORD || words.size() >= MOST_WORDS) {
      throw fault(
          path,
          text,
          entity.start(),
          "expected at most %d entities of %d characters, found %d and one of %d"
              .formatted(MOST_WORDS, LONGEST_WORD, words.size(), value.length()));
    }
    words.putIfAbsent(name, value);
  }

  private static String body(String text, int from, Map<String, String> words, Path path)
      throws ArtworkFileException {
    StringBuilder out = new StringBuilder(text.length() - from);
    Matcher next = REFERENCE.matcher(text);
    int at = from;
    int grown = 0;
    while (next.find(at)) {
      out.append(text, at, next.start());
      at = next.end();
      String value = next.group(1) == null ? null : words.get(next.group(1));
      if (value != null) {
        grown += value.length();
        if (grown > MOST_GROWTH) {
          throw fault(
              path,
              text,
              next.start(),
              "expected entities to add at most " + MOST_GROWTH + " characters, found " + grown);
        }
        out.append(value);
      } else {
        // comments and CDATA are passed over whole; other references are the XML reader's business
        if (next.group(1) == null) {
          String closing = next.group().equals("<!--") ? "-->" : "]]>";
          int close = text.indexOf(closing, at);
          at = close < 0 ? text.length() : close + 3;
        }
        out.append(text, next.start(), at);
      }
    }
    return out.append(text, at, text.length()).toString();
  }

  private static String blank(String removed) {
    return removed.replaceAll("[^\\n]", " ");
  }

  private static ArtworkFileException fault(Path path, String text, int at, String problem) {
    long line = 1 + text.chars().limit(at).filter(c -> c == '\n').count();
    return new ArtworkFileException(path, "line " + line, problem);
  }
}
