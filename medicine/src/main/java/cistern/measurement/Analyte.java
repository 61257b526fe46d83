package cistern.measurement;

import static cistern.measurement.CanonicalUnit.ARBITRARY;
import static cistern.measurement.CanonicalUnit.MG_PER_L;
import static cistern.measurement.CanonicalUnit.MMOL_PER_L;
import static cistern.measurement.CanonicalUnit.NG_PER_L;
import static cistern.measurement.CanonicalUnit.NG_PER_ML;
import static cistern.measurement.CanonicalUnit.ONE;
import static cistern.measurement.CanonicalUnit.PER_UL;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What is measured in a fluid. */
public enum Analyte {
  ALBUMIN("albumin", "albumin", MG_PER_L, Family.PROTEIN),
  IGG("igg", "IgG", MG_PER_L, Family.IMMUNOGLOBULIN),
  IGA("iga", "IgA", MG_PER_L, Family.IMMUNOGLOBULIN),
  IGM("igm", "IgM", MG_PER_L, Family.IMMUNOGLOBULIN),
  KAPPA("kappa-flc", "κ free light chains", MG_PER_L, Family.LIGHT_CHAIN),
  LAMBDA("lambda-flc", "λ free light chains", MG_PER_L, Family.LIGHT_CHAIN),
  TOTAL_PROTEIN("total-protein", "total protein", MG_PER_L, Family.PROTEIN),
  GLUCOSE("glucose", "glucose", MMOL_PER_L, Family.METABOLITE),
  LACTATE("lactate", "lactate", MMOL_PER_L, Family.METABOLITE),
  LEUKOCYTES("leukocytes", "leukocytes", PER_UL, Family.CELLS),
  ERYTHROCYTES("erythrocytes", "erythrocytes", PER_UL, Family.CELLS),
  HEMATOCRIT("hematocrit", "haematocrit", ONE, Family.FRACTION),
  NEUTROPHILS("neutrophils", "neutrophils", ONE, Family.FRACTION),
  LYMPHOCYTES("lymphocytes", "lymphocytes", ONE, Family.FRACTION),
  MONOCYTES("monocytes", "monocytes", ONE, Family.FRACTION),
  EOSINOPHILS("eosinophils", "eosinophils", ONE, Family.FRACTION),
  PLASMA_CELLS("plasma-cells", "plasma cells", ONE, Family.FRACTION),
  MYELIN_BASIC_PROTEIN("myelin-basic-protein", "myelin basic protein", NG_PER_ML, Family.PROTEIN),
  NEUROFILAMENT_LIGHT("neurofilament-light", "neurofilament light", NG_PER_L, Family.PROTEIN),
  MEASLES_IGG("measles-igg", "measles IgG", ARBITRARY, Family.SPECIFIC_ANTIBODY),
  RUBELLA_IGG("rubella-igg", "rubella IgG", ARBITRARY, Family.SPECIFIC_ANTIBODY),
  VARICELLA_ZOSTER_IGG(
      "varicella-zoster-igg", "varicella-zoster IgG", ARBITRARY, Family.SPECIFIC_ANTIBODY),
  BORRELIA_IGG("borrelia-igg", "Borrelia IgG", ARBITRARY, Family.SPECIFIC_ANTIBODY);

  private static final Map<String, Analyte> BY_CODE =
      Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(Analyte::code, a -> a));

  /** Kinds of analyte that share rules. */
  public enum Family {
    PROTEIN,
    IMMUNOGLOBULIN,
    LIGHT_CHAIN,
    METABOLITE,
    CELLS,
    FRACTION,
    SPECIFIC_ANTIBODY
  }

  private final String code;
  private final String term;
  private final CanonicalUnit unit;
  private final Family family;

  Analyte(String code, String term, CanonicalUnit unit, Family family) {
    this.code = code;
    this.term = term;
    this.unit = unit;
    this.family = family;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }

  /** The unit in which the medicine holds it. */
  public CanonicalUnit unit() {
    return unit;
  }

  /** The kind that decides which rules apply. */
  public Family family() {
    return family;
  }

  /** Whether it comes as a pair of CSF and serum: only then does a missing counterpart matter. */
  public boolean isPaired() {
    return switch (family) {
      case IMMUNOGLOBULIN, LIGHT_CHAIN, SPECIFIC_ANTIBODY -> true;
      case PROTEIN -> this == ALBUMIN;
      case METABOLITE -> this == GLUCOSE;
      case CELLS, FRACTION -> false;
    };
  }

  /** Whether it is measured as a concentration, which has a default imprecision. */
  public boolean isConcentration() {
    return switch (family) {
      case IMMUNOGLOBULIN, LIGHT_CHAIN, SPECIFIC_ANTIBODY, PROTEIN, METABOLITE -> true;
      case CELLS, FRACTION -> false;
    };
  }

  /** The analyte of a name in a file, if it is one that we know. */
  public static Optional<Analyte> parse(String code) {
    return Optional.ofNullable(BY_CODE.get(code));
  }
}
