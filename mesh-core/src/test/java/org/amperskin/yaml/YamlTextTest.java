package org.amperskin.yaml;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Single values are exchanged; everything else keeps its characters. */
class YamlTextTest {
  private static final List<String> TURN = List.of("film", "a", "turn");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          film: {a: {turn: 5 deg}}|film: {a: {turn: 45 deg}}
          film: {a: {turn: '5 deg', up: +z}}|film: {a: {turn: 45 deg, up: +z}}
          film: {a: {up: +z}}|film: {a: {up: +z, turn: 45 deg}}
          film: {a: {}}|film: {a: {turn: 45 deg}}
          film:\\n  a:\\n    turn: 5 deg   # keep\\n  b: 1|film:\\n  a:\\n    turn: 45 deg   # keep\\n  b: 1
          film:\\n  a:\\n    turn: "5 deg"\\n# end|film:\\n  a:\\n    turn: 45 deg\\n# end
          film:\\n  a:\\n    up: +z # keep\\n\\n|film:\\n  a:\\n    turn: 45 deg\\n    up: +z # keep\\n\\n
          # ä 𝄞 é\\nfilm:\\n  a:\\n    turn: 5 deg|# ä 𝄞 é\\nfilm:\\n  a:\\n    turn: 45 deg
          film:\\r\\n  a:\\r\\n    turn: 5 deg\\r\\n|film:\\r\\n  a:\\r\\n    turn: 45 deg\\r\\n
          film:\\r\\n  a:\\r\\n    up: +z\\r\\n|film:\\r\\n  a:\\r\\n    turn: 45 deg\\r\\n    up: +z\\r\\n
          film:\\n  "a": { turn : 5 deg , up: +z }|film:\\n  "a": { turn : 45 deg , up: +z }
          film:\\n  a:\\n    ? turn\\n    : 5 deg\\n|film:\\n  a:\\n    ? turn\\n    : 45 deg\\n
          """)
  void onlyTheValueChanges(String before, String after) {
    YamlText text = new YamlText(lines(before));
    assertThat(text.with(TURN, "45 deg").text()).isEqualTo(lines(after));
    assertThat(text.with(TURN, "45 deg").get(TURN)).contains("45 deg");
  }

  private static String lines(String text) {
    return text.replace("\\r", "\r").replace("\\n", "\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0 -60 0 mm", "-z", "+y", "100 %", "false", "0.2 0 -1", "45 deg"})
  void valuesOfJobsComeBackAsGiven(String value) {
    YamlText text = new YamlText("film:\n  a:\n    turn: 5 deg # c\n");
    assertThat(text.with(TURN, value).get(TURN)).contains(value);
    assertThat(text.with(TURN, value).text()).endsWith(" # c\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "a: b", "1 # 2", "[1, 2]", "a\nb", "'x'", "- 1", "&x", "{}", "*x", " 1"})
  void valuesThatWouldBeSomethingElseAreRefused(String value) {
    YamlText text = new YamlText("film:\n  a:\n    turn: 5 deg\n");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> text.with(TURN, value))
        .withMessageContaining("'" + value + "'");
  }

  @Test
  void sharedAndCompoundValuesAreRefused() {
    for (String text :
        new String[] {
          "film:\n  a:\n    turn: [5 deg]\n",
          "x: &t 5 deg\nfilm:\n  a:\n    turn: *t\n",
          "film:\n  a:\n    turn: &t 5 deg\n",
        }) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new YamlText(text).with(TURN, "45 deg"))
          .withMessageContaining("turn");
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new YamlText("film: {b: {}}").with(TURN, "45 deg"))
        .withMessageContaining("no 'a'");
  }
}
