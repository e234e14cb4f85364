package org.amperskin.pattern;

import static java.lang.Math.PI;
import static java.lang.Math.sqrt;
import static org.amperskin.pattern.Drawings.sheet;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Areas worked out by hand. Rules: W3C SVG 1.1 (Second Edition) and W3C SVG 2 (Candidate
 * Recommendation 2018); the section stands beside each group.
 */
class SvgAreaTest {
  private static final String FILLED = "fill='none' stroke='black' ";

  /** One drawing: area in mm2, allowed relative error (0 stands for 1e-9). */
  private record Case(String name, String svg, double areaMm2, double relative) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static Case exact(String name, String body, double areaMm2) {
    return new Case(name, sheet(body), areaMm2, 1e-8);
  }

  /** Curves keep their area to fourth order in the step: two parts in ten thousand are allowed. */
  private static Case curved(String name, String body, double areaMm2) {
    return new Case(name, sheet(body), areaMm2, 2e-4);
  }

  static Stream<Case> cases() {
    return Stream.of(shapes(), paths(), rules(), strokes(), transforms(), structure())
        .flatMap(s -> s);
  }

  /** SVG 2 chapter 10. */
  private static Stream<Case> shapes() {
    return Stream.of(
        exact("rect", "<rect x='10' y='20' width='30' height='40'/>", 1200),
        exact(
            "rounded rect: corners lose (4 - pi) rx ry",
            "<rect width='30' height='40' rx='5' ry='8'/>",
            1200 - (4 - PI) * 40),
        exact(
            "rx alone serves both, capped at half the side",
            "<rect width='10' height='40' rx='9'/>",
            400 - (4 - PI) * 5 * 9),
        exact("circle keeps its area", "<circle cx='50' cy='50' r='20'/>", PI * 400),
        exact("small circle keeps its area too", "<circle cx='50' cy='50' r='.05'/>", PI * .0025),
        exact("ellipse", "<ellipse cx='50' cy='50' rx='30' ry='7'/>", PI * 210),
        exact("ellipse with one radius", "<ellipse cx='50' cy='50' rx='9'/>", PI * 81),
        exact("polygon", "<polygon points='10,10 50,10 10 40'/>", 600),
        exact("polyline is filled as if closed", "<polyline points='10,10,50,10,10,40'/>", 600),
        exact("a line has no fill", "<line x1='1' y1='1' x2='90' y2='50'/>", 0),
        exact("percent of the viewBox", "<rect width='50%' height='10%'/>", 500),
        exact("units inside", "<rect width='96' height='1in'/>", 96 * 96),
        exact("zero width is not drawn", "<rect width='0' height='10'/>", 0));
  }

  /** SVG 2 chapter 9. */
  private static Stream<Case> paths() {
    return Stream.of(
        exact("absolute", "<path d='M10 10 L50 10 L50 30 L10 30 Z'/>", 800),
        exact("relative and lone axes", "<path d='m10 10h40v20h-40z'/>", 800),
        exact(
            "compact numbers; a quarter of the 5 lies above the sheet",
            "<path d='M10-0.5.5.5 10.5.5z'/>",
            3.75),
        exact("exponents", "<path d='M1e1 1E1L5e+1 10 500e-1 3e1z'/>", 400),
        exact("implicit lines after m", "<path d='m10 10 40 0 0 20 -40 0z'/>", 800),
        exact("z returns to the start", "<path d='M10 10h10v10z m20 0h10v10z'/>", 100),
        exact("half disc by one arc", "<path d='M30 50A20 20 0 0 1 70 50Z'/>", PI * 200),
        exact("flags without gaps", "<path d='M30 50A20 20 0 0170 50Z'/>", PI * 200),
        exact(
            "quarter, large arc", "<path d='M70 50A20 20 0 1 1 50 30L50 50Z'/>", PI * 400 * 3 / 4),
        exact(
            "two small segments of a turned ellipse, half chord 20 sqrt 2 of 30",
            "<path d='M30 30A30 10 45 0 1 70 70 30 10 45 0 1 30 30'/>",
            300 * (2 * Math.asin(sqrt(8) / 3) - 2 * sqrt(8) / 9)),
        exact("radii too small grow", "<path d='M30 50A1 1 0 0 1 70 50Z'/>", PI * 200),
        exact("zero radius is a line", "<path d='M10 10A0 5 0 0 1 50 10L50 30z'/>", 400),
        curved(
            "parabola: two thirds of the box", "<path d='M10 50Q30 10 50 50'/>", 40 * 20 * 2 / 3.),
        curved(
            "T reflects: two parabolas",
            "<path d='M10 50Q30 10 50 50T90 50'/>",
            2 * 40 * 20 * 2 / 3.),
        // shoelace of a cubic: 3/20 of the chord-to-handle sums; for M0,0 C0,h w,h w,0 it is 3/5 w
        // h
        curved("cubic arch: 3/5 w h", "<path d='M10 50C10 20 60 20 60 50'/>", .6 * 50 * 30),
        curved(
            "S reflects: two arches",
            "<path d='M10 50C10 20 40 20 40 50S70 80 70 50'/>",
            2 * .6 * 30 * 30),
        // Green's integral over four cubics with handle k r and r = 1: 2 + 12/5 k - 3/5 k^2
        curved(
            "circle of four cubics",
            "<path d='M70 50C70 61.045694996 61.045694996 70 50 70S30 61.045694996 30 50 38.954305004"
                + " 30 50 30 70 38.954305004 70 50z'/>",
            400 * (2 + 2.4 * .5522847498 - .6 * .5522847498 * .5522847498)));
  }

  /** Fill rules (SVG 2 13.4.2), paint order, opacity, colours. */
  private static Stream<Case> rules() {
    // five-pointed star in a circle R=40: core pentagon counts once or not at all
    double full = starArea(true);
    double rays = starArea(false);
    String star =
        "points='50,10 73.511410092,82.360679775 11.957739348,37.639320225"
            + " 88.042260652,37.639320225 26.488589908,82.360679775'";
    return Stream.of(
        new Case("star nonzero", sheet("<polygon " + star + "/>"), full, 1e-8),
        new Case("star evenodd", sheet("<polygon fill-rule='evenodd' " + star + "/>"), rays, 1e-8),
        exact(
            "inner square the same way round: nonzero fills, evenodd does not",
            "<path d='M0 0h30v30h-30z M10 10h10v10h-10z'/>"
                + "<path fill-rule='evenodd' d='M50 0h30v30h-30z M60 10h10v10h-10z'/>",
            900 + 800),
        exact(
            "inner square the other way round is a hole",
            "<path d='M0 0h30v30h-30z M10 10v10h10v-10z'/>",
            800),
        exact(
            "overlapping black counts once",
            "<rect width='20' height='20'/><rect x='10' width='20' height='20'/>",
            600),
        exact(
            "white over black clears, black over white covers again",
            "<rect width='40' height='40'/><rect x='10' y='10' width='20' height='20' fill='#fff'/>"
                + "<rect x='15' y='15' width='5' height='5' fill='navy'/>",
            1600 - 400 + 25),
        exact("white alone is nothing", "<rect width='40' height='40' fill='white'/>", 0),
        exact(
            "half-tone: #7f7f7f is dark, #808080 is not",
            "<rect width='10' height='10' fill='#7f7f7f'/>"
                + "<rect x='20' width='10' height='10' fill='#808080'/>",
            100),
        exact(
            "two layers of 40 % black are dark, one is not",
            "<rect width='20' height='10' fill-opacity='.4'/>"
                + "<rect x='10' width='20' height='10' opacity='40%'/>",
            100),
        exact(
            "a group of 60 % blends as one: white inside still hides black",
            "<rect x='50' width='10' height='10'/>"
                + "<g opacity='.4'><rect width='10' height='10'/><rect width='10' height='10'/></g>"
                + "<g opacity='.6'><rect x='50' y='20' width='20' height='10'/>"
                + "<rect x='60' y='20' width='10' height='10' fill='white'/></g>",
            200),
        exact(
            "colour notations: only the dark ones count",
            "<rect width='10' height='10' fill='rgb(0,0,128)'/>"
                + "<rect x='20' width='10' height='10' fill='rgb(100%, 100%, 0%)'/>"
                + "<rect x='40' width='10' height='10' fill='hsl(240, 100%, 25%)'/>"
                + "<rect x='60' width='10' height='10' fill='#0f0'/>"
                + "<g color='black'><rect x='80' width='10' height='10' fill='currentColor'/></g>",
            300));
  }

  /** SVG 2 section 13.5. */
  private static Stream<Case> strokes() {
    return Stream.of(
        exact("butt", "<path " + FILLED + "stroke-width='4' d='M10 10H50'/>", 160),
        exact(
            "square cap",
            "<path " + FILLED + "stroke-width='4' stroke-linecap='square' d='M10 10H50'/>",
            176),
        exact(
            "round cap",
            "<path " + FILLED + "stroke-width='4' stroke-linecap='round' d='M10 10H50'/>",
            160 + PI * 4),
        exact(
            "right angle: rectangles share h^2 = 4, the miter adds 4",
            "<path " + FILLED + "stroke-width='4' d='M10 10H50V40'/>",
            4 * 70 - 4 + 4),
        exact(
            "bevel adds half of it",
            "<path " + FILLED + "stroke-width='4' stroke-linejoin='bevel' d='M10 10H50V40'/>",
            4 * 70 - 4 + 2),
        exact(
            "round join adds a quarter disc",
            "<path " + FILLED + "stroke-width='4' stroke-linejoin='round' d='M10 10H50V40'/>",
            4 * 70 - 4 + PI),
        // legs 45 degrees apart: 1/sin(22.5) = 2.613; h = 2, turn 135: the miter's kite is
        // h^2 tan(turn/2), and the two rectangles share as much on the inner side
        exact(
            "miter limit not reached: outer kite makes up for inner overlap",
            "<path " + FILLED + "stroke-width='4' d='M10 10H60L20 50'/>",
            4 * (50 + 40 * sqrt(2))),
        exact(
            "miter limit exceeded: bevel instead",
            "<path " + FILLED + "stroke-width='4' stroke-miterlimit='2' d='M10 10H60L20 50'/>",
            4 * (50 + 40 * sqrt(2))
                - 4 * Math.tan(Math.toRadians(67.5))
                + 2 * Math.sin(Math.toRadians(135))),
        exact(
            "closed rect stroke has four miters",
            "<rect x='10' y='10' width='20' height='10' " + FILLED + "stroke-width='2'/>",
            22 * 12 - 18 * 8),
        exact(
            "fill and stroke together",
            "<rect x='10' y='10' width='20' height='10' stroke='black' stroke-width='2'/>",
            22 * 12),
        curved(
            "circle stroke 2 pi r w",
            "<circle cx='50' cy='50' r='20' " + FILLED + "stroke-width='3'/>",
            2 * PI * 20 * 3),
        curved(
            "small circle stroke",
            "<circle cx='50' cy='50' r='.5' " + FILLED + "stroke-width='.3'/>",
            2 * PI * .5 * .3),
        curved(
            "stroke wider than the circle is a disc",
            "<circle cx='50' cy='50' r='2' " + FILLED + "stroke-width='8'/>",
            PI * 36),
        curved(
            "arc stroke, butt ends",
            "<path d='M30 50A20 20 0 0 1 70 50' " + FILLED + "stroke-width='3'/>",
            PI * 20 * 3),
        exact(
            "dashes 5 on 3 off over 40: five dashes",
            "<path " + FILLED + "stroke-width='2' stroke-dasharray='5 3' d='M10 10H50'/>",
            5 * 5 * 2),
        exact(
            "dash offset -1 begins in a gap",
            "<path "
                + FILLED
                + "stroke-width='2' stroke-dasharray='5,3' stroke-dashoffset='-1' d='M10 10H50'/>",
            (4 * 5 + 5 + 2 - 2) * 2),
        exact(
            "odd list is doubled: 4 2 1 4 2 1",
            "<path " + FILLED + "stroke-width='2' stroke-dasharray='4 2 1' d='M10 10H24'/>",
            2 * (4 + 1 + 2)),
        exact(
            "dots: dashes of no length with round caps",
            "<path "
                + FILLED
                + "stroke-width='2' stroke-linecap='round' stroke-dasharray='0 5' d='M10 10H27'/>",
            4 * PI),
        exact(
            "dash round a corner is mitered, then 1 mm of the next",
            "<path " + FILLED + "stroke-width='2' stroke-dasharray='30 9' d='M10 10H30V30'/>",
            2 * 30 - 1 + 1 + 2),
        exact(
            "closed dash joins at the start point",
            "<path "
                + FILLED
                + "stroke-width='2' stroke-dasharray='10' stroke-dashoffset='5' d='M10 10h20v20h-20z'/>",
            4 * (2 * 10 - 1 + 1)),
        exact(
            "pathLength scales dashes",
            "<path "
                + FILLED
                + "pathLength='4' stroke-width='2' stroke-dasharray='1' d='M10 10H50'/>",
            2 * 20),
        exact(
            "lone point with square cap",
            "<path " + FILLED + "stroke-width='4' stroke-linecap='square' d='M10 10h0'/>",
            16),
        exact(
            "non-scaling stroke counts in px",
            "<path "
                + FILLED
                + "stroke-width='96' vector-effect='non-scaling-stroke' transform='scale(2,1)'"
                + " d='M10 50H40'/>",
            60 * 25.4));
  }

  /** SVG 1.1 section 7.6. */
  private static Stream<Case> transforms() {
    return Stream.of(
        exact("scale", "<rect width='5' height='5' transform='scale(3,2)'/>", 150),
        exact(
            "rotation about a point keeps area",
            "<rect x='40' y='40' width='20' height='10' transform='rotate(33,50,45)'/>",
            200),
        exact("matrix", "<rect width='5' height='5' transform='matrix(2 1 1 3 9 9)'/>", 125),
        exact("skewX keeps area", "<rect y='5' width='5' height='5' transform='skewX(30)'/>", 25),
        exact(
            "nested: last written is applied first",
            "<g transform='translate(50) scale(2)'><g transform='rotate(90)'>"
                + "<rect width='10' height='30' transform='translate(5,5) scale(.5)'/></g></g>",
            10 * 30 * .25 * 4),
        exact("mirror", "<circle r='10' transform='translate(50 50) scale(-1,1)'/>", PI * 100),
        exact(
            "stretched circle is an ellipse",
            "<circle r='10' transform='translate(50 50) scale(3,.5)'/>",
            PI * 150),
        exact(
            "stroke is stretched with its shape",
            "<path " + FILLED + "transform='scale(1,3)' stroke-width='2' d='M10 10H50'/>",
            40 * 6),
        curved(
            "stroke under skew keeps the pen's area factor",
            "<circle cx='30' cy='50' r='20' transform='skewX(20)' " + FILLED + "stroke-width='3'/>",
            2 * PI * 20 * 3),
        exact("scale 0 draws nothing", "<rect width='9' height='9' transform='scale(0)'/>", 0),
        exact("off the sheet is cut", "<rect x='-10' y='90' width='30' height='30'/>", 200),
        exact(
            "far off the sheet is cut, too",
            "<rect x='-1e9' y='-1e9' width='2e9' height='2e9'/>",
            10_000));
  }

  /** Document structure, styles, clips: SVG 2 chapters 5, 6, 8; CSS Masking 1 section 5. */
  private static Stream<Case> structure() {
    return Stream.of(
        exact(
            "use moves and inherits",
            "<defs><rect id='a' width='10' height='10'/></defs>"
                + "<use href='#a' x='5' y='5'/><use xlink:href='#a' x='50' fill='white'/>"
                + "<use href='#a' x='50' y='50' transform='scale(1.5)'/>",
            100 + 225),
        exact(
            "symbol with viewBox, clipped to its box",
            "<symbol id='s' viewBox='0 0 10 10'><rect x='5' width='10' height='10'/></symbol>"
                + "<use href='#s' x='10' y='10' width='40' height='40'/>",
            800),
        exact(
            "nested svg: meet, middle",
            "<svg x='10' y='10' width='40' height='20' viewBox='0 0 10 10'>"
                + "<rect width='10' height='10'/></svg>",
            400),
        exact(
            "nested svg: slice is cut at the viewport",
            "<svg x='10' y='10' width='40' height='20' viewBox='0 0 10 10'"
                + " preserveAspectRatio='xMinYMin slice'><rect width='10' height='10'/></svg>",
            800),
        exact(
            "nested svg, overflow visible",
            "<svg width='10' height='10' overflow='visible'><rect width='20' height='20'/></svg>",
            400),
        exact(
            "clip path",
            "<clipPath id='c'><circle cx='20' cy='20' r='10'/></clipPath>"
                + "<rect width='20' height='40' clip-path='url(#c)'/>",
            PI * 50),
        exact(
            "clip path of two shapes is their union; own clip of the clip",
            "<clipPath id='d'><rect width='15' height='100'/></clipPath>"
                + "<clipPath id='c' clip-path='url(#d)'><rect width='10' height='10'/>"
                + "<rect x='5' width='20' height='10'/></clipPath>"
                + "<g clip-path='url(#c)'><rect width='90' height='90'/></g>",
            150),
        exact(
            "style beats rule beats attribute; id beats class beats element",
            "<style>rect{fill:white} .k{fill:black} #n{fill:#fff}</style>"
                + "<rect width='10' height='10' fill='black'/>"
                + "<rect class='x k' x='20' width='10' height='10'/>"
                + "<rect class='k' id='n' x='40' width='10' height='10'/>"
                + "<rect class='k' x='60' width='10' height='10' style='fill: none'/>",
            100),
        exact(
            "display none hides all, visibility can come back",
            "<g display='none'><rect width='10' height='10'/></g><g visibility='hidden'>"
                + "<rect x='20' width='10' height='10'/>"
                + "<rect x='40' width='10' height='10' visibility='visible'/></g>",
            100),
        exact(
            "stroke painted before the fill is covered by it",
            "<rect x='10' y='10' width='20' height='20' fill='white' stroke='black'"
                + " stroke-width='4' paint-order='stroke'/>",
            24 * 24 - 400));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void areaIsAsWorkedOutByHand(Case each) {
    Artwork artwork = Drawings.read(each.svg);
    assertThat(artwork.opaqueAreaMm2())
        .as("%s: %s", each.name, artwork.notes())
        .isCloseTo(each.areaMm2, within(1e-9 + each.relative * each.areaMm2));
    assertThat(artwork.flatteningMm()).isLessThanOrEqualTo(0.01);
    assertThat(Drawings.geometry(artwork).isValid()).isTrue();
    assertThat(Drawings.geometry(artwork).getArea())
        .isCloseTo(artwork.opaqueAreaMm2(), within(1e-9 * (1 + each.areaMm2)));
  }

  @Test
  void allCasesRan() {
    assertThat(cases().count()).isEqualTo(86);
  }

  /** Pentagram in a circle of 40: by the closed form for the star's ten triangles. */
  private static double starArea(boolean withCore) {
    double outer = 40;
    double inner = outer * Math.sin(PI / 10) / Math.sin(3 * PI / 10);
    double whole = 10 * 0.5 * outer * inner * Math.sin(PI / 5);
    double core = 5 * 0.5 * inner * inner * Math.sin(2 * PI / 5);
    return withCore ? whole : whole - core;
  }
}
