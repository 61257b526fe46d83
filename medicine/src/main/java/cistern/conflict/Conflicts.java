package cistern.conflict;

import cistern.analysis.Puncture;
import cistern.bands.BandReading;
import cistern.bands.BandVerdict;
import cistern.barrier.AlbuminQuotient;
import cistern.barrier.IndexCrossing;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds where two ways of asking disagree: exactly one is above, or positive, and the other is
 * decided. Undetermined findings and borderline bands never conflict; a borderline index is not
 * above.
 */
public final class Conflicts {

  private final AlbuminQuotient albumin;
  private final IndexCrossing igg;
  private final IndexCrossing kappa;

  private Conflicts(Facts facts) {
    albumin = AlbuminQuotient.of(facts);
    igg = IndexCrossing.igg(facts);
    kappa = IndexCrossing.kappa(facts);
  }

  /** The search under some facts. */
  public static Conflicts of(Facts facts) {
    return new Conflicts(facts);
  }

  /** All conflicts of one puncture. */
  public List<Conflict> check(Puncture puncture) {
    BandReading bands = puncture.bands();
    List<Conflict> all = new ArrayList<>();
    ageRules(puncture).ifPresent(all::add);
    Finding index = puncture.finding(FindingCode.IGG_INDEX);
    Finding fraction = puncture.finding(FindingCode.IGG_FRACTION);
    Finding kappaIndex = puncture.finding(FindingCode.KAPPA_INDEX);
    OptionalDouble quotient = puncture.finding(FindingCode.ALBUMIN_QUOTIENT).number();
    if (disagree(index, puncture.finding(FindingCode.IGG_QUOTIENT))) {
      SerumHint hint = SerumHint.of(puncture.panel().problems());
      all.add(new IndexAgainstHyperbola(index.isAbove(), quotient, igg, hint));
    }
    Finding rate = puncture.finding(FindingCode.IGG_SYNTHESIS_RATE);
    if (disagree(rate, fraction)) {
      boolean isLeaking = puncture.isAbove(FindingCode.ALBUMIN_QUOTIENT);
      all.add(new RateAgainstFraction(rate.isAbove(), isLeaking));
    }
    if (disagree(kappaIndex, puncture.finding(FindingCode.KAPPA_FRACTION))) {
      all.add(new KappaIndexAgainstFraction(kappaIndex.isAbove(), quotient, kappa));
    }
    if (disagree(bands, kappaIndex)) {
      all.add(new BandsAgainstKappa(isPositive(bands)));
    }
    if (disagree(bands, fraction)) {
      all.add(new BandsAgainstFraction(isPositive(bands)));
    }
    bands
        .contradictedPattern()
        .map(p -> new CountsAgainstPattern(bands.counts().csfOnly().orElseThrow(), p))
        .ifPresent(all::add);
    return all;
  }

  private Optional<Conflict> ageRules(Puncture puncture) {
    Finding inForce = puncture.finding(FindingCode.ALBUMIN_QUOTIENT);
    return albumin
        .dissent(puncture.panel(), inForce)
        .map(
            other ->
                new AgeRulesDisagree(
                    inForce.limitRule().orElseThrow(),
                    inForce.verdict(),
                    albumin.limits().alternative().rule(),
                    other));
  }

  private static boolean disagree(Finding a, Finding b) {
    return a.verdict().isDecided() && b.verdict().isDecided() && a.isAbove() != b.isAbove();
  }

  private static boolean disagree(BandReading bands, Finding finding) {
    return switch (bands.verdict()) {
      case UNDETERMINED, BORDERLINE -> false;
      case POSITIVE -> finding.verdict() != Verdict.UNDETERMINED && !finding.isAbove();
      case NEGATIVE -> finding.isAbove();
    };
  }

  private static boolean isPositive(BandReading bands) {
    return bands.verdict() == BandVerdict.POSITIVE;
  }
}
