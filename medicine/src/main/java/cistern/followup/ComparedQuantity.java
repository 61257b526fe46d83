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
      all.add(derived(code));
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

  private static Derived derived(FindingCode code) {
    return switch (code) {
      case ALBUMIN_QUOTIENT -> product(code, pair(Analyte.ALBUMIN));
      case IGG_QUOTIENT -> product(code, pair(Analyte.IGG));
      case IGA_QUOTIENT -> product(code, pair(Analyte.IGA));
      case IGM_QUOTIENT -> product(code, pair(Analyte.IGM));
      case KAPPA_QUOTIENT -> product(code, pair(Analyte.KAPPA));
      case LAMBDA_QUOTIENT -> product(code, pair(Analyte.LAMBDA));
      case IGG_INDEX -> product(code, index(Analyte.IGG));
      case IGA_INDEX -> product(code, index(Analyte.IGA));
      case IGM_INDEX -> product(code, index(Analyte.IGM));
      case LAMBDA_INDEX -> product(code, index(Analyte.LAMBDA));
      case KAPPA_INDEX -> product(code, index(Analyte.KAPPA));
      case GLUCOSE_RATIO -> product(code, pair(Analyte.GLUCOSE));
      case LACTATE -> product(code, List.of(Sample.csf(Analyte.LACTATE)));
      case TOTAL_PROTEIN -> product(code, List.of(Sample.csf(Analyte.TOTAL_PROTEIN)));
      case LEUKOCYTES -> product(code, List.of(Sample.csf(Analyte.LEUKOCYTES)));
      case ERYTHROCYTES -> product(code, List.of(Sample.csf(Analyte.ERYTHROCYTES)));
      case MYELIN_BASIC_PROTEIN -> product(code, List.of(Sample.csf(Analyte.MYELIN_BASIC_PROTEIN)));
      case MEASLES_ANTIBODY_INDEX -> antibody(code, Analyte.MEASLES_IGG);
      case RUBELLA_ANTIBODY_INDEX -> antibody(code, Analyte.RUBELLA_IGG);
      case VARICELLA_ZOSTER_ANTIBODY_INDEX -> antibody(code, Analyte.VARICELLA_ZOSTER_IGG);
      case BORRELIA_ANTIBODY_INDEX -> antibody(code, Analyte.BORRELIA_IGG);
      case IGG_FRACTION, IGG_LOCAL, IGG_SYNTHESIS_RATE -> unlimited(code, index(Analyte.IGG));
      case IGA_FRACTION, IGA_LOCAL -> unlimited(code, index(Analyte.IGA));
      case IGM_FRACTION, IGM_LOCAL -> unlimited(code, index(Analyte.IGM));
      case KAPPA_FRACTION, KAPPA_LOCAL -> unlimited(code, index(Analyte.KAPPA));
      case MRZ_REACTION -> unlimited(code, threeViruses());
      case LEUKOCYTES_CORRECTED -> unlimited(code, List.of(Sample.csf(Analyte.LEUKOCYTES)));
      case TOTAL_PROTEIN_CORRECTED -> unlimited(code, List.of(Sample.csf(Analyte.TOTAL_PROTEIN)));
      case IGG_CORRECTED -> unlimited(code, pair(Analyte.IGG));
      case IGA_CORRECTED -> unlimited(code, pair(Analyte.IGA));
      case IGM_CORRECTED -> unlimited(code, pair(Analyte.IGM));
      case ALBUMIN_CORRECTED -> unlimited(code, pair(Analyte.ALBUMIN));
    };
  }

  private static Derived product(FindingCode code, List<Sample> samples) {
    return new Derived(code, samples, Scale.PRODUCT);
  }

  private static Derived unlimited(FindingCode code, List<Sample> samples) {
    return new Derived(code, samples, Scale.NONE);
  }

  private static Derived antibody(FindingCode code, Analyte specific) {
    List<Sample> samples = new ArrayList<>(pair(specific));
    samples.addAll(index(Analyte.IGG));
    return new Derived(code, samples, Scale.BY_INTERVAL);
  }

  private static List<Sample> threeViruses() {
    return List.of(
        Sample.csf(Analyte.MEASLES_IGG),
        Sample.csf(Analyte.RUBELLA_IGG),
        Sample.csf(Analyte.VARICELLA_ZOSTER_IGG));
  }

  private static List<Sample> pair(Analyte analyte) {
    return List.of(Sample.csf(analyte), Sample.serum(analyte));
  }

  private static List<Sample> index(Analyte analyte) {
    List<Sample> samples = new ArrayList<>(pair(analyte));
    samples.addAll(pair(Analyte.ALBUMIN));
    return samples;
  }
}
