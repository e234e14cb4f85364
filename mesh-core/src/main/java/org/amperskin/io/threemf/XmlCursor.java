package org.amperskin.io.threemf;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.amperskin.io.common.PrintFileException;

/**
 * Walks over the elements of an XML part.
 *
 * <p>Guaranteed: a document type declaration is refused, so nothing is declared, replaced or opened
 * from outside; nesting is limited; every fault is one {@link PrintFileException} with part and
 * line.
 *
 * <p>Method: the JDK's StAX reader on text decoded by {@link XmlReader}; runs of plain vertices and
 * triangles are taken past it by {@link PlainTags}.
 */
final class XmlCursor {
  private static final int DEEPEST = 100;

  private final String part;
  private final GuardedStream stream;
  private final XMLStreamReader in;
  private final Reader text;
  private int depth;

  /** Elements vertices and triangles met without a prefix. */
  private int lists;

  /** Lines that {@link PlainTags} took, which the XML reader did not see. */
  private long linesTaken;

  XmlCursor(String part, GuardedStream stream) throws PrintFileException {
    this.part = part;
    this.stream = stream;
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, true);
    factory.setProperty(XMLInputFactory.IS_COALESCING, false);
    factory.setXMLResolver(
        (publicId, systemId, base, space) -> {
          throw new XMLStreamException("nothing outside the file is opened: " + systemId);
        });
    factory.setXMLReporter((message, type, information, place) -> {});
    try {
      text = XmlReader.of(stream);
      in = factory.createXMLStreamReader(text);
    } catch (XMLStreamException | IOException | RuntimeException e) {
      throw broken(e, null);
    }
  }

  /** Goes to the root element. */
  void root() throws PrintFileException {
    if (!next()) {
      throw PrintFileException.atLine(1, "expected an XML element, found none").in(part);
    }
  }

  /**
   * Goes to the next child of the element opened last at {@code parentDepth}; false at its end.
   * Children must be left by {@link #leave} or their own {@code child} loop.
   */
  boolean child(int parentDepth) throws PrintFileException {
    while (next()) {
      if (in.getEventType() == XMLStreamConstants.START_ELEMENT) {
        return true;
      }
      if (depth < parentDepth) {
        return false;
      }
    }
    return false;
  }

  /** Passes over what is left of the element just opened. */
  void leave() throws PrintFileException {
    int inside = depth;
    while (depth >= inside && next()) {
      // whatever is in there says nothing to us
    }
  }

  /** Reads to the end of the part, so that all of it is known to be sound. */
  void finish() throws PrintFileException {
    while (next()) {
      // what follows the last element that matters
    }
    stream.drain();
  }

  int depth() {
    return depth;
  }

  String space() {
    String s = in.getNamespaceURI();
    return s == null ? "" : s;
  }

  String name() {
    return in.getLocalName();
  }

  boolean isCore(String name) {
    return in.getLocalName().equals(name) && Namespaces.core(in.getNamespaceURI());
  }

  boolean is(String space, String name) {
    return in.getLocalName().equals(name) && space.equals(in.getNamespaceURI());
  }

  int attributes() {
    return in.getAttributeCount();
  }

  /** Name of an attribute that has no name space, else "". */
  String attributeName(int i) {
    String space = in.getAttributeNamespace(i);
    return space == null || space.isEmpty() ? in.getAttributeLocalName(i) : "";
  }

  String attributeValue(int i) {
    return in.getAttributeValue(i);
  }

  /** An attribute without name space, or null. */
  String attribute(String name) {
    for (int i = 0; i < in.getAttributeCount(); i++) {
      if (attributeName(i).equals(name)) {
        return in.getAttributeValue(i);
      }
    }
    return null;
  }

  /** An attribute of a name space, or null. */
  String attribute(String space, String name) {
    return in.getAttributeValue(space, name);
  }

  /** Name space that a prefix stands for here, or null. */
  String spaceOf(String prefix) {
    return in.getNamespaceURI(prefix);
  }

  long line() {
    return line(in.getLocation());
  }

  private long line(Location at) {
    return at == null ? 1 : Math.max(1, at.getLineNumber()) + linesTaken;
  }

  /** What takes the plain children of the list just opened; empty if that cannot be done. */
  Optional<PlainTags> plainTags(String element) {
    return text instanceof PausingReader p && opensList() && p.pausedAfter(lists)
        ? Optional.of(new PlainTags(p, element))
        : Optional.empty();
  }

  /** Looks at the next plain child. */
  boolean next(PlainTags tags) throws PrintFileException {
    try {
      return tags.next();
    } catch (IOException e) {
      throw broken(e, in.getLocation());
    }
  }

  /** Goes on behind the plain children. */
  void behind(PlainTags tags) {
    linesTaken += tags.lines();
  }

  PrintFileException fault(String format, Object... values) {
    return PrintFileException.atLine(line(), format, values).in(part);
  }

  private boolean next() throws PrintFileException {
    try {
      while (in.hasNext()) {
        switch (in.next()) {
          case XMLStreamConstants.START_ELEMENT -> {
            depth++;
            if (opensList()) {
              lists++;
            }
            if (depth > DEEPEST) {
              throw fault("elements nested more than %d deep", DEEPEST);
            }
            return true;
          }
          case XMLStreamConstants.END_ELEMENT -> {
            depth--;
            return true;
          }
          case XMLStreamConstants.DTD ->
              throw fault("a document type declaration is not allowed in a 3MF file");
          case XMLStreamConstants.ENTITY_REFERENCE ->
              throw fault("entity &%s; is not declared", in.getLocalName());
          default -> {}
        }
      }
      stream.rethrow();
      return false;
    } catch (XMLStreamException e) {
      throw broken(e, e.getLocation());
    } catch (CancellationException e) {
      throw e;
    } catch (RuntimeException e) {
      // The JDK's reader answers some broken input with unchecked exceptions.
      throw broken(e, in.getLocation());
    }
  }

  private boolean opensList() {
    String name = in.getLocalName();
    return (name.equals("vertices") || name.equals("triangles"))
        && (in.getPrefix() == null || in.getPrefix().isEmpty());
  }

  private PrintFileException broken(Exception e, Location at) throws PrintFileException {
    stream.rethrow();
    String message = String.valueOf(e.getMessage());
    int cut = message.indexOf("Message: ");
    String substance = (cut >= 0 ? message.substring(cut + 9) : message).replaceAll("\\s+", " ");
    substance = substance.length() > 200 ? substance.substring(0, 200) + "..." : substance;
    Throwable nested = e instanceof XMLStreamException x ? x.getNestedException() : e;
    if (nested instanceof CharacterCodingException) {
      substance = "bytes that are neither UTF-8 nor UTF-16 (" + nested.getMessage() + ")";
    }
    return PrintFileException.atLine(line(at), "expected well-formed XML, found: %s", substance)
        .in(part);
  }
}
