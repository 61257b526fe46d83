package cistern.report.chart;

import cistern.bands.BandReading;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.report.chart.ChartComment.Sentence;
import cistern.report.wording.TestWords;
import cistern.report.wording.ValueWords;
import cistern.urgent.UnusableBands;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The part of a chart comment about antibody: classes, bands, light chains, tests for one agent.
 */
final class ImmuneSentences {

  private static final Map<String, FindingCode> CLASSES = new LinkedHashMap<>();

  static {
    CLASSES.put("IgG", FindingCode.IGG_FRACTION);
    CLASSES.put("IgA", FindingCode.IGA_FRACTION);
    CLASSES.put("IgM", FindingCode.IGM_FRACTION);
  }

  private final Interpretation said;

  ImmuneSentences(Interpretation said) {
    this.said = said;
  }

  List<Sentence> all() {
    return List.of(
        new Sentence(3, intrathecal()),
        new Sentence(1, bands()),
        new Sentence(2, kappa()),
        new Sentence(5, antibodies()),
        new Sentence(2, tests()));
  }

  /** Every class that was measured, and which one leads. */
  private String intrathecal() {
    if (said.alerts().isBlocked()) {
      return "";
    }
    List<String> found = new ArrayList<>();
    List<String> none = new ArrayList<>();
    CLASSES.forEach(
        (name, code) -> {
          Finding fraction = finding(code);
          if (fraction.isAbove()) {
            found.add(name + " " + ValueWords.value(fraction));
          } else if (fraction.hasValue() && fraction.verdict().isDecided()) {
            none.add(name);
          }
        });
    String index =
        ChartWords.judged("IgG index", finding(FindingCode.IGG_INDEX))
            .map(i -> "; " + i)
            .orElse("");
    String without = none.isEmpty() ? "" : "no evidence of intrathecal " + listed(none);
    if (found.isEmpty() && none.isEmpty()) {
      return index.isEmpty() ? "" : index.substring(2) + ".";
    }
    String with = found.isEmpty() ? "" : "intrathecal " + String.join(", ", found);
    String both = with + (with.isEmpty() || without.isEmpty() ? "" : ", ") + without;
    return ChartWords.sentence(both) + index + ".";
  }

  private static String listed(List<String> names) {
    return names.size() < 2
        ? names.getFirst()
        : String.join(", ", names.subList(0, names.size() - 1)) + " or " + names.getLast();
  }

  private String bands() {
    BandReading bands = said.bands();
    if (!bands.isReported()) {
      return "Oligoclonal bands not reported.";
    }
    String type = bands.pattern().map(p -> " type " + p.number()).orElse("");
    List<String> about = new ArrayList<>();
    bands.counts().csfOnly().ifPresent(n -> about.add(n + " CSF-restricted"));
    bands.counts().shared().ifPresent(n -> about.add(n + " shared"));
    about.add("cut-off " + bands.cutOff());
    if (!bands.isConfirmed()) {
      about.add("read automatically, to be confirmed");
    }
    String verdict =
        said.alerts().unusableBands().map(ImmuneSentences::why).orElse(bands.verdict().word());
    return "Oligoclonal bands%s: %s (%s).".formatted(type, verdict, String.join(", ", about));
  }

  private static String why(UnusableBands why) {
    return switch (why) {
      case MONOCLONAL -> "monoclonal pattern, neither positive nor negative";
      case IMMUNOGLOBULIN -> "not usable after immunoglobulin";
      case WITHOUT_SERUM -> "not usable without a paired serum";
      case NOT_LUMBAR -> "not usable, not lumbar fluid";
    };
  }

  private String kappa() {
    Finding kappa = finding(FindingCode.KAPPA_INDEX);
    if (!kappa.hasValue()) {
      return "";
    }
    String assay =
        said.panel()
            .panel()
            .find(Sample.csf(Analyte.KAPPA))
            .flatMap(Measurement::assay)
            .map(a -> ", " + a)
            .orElse("");
    List<String> also = said.alerts().kappaRaisedAlsoBy();
    return "Kappa index %s (%s; cut-off %s%s)."
        .formatted(
            ValueWords.value(kappa),
            kappa.verdict().word()
                + (kappa.isAbove() && !also.isEmpty()
                    ? ", also by " + String.join(" and ", also)
                    : ""),
            kappa
                .limits()
                .above()
                .map(c -> Printed.of(FindingCode.KAPPA_INDEX, c.at()))
                .orElse("not known"),
            assay);
  }

  private String antibodies() {
    List<String> parts = new ArrayList<>();
    Finding mrz = finding(FindingCode.MRZ_REACTION);
    if (mrz.hasValue()) {
      parts.add("MRZ reaction " + ValueWords.value(mrz) + "/3 (" + mrz.verdict().word() + ")");
    }
    ChartWords.judged("Borrelia antibody index", finding(FindingCode.BORRELIA_ANTIBODY_INDEX))
        .ifPresent(parts::add);
    return parts.isEmpty() ? "" : String.join(", ", parts) + ".";
  }

  private String tests() {
    List<TestWords> tests = TestWords.of(said);
    return tests.isEmpty()
        ? ""
        : ChartWords.sentence(
                tests.stream().map(TestWords::toText).collect(Collectors.joining(", ")))
            + ".";
  }

  private Finding finding(FindingCode code) {
    return said.findings().get(code);
  }
}
