package cistern.exchange.ucum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.checks.OutsideCheck;
import cistern.fact.Facts;
import cistern.measurement.Analyte;
import java.io.InputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class ConversionsTest {

  private static final Conversions CONVERSIONS = Conversions.of(Facts.standard());

  @Nested
  class Published {

    /** checks of the project, two converters agree: ucum-lhc 7.1.10 and pint 0.19.2. */
    @ParameterizedTest
    @CsvSource({
      "25, mg/dL, mg/L, 250",
      "25, mg/dL, g/L, 0.25",
      "40, g/L, mg/dL, 4000",
      "5, mg/L, ng/mL, 5000",
      "5, ug/mL, mg/L, 5",
      "5, /uL, 10*6/L, 5",
      "3.3, mg/d, mg/(24.h), 3.3",
      "1, mm[Hg], kPa, 0.133322",
      "0.0074, 1, %, 0.74",
      "24, mg/24.h, mg.h, 1"
    })
    void conversion_ofTwoConverters_isReproduced(
        BigDecimal value, String from, String to, double expected) {
      assertThat(convert(value, CONVERSIONS.conversion(from, to)))
          .isCloseTo(expected, within(expected * 1e-12));
    }

    @ParameterizedTest
    @CsvSource({
      "40, g/L, umol/L, 601.5037593985, ALBUMIN",
      "250, mg/L, umol/L, 3.7593984962, ALBUMIN",
      "10, g/L, umol/L, 66.6666666667, IGG",
      "60, mg/dL, mmol/L, 3.3304469460, GLUCOSE"
    })
    void conversion_throughMolarMass_isReproduced(
        BigDecimal mass, String massUnit, String substanceUnit, double expected, Analyte analyte) {
      double canonicalOfMass = convert(mass, CONVERSIONS.conversion(massUnit, analyte));
      double canonicalOfSubstance =
          convert(BigDecimal.valueOf(expected), CONVERSIONS.conversion(substanceUnit, analyte));

      assertThat(canonicalOfSubstance).isCloseTo(canonicalOfMass, within(canonicalOfMass * 1e-10));
      OutsideCheck.of(
              "Conversions within a dimension and between mass and substance",
              "ucum-lhc 7.1.10 and pint 0.19.2, which agree",
              "1e-12 and printed digits")
          .toTable("14 of 14 agree");
    }

    @Test
    void validity_ofTheFunctionalTests_isReproduced() throws Exception {
      List<String> differing = new ArrayList<>();
      int compared = 0;
      Ucum all = Ucum.read();
      for (Element each : cases("validation", "case")) {
        compared++;
        boolean isValid = all.parse(each.getAttribute("unit")).isPresent();
        if (isValid != each.getAttribute("valid").equals("true")) {
          differing.add(each.getAttribute("id") + " " + each.getAttribute("unit"));
        }
      }

      // One of the 526 is commented out in the file: the empty unit.
      assertThat(compared).isEqualTo(525);
      assertThat(differing).isEmpty();
      OutsideCheck.of(
              "Valid and invalid units of the UCUM functional tests",
              "UcumFunctionalTests.xml in org.fhir:ucum:1.0",
              "equal")
          .toTable("525 of 525 agree");
    }

    @Test
    void conversion_ofTheFunctionalTests_isReproduced() throws Exception {
      int compared = 0;
      for (Element each : cases("conversion", "case")) {
        compared++;
        BigDecimal outcome = new BigDecimal(each.getAttribute("outcome"));
        double converted =
            convert(
                new BigDecimal(each.getAttribute("value")),
                CONVERSIONS.conversion(each.getAttribute("srcUnit"), each.getAttribute("dstUnit")));
        // Half a unit of the last digit printed, and what a double cannot hold.
        double tolerance =
            outcome.ulp().doubleValue() / 2 + Math.abs(outcome.doubleValue()) * 1e-15;
        assertThat(converted)
            .as(each.getAttribute("id"))
            .isCloseTo(outcome.doubleValue(), within(tolerance));
      }

      // One of the 31 is commented out in the file.
      assertThat(compared).isEqualTo(30);
      OutsideCheck.of(
              "Conversions of the UCUM functional tests",
              "UcumFunctionalTests.xml in org.fhir:ucum:1.0",
              "printed digits")
          .toTable("30 of 30 agree");
    }

    private List<Element> cases(String group, String name) throws Exception {
      try (InputStream in =
          Objects.requireNonNull(
              ConversionsTest.class.getResourceAsStream("/UcumFunctionalTests.xml"))) {
        NodeList groups =
            DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(in)
                .getElementsByTagName(group);
        NodeList nodes = ((Element) groups.item(0)).getElementsByTagName(name);
        List<Element> cases = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
          cases.add((Element) nodes.item(i));
        }
        return cases;
      }
    }
  }

  @Nested
  class Traps {

    @ParameterizedTest
    @ValueSource(strings = {"mg/24h", "MG/DL", "mcg/mL", "µmol/L", "mmHg", "kDa", "mmol/12h", ""})
    void isUnit_ofWhatIsNone_isFalse(String text) {
      assertThat(CONVERSIONS.isUnit(text)).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
        strings = {
          "ug/ml",
          "mg/dl",
          "/uL",
          "/ul",
          "10*6/L",
          "{ratio}",
          "{index}",
          "{bands}",
          "%",
          "1",
          "10*-3",
          "[IU]/L",
          "[iU]/mL",
          "umol/2.h",
          "G/L",
          "mg/24.h"
        })
    void isUnit_ofWhatIsOne_isTrue(String text) {
      assertThat(CONVERSIONS.isUnit(text)).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"G/L, g/L", "g/L, [iU]/mL", "[iU]/mL, [arb'U]/mL", "/uL, umol/L", "mg/L, mmol/L"})
    void conversion_betweenDimensions_isRefused(String from, String to) {
      assertThat(CONVERSIONS.conversion(from, to)).isInstanceOf(Conversion.OtherDimension.class);
    }

    @Test
    void conversion_ofAMiswrittenUnit_suggestsWhatMayBeMeant() {
      assertThat(((Conversion.Unknown) CONVERSIONS.conversion("MG/DL", Analyte.IGG)).meant())
          .contains("mg/dL");
      assertThat(((Conversion.OtherDimension) CONVERSIONS.conversion("G/L", Analyte.IGG)).meant())
          .contains("g/L");
    }

    @Test
    void commonUnits_everyRow_isWhatTheWholeOfUcumSays() {
      Ucum all = Ucum.read();
      CommonUnits common = CommonUnits.read();

      assertThat(common.texts()).hasSizeGreaterThan(80);
      for (String text : common.texts()) {
        Unit whole = all.parse(text).orElseThrow(() -> new AssertionError(text));
        Unit quick = common.find(text).orElseThrow();
        assertThat(quick.dimension().toText()).as(text).isEqualTo(whole.dimension().toText());
        assertThat(quick.factor().isSame(whole.factor())).as(text).isTrue();
      }
    }
  }

  private static double convert(BigDecimal value, Conversion conversion) {
    return switch (conversion) {
      case Conversion.By by -> by.ratio().toDouble(value);
      case Conversion.Unknown unknown -> throw new AssertionError("unknown unit");
      case Conversion.OtherDimension other -> throw new AssertionError("another dimension");
    };
  }
}
