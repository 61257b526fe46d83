package cistern.fluid;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;
import java.util.Optional;

/** A value measured in CSF alone, judged against a fixed limit. */
public final class Measured {

  private final Sample sample;
  private final FindingCode code;
  private final Limits limits;
  private final Grounds grounds;

  private Measured(Sample sample, FindingCode code, Limits limits, Grounds grounds) {
    this.sample = sample;
    this.code = code;
    this.limits = limits;
    this.grounds = grounds;
  }

  /** Lactate in mmol/L (Tumani 2020, table 4). */
  public static Measured lactate(Facts facts) {
    return upper(facts, Analyte.LACTATE, FindingCode.LACTATE, false);
  }

  /** Leukocytes per µL (Tumani 2020, table 4). */
  public static Measured leukocytes(Facts facts) {
    return upper(facts, Analyte.LEUKOCYTES, FindingCode.LEUKOCYTES, true);
  }

  /** Erythrocytes per µL. */
  public static Measured erythrocytes(Facts facts) {
    return upper(facts, Analyte.ERYTHROCYTES, FindingCode.ERYTHROCYTES, false);
  }

  /** Myelin basic protein in ng/mL, with a grey zone. */
  public static Measured myelinBasicProtein(Facts facts) {
    String upper = "myelin-basic-protein.upper";
    String grey = "myelin-basic-protein.borderline";
    return new Measured(
        Sample.csf(Analyte.MYELIN_BASIC_PROTEIN),
        FindingCode.MYELIN_BASIC_PROTEIN,
        Limits.grey(Threshold.from(facts.number(grey)), Threshold.from(facts.number(upper))),
        facts.grounds(upper, grey));
  }

  private static Measured upper(
      Facts facts, Analyte analyte, FindingCode code, boolean isInclusive) {
    String key = code.code() + ".upper";
    return new Measured(
        Sample.csf(analyte),
        code,
        Limits.upper(new Threshold(facts.number(key), isInclusive)),
        facts.grounds(key));
  }

  /** The limits it is judged by. */
  public Limits limits() {
    return limits;
  }

  /** The finding of a panel. */
  public Finding interpret(CheckedPanel panel) {
    return interpret(panel, limits);
  }

  /** The finding of a panel by other limits. */
  Finding interpret(CheckedPanel panel, Limits limits) {
    return interpret(panel, limits, grounds);
  }

  /** The finding of a panel by other limits, which rest on something else. */
  Finding interpret(CheckedPanel panel, Limits limits, Grounds grounds) {
    Inputs inputs = Inputs.of(panel, sample);
    Optional<String> obstacle = inputs.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(code, grounds, inputs.present(), obstacle.get());
    }
    Interval value = inputs.interval(sample);
    return Finding.of(code, value, grounds, inputs.present())
        .withVerdict(limits.judge(value), limits, Optional.empty());
  }
}
