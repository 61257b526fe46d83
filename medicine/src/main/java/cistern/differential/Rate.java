package cistern.differential;

import java.util.Arrays;
import java.util.Optional;

/** How often something is found in a disease: the parameters of the model. */
enum Rate {
  BANDS("bands"),
  /** CSF-only bands among those whose imaging already raised the suspicion. */
  BANDS_AFTER_MRI("bands-after-mri"),
  KAPPA_WITH_BANDS("kappa-index.bands-positive"),
  KAPPA_WITHOUT_BANDS("kappa-index.bands-negative"),
  IGG_INDEX_WITH_BANDS("igg-index.bands-positive"),
  IGG_INDEX_WITHOUT_BANDS("igg-index.bands-negative"),
  MRZ_REACTION("mrz-reaction"),
  LEUKOCYTES("leukocytes"),
  /** More than 40/µL among those with 5/µL or more. */
  LEUKOCYTES_OVER_40("leukocytes-over-40"),
  ALBUMIN_QUOTIENT("albumin-quotient"),
  ALBUMIN_QUOTIENT_HIGHER_LIMIT("albumin-quotient-higher-limit"),
  TOTAL_PROTEIN("total-protein"),
  BORRELIA("borrelia-antibody-index"),
  MOG("mog-igg"),
  AQP4("aqp4-igg"),
  /** Bands found at a second puncture when the first showed none. */
  BANDS_GAINED("bands-gained");

  private final String code;

  Rate(String code) {
    this.code = code;
  }

  /** The part of a fact key. */
  String code() {
    return code;
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
