package cistern.finding;

import static cistern.measurement.CanonicalUnit.MG_PER_DAY;
import static cistern.measurement.CanonicalUnit.MG_PER_L;
import static cistern.measurement.CanonicalUnit.MMOL_PER_L;
import static cistern.measurement.CanonicalUnit.NG_PER_ML;
import static cistern.measurement.CanonicalUnit.ONE;
import static cistern.measurement.CanonicalUnit.PER_UL;

import cistern.measurement.CanonicalUnit;
import java.util.Arrays;
import java.util.Optional;

/** Every derived quantity that an interpretation holds, in the order in which it is listed. */
public enum FindingCode {
  ALBUMIN_QUOTIENT("albumin-quotient", "albumin quotient", ONE, Print.QUOTIENT),
  IGG_QUOTIENT("igg-quotient", "IgG quotient", ONE, Print.QUOTIENT),
  IGA_QUOTIENT("iga-quotient", "IgA quotient", ONE, Print.QUOTIENT),
  IGM_QUOTIENT("igm-quotient", "IgM quotient", ONE, Print.QUOTIENT),
  KAPPA_QUOTIENT("kappa-quotient", "κ quotient", ONE, Print.QUOTIENT),
  LAMBDA_QUOTIENT("lambda-quotient", "λ quotient", ONE, Print.QUOTIENT),
  IGG_FRACTION("igg-intrathecal-fraction", "intrathecal IgG fraction", ONE, Print.FRACTION),
  IGA_FRACTION("iga-intrathecal-fraction", "intrathecal IgA fraction", ONE, Print.FRACTION),
  IGM_FRACTION("igm-intrathecal-fraction", "intrathecal IgM fraction", ONE, Print.FRACTION),
  KAPPA_FRACTION("kappa-intrathecal-fraction", "intrathecal κ fraction", ONE, Print.FRACTION),
  IGG_LOCAL("igg-local", "local IgG", MG_PER_L, Print.CONCENTRATION),
  IGA_LOCAL("iga-local", "local IgA", MG_PER_L, Print.CONCENTRATION),
  IGM_LOCAL("igm-local", "local IgM", MG_PER_L, Print.CONCENTRATION),
  KAPPA_LOCAL("kappa-local", "local κ", MG_PER_L, Print.CONCENTRATION),
  IGG_INDEX("igg-index", "IgG index", ONE, Print.INDEX),
  IGA_INDEX("iga-index", "IgA index", ONE, Print.INDEX),
  IGM_INDEX("igm-index", "IgM index", ONE, Print.INDEX),
  LAMBDA_INDEX("lambda-index", "λ index", ONE, Print.INDEX),
  KAPPA_INDEX("kappa-index", "κ index", ONE, Print.INDEX),
  IGG_SYNTHESIS_RATE("igg-synthesis-rate", "IgG synthesis rate", MG_PER_DAY, Print.RATE),
  MEASLES_ANTIBODY_INDEX("measles-antibody-index", "measles antibody index", ONE, Print.INDEX),
  RUBELLA_ANTIBODY_INDEX("rubella-antibody-index", "rubella antibody index", ONE, Print.INDEX),
  VARICELLA_ZOSTER_ANTIBODY_INDEX(
      "varicella-zoster-antibody-index", "varicella-zoster antibody index", ONE, Print.INDEX),
  BORRELIA_ANTIBODY_INDEX("borrelia-antibody-index", "Borrelia antibody index", ONE, Print.INDEX),
  MRZ_REACTION("mrz-reaction", "MRZ reaction", ONE, Print.COUNT),
  GLUCOSE_RATIO("glucose-ratio", "glucose ratio", ONE, Print.INDEX),
  LACTATE("lactate", "lactate", MMOL_PER_L, Print.RATE),
  TOTAL_PROTEIN("total-protein", "total protein", MG_PER_L, Print.CONCENTRATION),
  LEUKOCYTES("leukocytes", "leukocytes", PER_UL, Print.COUNT),
  ERYTHROCYTES("erythrocytes", "erythrocytes", PER_UL, Print.COUNT),
  MYELIN_BASIC_PROTEIN("myelin-basic-protein", "myelin basic protein", NG_PER_ML, Print.RATE),
  LEUKOCYTES_CORRECTED("leukocytes-corrected", "leukocytes without the blood", PER_UL, Print.COUNT),
  TOTAL_PROTEIN_CORRECTED(
      "total-protein-corrected", "total protein without the blood", MG_PER_L, Print.CONCENTRATION),
  IGG_CORRECTED("igg-corrected", "CSF IgG without the blood", MG_PER_L, Print.CONCENTRATION),
  IGA_CORRECTED("iga-corrected", "CSF IgA without the blood", MG_PER_L, Print.CONCENTRATION),
  IGM_CORRECTED("igm-corrected", "CSF IgM without the blood", MG_PER_L, Print.CONCENTRATION),
  ALBUMIN_CORRECTED(
      "albumin-corrected", "CSF albumin without the blood", MG_PER_L, Print.CONCENTRATION);

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

  private final String code;
  private final String term;
  private final CanonicalUnit unit;
  private final Print print;

  FindingCode(String code, String term, CanonicalUnit unit, Print print) {
    this.code = code;
    this.term = term;
    this.unit = unit;
    this.print = print;
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
    return unit;
  }

  /** How a document rounds it. */
  public Print print() {
    return print;
  }

  /** The code of a name in a file, if it is one. */
  public static Optional<FindingCode> parse(String code) {
    return Arrays.stream(values()).filter(c -> c.code.equals(code)).findFirst();
  }
}
