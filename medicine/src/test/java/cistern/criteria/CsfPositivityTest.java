package cistern.criteria;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.analysis.Puncture;
import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.fact.Policy;
import cistern.fact.Status;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CsfPositivityTest {

  private static final Facts FACTS = Facts.standard();
  private static final CheckedPanel TOGETHER = CheckedPanel.check(panel(1), FACTS);
  private static final CheckedPanel APART = CheckedPanel.check(panel(400), FACTS);

  private static Panel panel(int hours) {
    OffsetDateTime at = OffsetDateTime.parse("2031-03-02T10:15:00Z");
    return Panel.of(Person.aged(34), List.of())
        .withDraws(Draw.at(at), Draw.at(at.plusHours(hours)));
  }

  private static BandReport report(String words) {
    BandReport.Origin origin = BandReport.Origin.UNKNOWN;
    return switch (words) {
      case "none" -> new BandReport.NotReported();
      case "positive" -> new BandReport.Concluded(true, origin);
      case "negative" -> new BandReport.Concluded(false, origin);
      case "pattern2", "pattern3", "pattern4", "pattern5" ->
          new BandReport.Patterned(BandPattern.parse(words.charAt(7) - '0').orElseThrow(), origin);
      case "ladder+6", "ladder+0" ->
          counted(words.charAt(7) - '0', Optional.of(BandPattern.LADDER));
      case "gel", "gel-confirmed" ->
          new BandReport.ReadFromGel(
              "gel.png",
              BandCounts.of(7, 0, 0),
              Optional.of(BandPattern.LOCAL),
              OptionalDouble.of(0.99),
              List.of(),
              words.equals("gel") ? Optional.empty() : Optional.of("a reader"));
      default -> counted(Integer.parseInt(words), Optional.empty());
    };
  }

  private static BandReport counted(int csfOnly, Optional<BandPattern> pattern) {
    return new BandReport.Counted(
        new BandCounts(OptionalInt.of(csfOnly), OptionalInt.of(0), OptionalInt.of(0)),
        pattern,
        BandReport.Origin.UNKNOWN,
        Optional.empty());
  }

  /** A κ index: a number, {@code lower..upper} when censored, or {@code none}. */
  private static Finding kappa(String words) {
    List<Sample> inputs = List.of(Sample.csf(Analyte.KAPPA), Sample.serum(Analyte.KAPPA));
    if (words.equals("none")) {
      return Finding.withoutValue(
          FindingCode.KAPPA_INDEX, FACTS.grounds("kappa-index.upper"), inputs, "not measured");
    }
    String[] ends = words.split("\\.\\.\\.", -1);
    Interval value =
        ends.length == 1
            ? Interval.of(Double.parseDouble(words))
            : new Interval(Double.parseDouble(ends[0]), Double.parseDouble(ends[1]), true);
    Limits limits = Limits.grey(Threshold.from(3.5), Threshold.from(6.1));
    return Finding.of(FindingCode.KAPPA_INDEX, value, FACTS.grounds("kappa-index.upper"), inputs)
        .withVerdict(limits.judge(value), limits, Optional.empty());
  }

  private static CsfPositivity of(CheckedPanel panel, String bands, String kappa, Facts facts) {
    Finding index = kappa(kappa);
    List<Finding> all =
        Arrays.stream(FindingCode.values())
            .map(
                code ->
                    code == index.code()
                        ? index
                        : Finding.withoutValue(code, Grounds.MEASURED, List.of(), "not measured"))
            .toList();
    BandReading reading = BandReading.of(report(bands), facts);
    return CsfPositivity.of(
        new Puncture("of-the-test", panel, Findings.of(all), reading), Restraint.NONE, facts);
  }

  private static Facts locally(String key) {
    Fact fact = FACTS.fact(key);
    return FACTS.with(
        new Policy(
            "local",
            Map.of(
                fact.key(),
                new Policy.Change(new FactValue.Word("no"), "the laboratory's meeting"))));
  }

  @Nested
  class Published {

    /** The two tables of CSF positivity; 6.1 and the grey zone from Deisenhammer 2025. */
    @ParameterizedTest
    @CsvSource({
      "6,none,yes,yes",
      "2,2.0,yes,yes",
      "2,80,yes,yes",
      "pattern2,none,yes,yes",
      "pattern3,none,yes,yes",
      "positive,none,yes,yes",
      "gel-confirmed,none,yes,yes",
      "0,6.1,no,yes",
      "0,6.0999,no,no",
      "0,3.5,no,no",
      "0,1,no,no",
      "0,none,no,unknown",
      "negative,none,no,unknown",
      "pattern4,1,no,no",
      "pattern5,1,no,no",
      "ladder+0,1,no,no",
      "ladder+6,none,unknown,unknown",
      "ladder+6,20,unknown,yes",
      "1,none,unknown,unknown",
      "1,6.1,unknown,yes",
      "1,4,unknown,unknown",
      "1,2,unknown,unknown",
      "gel,none,unknown,unknown",
      "gel,70,unknown,yes",
      "none,none,unknown,unknown",
      "none,6.1,unknown,yes",
      "none,4,unknown,unknown",
      "none,1,unknown,unknown",
      "0,0...3,no,no",
      "0,0...5,no,no",
      "0,0...6.1,no,no",
      "0,0...6.2,no,unknown",
      "0,6.1...9,no,yes"
    })
    void of_bandsAndKappa_bothInputs(String bands, String kappa, String ocb, String csf) {
      CsfPositivity fluid = of(TOGETHER, bands, kappa, FACTS);

      assertThat(fluid.bands().word()).isEqualTo(ocb);
      assertThat(fluid.csf().word()).isEqualTo(csf);
    }
  }

  @Nested
  class Doubts {

    @Test
    void of_drawnTooFarApart_bandsAndKappaUnused() {
      CsfPositivity fluid = of(APART, "6", "0...3", FACTS);

      assertThat(fluid.bands()).isEqualTo(Answer.UNKNOWN);
      assertThat(fluid.csf()).isEqualTo(Answer.UNKNOWN);
      assertThat(fluid.remarks()).singleElement().asString().contains("too far apart");
    }

    @Test
    void of_unconfirmedGel_saysThatAPersonHasToConfirm() {
      assertThat(of(TOGETHER, "gel", "none", FACTS).remarks())
          .singleElement()
          .asString()
          .contains("confirmed by a person");
    }

    @Test
    void of_bandsBesideALadder_saysToReview() {
      assertThat(of(TOGETHER, "ladder+6", "none", FACTS).remarks())
          .singleElement()
          .asString()
          .contains("review the gel");
    }
  }

  @Nested
  class Remarks {

    @ParameterizedTest
    @CsvSource({
      "6,3,discordant",
      "0,9,discordant",
      "1,none,equivocal",
      "none,12,grey zone",
      "none,4,grey zone",
      "pattern4,none,alike",
      "pattern5,none,immunofixation"
    })
    void of_case_said(String bands, String kappa, String part) {
      assertThat(of(TOGETHER, bands, kappa, FACTS).remarks()).anyMatch(r -> r.contains(part));
    }

    @ParameterizedTest
    @CsvSource({"6,50", "0,2", "none,20.1", "none,none"})
    void of_concordant_nothingSaid(String bands, String kappa) {
      assertThat(of(TOGETHER, bands, kappa, FACTS).remarks()).isEmpty();
    }

    @Test
    void shown_countsAndCutOffs_printed() {
      CsfPositivity fluid = of(TOGETHER, "6", "12.345", FACTS);

      assertThat(fluid.shown(Item.BANDS)).isEqualTo("6 CSF-only bands at a cut-off of 2");
      assertThat(fluid.shown(Item.CSF_POSITIVE)).endsWith("κ index 12.35 at a cut-off of 6.10");
      assertThat(of(TOGETHER, "pattern2", "0...3", FACTS).shown(Item.CSF_POSITIVE))
          .isEqualTo(
              "bands positive at a cut-off of 2; κ index between 0.00 and 3.00 at a cut-off of"
                  + " 6.10");
      assertThat(of(TOGETHER, "none", "none", FACTS).shown(Item.CSF_POSITIVE))
          .isEqualTo("bands not reported; κ index not measured");
    }
  }

  @Nested
  class LocalPolicy {

    @ParameterizedTest
    @CsvSource({
      "csf-positive.bands.equivocal,1,none,no,unknown",
      "csf-positive.2024.bands-negative.kappa-unmeasured,0,none,no,no",
      "csf-positive.2024.bands-unknown.kappa-grey,none,4,unknown,no",
      "csf-positive.2024.bands-unknown.kappa-low,none,2,unknown,no"
    })
    void of_localNo_no(String key, String bands, String kappa, String ocb, String csf) {
      CsfPositivity fluid = of(TOGETHER, bands, kappa, locally(key));

      assertThat(fluid.bands().word()).isEqualTo(ocb);
      assertThat(fluid.csf().word()).isEqualTo(csf);
    }

    @Test
    void grounds_unmeasured_projectRule() {
      assertThat(of(TOGETHER, "0", "none", FACTS).csfGrounds().status())
          .isEqualTo(Status.PROJECT_RULE);
      assertThat(of(TOGETHER, "0", "2", FACTS).csfGrounds().status()).isEqualTo(Status.READ);
    }
  }
}
