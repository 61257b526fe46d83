package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Printed;
import cistern.finding.UnitProfile;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What CSF would have held without the blood: C − p·C_serum for proteins (Djukic 2022), the blood's
 * own ratio for leukocytes; rules of thumb for leukocytes and total protein where the blood was not
 * counted. Shown beside the measured value, never instead of it.
 */
public final class BloodCorrection {

  private static final Sample CSF_CELLS = PlasmaFraction.CSF_CELLS;
  private static final Sample BLOOD_CELLS = PlasmaFraction.BLOOD_CELLS;
  private static final Sample CSF_LEUKOCYTES = Sample.csf(Analyte.LEUKOCYTES);
  private static final Sample BLOOD_LEUKOCYTES = Sample.blood(Analyte.LEUKOCYTES);
  private static final String PER_LEUKOCYTE = "blood.erythrocytes-per-leukocyte";
  private static final String PROTEIN = "blood.total-protein-per-thousand";
  private static final String IN_CHILDREN = PROTEIN + ".children";
  private static final String ADULT = "albumin-quotient.adult-age";
  private static final double THOUSAND = 1000;

  private final Facts facts;
  private final Limits leukocytes;
  private final Limits protein;

  /**
   * A correction.
   *
   * @param facts the constants
   * @param leukocytes the limits of the uncorrected count
   */
  private BloodCorrection(Facts facts, Limits leukocytes, Limits protein) {
    this.facts = facts;
    this.leukocytes = leukocytes;
    this.protein = protein;
  }

  /** The correction that judges leukocytes and total protein by the limits of the uncorrected. */
  public static BloodCorrection of(Facts facts, Limits leukocytes, Limits protein) {
    return new BloodCorrection(facts, leukocytes, protein);
  }

  /** The corrected findings of a panel, in the order in which they are listed. */
  public List<Finding> interpret(CheckedPanel panel) {
    return List.of(
        leukocytes(panel),
        totalProtein(panel),
        unjudged(panel, Analyte.IGG, FindingCode.IGG_CORRECTED),
        unjudged(panel, Analyte.IGA, FindingCode.IGA_CORRECTED),
        unjudged(panel, Analyte.IGM, FindingCode.IGM_CORRECTED),
        unjudged(panel, Analyte.ALBUMIN, FindingCode.ALBUMIN_CORRECTED));
  }

  private Finding leukocytes(CheckedPanel panel) {
    Inputs simple = Inputs.of(panel, CSF_LEUKOCYTES, CSF_CELLS);
    Inputs counted =
        simple.and(Inputs.of(panel, BLOOD_LEUKOCYTES, BLOOD_CELLS)).dividingBy(BLOOD_CELLS);
    boolean isCounted = counted.obstacle().isEmpty();
    Inputs inputs = isCounted ? counted : simple;
    Grounds grounds = facts.grounds(isCounted ? "blood.leukocytes.formula" : PER_LEUKOCYTE);
    Optional<String> obstacle = simple.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(
          FindingCode.LEUKOCYTES_CORRECTED, grounds, simple.present(), obstacle.get());
    }
    Interval brought =
        isCounted
            ? product(counted.quotient(CSF_CELLS, BLOOD_CELLS), counted.interval(BLOOD_LEUKOCYTES))
            : simple.interval(CSF_CELLS).times(1 / facts.number(PER_LEUKOCYTE));
    Interval corrected = atLeastZero(minus(simple.interval(CSF_LEUKOCYTES), brought));
    return Finding.of(FindingCode.LEUKOCYTES_CORRECTED, corrected, grounds, inputs.present())
        .withVerdict(leukocytes.judge(corrected), leukocytes, Optional.empty())
        .withNote(isCounted ? "" : "rule of thumb, the blood was not counted");
  }

  private Finding totalProtein(CheckedPanel panel) {
    Sample csf = Sample.csf(Analyte.TOTAL_PROTEIN);
    Inputs counted = inputs(panel, Analyte.TOTAL_PROTEIN);
    if (counted.obstacle().isEmpty()) {
      return protein(counted, FindingCode.TOTAL_PROTEIN_CORRECTED, Analyte.TOTAL_PROTEIN, protein);
    }
    Inputs simple = Inputs.of(panel, csf, CSF_CELLS);
    Optional<String> obstacle = simple.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(
          FindingCode.TOTAL_PROTEIN_CORRECTED,
          facts.grounds(PROTEIN),
          simple.present(),
          obstacle.get());
    }
    Interval brought = simple.interval(CSF_CELLS).times(facts.number(PROTEIN) / THOUSAND);
    return judged(
            FindingCode.TOTAL_PROTEIN_CORRECTED,
            minus(simple.interval(csf), brought),
            new Basis(simple, facts.grounds(PROTEIN), protein))
        .withNote("rule of thumb, the blood was not counted")
        .withNote(inChildren(panel, simple.interval(csf), simple.interval(CSF_CELLS)));
  }

  /** What the share that was measured in children leaves; empty for adults and unknown ages. */
  private String inChildren(CheckedPanel panel, Interval protein, Interval cells) {
    OptionalDouble age = panel.panel().person().ageYears();
    if (age.isEmpty() || age.getAsDouble() >= facts.number(ADULT)) {
      return "";
    }
    double share = facts.number(IN_CHILDREN);
    Interval left = minus(protein, cells.times(share / THOUSAND));
    String value = left.isExact() && left.lower() >= 0 ? ": " + protein(left.lower()) : "";
    return "in children %s for 1,000 erythrocytes was measured%s".formatted(protein(share), value);
  }

  /** An amount of total protein with its unit. */
  private String protein(double held) {
    return UnitProfile.of(facts)
        .limit(Sample.csf(Analyte.TOTAL_PROTEIN), held, Printed.significant(held) + " mg/L");
  }

  private Finding unjudged(CheckedPanel panel, Analyte analyte, FindingCode code) {
    Inputs inputs = inputs(panel, analyte);
    Optional<String> obstacle = inputs.obstacle();
    return obstacle.isPresent()
        ? Finding.withoutValue(
            code, facts.grounds("blood.plasma.formula"), inputs.present(), obstacle.get())
        : protein(inputs, code, analyte, Limits.NONE);
  }

  private Finding protein(Inputs inputs, FindingCode code, Analyte analyte, Limits limits) {
    Interval brought = product(PlasmaFraction.of(inputs), inputs.interval(Sample.serum(analyte)));
    return judged(
        code,
        minus(inputs.interval(Sample.csf(analyte)), brought),
        new Basis(inputs, facts.grounds("blood.plasma.formula"), limits));
  }

  private record Basis(Inputs inputs, Grounds grounds, Limits limits) {}

  private static Finding judged(FindingCode code, Interval corrected, Basis basis) {
    List<Sample> samples = basis.inputs.present();
    if (corrected.upper() < 0) {
      return Finding.withoutValue(
          code, basis.grounds, samples, "the correction takes away more than was measured");
    }
    Interval kept = atLeastZero(corrected);
    Finding finding = Finding.of(code, kept, basis.grounds, samples);
    Finding verdict =
        basis.limits.isKnown()
            ? finding.withVerdict(basis.limits.judge(kept), basis.limits, Optional.empty())
            : finding.withDoubt("no limit for a corrected value");
    return basis.inputs.doubt().map(verdict::withDoubt).orElse(verdict);
  }

  private static Inputs inputs(CheckedPanel panel, Analyte analyte) {
    return Inputs.of(panel, Sample.csf(analyte), Sample.serum(analyte))
        .and(PlasmaFraction.inputs(panel));
  }

  private static Interval product(Interval a, Interval b) {
    double upper = a.upper() == 0 || b.upper() == 0 ? 0 : a.upper() * b.upper();
    double lower = a.lower() == 0 || b.lower() == 0 ? 0 : a.lower() * b.lower();
    return new Interval(lower, upper, a.censored() || b.censored());
  }

  private static Interval minus(Interval a, Interval b) {
    double upper = a.upper() - b.lower();
    double lower = Double.isInfinite(b.upper()) ? Double.NEGATIVE_INFINITY : a.lower() - b.upper();
    return new Interval(lower, upper, a.censored() || b.censored());
  }

  private static Interval atLeastZero(Interval a) {
    return new Interval(Math.max(0, a.lower()), Math.max(0, a.upper()), a.censored());
  }
}
