package org.amperskin.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SvgAbuseTest {
  private static final ArtworkFile.Options OPTIONS = ArtworkFile.Options.standard();
  private static final Path NAME = Path.of("bad.svg");
  private static final String RICH =
      "<?xml version='1.0' encoding='UTF-8'?>\n"
          + Drawings.sheet(
              """
              <!-- all kinds -->
              <style>.a{fill:#123;stroke:rgb(9,9,9)}</style>
              <defs><clipPath id='c'><rect width='50' height='50'/></clipPath>
              <symbol id='s' viewBox='0 0 9 9'><circle r='4'/></symbol></defs>
              <g transform='rotate(30 5 5) scale(.9)' opacity='.8' clip-path='url(#c)'>
              <path class='a' d='M10-0.5.5.5C1 2 3 4 5 6S7 8 9 10q1 1 2 9t4-4A3 4 5 0 1 20 30zh5v5'/>
              <use href='#s' width='30' height='30'/><text>&lt;x&gt;&#65;</text></g>
              <line x2='9mm' y2='5%' stroke='black' stroke-dasharray='1 2' stroke-linecap='round'/>""");

  @Test
  void cutAtEveryByteOnlyEverGivesTheOneException() {
    byte[] sound = RICH.getBytes(StandardCharsets.UTF_8);
    for (int cut = 0; cut < sound.length - 6; cut++) {
      byte[] part = Arrays.copyOf(sound, cut);
      assertThatThrownBy(() -> ArtworkFile.read(part, NAME, OPTIONS))
          .as("cut at %d", cut)
          .isInstanceOf(ArtworkFileException.class)
          .hasMessageMatching("(?s)bad.svg, (line|byte) \\d+: .*");
    }
  }

  @Test
  void changedBytesOnlyEverGiveTheOneException() {
    byte[] sound = RICH.getBytes(StandardCharsets.UTF_8);
    int read = 0;
    int refused = 0;
    for (long seed = 1; seed <= 3000; seed++) {
      Random random = new Random(seed * 0x9E3779B97F4A7C15L);
      byte[] broken = sound.clone();
      int changes = 1 + random.nextInt(4);
      for (int i = 0; i < changes; i++) {
        boolean like = random.nextInt(4) > 0;
        broken[random.nextInt(broken.length)] =
            like ? sound[random.nextInt(sound.length)] : (byte) random.nextInt(140);
      }
      try {
        Artwork art = ArtworkFile.read(broken, NAME, OPTIONS);
        read++;
        assertThat(Drawings.geometry(art).isValid()).as("seed %d", seed).isTrue();
      } catch (ArtworkFileException e) {
        refused++;
      } catch (RuntimeException e) {
        throw new AssertionError("seed " + seed + ": " + e, e);
      }
    }
    assertThat(read).isGreaterThan(200);
    assertThat(refused).isGreaterThan(500);
  }

  @Test
  void entitiesAreRefusedBeforeTheyCanGrow() {
    StringBuilder laughs = new StringBuilder("<?xml version='1.0'?>\n<!DOCTYPE svg [\n");
    laughs.append("<!ENTITY a0 'ha'>\n");
    for (int i = 1; i < 30; i++) {
      laughs.append("<!ENTITY a%d '&a%d;&a%d;'>\n".formatted(i, i - 1, i - 1));
    }
    String svg = laughs + "]>\n" + Drawings.sheet("<text>&a29;</text>");
    refused(
        svg, "line 4: expected a plain word as entity a1, found markup or other entities in it");
    refused(Drawings.sheet("<text>&nope;</text>"), "line 2: ");
    refused(Drawings.sheet("<rect width='&nope;'/>"), "line 2: ");
    byte[] wide = svg.getBytes(StandardCharsets.UTF_16LE);
    assertThatThrownBy(() -> ArtworkFile.read(wide, NAME, OPTIONS))
        .isInstanceOf(ArtworkFileException.class);
  }

  @Test
  void anOutsideDefinitionIsNeverOpened(@TempDir Path folder) throws Exception {
    Path secret = folder.resolve("outside.dtd");
    Files.writeString(secret, "<!ENTITY word 'found'> <!ATTLIST rect width CDATA '50'>");
    String plain = "<!DOCTYPE svg PUBLIC '-//W3C//DTD SVG 1.1//EN' '" + secret.toUri() + "'>\n";
    Artwork art = Drawings.read(plain + Drawings.sheet("<rect height='10'/>"));
    assertThat(art.opaqueAreaMm2()).isZero(); // the outside default of 50 did not come in
    refused(plain + Drawings.sheet("<text>&word;</text>"), "line 3: ");
    refused(
        "<!DOCTYPE svg [<!ENTITY x SYSTEM '" + secret.toUri() + "'>]>" + Drawings.sheet("&x;"),
        "line 1: entity x points outside the file or is a parameter entity");
  }

  @Test
  void plainWordsOfTheDocumentTypeAreReplacedWithinLimits() {
    String body = Drawings.sheet("<rect width='10' height='&h;'/><!-- &h; &none; -->");
    String head =
        "<!DOCTYPE svg [ <!-- words -->\n<!ENTITY h '20'> <!ATTLIST rect x CDATA #IMPLIED>";
    assertThat(Drawings.read(head + "]>" + body).opaqueAreaMm2())
        .isCloseTo(200, org.assertj.core.api.Assertions.within(1e-6));
    refused(head + "<!ENTITY % p 'x'>]>" + body, "line 2: entity p points outside");
    refused(head + "<!ENTITY q '&#60;rect/>'>]>" + body, "plain word as entity q");
    refused(head + "%h;]>" + body, "line 2: expected a declaration or ]>");
    refused(head, "line 2: expected a declaration or ]>");
    String many = "<!ENTITY w '" + "x".repeat(1000) + "'>]>";
    refused(
        head + many + Drawings.sheet("<g>" + "&w;".repeat(1100) + "</g>"),
        "entities to add at most 1000000 characters");
    refused(head + "<!ENTITY w '" + "x".repeat(1001) + "'>]>" + body, "of 1000 characters");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<rect width='-1' height='5'/> | width of 0 or more",
        "<circle r='-1'/> | r of 0 or more",
        "<circle r='NaN'/> | expected a number, found \"NaN\"",
        "<circle r='Infinity'/> | expected a number",
        "<circle r='1e400'/> | a number below 1e12",
        "<circle r='3vw'/> | a length in mm, cm, Q",
        "<path d='M1 1 L2'/> | expected a number",
        "<path d='L2 2'/> | expected M first",
        "<path d='M1 1 X'/> | a path command",
        "<path d='M1 1A2 2 0 2 0 5 5'/> | an arc flag 0 or 1",
        "<polygon points='1 2 3'/> | an even number of values",
        "<g transform='scale(1,2,3)'><rect/></g> | scale(1-2)",
        "<g transform='turn(1)'/> | rotate(1 or 3)",
        "<line x2='5' stroke='black' stroke-width='-2'/> | stroke-width of 0 or more",
        "<line x2='5' stroke='black' stroke-dasharray='1 -2'/> | dashes of 0 or more",
        "<line x2='5' stroke='black' stroke-miterlimit='.5'/> | stroke-miterlimit of 1 or more",
        "<g id='a'><use href='#a'/></g> | does not lead back to itself",
        "<svg viewBox='0 0 0 5' width='5' height='5'/> | a viewBox of four numbers",
        "<path d='M0 0C0 9e11 9e11 9e11 9e11 0C9e11 9e11 0 9e11 0 0C0 9e11 9e11 9e11 9e11 0C9e11"
            + " 9e11 0 9e11 0 0C0 9e11 9e11 9e11 9e11 0'/> | at most 4000000 points",
        "<line x2='90' stroke='black' stroke-dasharray='1e-7'/> | at most 4000000 points",
      })
  void refusalsSayLineAndWhat(String body, String message) {
    refused(Drawings.sheet(body), "bad.svg, line 2: expected ");
    refused(Drawings.sheet(body), message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "width='0' height='5' | width above 0 and up to 10000.0 mm",
        "width='-5mm' height='5' | width above 0",
        "width='20m' height='5' | a length in mm",
        "width='11000mm' height='5' | found \"11000.0 mm\"",
        "height='5mm' | width with a unit, or a viewBox",
        "viewBox='0 0 nan 1' | expected a number",
        "width='5' height='5' viewBox='0 0 1 1' preserveAspectRatio='middle' | preserveAspectRatio",
      })
  void sheetsWithoutASoundSizeAreRefused(String attributes, String message) {
    refused("<svg xmlns='http://www.w3.org/2000/svg' " + attributes + "/>", message);
  }

  @Test
  void tooDeepAndTooManyAreRefusedWithNumbers() {
    refused(
        Drawings.sheet("<g>".repeat(300) + "</g>".repeat(300)),
        "at most 256 nested elements, found 257");
    StringBuilder uses = new StringBuilder("<g id='u0'><rect width='1' height='1'/></g>");
    for (int i = 1; i < 30; i++) {
      uses.append(
          "<g id='u%d'><use href='#u%d'/><use href='#u%d'/></g>".formatted(i, i - 1, i - 1));
    }
    refused(Drawings.sheet("<defs>" + uses + "</defs><use href='#u29'/>"), "250000 elements drawn");
  }

  @Test
  void textEncodingsAreReadAndBadBytesAreTold() throws Exception {
    String svg = Drawings.sheet("<rect width='10' height='10' id='\u00e9'/>");
    byte[] latin =
        ("<?xml version='1.0' encoding='ISO-8859-1'?>" + svg).getBytes(StandardCharsets.ISO_8859_1);
    byte[] wide = ("\ufeff" + svg).getBytes(StandardCharsets.UTF_16LE);
    assertThat(ArtworkFile.read(latin, NAME, OPTIONS).opaqueFraction()).isBetween(0.0099, 0.0101);
    assertThat(ArtworkFile.read(wide, NAME, OPTIONS).opaqueFraction()).isBetween(0.0099, 0.0101);
    byte[] undeclared = svg.getBytes(StandardCharsets.ISO_8859_1);
    assertThatThrownBy(() -> ArtworkFile.read(undeclared, NAME, OPTIONS))
        .isInstanceOf(ArtworkFileException.class)
        .hasMessage(
            "bad.svg, byte " + svg.indexOf('\u00e9') + ": expected UTF-8 text, found byte e9");
    refused("<?xml version='1.0' encoding='nowhere-8'?>" + svg, "found \"nowhere-8\"");
  }

  @Test
  void otherFilesAreToldApartByContent(@TempDir Path folder) throws IOException {
    assertThatThrownBy(() -> ArtworkFile.read(new byte[0], NAME, OPTIONS))
        .hasMessage("bad.svg, byte 0: expected SVG (starts with <), PNG or JPEG, found nothing");
    refused("solid cube", "found bytes 736f6c6964206375");
    refused("<html/>", "<svg> as outermost element, found \"<html>\"");
    assertThatThrownBy(() -> ArtworkFile.read(folder.resolve("none.svg")))
        .isInstanceOf(NoSuchFileException.class);
    Path misnamed = folder.resolve("drawing.png");
    Files.writeString(misnamed, "\ufeff" + Drawings.sheet("<rect width='10' height='10'/>"));
    assertThat(read(misnamed).opaqueFraction()).isBetween(0.00999, 0.01001);
    ByteArrayOutputStream zipped = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(zipped)) {
      out.write(Files.readAllBytes(misnamed));
    }
    Files.write(misnamed, zipped.toByteArray());
    assertThat(read(misnamed).opaqueFraction()).isBetween(0.00999, 0.01001);
    ByteArrayOutputStream bomb = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(bomb)) {
      for (int i = 0; i < 80; i++) {
        out.write(new byte[1 << 20]);
      }
    }
    assertThatThrownBy(() -> ArtworkFile.read(bomb.toByteArray(), NAME, OPTIONS))
        .isInstanceOf(ArtworkFileException.class)
        .hasMessageContaining("unzips to more than the 67108864 bytes");
  }

  private static Artwork read(Path file) throws IOException {
    try {
      return ArtworkFile.read(file);
    } catch (ArtworkFileException e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  private static void refused(String svg, String message) {
    assertThatThrownBy(() -> ArtworkFile.read(svg.getBytes(StandardCharsets.UTF_8), NAME, OPTIONS))
        .isInstanceOf(ArtworkFileException.class)
        .hasMessageContaining(message);
  }
}
