package cistern.followup;

import cistern.analysis.Puncture;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A quantity that is followed from puncture to puncture. */
sealed interface ComparedQuantity {

  /** The name in files. */
  String code();

  /** The name in sentences. */
  String term();

  /** Its value at one puncture. */
  Optional<Interval> value(Puncture puncture);

  /** The samples that enter it as factors or divisors. */
  List<Sample> samples();

  /**
   * A measured concentration.
   *
   * @param sample what was measured where
   */
  record Measured(Sample sample) implements ComparedQuantity {
    @Override
    public String code() {
      return sample.code();
    }

    @Override
    public String term() {
      return sample.term();
    }

    @Override
    public Optional<Interval> value(Puncture puncture) {
      return puncture.measured(sample);
    }

    @Override
    public List<Sample> samples() {
      return List.of(sample);
    }
  }

  /**
   * A finding.
   *
   * @param finding its code
   * @param samples that enter it as factors or divisors
   * @param scale how its error behaves
   */
  record Derived(FindingCode finding, List<Sample> samples, Scale scale)
      implements ComparedQuantity {
    /** Copies the samples. */
    public Derived {
      samples = List.copyOf(samples);
    }

    @Override
    public String code() {
      return finding.code();
    }

    @Override
    public String term() {
      return finding.term();
    }

    @Override
    public Optional<Interval> value(Puncture puncture) {
      return puncture.finding(finding).value();
    }
  }

  /** How the error of a quantity behaves. */
  enum Scale {
    /** A product of powers of its samples: log-normal. */
    PRODUCT,
    /** Not a product, but positive: its interval is taken as log-normal. */
    BY_INTERVAL,
    /** Clipped at zero, signed or a count: no change limit. */
    NONE
  }

  /** Everything that is followed, in order: findings, then the measured values behind them. */
  static List<ComparedQuantity> all() {
    List<ComparedQuantity> all = new ArrayList<>();
    for (FindingCode code : FindingCode.values()) {
      all.add(new Derived(code, code.samples(), scale(code)));
    }
    Arrays.stream(Analyte.values())
        .filter(Analyte::isPaired)
        .forEach(
            analyte -> {
              all.add(new Measured(new Sample(analyte, Compartment.CSF)));
              all.add(new Measured(new Sample(analyte, Compartment.SERUM)));
            });
    return all;
  }

  private static Scale scale(FindingCode code) {
    return switch (code.kind()) {
      case QUOTIENT, INDEX, RATIO, CSF, SERUM -> Scale.PRODUCT;
      case ANTIBODY_INDEX -> Scale.BY_INTERVAL;
      case FRACTION, LOCAL, RATE, REACTION, CORRECTED -> Scale.NONE;
    };
  }
}
