package cistern.differential;

import java.util.Arrays;
import java.util.Optional;

/** How often something is found in a disease: the parameters of the model. */
enum Rate {
  BANDS("bands", "CSF-only bands"),
  /** CSF-only bands among those whose imaging already raised the suspicion. */
  BANDS_AFTER_MRI("bands-after-mri", "CSF-only bands where the imaging raised the suspicion"),
  KAPPA_WITH_BANDS("kappa-index.bands-positive", "raised κ index beside bands"),
  KAPPA_WITHOUT_BANDS("kappa-index.bands-negative", "raised κ index without bands"),
  IGG_INDEX_WITH_BANDS("igg-index.bands-positive", "raised IgG index beside bands"),
  IGG_INDEX_WITHOUT_BANDS("igg-index.bands-negative", "raised IgG index without bands"),
  MRZ_REACTION("mrz-reaction", "positive MRZ reaction"),
  LEUKOCYTES("leukocytes", "raised leukocytes"),
  /** More than 40/µL among those with 5/µL or more. */
  LEUKOCYTES_OVER_40("leukocytes-over-40", "more than 40 leukocytes among raised ones"),
  ALBUMIN_QUOTIENT("albumin-quotient", "raised albumin quotient"),
  ALBUMIN_QUOTIENT_HIGHER_LIMIT(
      "albumin-quotient-higher-limit", "albumin quotient over the higher age rule"),
  TOTAL_PROTEIN("total-protein", "raised total protein"),
  BORRELIA("borrelia-antibody-index", "raised Borrelia antibody index"),
  MOG("mog-igg", "MOG antibody"),
  AQP4("aqp4-igg", "AQP4 antibody"),
  /** Bands found at a second puncture when the first showed none. */
  BANDS_GAINED("bands-gained", "bands at a second puncture after none");

  private final String code;
  private final String term;

  Rate(String code, String term) {
    this.code = code;
    this.term = term;
  }

  /** The part of a fact key. */
  String code() {
    return code;
  }

  /** The rate in words. */
  String term() {
    return term;
  }

  /** Whether it is a rate given the bands, which one published table gives for every disease. */
  boolean isGivenBands() {
    return switch (this) {
      case KAPPA_WITH_BANDS, KAPPA_WITHOUT_BANDS, IGG_INDEX_WITH_BANDS, IGG_INDEX_WITHOUT_BANDS ->
          true;
      case BANDS,
          BANDS_AFTER_MRI,
          MRZ_REACTION,
          LEUKOCYTES,
          LEUKOCYTES_OVER_40,
          ALBUMIN_QUOTIENT,
          ALBUMIN_QUOTIENT_HIGHER_LIMIT,
          TOTAL_PROTEIN,
          BORRELIA,
          MOG,
          AQP4,
          BANDS_GAINED ->
          false;
    };
  }

  static Optional<Rate> parse(String code) {
    return Arrays.stream(values()).filter(r -> r.code.equals(code)).findFirst();
  }
}
