package org.amperskin.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDPage;

/** What stands on a page of a PDF: filled paths by the mark around them, and the words, in pt. */
final class PdfFigures {
  private final Map<String, List<double[]>> rings = new HashMap<>();
  private final List<String> words = new ArrayList<>();
  private final List<Double> wordsX = new ArrayList<>();
  private final List<Double> wordsScaleX = new ArrayList<>();
  private int strokes;

  static PdfFigures of(PDPage page) throws IOException {
    PdfFigures figures = new PdfFigures();
    List<Object> operands = new ArrayList<>();
    List<Double> ring = new ArrayList<>();
    List<double[]> path = new ArrayList<>();
    String mark = "";
    for (Object token : new PDFStreamParser(page).parse()) {
      if (!(token instanceof Operator operator)) {
        operands.add(token);
        continue;
      }
      switch (operator.getName()) {
        case "BMC" -> mark = ((COSName) operands.get(0)).getName();
        case "EMC" -> mark = "";
        case "m", "l" -> {
          ring.add(number(operands.get(0)));
          ring.add(number(operands.get(1)));
        }
        case "h" -> {
          path.add(ring.stream().mapToDouble(d -> d).toArray());
          ring.clear();
        }
        case "f" -> {
          figures.rings.computeIfAbsent(mark, k -> new ArrayList<>()).addAll(path);
          path.clear();
        }
        case "S", "s", "B", "b" -> figures.strokes++;
        case "Tm" -> {
          figures.wordsScaleX.add(number(operands.get(0)));
          figures.wordsX.add(number(operands.get(4)));
        }
        case "Tj" -> figures.words.add(((COSString) operands.get(0)).getString());
        default -> {}
      }
      operands.clear();
    }
    return figures;
  }

  private static double number(Object operand) {
    return ((COSNumber) operand).floatValue();
  }

  List<double[]> rings(String mark) {
    return rings.getOrDefault(mark, List.of());
  }

  /** Area by the shoelace sum (pt2). */
  double area(String mark) {
    double sum = 0;
    for (double[] r : rings(mark)) {
      double twice = 0;
      for (int i = 0, j = r.length - 2; i < r.length; j = i, i += 2) {
        twice += (r[j] - r[0]) * (r[i + 1] - r[1]) - (r[i] - r[0]) * (r[j + 1] - r[1]);
      }
      sum += twice / 2;
    }
    return sum;
  }

  /** Left, bottom, right, top (pt). */
  double[] box(String mark) {
    double[] box = {1e9, 1e9, -1e9, -1e9};
    for (double[] r : rings(mark)) {
      for (int i = 0; i < r.length; i += 2) {
        box[0] = Math.min(box[0], r[i]);
        box[1] = Math.min(box[1], r[i + 1]);
        box[2] = Math.max(box[2], r[i]);
        box[3] = Math.max(box[3], r[i + 1]);
      }
    }
    return box;
  }

  double width(String mark) {
    return box(mark)[2] - box(mark)[0];
  }

  double height(String mark) {
    return box(mark)[3] - box(mark)[1];
  }

  List<String> words() {
    return words;
  }

  String text() {
    return String.join("\n", words);
  }

  /** -1 where a line runs to the left. */
  double scaleX(int line) {
    return wordsScaleX.get(line);
  }

  int strokes() {
    return strokes;
  }
}
