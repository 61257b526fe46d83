package cistern.finding;

import cistern.measurement.Analyte;
import cistern.measurement.CanonicalUnit;
import cistern.measurement.Sample;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Every derived quantity that an interpretation holds, in the order in which it is listed. What is
 * done with it follows from its kind and its analyte, so that a new one is one row here.
 */
public enum FindingCode {
  ALBUMIN_QUOTIENT(Kind.QUOTIENT, "albumin-quotient", "albumin quotient", Analyte.ALBUMIN),
  IGG_QUOTIENT(Kind.QUOTIENT, "igg-quotient", "IgG quotient", Analyte.IGG),
  IGA_QUOTIENT(Kind.QUOTIENT, "iga-quotient", "IgA quotient", Analyte.IGA),
  IGM_QUOTIENT(Kind.QUOTIENT, "igm-quotient", "IgM quotient", Analyte.IGM),
  KAPPA_QUOTIENT(Kind.QUOTIENT, "kappa-quotient", "κ quotient", Analyte.KAPPA),
  LAMBDA_QUOTIENT(Kind.QUOTIENT, "lambda-quotient", "λ quotient", Analyte.LAMBDA),
  IGG_FRACTION(Kind.FRACTION, "igg-intrathecal-fraction", "intrathecal IgG fraction", Analyte.IGG),
  IGA_FRACTION(Kind.FRACTION, "iga-intrathecal-fraction", "intrathecal IgA fraction", Analyte.IGA),
  IGM_FRACTION(Kind.FRACTION, "igm-intrathecal-fraction", "intrathecal IgM fraction", Analyte.IGM),
  KAPPA_FRACTION(
      Kind.FRACTION, "kappa-intrathecal-fraction", "intrathecal κ fraction", Analyte.KAPPA),
  IGG_LOCAL(Kind.LOCAL, "igg-local", "local IgG", Analyte.IGG),
  IGA_LOCAL(Kind.LOCAL, "iga-local", "local IgA", Analyte.IGA),
  IGM_LOCAL(Kind.LOCAL, "igm-local", "local IgM", Analyte.IGM),
  KAPPA_LOCAL(Kind.LOCAL, "kappa-local", "local κ", Analyte.KAPPA),
  IGG_INDEX(Kind.INDEX, "igg-index", "IgG index", Analyte.IGG),
  IGA_INDEX(Kind.INDEX, "iga-index", "IgA index", Analyte.IGA),
  IGM_INDEX(Kind.INDEX, "igm-index", "IgM index", Analyte.IGM),
  LAMBDA_INDEX(Kind.INDEX, "lambda-index", "λ index", Analyte.LAMBDA),
  KAPPA_INDEX(Kind.INDEX, "kappa-index", "κ index", Analyte.KAPPA),
  IGG_SYNTHESIS_RATE(Kind.RATE, "igg-synthesis-rate", "IgG synthesis rate", Analyte.IGG),
  MEASLES_ANTIBODY_INDEX(
      Kind.ANTIBODY_INDEX, "measles-antibody-index", "measles antibody index", Analyte.MEASLES_IGG),
  RUBELLA_ANTIBODY_INDEX(
      Kind.ANTIBODY_INDEX, "rubella-antibody-index", "rubella antibody index", Analyte.RUBELLA_IGG),
  VARICELLA_ZOSTER_ANTIBODY_INDEX(
      Kind.ANTIBODY_INDEX,
      "varicella-zoster-antibody-index",
      "varicella-zoster antibody index",
      Analyte.VARICELLA_ZOSTER_IGG),
  BORRELIA_ANTIBODY_INDEX(
      Kind.ANTIBODY_INDEX,
      "borrelia-antibody-index",
      "Borrelia antibody index",
      Analyte.BORRELIA_IGG),
  MRZ_REACTION(Kind.REACTION, "mrz-reaction", "MRZ reaction", Analyte.MEASLES_IGG),
  GLUCOSE_RATIO(Kind.RATIO, "glucose-ratio", "glucose ratio", Analyte.GLUCOSE),
  LACTATE(Kind.CSF, "lactate", "lactate", Analyte.LACTATE),
  TOTAL_PROTEIN(Kind.CSF, "total-protein", "total protein", Analyte.TOTAL_PROTEIN),
  LEUKOCYTES(Kind.CSF, "leukocytes", "leukocytes", Analyte.LEUKOCYTES),
  ERYTHROCYTES(Kind.CSF, "erythrocytes", "erythrocytes", Analyte.ERYTHROCYTES),
  MYELIN_BASIC_PROTEIN(
      Kind.CSF, "myelin-basic-protein", "myelin basic protein", Analyte.MYELIN_BASIC_PROTEIN),
  LEUKOCYTES_CORRECTED(
      Kind.CORRECTED, "leukocytes-corrected", "leukocytes without the blood", Analyte.LEUKOCYTES),
  TOTAL_PROTEIN_CORRECTED(
      Kind.CORRECTED,
      "total-protein-corrected",
      "total protein without the blood",
      Analyte.TOTAL_PROTEIN),
  IGG_CORRECTED(Kind.CORRECTED, "igg-corrected", "CSF IgG without the blood", Analyte.IGG),
  IGA_CORRECTED(Kind.CORRECTED, "iga-corrected", "CSF IgA without the blood", Analyte.IGA),
  IGM_CORRECTED(Kind.CORRECTED, "igm-corrected", "CSF IgM without the blood", Analyte.IGM),
  ALBUMIN_CORRECTED(
      Kind.CORRECTED, "albumin-corrected", "CSF albumin without the blood", Analyte.ALBUMIN),
  NEUROFILAMENT_LIGHT(
      Kind.SERUM, "neurofilament-light", "neurofilament light", Analyte.NEUROFILAMENT_LIGHT);

  /** What a quantity is made of. */
  public enum Kind {
    /** CSF over serum. */
    QUOTIENT,
    /** The share of a quotient over its limit. */
    FRACTION,
    /** The concentration over the limit of its quotient. */
    LOCAL,
    /** A quotient over the albumin quotient. */
    INDEX,
    /** What is made in a day. */
    RATE,
    /** The quotient of one antibody over that of all IgG, or over its limit. */
    ANTIBODY_INDEX,
    /** How many antibody indices are above. */
    REACTION,
    /** CSF over serum of what is not a protein. */
    RATIO,
    /** Measured in CSF alone. */
    CSF,
    /** Measured in serum, or in plasma that stands for it, alone. */
    SERUM,
    /** Measured in CSF, less what the blood brought. */
    CORRECTED
  }

  /** How a document rounds it; the verdict is always judged on the unrounded value. */
  public enum Print {
    /** Times 1000 with two decimals, three below one. */
    QUOTIENT,
    /** Whole per cent. */
    FRACTION,
    /** Two decimals. */
    INDEX,
    /** One decimal. */
    RATE,
    /** Whole from ten upwards, else two significant decimals. */
    CONCENTRATION,
    /** Whole. */
    COUNT
  }

  private static final Set<Analyte> VIRUSES =
      Collections.unmodifiableSet(
          EnumSet.of(Analyte.MEASLES_IGG, Analyte.RUBELLA_IGG, Analyte.VARICELLA_ZOSTER_IGG));

  private static final Map<Kind, Map<Analyte, FindingCode>> BY_SHAPE =
      Arrays.stream(values())
          .collect(
              Collectors.groupingBy(
                  FindingCode::kind, Collectors.toMap(FindingCode::analyte, code -> code)));

  private final Kind kind;
  private final String code;
  private final String term;
  private final Analyte analyte;

  FindingCode(Kind kind, String code, String term, Analyte analyte) {
    this.kind = kind;
    this.code = code;
    this.term = term;
    this.analyte = analyte;
  }

  /** The quantity of some kind of an analyte, if there is one. */
  public static Optional<FindingCode> find(Kind kind, Analyte analyte) {
    return Optional.ofNullable(BY_SHAPE.getOrDefault(kind, Map.of()).get(analyte));
  }

  /**
   * The quantity of some kind of an analyte.
   *
   * @throws IllegalArgumentException when there is none
   */
  public static FindingCode of(Kind kind, Analyte analyte) {
    return find(kind, analyte)
        .orElseThrow(() -> new IllegalArgumentException("no " + kind + " of " + analyte.code()));
  }

  /** What it is made of. */
  public Kind kind() {
    return kind;
  }

  /** What is measured for it, beside what it is only compared with; of several the first. */
  public Analyte analyte() {
    return analyte;
  }

  private Set<Analyte> analytes() {
    return kind == Kind.REACTION ? VIRUSES : Set.of(analyte);
  }

  /** What it is about; nothing where it only restates a value without the blood. */
  Set<Analyte> subject() {
    return kind == Kind.CORRECTED ? Set.of() : analytes();
  }

  /** The samples that enter it as factors or divisors. */
  public List<Sample> samples() {
    if (kind == Kind.SERUM) {
      return List.of(Sample.serum(analyte));
    }
    Set<Sample> samples = new LinkedHashSet<>();
    analytes().forEach(a -> samples.add(Sample.csf(a)));
    if (isPaired()) {
      samples.add(Sample.serum(analyte));
    }
    if (kind == Kind.ANTIBODY_INDEX) {
      samples.addAll(pair(Analyte.IGG));
    }
    if (isComparedWithAlbumin()) {
      samples.addAll(pair(Analyte.ALBUMIN));
    }
    return List.copyOf(samples);
  }

  private boolean isPaired() {
    return switch (kind) {
      case QUOTIENT, FRACTION, LOCAL, INDEX, RATE, ANTIBODY_INDEX, RATIO -> true;
      case REACTION, CSF, SERUM -> false;
      case CORRECTED -> analyte.isPaired();
    };
  }

  private boolean isComparedWithAlbumin() {
    return switch (kind) {
      case FRACTION, LOCAL, INDEX, RATE, ANTIBODY_INDEX -> true;
      case QUOTIENT, REACTION, RATIO, CSF, SERUM, CORRECTED -> false;
    };
  }

  private static List<Sample> pair(Analyte analyte) {
    return List.of(Sample.csf(analyte), Sample.serum(analyte));
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }

  /** The unit of its value. */
  public CanonicalUnit unit() {
    return switch (kind) {
      case QUOTIENT, FRACTION, INDEX, ANTIBODY_INDEX, REACTION, RATIO -> CanonicalUnit.ONE;
      case RATE -> CanonicalUnit.MG_PER_DAY;
      case LOCAL, CSF, SERUM, CORRECTED -> analyte.unit();
    };
  }

  /** How a document rounds it. */
  public Print print() {
    return switch (kind) {
      case QUOTIENT -> Print.QUOTIENT;
      case FRACTION -> Print.FRACTION;
      case INDEX, ANTIBODY_INDEX, RATIO -> Print.INDEX;
      case RATE -> Print.RATE;
      case REACTION -> Print.COUNT;
      case LOCAL, CSF, SERUM, CORRECTED ->
          switch (analyte.unit()) {
            case MG_PER_L -> Print.CONCENTRATION;
            case PER_UL -> Print.COUNT;
            case MMOL_PER_L, NG_PER_ML, NG_PER_L, ONE, MG_PER_DAY, ARBITRARY -> Print.RATE;
          };
    };
  }

  /** The code of a name in a file, if it is one. */
  public static Optional<FindingCode> parse(String code) {
    return Arrays.stream(values()).filter(c -> c.code.equals(code)).findFirst();
  }
}
