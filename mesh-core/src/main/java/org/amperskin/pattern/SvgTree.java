package org.amperskin.pattern;

import java.io.StringReader;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * The elements of an SVG file with the lines they stand on.
 *
 * <p>Guaranteed: nothing outside the file is opened. A document type that only names an external
 * definition, as many drawing programs write it, is passed over; of one that declares entities only
 * plain words are taken, see {@link XmlEntities}.
 */
final class SvgTree {
  static final int DEEPEST = 256;
  static final int MOST_ELEMENTS = 1_000_000;
  private static final String SVG = "http://www.w3.org/2000/svg";
  private static final String XML = "http://www.w3.org/XML/1998/namespace";
  private static final String XLINK = "http://www.w3.org/1999/xlink";

  final SvgNode root;
  final Map<String, SvgNode> byId = new HashMap<>();
  final StringBuilder styleSheet = new StringBuilder();
  final boolean hasNameSpace;

  private final Path path;
  private int elements;

  private SvgTree(Path path, XMLStreamReader in) throws XMLStreamException, ArtworkFileException {
    this.path = path;
    Deque<SvgNode> open = new ArrayDeque<>();
    SvgNode top = null;
    boolean named = true;
    while (in.hasNext()) {
      switch (in.next()) {
        case XMLStreamConstants.START_ELEMENT -> {
          if (top == null) {
            named = SVG.equals(in.getNamespaceURI());
          }
          SvgNode node = element(in, named, open.peek());
          if (top == null) {
            top = node;
          } else {
            open.element().children.add(node);
          }
          open.push(node);
          check(open.size() <= DEEPEST, in, "at most " + DEEPEST + " nested elements", open.size());
        }
        case XMLStreamConstants.END_ELEMENT -> {
          SvgNode done = open.pop();
          if (done.svg && done.name.equals("style")) {
            styleSheet.append(done.text).append('\n');
          }
        }
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> {
          if (!open.isEmpty()) {
            characters(open.element(), in);
          }
        }
        case XMLStreamConstants.ENTITY_REFERENCE ->
            throw fault(path, in.getLocation(), "entity &" + in.getLocalName() + "; is not known");
        default -> {}
      }
    }
    root = top;
    hasNameSpace = named;
  }

  static SvgTree read(byte[] bytes, Path path) throws ArtworkFileException {
    String text = XmlEntities.replaced(XmlText.decode(bytes, path), path);
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, true);
    factory.setProperty(XMLInputFactory.IS_COALESCING, false);
    factory.setXMLResolver(
        (publicId, systemId, base, space) -> {
          throw new XMLStreamException("nothing outside the file is opened: " + systemId);
        });
    factory.setXMLReporter((message, type, information, place) -> {});
    XMLStreamReader in = null;
    try {
      in = factory.createXMLStreamReader(new StringReader(text));
      SvgTree tree = new SvgTree(path, in);
      if (tree.root == null) {
        throw fault(path, in.getLocation(), "expected an <svg> element, found none");
      }
      return tree;
    } catch (XMLStreamException e) {
      throw fault(path, e.getLocation(), "expected well-formed XML, found: " + plain(e));
    } catch (RuntimeException e) {
      // the platform's XML reader answers some broken input with unchecked exceptions
      Location at = in == null ? null : in.getLocation();
      throw fault(path, at, "expected well-formed XML, found: " + plain(e));
    }
  }

  private SvgNode element(XMLStreamReader in, boolean named, SvgNode parent)
      throws ArtworkFileException {
    elements++;
    check(elements <= MOST_ELEMENTS, in, "at most " + MOST_ELEMENTS + " elements", elements);
    String space = in.getNamespaceURI();
    boolean svg = named ? SVG.equals(space) : space == null || space.isEmpty();
    SvgNode node = new SvgNode(in.getLocalName(), svg, in.getLocation().getLineNumber(), parent);
    for (int i = 0; i < in.getAttributeCount(); i++) {
      String of = in.getAttributeNamespace(i);
      String key = in.getAttributeLocalName(i);
      if (of == null || of.isEmpty()) {
        node.attributes.put(key, in.getAttributeValue(i));
      } else if (XML.equals(of) && key.equals("space")) {
        node.attributes.put("xml:space", in.getAttributeValue(i));
      } else if (XLINK.equals(of) && key.equals("href")) {
        node.attributes.putIfAbsent(key, in.getAttributeValue(i));
      }
    }
    if (node.svg && node.attributes.containsKey("id")) {
      byId.putIfAbsent(node.attributes.get("id"), node);
    }
    return node;
  }

  /** Keeps the words of texts and style sheets; elsewhere bare words draw nothing. */
  private static void characters(SvgNode in, XMLStreamReader from) {
    if (in.name.equals("style")) {
      in.text.append(from.getText());
    } else if (in.svg && in.within("text")) {
      SvgNode last = in.children.isEmpty() ? null : in.children.get(in.children.size() - 1);
      if (last == null || !last.name.equals(SvgNode.TEXT)) {
        last = new SvgNode(SvgNode.TEXT, true, from.getLocation().getLineNumber(), in);
        in.children.add(last);
      }
      last.text.append(from.getText());
    }
  }

  private void check(boolean holds, XMLStreamReader in, String expected, int found)
      throws ArtworkFileException {
    if (!holds) {
      throw fault(path, in.getLocation(), "expected " + expected + ", found " + found);
    }
  }

  private static ArtworkFileException fault(Path path, Location at, String problem) {
    String place = at == null || at.getLineNumber() < 1 ? "line 1" : "line " + at.getLineNumber();
    return new ArtworkFileException(path, place, problem);
  }

  /** The last line of the platform's message, which has the substance. */
  private static String plain(Exception e) {
    String message = String.valueOf(e.getMessage());
    int cut = message.indexOf("Message: ");
    String substance = (cut >= 0 ? message.substring(cut + 9) : message).replaceAll("\\s+", " ");
    return substance.length() > 200 ? substance.substring(0, 200) + "..." : substance;
  }
}
