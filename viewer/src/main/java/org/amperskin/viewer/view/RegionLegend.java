package org.amperskin.viewer.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.amperskin.viewer.model.ViewerModel;
import org.amperskin.viewer.part.PaintedSurface;
import org.amperskin.viewer.part.RegionEntry;

/**
 * The regions: swatch with its own hatch, name, whether it is open, area and share.
 *
 * <p>A click brings a region out and dims the others, which tells it without its colour.
 */
final class RegionLegend extends VBox {
  private static final PseudoClass SELECTED = PseudoClass.getPseudoClass("selected");
  private static final int SWATCH = 18;

  private final ViewerModel model;
  private final List<Button> rows = new ArrayList<>();

  RegionLegend(ViewerModel model) {
    this.model = model;
    getStyleClass().add("legend");
    setMinHeight(Region.USE_PREF_SIZE);
    model.surface().addListener((o, was, is) -> fill(is));
    model.shownRegion().addListener(o -> mark());
    fill(model.surface().get());
  }

  private void fill(PaintedSurface part) {
    rows.clear();
    getChildren().clear();
    if (part == null) {
      return;
    }
    List<String> paints = model.paints();
    if (paints.size() > 1) {
      getChildren().add(choice(paints));
    }
    boolean field = paints.contains(part.name()) && !part.name().equals(ViewerModel.REGIONS);
    HBox head =
        new HBox(
            Parts.text(field ? capital(part.name()) : "Regions: " + part.name(), "heading"),
            Parts.spacer(),
            Parts.word("dm²", "muted"));
    Label share = Parts.word("%", "muted", "share");
    head.getChildren().add(share);
    head.setAlignment(Pos.BASELINE_LEFT);
    head.getStyleClass().add("legend-head");
    getChildren().add(head);
    double whole = 0;
    for (RegionEntry r : part.regions()) {
      whole += r.areaMm2();
    }
    for (int i = 0; i < part.regions().size(); i++) {
      add(i, part.regions().get(i), whole);
    }
    mark();
  }

  /** What to paint by; the key G takes the next one. */
  private HBox choice(List<String> paints) {
    ChoiceBox<String> box = new ChoiceBox<>();
    box.setId("paint");
    box.getItems().setAll(paints);
    String now = model.paint().get();
    box.setValue(paints.contains(now) ? now : ViewerModel.REGIONS);
    box.setMinWidth(Region.USE_PREF_SIZE);
    box.setOnAction(e -> model.paint().set(box.getValue()));
    Label words = Parts.word("Paint by", "muted");
    words.setLabelFor(box);
    HBox row = new HBox(10, words, box);
    row.setAlignment(Pos.CENTER_LEFT);
    row.getStyleClass().add("legend-head");
    return row;
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private void add(int index, RegionEntry region, double wholeMm2) {
    Label words = Parts.text(region.label(), "strong");
    words.setMaxWidth(Double.MAX_VALUE);
    Label state = Parts.word(region.state(), "muted", "state");
    HBox.setHgrow(words, Priority.ALWAYS);
    double share = wholeMm2 > 0 ? region.areaMm2() / wholeMm2 : 0;
    HBox content =
        new HBox(
            10,
            swatch(region),
            words,
            state,
            Parts.word(FigureText.squareDecimetres(region.areaMm2()), "value"),
            Parts.word(FigureText.perCent(share), "value", "share"));
    if (region.state().isEmpty()) {
      content.getChildren().remove(state);
    }
    content.setAlignment(Pos.CENTER_LEFT);
    Button row = new Button();
    row.setGraphic(content);
    row.setMaxWidth(Double.MAX_VALUE);
    row.setMinHeight(Region.USE_PREF_SIZE);
    row.getStyleClass().setAll("legend-row");
    row.setId("region-" + index);
    row.setAccessibleText(
        region.label() + ", " + FigureText.squareDecimetres(region.areaMm2()) + " dm2");
    row.setOnAction(e -> model.toggleRegion(index));
    content.prefWidthProperty().bind(row.widthProperty().subtract(20));
    rows.add(row);
    getChildren().add(row);
  }

  private static ImageView swatch(RegionEntry region) {
    WritableImage image = new WritableImage(SWATCH, SWATCH);
    int argb = region.argb() | 0xFF000000;
    int light = 299 * (argb >> 16 & 255) + 587 * (argb >> 8 & 255) + 114 * (argb & 255);
    int ink = light > 140_000 ? 0xFF1B1F24 : 0xFFFFFFFF;
    for (int y = 0; y < SWATCH; y++) {
      for (int x = 0; x < SWATCH; x++) {
        image.getPixelWriter().setArgb(x, y, region.hatch().inked(x, y) ? ink : argb);
      }
    }
    return new ImageView(image);
  }

  private void mark() {
    for (int i = 0; i < rows.size(); i++) {
      rows.get(i).pseudoClassStateChanged(SELECTED, i == model.shownRegion().get());
    }
  }
}
