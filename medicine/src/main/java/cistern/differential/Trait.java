package cistern.differential;

import static cistern.differential.Witness.ANTIBODY_PATTERN;
import static cistern.differential.Witness.BARRIER;
import static cistern.differential.Witness.CELLS;
import static cistern.differential.Witness.INTRATHECAL_SYNTHESIS;
import static cistern.differential.Witness.SPECIFIC_ANTIBODY;

/** What can be found or not found, in the order in which the model hears it. */
public enum Trait {
  BANDS("bands", "CSF-only bands", INTRATHECAL_SYNTHESIS, Rate.BANDS),
  KAPPA_INDEX("kappa-index", "raised κ index", INTRATHECAL_SYNTHESIS, Rate.KAPPA_WITH_BANDS),
  IGG_INDEX("igg-index", "raised IgG index", INTRATHECAL_SYNTHESIS, Rate.IGG_INDEX_WITH_BANDS),
  MRZ_REACTION("mrz-reaction", "positive MRZ reaction", ANTIBODY_PATTERN, Rate.MRZ_REACTION),
  LEUKOCYTES("leukocytes", "raised leukocytes", CELLS, Rate.LEUKOCYTES),
  LEUKOCYTES_HIGH("leukocytes", "more than 40 leukocytes", CELLS, Rate.LEUKOCYTES_OVER_40),
  ALBUMIN_QUOTIENT("albumin-quotient", "raised albumin quotient", BARRIER, Rate.ALBUMIN_QUOTIENT),
  ALBUMIN_QUOTIENT_HIGHER_LIMIT(
      "albumin-quotient", "raised albumin quotient", BARRIER, Rate.ALBUMIN_QUOTIENT_HIGHER_LIMIT),
  TOTAL_PROTEIN("total-protein", "raised total protein", BARRIER, Rate.TOTAL_PROTEIN),
  BORRELIA(
      "borrelia-antibody-index",
      "raised Borrelia antibody index",
      SPECIFIC_ANTIBODY,
      Rate.BORRELIA),
  MOG_IGG("mog-igg", "MOG antibody", SPECIFIC_ANTIBODY, Rate.MOG),
  AQP4_IGG("aqp4-igg", "AQP4 antibody", SPECIFIC_ANTIBODY, Rate.AQP4);

  private final String finding;
  private final String term;
  private final Witness witness;
  private final Rate rate;

  Trait(String finding, String term, Witness witness, Rate rate) {
    this.finding = finding;
    this.term = term;
    this.witness = witness;
    this.rate = rate;
  }

  /** The finding it is read from. */
  public String finding() {
    return finding;
  }

  /** The name in sentences, when found. */
  public String term() {
    return term;
  }

  /** The witness it belongs to. */
  public Witness witness() {
    return witness;
  }

  /** How often it is found; for κ and IgG index, with bands. */
  Rate rate() {
    return rate;
  }

  /** For κ and IgG index, how often it is found without bands. */
  Rate rateWithoutBands() {
    return switch (this) {
      case KAPPA_INDEX -> Rate.KAPPA_WITHOUT_BANDS;
      case IGG_INDEX -> Rate.IGG_INDEX_WITHOUT_BANDS;
      case BANDS,
          MRZ_REACTION,
          LEUKOCYTES,
          LEUKOCYTES_HIGH,
          ALBUMIN_QUOTIENT,
          ALBUMIN_QUOTIENT_HIGHER_LIMIT,
          TOTAL_PROTEIN,
          BORRELIA,
          MOG_IGG,
          AQP4_IGG ->
          rate;
    };
  }
}
