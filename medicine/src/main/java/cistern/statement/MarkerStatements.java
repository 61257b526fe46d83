package cistern.statement;

import cistern.bands.BandVerdict;
import cistern.bedside.TreatmentKind;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.panel.Circumstance;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** What may be said of κ without bands, of single bands, and of treatments and states. */
final class MarkerStatements {

  private final StatementInput input;
  private final Facts facts;
  private final List<Statement> all = new ArrayList<>();

  private MarkerStatements(StatementInput input, Facts facts) {
    this.input = input;
    this.facts = facts;
  }

  /** The sentences that the markers and the treatments ask for. */
  static List<Statement> of(StatementInput input, Facts facts) {
    return new MarkerStatements(input, facts).statements();
  }

  private List<Statement> statements() {
    if (!input.alerts().isSilencing() && !input.alerts().isInfant()) {
      if (!input.alerts().isBandsUnknown()) {
        bands();
      }
      if (!input.alerts().isKappaUnknown()) {
        kappa();
      }
      raisedAlso();
    }
    treatments();
    states();
    return all;
  }

  private void say(String code, String text) {
    all.add(new Said(code, text));
  }

  private String words(String key) {
    return facts.word(key);
  }

  private void bands() {
    OptionalInt csfOnly = input.puncture().bands().counts().csfOnly();
    boolean isShared = input.puncture().bands().counts().shared().orElse(0) > 0;
    if (input.puncture().bands().verdict() == BandVerdict.BORDERLINE) {
      say(
          isShared ? "single-band-beside-shared" : "single-band",
          isShared
              ? "Systemic pattern with one doubtful local band: equivocal."
              : "Single band: equivocal; %s: no information either way."
                  .formatted(words("say.single-band")));
    }
    boolean isPositive = input.puncture().bands().verdict() == BandVerdict.POSITIVE;
    if (isPositive && isShared) {
      say("local-beside-systemic", "Local beside systemic: CSF-only bands and shared ones.");
    }
    boolean isFew = csfOnly.isPresent() && csfOnly.getAsInt() < facts.number("say.few-bands.under");
    if (isPositive && isFew) {
      say(
          "few-bands",
          "Positive at cut-off %d; below the count (≥%s) that separated MS from mimics (%s)."
              .formatted(
                  input.puncture().bands().cutOff(),
                  Printed.decimals(facts.number("say.few-bands.under"), 0),
                  words("say.few-bands")));
    }
    if (input.puncture().isAbove(FindingCode.IGG_INDEX)
        && input.puncture().bands().verdict() == BandVerdict.NEGATIVE) {
      say(
          "index-without-bands",
          "IgG index raised without CSF-only bands, which is unusual: %s; check blood, serum IgG, the albumin quotient and plasma exchange. The index alone satisfies no current criterion."
              .formatted(words("say.index-without-bands")));
    }
  }

  private Finding index() {
    return input.puncture().findings().get(FindingCode.KAPPA_INDEX);
  }

  private void kappa() {
    Verdict verdict = index().verdict();
    switch (input.puncture().bands().verdict()) {
      case NEGATIVE -> withoutBands(verdict);
      case UNDETERMINED -> notDone(verdict);
      case POSITIVE -> {
        if (verdict == Verdict.WITHIN || verdict == Verdict.BORDERLINE) {
          say("kappa-normal-with-bands", "κ index and bands are discordant; bands stand.");
        }
      }
      case BORDERLINE -> {}
    }
  }

  private void withoutBands(Verdict verdict) {
    if (verdict == Verdict.ABOVE) {
      say(
          "kappa-without-bands",
          "κ points to local synthesis that the gel does not show; 2024 accepts it, 2017 does not; repeat or second reader.");
      boolean isHigh =
          index()
              .value()
              .filter(v -> v.lower() > facts.number("kappa-index.grey-zone.upper"))
              .isPresent();
      if (isHigh) {
        say("kappa-high-without-bands", words("say.kappa-high-without-bands"));
      }
    }
    if (verdict == Verdict.BORDERLINE) {
      say("kappa-grey-zone", "The κ index lies in its grey zone.");
    }
    Finding fraction = input.puncture().findings().get(FindingCode.KAPPA_FRACTION);
    boolean isUnder = verdict == Verdict.WITHIN || verdict == Verdict.BORDERLINE;
    if (isUnder && fraction.isAbove()) {
      say(
          "kappa-methods-disagree",
          "Two methods disagree: index %s, fraction %s; %s."
              .formatted(printed(index()), printed(fraction), words("say.kappa-fraction")));
    }
    if (isUnder && fraction.verdict() == Verdict.WITHIN) {
      say(
          "no-sign-of-synthesis",
          "No sign of local synthesis (%s); MS remains possible."
              .formatted(words("say.no-synthesis")));
    }
  }

  private void notDone(Verdict verdict) {
    boolean isNotDone = !input.puncture().bands().isReported();
    if (isNotDone && verdict == Verdict.ABOVE) {
      say(
          "kappa-bands-not-done",
          "κ index positive for 2024 only; bands advisable up to %s."
              .formatted(Printed.decimals(facts.number("kappa-index.grey-zone.upper"), 0)));
    }
    if (isNotDone && verdict == Verdict.BORDERLINE) {
      say("kappa-grey-zone", "The κ index lies in its grey zone: bands on the same sample.");
    }
  }

  private static String printed(Finding finding) {
    return finding
        .value()
        .map(
            v ->
                v.isExact()
                    ? Printed.of(finding.code(), v.exactly())
                    : "%s to %s"
                        .formatted(
                            Printed.of(finding.code(), v.lower()),
                            Printed.of(finding.code(), v.upper())))
        .orElse("unknown");
  }

  private void raisedAlso() {
    List<String> reasons = input.alerts().kappaRaisedAlsoBy();
    if (index().isAbove() && !reasons.isEmpty()) {
      say(
          "kappa-raised-also",
          "The κ index is raised, also by %s.".formatted(String.join(" and ", reasons)));
    }
  }

  private void treatments() {
    input.alerts().treatments().forEach(this::treatment);
  }

  private void treatment(TreatmentKind kind, String drug) {
    String sentence =
        switch (kind) {
          case STEROIDS ->
              "bands are not changed as a rule; the κ index may read too high, and up to %s it does not rule in without bands; a negative result on long steroids is weak"
                  .formatted(Printed.decimals(facts.number("stop.kappa.after-steroids.to"), 0));
          case ANTI_CD20 ->
              "bands stay readable, and one that is lost suggests the drug, not another disease;"
                  + " vaccine and infection serology may be absent";
          case NATALIZUMAB, CLADRIBINE, STEM_CELLS ->
              "a negative result under it does not refute an earlier positive one";
          case IMMUNOGLOBULIN ->
              "shared bands and antibodies may come from the product; draw before the first dose";
          case PLASMA_EXCHANGE ->
              "bands and κ index stay readable; index and fraction of IgG read too high";
          case OTHER_IMMUNE -> "read a negative result with the drug";
        };
    say(
        "treatment",
        "%s before this fluid was drawn: %s."
            .formatted(Character.toUpperCase(drug.charAt(0)) + drug.substring(1), sentence));
  }

  private void states() {
    if (isYes(Circumstance.RENAL_FAILURE) && input.hasPair(Analyte.KAPPA)) {
      say(
          "renal-failure",
          "Renal failure raises serum κ; the index is not changed by it as far as known.");
    }
    if (isYes(Circumstance.PREGNANCY)) {
      say("pregnancy", "No pregnancy-specific limits are known: the ordinary ones are used.");
    }
  }

  private boolean isYes(Circumstance circumstance) {
    return input.puncture().panel().panel().answer(circumstance).isYes();
  }
}
