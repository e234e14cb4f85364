package org.amperskin.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.amperskin.plating.Material;
import org.amperskin.plating.Plan;
import org.amperskin.plating.PlatedSurface;
import org.amperskin.plating.Step;
import org.amperskin.plating.WorkKind;
import org.amperskin.plating.WorkStep;
import org.amperskin.plating.Workpiece;
import org.amperskin.yaml.YamlFault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a plan's materials cost. */
class PricesTest {
  private static final String FILE =
      """
      currency: crowns
      price:
        copper anode: 20 /kg
        Palladium, brush solution: 300 per L
        developer: 4.00 /100 mL
        contact clip: 0.50 each
        coper deposited: 1 /kg
      """;

  private static final List<Material> MATERIALS =
      List.of(
          new Material("copper deposited", 25, "g", "on the part"),
          new Material("copper anode", 250, "g", "dissolves"),
          new Material("palladium deposited", 0.08, "g", "on the part"),
          new Material("Palladium, brush solution", 0.05, "L", "used up"),
          new Material("developer", 0.5, "L", "fresh"),
          new Material("contact clip", 4, "pieces", "holds"),
          new Material("oil", 2, "mL", "finish"));

  @Test
  void materialsAreSummedByHand() throws Exception {
    Prices.Bill bill = Prices.read(FILE, "prices.yaml").bill(MATERIALS);
    assertThat(bill.currency()).isEqualTo("crowns");
    assertThat(bill.rows())
        .extracting(r -> r.cost().orElse(-1))
        .usingElementComparator((a, b) -> Math.abs(a - b) < 1e-9 ? 0 : Double.compare(a, b))
        .containsExactly(-1.0, 5.0, -1.0, 15.0, 20.0, 2.0, -1.0);
    assertThat(bill.total()).isCloseTo(42, within(1e-9));
    assertThat(bill.preciousMg()).hasSize(1);
    assertThat(bill.preciousMg().get("palladium")).isCloseTo(80, within(1e-9));
  }

  @Test
  void whatHasNoPriceAndWhatIsMisspeltIsTold() throws Exception {
    assertThat(Prices.read(FILE, "prices.yaml").bill(MATERIALS).notes())
        .containsExactly(
            "no price, so not in the sum: oil",
            "price 'coper deposited' met no material, did you mean 'copper deposited'?");
  }

  @Test
  void aPriceOfAnotherKindOfUnitIsTold() throws Exception {
    Prices prices = Prices.read("currency: EUR\nprice: {copper anode: 3 /L}\n", "p.yaml");
    Prices.Bill bill = prices.bill(MATERIALS.subList(1, 2));
    assertThat(bill.total()).isZero();
    assertThat(bill.notes().get(0)).isEqualTo("price of copper anode does not fit its unit, g");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "price: {a: 3 /kg}|1:1: key 'currency' is missing",
        "currency: EUR|key 'price' is missing",
        "curency: EUR|did you mean 'currency'?",
        "'{currency: EUR, price: {a: 3}}'|1:28: price '3' of a is not read; '14.50 /kg'",
        "'{currency: EUR, price: {a: 3 /A}}'|price '3 /A' of a is not read",
        "'{currency: EUR, price: {a: -3 /kg}}'|price '-3 /kg' of a is not read",
        "'{currency: EUR, price: {a: \"3,50 /kg\"}}'|price '3,50 /kg' of a is not read",
      })
  void faultsHaveAPlaceAndARemedy(String text, String words) {
    assertThatThrownBy(() -> Prices.read(text, "p.yaml"))
        .isInstanceOf(YamlFault.class)
        .hasMessageContaining(words);
  }

  /** Money follows what moves an amount: half more resist costs half more; prices are certain. */
  @Test
  void theSumCarriesTheBandOfItsMaterials() throws Exception {
    Prices prices = Prices.read("currency: crowns\nprice: {resist: 100 /L}\n", "prices.yaml");
    Step resist = new WorkStep("resist", "", PlatedSurface.bare(20_000), WorkKind.RESIST);
    Plan plan = Plan.of(List.of(resist), Workpiece.unknown());
    Material used =
        plan.materials().stream().filter(m -> m.name().equals("resist")).findFirst().orElseThrow();
    Prices.Bill bill = prices.bill(plan.materials());
    assertThat(bill.total()).isCloseTo(100 * used.amount(), within(1e-9));
    assertThat(bill.sum().band().orElseThrow().high())
        .isCloseTo(100 * used.band().orElseThrow().high(), within(1e-9));
    assertThat(bill.sum().swings())
        .singleElement()
        .satisfies(s -> assertThat(s.unit()).isEqualTo("crowns"));
  }
}
