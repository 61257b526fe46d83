package cistern.barrier;

import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Problem;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import cistern.panel.Panel;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A quotient under Qlow: too much antigen for the assay, or serum raised from outside; never a
 * negative synthesis (Tumani 2020, figure 2).
 *
 * @param analyte whose quotient it is
 * @param place where the CSF value stands
 * @param grounds what Qlow rests on
 */
public record AntigenExcessSuspected(Analyte analyte, String place, Grounds grounds)
    implements Problem {

  /** The suspicions of a panel; infused immunoglobulin explains a low IgG quotient already. */
  public static List<AntigenExcessSuspected> check(
      Panel panel, Function<FindingCode, Finding> findings) {
    boolean isInfused = panel.answer(Circumstance.IMMUNOGLOBULIN_INFUSION).isYes();
    return List.of(Analyte.IGG, Analyte.IGA, Analyte.IGM).stream()
        .filter(analyte -> !(isInfused && analyte == Analyte.IGG))
        .flatMap(analyte -> check(panel, analyte, findings).stream())
        .toList();
  }

  private static Optional<AntigenExcessSuspected> check(
      Panel panel, Analyte analyte, Function<FindingCode, Finding> findings) {
    Finding quotient = findings.apply(FindingCode.of(FindingCode.Kind.QUOTIENT, analyte));
    return quotient.verdict() == Verdict.BELOW
        ? panel
            .find(Sample.csf(analyte))
            .map(Measurement::place)
            .map(place -> new AntigenExcessSuspected(analyte, place, quotient.grounds()))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "antigen-excess-suspected";
  }

  @Override
  public String text() {
    return "The %s quotient is implausibly low for the albumin quotient: antigen excess in the assay, or serum raised by an infusion? Ask the laboratory to dilute and repeat."
        .formatted(analyte.term());
  }
}
