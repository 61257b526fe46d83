package cistern.conflict;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreted;
import cistern.panel.PanelText;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Each conflict from values at which the two methods must part; arithmetic of the formulas. */
class ConflictsTest {

  private static final String QUIET = "albumin.csf=200 albumin.serum=40000 ";

  @Nested
  class Named {

    @Test
    void check_ageRules_thatDiffer() {
      // 30 years: limits 6.0 and 9.2 × 10⁻³, quotient 7 × 10⁻³.
      Interpretation got = Interpreted.of(30, "albumin.csf=280 albumin.serum=40000");

      assertThat(codes(got)).containsExactly("age-rules-disagree");
      assertThat(text(got)).contains("above").contains("8 + age/25");
      assertThat(codes(Interpreted.of(30, "albumin.csf=400 albumin.serum=40000"))).isEmpty();
      assertThat(codes(Interpreted.of(12, "albumin.csf=280 albumin.serum=40000"))).isEmpty();
    }

    @Test
    void check_indexOverItsLimit_whileTheQuotientIsWithin() {
      // QAlb 10e-3, QIgG 7.5e-3: index 0.75, limit 7.875e-3.
      Interpretation got =
          Interpreted.of(90, "albumin.csf=400 albumin.serum=40000 igg.csf=75 igg.serum=10000");

      assertThat(codes(got)).contains("index-against-hyperbola");
      assertThat(text(got)).contains("5.16").contains("10.00").contains("quotient limit");
    }

    @Test
    void check_quotientOverItsLimit_whileTheIndexIsNot() {
      // QAlb 3e-3, limit 1.902e-3, QIgG 2.0e-3: index 0.667.
      Interpretation got =
          Interpreted.of(40, "albumin.csf=120 albumin.serum=40000 igg.csf=20 igg.serum=10000");

      assertThat(codes(got)).contains("index-against-hyperbola");
      assertThat(text(got)).contains("the IgG index is not above 0.70");
    }

    @Test
    void check_rate_againstFraction() {
      Interpretation leaky =
          Interpreted.of(45, "albumin.csf=900 albumin.serum=38000 igg.csf=140 igg.serum=12000");
      Interpretation small =
          Interpreted.of(28, "albumin.csf=180 albumin.serum=45000 igg.csf=29 igg.serum=9000");

      assertThat(codes(leaky)).contains("rate-against-fraction");
      assertThat(text(leaky)).contains("leaky barrier lifts it");
      assertThat(codes(small)).contains("rate-against-fraction");
    }

    @Test
    void check_kappaIndex_againstItsFraction() {
      Interpretation hidden =
          Interpreted.of(
              45, "albumin.csf=900 albumin.serum=38000 kappa-flc.csf=2 kappa-flc.serum=15");

      assertThat(codes(hidden)).contains("kappa-index-against-fraction");
      assertThat(text(hidden)).contains("6.1").contains("23.68");
    }

    @Test
    void check_bands_againstKappaAndFraction() {
      String kappa = QUIET + "kappa-flc.csf=0.1 kappa-flc.serum=12 igg.csf=20 igg.serum=10000";
      Interpretation positive =
          Interpreted.of(PanelText.parse(40, kappa), Interpreted.bands(5, 0, 0));
      Interpretation negative =
          Interpreted.of(
              PanelText.parse(
                  40, QUIET + "kappa-flc.csf=3 kappa-flc.serum=12 igg.csf=80 igg.serum=10000"),
              Interpreted.bands(0, 0, 0));

      assertThat(codes(positive)).containsExactly("bands-against-kappa", "bands-against-fraction");
      assertThat(codes(negative)).contains("bands-against-kappa", "bands-against-fraction");
      assertThat(text(negative)).contains("2017 criteria bands only");
    }
  }

  @Nested
  class Silent {

    @Test
    void check_borderlineBands_neverConflict() {
      Interpretation got =
          Interpreted.of(
              PanelText.parse(
                  40, QUIET + "kappa-flc.csf=3 kappa-flc.serum=12 igg.csf=80 igg.serum=10000"),
              Interpreted.bands(1, 0, 0));

      assertThat(codes(got)).doesNotContain("bands-against-kappa", "bands-against-fraction");
    }

    @Test
    void check_undeterminedFindings_neverConflict() {
      Interpretation got =
          Interpreted.of(
              PanelText.parse(40, QUIET + "kappa-flc.csf=<3 kappa-flc.serum=12"),
              Interpreted.bands(5, 0, 0));

      assertThat(codes(got)).isEmpty();
    }

    @Test
    void check_positiveBandsBesideABorderlineKappaIndex_conflict() {
      Interpretation got =
          Interpreted.of(
              PanelText.parse(40, QUIET + "kappa-flc.csf=0.25 kappa-flc.serum=10"),
              Interpreted.bands(5, 0, 0));

      assertThat(codes(got)).contains("bands-against-kappa");
    }
  }

  @Test
  void text_ofEveryConflict_saysOnWhatToLean() {
    for (Conflict conflict :
        List.of(
            new BandsAgainstFraction(true),
            new BandsAgainstFraction(false),
            new BandsAgainstKappa(true),
            new BandsAgainstKappa(false),
            new RateAgainstFraction(true, false),
            new RateAgainstFraction(false, true))) {
      assertThat(conflict.text()).containsAnyOf("ean on", "epeat");
      assertThat(conflict.findings()).hasSize(2);
    }
  }

  private static List<String> codes(Interpretation got) {
    return got.conflicts().stream().map(Conflict::code).toList();
  }

  private static String text(Interpretation got) {
    return got.conflicts().stream().map(Conflict::text).reduce("", String::concat);
  }
}
