package cistern.conflict;

import cistern.bands.BandReading;
import cistern.bands.BandVerdict;
import cistern.barrier.AlbuminQuotient;
import cistern.barrier.IndexCrossing;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.FindingValue;
import cistern.finding.Findings;
import cistern.finding.Verdict;
import cistern.panel.CheckedPanel;
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
  public List<Conflict> check(CheckedPanel panel, Findings findings, BandReading bands) {
    List<Conflict> all = new ArrayList<>();
    ageRules(panel, findings).ifPresent(all::add);
    Finding index = findings.get(FindingCode.IGG_INDEX);
    Finding fraction = findings.get(FindingCode.IGG_FRACTION);
    Finding kappaIndex = findings.get(FindingCode.KAPPA_INDEX);
    OptionalDouble quotient = quotient(findings);
    if (disagree(index, findings.get(FindingCode.IGG_QUOTIENT))) {
      SerumHint hint = SerumHint.of(panel.problems());
      all.add(new IndexAgainstHyperbola(index.isAbove(), quotient, igg, hint));
    }
    Finding rate = findings.get(FindingCode.IGG_SYNTHESIS_RATE);
    if (disagree(rate, fraction)) {
      boolean isLeaking = findings.get(FindingCode.ALBUMIN_QUOTIENT).isAbove();
      all.add(new RateAgainstFraction(rate.isAbove(), isLeaking));
    }
    if (disagree(kappaIndex, findings.get(FindingCode.KAPPA_FRACTION))) {
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

  private Optional<Conflict> ageRules(CheckedPanel panel, Findings findings) {
    Finding inForce = findings.get(FindingCode.ALBUMIN_QUOTIENT);
    return albumin
        .dissent(panel, inForce)
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

  private static OptionalDouble quotient(Findings findings) {
    return switch (findings.get(FindingCode.ALBUMIN_QUOTIENT).value()) {
      case FindingValue.Point p -> OptionalDouble.of(p.value());
      case FindingValue.Bounds b -> OptionalDouble.empty();
      case FindingValue.None n -> OptionalDouble.empty();
    };
  }
}
