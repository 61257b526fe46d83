package cistern.differential;

import java.util.Arrays;
import java.util.Optional;

/** What can be found or not found, in the order in which it is told. */
public enum Trait {
  BANDS("bands", "bands", "CSF-only bands"),
  KAPPA_INDEX("kappa-index", "kappa-index", "raised κ index"),
  IGG_INDEX("igg-index", "igg-index", "raised IgG index"),
  MRZ_REACTION("mrz-reaction", "mrz-reaction", "positive MRZ reaction"),
  LEUKOCYTES("leukocytes", "leukocytes", "raised leukocytes"),
  /** More than 40/µL among those with 5/µL or more. */
  LEUKOCYTES_HIGH("leukocytes-over-40", "leukocytes", "more than 40 leukocytes"),
  ALBUMIN_QUOTIENT("albumin-quotient", "albumin-quotient", "raised albumin quotient"),
  ALBUMIN_QUOTIENT_HIGHER_LIMIT(
      "albumin-quotient-higher-limit", "albumin-quotient", "raised albumin quotient"),
  TOTAL_PROTEIN("total-protein", "total-protein", "raised total protein"),
  BORRELIA("borrelia-antibody-index", "borrelia-antibody-index", "raised Borrelia antibody index"),
  MOG_IGG("mog-igg", "mog-igg", "MOG antibody"),
  AQP4_IGG("aqp4-igg", "aqp4-igg", "AQP4 antibody");

  private final String code;
  private final String finding;
  private final String term;

  Trait(String code, String finding, String term) {
    this.code = code;
    this.finding = finding;
    this.term = term;
  }

  /** The finding it is read from. */
  public String finding() {
    return finding;
  }

  /** The name in sentences, when found. */
  public String term() {
    return term;
  }

  /** The trait of a fact key, if it is one. */
  static Optional<Trait> parse(String code) {
    return Arrays.stream(values()).filter(t -> t.code.equals(code)).findFirst();
  }
}
