package cistern.uncertainty;

import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import cistern.panel.Person;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * Invented panels by number: values scattered around the limits, where a probability is hard, and
 * some imprecisions far from the default.
 */
final class RandomPanels {

  private static final double[] STATED = {0, 0.002, 0.01, 0.03, 0.1, 0.2, 0.35};

  private final Random random;
  private final boolean isStated;
  private final List<Measurement> results = new ArrayList<>();

  private RandomPanels(int number) {
    random = new Random(4_711L + 977L * number);
    isStated = number % 2 == 1;
  }

  /** The panel of a number; odd ones state imprecisions of their own. */
  static Panel of(int number) {
    return new RandomPanels(number).panel();
  }

  private double around(double centre, double spread) {
    return centre * Math.exp(spread * random.nextGaussian());
  }

  private void add(Sample sample, double value) {
    add(sample, value, Optional.empty());
  }

  private void add(Sample sample, double value, Optional<String> assay) {
    OptionalDouble cv =
        isStated && random.nextInt(3) == 0
            ? OptionalDouble.of(STATED[random.nextInt(STATED.length)])
            : OptionalDouble.empty();
    Measurement plain = Measurement.of(sample, Interval.of(value));
    results.add(new Measurement(sample, plain.value(), cv, assay, plain.at(), plain.place()));
  }

  private void pair(Analyte analyte, double serum, double quotient) {
    add(Sample.serum(analyte), serum);
    add(Sample.csf(analyte), serum * quotient);
  }

  private Panel panel() {
    double age = 18 + random.nextInt(60);
    double albumin = around(5.5e-3, 0.35);
    pair(Analyte.ALBUMIN, around(41_000, 0.1), albumin);
    double igg = around(MonteCarlo.qlim(0, albumin), 0.2);
    pair(Analyte.IGG, around(10_500, 0.15), igg);
    pair(Analyte.IGA, around(2_000, 0.3), around(MonteCarlo.qlim(1, albumin), 0.2));
    pair(Analyte.IGM, around(1_100, 0.3), around(MonteCarlo.qlim(2, albumin), 0.2));
    pair(Analyte.KAPPA, around(12, 0.3), around(MonteCarlo.qlim(3, albumin), 0.4));
    pair(Analyte.LAMBDA, around(14, 0.3), around(5 * albumin, 0.3));
    double explained = Math.min(igg, MonteCarlo.qlim(0, albumin));
    for (Analyte virus :
        List.of(Analyte.MEASLES_IGG, Analyte.RUBELLA_IGG, Analyte.VARICELLA_ZOSTER_IGG)) {
      pair(virus, around(800, 0.5), around(1.5 * explained, 0.15));
    }
    pair(Analyte.BORRELIA_IGG, around(50, 0.5), around(1.3 * explained, 0.15));
    pair(Analyte.GLUCOSE, around(6.2, 0.25), around(0.45, 0.15));
    add(Sample.csf(Analyte.LACTATE), around(2.6, 0.1));
    add(Sample.csf(Analyte.MYELIN_BASIC_PROTEIN), around(8, 0.2));
    add(Sample.csf(Analyte.TOTAL_PROTEIN), around(500, 0.1));
    add(Sample.csf(Analyte.LEUKOCYTES), Math.rint(around(8, 0.5)));
    add(Sample.csf(Analyte.ERYTHROCYTES), Math.rint(around(600, 1)));
    if (random.nextInt(4) > 0) {
      add(Sample.blood(Analyte.ERYTHROCYTES), around(4_800_000, 0.08));
      add(Sample.blood(Analyte.LEUKOCYTES), around(7_000, 0.2));
      add(Sample.blood(Analyte.HEMATOCRIT), Math.min(0.6, around(0.43, 0.08)));
      add(Sample.serum(Analyte.TOTAL_PROTEIN), around(70_000, 0.05));
    }
    add(Sample.serum(Analyte.NEUROFILAMENT_LIGHT), around(14, 0.4), Optional.of("Simoa"));
    return Panel.of(Person.aged(age), results);
  }
}
