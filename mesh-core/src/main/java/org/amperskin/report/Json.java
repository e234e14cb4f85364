package org.amperskin.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Writes one JSON value (RFC 8259), indented.
 *
 * <p>Guaranteed: numbers are finite or null; keys in the order written; a line feed at each line's
 * end on every platform.
 */
final class Json {
  private final StringWriter text = new StringWriter();
  private final JsonGenerator out;

  /** Something that writes an object's members. */
  interface Members {
    /** Writes them. */
    void write(Json json) throws IOException;
  }

  private Json() throws IOException {
    out = new JsonFactory().createGenerator(text);
    DefaultIndenter lines = new DefaultIndenter("  ", "\n");
    out.setPrettyPrinter(
        new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines));
  }

  /** One object as text. */
  static String object(Members members) {
    try {
      Json json = new Json();
      json.nested(members);
      json.out.close();
      return json.text + "\n";
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  private void nested(Members members) throws IOException {
    out.writeStartObject();
    members.write(this);
    out.writeEndObject();
  }

  Json text(String key, String value) throws IOException {
    out.writeStringField(key, value);
    return this;
  }

  Json maybeText(String key, Optional<String> value) throws IOException {
    out.writeFieldName(key);
    if (value.isPresent()) {
      out.writeString(value.get());
    } else {
      out.writeNull();
    }
    return this;
  }

  Json none(String key) throws IOException {
    out.writeNullField(key);
    return this;
  }

  Json count(String key, long value) throws IOException {
    out.writeNumberField(key, value);
    return this;
  }

  Json flag(String key, boolean value) throws IOException {
    out.writeBooleanField(key, value);
    return this;
  }

  Json number(String key, double value) throws IOException {
    out.writeFieldName(key);
    number(value);
    return this;
  }

  Json maybe(String key, OptionalDouble value) throws IOException {
    return number(key, value.orElse(Double.NaN));
  }

  private void number(double value) throws IOException {
    if (Double.isFinite(value)) {
      out.writeNumber(value + 0.0);
    } else {
      out.writeNull();
    }
  }

  Json numbers(String key, double... values) throws IOException {
    out.writeArrayFieldStart(key);
    for (double v : values) {
      number(v);
    }
    out.writeEndArray();
    return this;
  }

  Json texts(String key, List<String> values) throws IOException {
    out.writeArrayFieldStart(key);
    for (String v : values) {
      out.writeString(v);
    }
    out.writeEndArray();
    return this;
  }

  /** Low and high, or null. */
  Json range(String key, boolean present, double low, double high) throws IOException {
    if (!present) {
      out.writeNullField(key);
      return this;
    }
    return object(key, j -> j.number("low", low).number("high", high));
  }

  Json object(String key, Members members) throws IOException {
    out.writeFieldName(key);
    nested(members);
    return this;
  }

  /** What writes one item of a list. */
  interface Item<T> {
    /** Writes its members. */
    void write(Json json, T item) throws IOException;
  }

  <T> Json objects(String key, Iterable<T> items, Item<T> writer) throws IOException {
    out.writeArrayFieldStart(key);
    for (T item : items) {
      nested(j -> writer.write(j, item));
    }
    out.writeEndArray();
    return this;
  }
}
