package cistern.report.json;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReport;
import cistern.bands.BandReport.Origin;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.finding.FindingCode;
import cistern.finding.Uncertainty;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/** The fields of an interpretation in JSON; source: the format that the project promises. */
class InterpretationJsonTest {

  private static final JsonFactory FACTORY = new JsonFactory();

  private static final List<Measurement> PAIR =
      List.of(
          result(Sample.csf(Analyte.ALBUMIN), Interval.of(220)),
          result(Sample.serum(Analyte.ALBUMIN), Interval.of(42_000)),
          result(Sample.csf(Analyte.IGG), Interval.of(62)),
          result(Sample.serum(Analyte.IGG), Interval.of(11_000)),
          result(Sample.csf(Analyte.KAPPA), Interval.below(0.3)),
          result(Sample.serum(Analyte.KAPPA), Interval.of(12)));

  @Test
  void write_aFinding_holdsEveryPromisedField() {
    String json = write(interpretation(PAIR, new BandReport.NotReported()));

    assertThat(json)
        .startsWith("{\"interpretation\":2,\"workup\":\"w-1\",\"software\":\"Cistern test\"")
        .contains("\"pairing\":{\"verdict\":\"unknown\",\"hoursApart\":null")
        .contains("\"code\":\"albumin-quotient\",\"value\":0.005238095238095238,\"unit\":\"1\"")
        .contains("\"limit\":{\"lower\":null,\"upper\":0.006333333333333")
        .contains("\"limitRule\":\"four-plus-age-over-fifteen\",\"verdict\":\"within\"")
        .contains("\"inputs\":[\"albumin.csf\",\"albumin.serum\"]")
        .contains("\"status\":\"read\",\"sources\":[\"Tumani 2020");
  }

  @Test
  void write_aCensoredFinding_hasBoundsAndNoValue() {
    String json = write(interpretation(PAIR, new BandReport.NotReported()));

    assertThat(json)
        .contains("\"code\":\"kappa-quotient\",\"bounds\":[0.0,0.0249999")
        .doesNotContain("\"code\":\"kappa-quotient\",\"value\"");
  }

  @Test
  void write_anUnboundedFinding_hasNullForItsUpperEnd() {
    List<Measurement> lowSerum =
        List.of(
            result(Sample.csf(Analyte.ALBUMIN), Interval.of(220)),
            result(Sample.serum(Analyte.ALBUMIN), Interval.below(42_000)));

    assertThat(write(interpretation(lowSerum, new BandReport.NotReported())))
        .contains("\"code\":\"albumin-quotient\",\"bounds\":[0.0052380952380952")
        .contains(",null],\"unit\":\"1\"");
  }

  @Test
  void write_everyCode_inTheOrderOfTheTable() {
    String json = write(interpretation(List.of(), new BandReport.NotReported()));
    int before = 0;
    for (FindingCode code : FindingCode.values()) {
      int at = json.indexOf("\"code\":\"" + code.code() + "\"");
      assertThat(at).as(code.code()).isGreaterThan(before);
      before = at;
    }
    assertThat(json).contains("\"confirmed\":null").doesNotContain("\"value\":");
  }

  @Test
  void write_uncertainty_whereItIsKnown() {
    Interpretation plain = interpretation(PAIR, new BandReport.NotReported());
    StringBuilder json = new StringBuilder();
    json.append(
        generated(
            generator ->
                JsonObject.write(
                    generator,
                    object ->
                        FindingJson.write(
                            object,
                            plain
                                .findings()
                                .get(FindingCode.ALBUMIN_QUOTIENT)
                                .withUncertainty(
                                    new Uncertainty(
                                        Optional.of(Interval.between(0.0046, 0.006)),
                                        OptionalDouble.of(0.0056)))))));

    assertThat(json)
        .contains("\"interval95\":[0.0046,0.006],\"probabilityAbove\":0.0056,\"limit\"");
  }

  @Test
  void write_bandsOfAGel_keepTheReadingBesideThePersonsEdit() {
    BandReport.ReadFromGel gel =
        new BandReport.ReadFromGel(
            "gel.png",
            BandCounts.of(4, 0, 1),
            Optional.of(BandPattern.LOCAL),
            OptionalDouble.of(0.97),
            List.of(0.01, 0.02, 0.97),
            Optional.empty());
    BandReport edited =
        new BandReport.Counted(
            BandCounts.of(3, 0, 1), Optional.empty(), Origin.UNKNOWN, Optional.of(gel));

    assertThat(write(interpretation(PAIR, gel)))
        .contains("\"csfOnly\":4,\"shared\":0,\"serumOnly\":1,\"pattern\":2")
        .contains("\"confirmed\":false")
        .contains("\"probabilityPositive\":0.97");
    assertThat(write(interpretation(PAIR, edited)))
        .contains("\"bands\":{\"csfOnly\":3")
        .contains("\"gelReading\":{\"file\":\"gel.png\",\"csfOnly\":4");
  }

  @Test
  void write_conflictsAndProblems_withTheirPlaces() {
    List<Measurement> leaky =
        List.of(
            result(Sample.csf(Analyte.ALBUMIN), Interval.of(900)),
            result(Sample.serum(Analyte.ALBUMIN), Interval.of(34_900)),
            result(Sample.csf(Analyte.IGG), Interval.of(150)),
            result(Sample.serum(Analyte.IGG), Interval.of(12_000)));

    assertThat(write(interpretation(leaky, new BandReport.NotReported())))
        .contains("\"conflicts\":[{\"code\":\"rate-against-fraction\",\"findings\":[")
        .contains(
            "\"problems\":[{\"code\":\"serum-albumin-low\",\"place\":\"results.albumin.serum\"")
        .contains("\"cautions\":[{\"code\":\"research-and-education\"")
        .contains("\"statements\":[{\"rank\":1,\"code\":");
  }

  @Test
  void write_facts_showsBothValuesOfAChangedOne() {
    Facts facts =
        Facts.standard()
            .with(
                new Policy(
                    "ours",
                    Map.of(
                        "igg-index.upper", new Policy.Change(new FactValue.Figure(0.66), "memo"))));

    assertThat(generated(json -> FactsJson.write(json, facts)))
        .startsWith("[{\"key\":")
        .contains("\"key\":\"igg-index.upper\",\"value\":0.66,\"unit\":\"1\",\"status\":\"local\"")
        .contains("\"changed\":true,\"standard\":0.7")
        .contains("\"value\":\"four-plus-age-over-fifteen\"");
  }

  private static Interpretation interpretation(List<Measurement> results, BandReport bands) {
    return Interpreter.of(Facts.standard())
        .interpret(new Workup("w-1", Panel.of(Person.aged(35), results), bands, List.of()));
  }

  private static Measurement result(Sample sample, Interval value) {
    return Measurement.of(sample, value);
  }

  private static String write(Interpretation interpretation) {
    return generated(json -> InterpretationJson.of("Cistern test").write(json, interpretation));
  }

  /** The JSON, after a parser has read all of it. */
  private static String generated(Consumer<JsonGenerator> content) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = FACTORY.createGenerator(ObjectWriteContext.empty(), text)) {
      content.accept(json);
    }
    try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), text.toString())) {
      while (parser.nextToken() != null) {
        assertThat(parser.currentToken()).isNotNull();
      }
    }
    return text.toString();
  }
}
