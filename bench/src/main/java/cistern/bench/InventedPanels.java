package cistern.bench;

import cistern.barrier.BarrierFindings;
import cistern.barrier.BloodCorrection;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.Findings;
import cistern.fluid.FluidFindings;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/** Invented panels with their findings: the same ones on every run. */
final class InventedPanels {

  static final Facts FACTS = Facts.standard();

  private final Random random;
  private final List<Measurement> results = new ArrayList<>();

  /** A panel and its findings, without uncertainty. */
  record Subject(CheckedPanel panel, Findings findings) {

    private static Subject of(Panel panel) {
      CheckedPanel checked = CheckedPanel.check(panel, FACTS);
      FluidFindings fluid = FluidFindings.of(FACTS);
      List<Finding> all = new ArrayList<>(BarrierFindings.of(FACTS).interpret(checked));
      all.addAll(fluid.interpret(checked));
      all.addAll(
          BloodCorrection.of(FACTS, fluid.leukocyteLimits(checked), fluid.proteinLimits(checked))
              .interpret(checked));
      return new Subject(checked, Findings.of(all));
    }
  }

  private InventedPanels(long seed) {
    random = new Random(seed);
  }

  /** Panels with every analyte, so that every code has a value. */
  static List<Subject> whole(int count) {
    return IntStream.range(0, count)
        .mapToObj(i -> Subject.of(new InventedPanels(i).withProteins().withOthers().panel()))
        .toList();
  }

  /** Panels with albumin, three immunoglobulins and κ in both fluids. */
  static List<Subject> proteins(int count) {
    return IntStream.range(0, count)
        .mapToObj(i -> Subject.of(new InventedPanels(i).withProteins().panel()))
        .toList();
  }

  private double around(double centre, double spread) {
    return centre * Math.exp(spread * random.nextGaussian());
  }

  private void add(Sample sample, double value) {
    results.add(Measurement.of(sample, Interval.of(value)));
  }

  private void pair(Analyte analyte, double serum, double quotient) {
    add(Sample.serum(analyte), serum);
    add(Sample.csf(analyte), serum * quotient);
  }

  private InventedPanels withProteins() {
    pair(Analyte.ALBUMIN, around(41_000, 0.1), around(5.5e-3, 0.3));
    pair(Analyte.IGG, around(10_500, 0.15), around(4e-3, 0.3));
    pair(Analyte.IGA, around(2_000, 0.3), around(2.5e-3, 0.3));
    pair(Analyte.IGM, around(1_100, 0.3), around(1.1e-3, 0.3));
    pair(Analyte.KAPPA, around(12, 0.3), around(20e-3, 0.5));
    return this;
  }

  private InventedPanels withOthers() {
    pair(Analyte.LAMBDA, around(14, 0.3), around(25e-3, 0.3));
    pair(Analyte.MEASLES_IGG, around(800, 0.5), around(6e-3, 0.3));
    pair(Analyte.RUBELLA_IGG, around(90, 0.5), around(6e-3, 0.3));
    pair(Analyte.VARICELLA_ZOSTER_IGG, around(600, 0.5), around(6e-3, 0.3));
    pair(Analyte.BORRELIA_IGG, around(50, 0.5), around(5e-3, 0.3));
    pair(Analyte.GLUCOSE, around(5.6, 0.2), around(0.6, 0.1));
    add(Sample.csf(Analyte.LACTATE), around(1.8, 0.2));
    add(Sample.csf(Analyte.MYELIN_BASIC_PROTEIN), around(4, 0.4));
    add(Sample.csf(Analyte.TOTAL_PROTEIN), around(450, 0.2));
    add(Sample.serum(Analyte.TOTAL_PROTEIN), around(70_000, 0.05));
    add(Sample.csf(Analyte.LEUKOCYTES), around(8, 0.5));
    add(Sample.csf(Analyte.ERYTHROCYTES), around(300, 1));
    add(Sample.blood(Analyte.ERYTHROCYTES), around(4_800_000, 0.08));
    add(Sample.blood(Analyte.LEUKOCYTES), around(7_000, 0.2));
    add(Sample.blood(Analyte.HEMATOCRIT), around(0.43, 0.05));
    return this;
  }

  private Panel panel() {
    return Panel.of(Person.aged(20 + random.nextInt(50)), results);
  }
}
