package org.amperskin.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A small reader of DXF written from the format's description (group codes: DXF Reference, from
 * memory), apart from the writer: closed polylines by layer, and header values.
 */
final class DxfReader {
  private final Map<String, List<double[]>> closed = new HashMap<>();
  private final Map<String, String> header = new HashMap<>();
  private int open;

  DxfReader(String text) {
    String[] lines = text.split("\n", -1);
    List<Double> points = new ArrayList<>();
    String section = "";
    String entity = "";
    String layer = "";
    String variable = "";
    boolean isClosed = false;
    double x = 0;
    for (int i = 0; i + 1 < lines.length; i += 2) {
      int code = Integer.parseInt(lines[i].strip());
      String value = lines[i + 1].strip();
      switch (code) {
        case 0 -> {
          if (value.equals("SEQEND")) {
            if (isClosed) {
              closed
                  .computeIfAbsent(layer, k -> new ArrayList<>())
                  .add(points.stream().mapToDouble(d -> d).toArray());
            } else {
              open++;
            }
            points.clear();
          }
          entity = value;
        }
        case 2 -> section = entity.equals("SECTION") ? value : section;
        case 8 -> layer = value;
        case 9 -> variable = value;
        case 70 -> {
          if (section.equals("HEADER")) {
            header.put(variable, value);
          } else if (entity.equals("POLYLINE")) {
            isClosed = (Integer.parseInt(value) & 1) == 1;
          }
        }
        case 1 -> header.put(variable, value);
        case 10 -> x = Double.parseDouble(value);
        case 20 -> {
          if (entity.equals("VERTEX")) {
            points.add(x);
            points.add(Double.parseDouble(value));
          }
        }
        default -> {}
      }
    }
    if (!entity.equals("EOF")) {
      throw new IllegalArgumentException("ends with " + entity);
    }
  }

  List<double[]> closed(String layer) {
    return closed.getOrDefault(layer, List.of());
  }

  String header(String variable) {
    return header.get(variable);
  }

  int openLines() {
    return open;
  }
}
