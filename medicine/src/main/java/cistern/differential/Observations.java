package cistern.differential;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What one puncture shows: only decided verdicts; what is borderline, doubted or unknown says
 * nothing.
 *
 * @param heard in the order of the traits
 */
public record Observations(List<Observation> heard) {

  private static final String HIGHER_LIMIT = "eight-plus-age-over-twenty-five";
  private static final String HIGH = "differential.leukocytes.high";

  /** Copies the list. */
  public Observations {
    heard = List.copyOf(heard);
  }

  /** The observations of one puncture; bands as the criteria see them. */
  public static Observations of(
      Findings findings, Answer bands, List<Serology> serology, Facts facts) {
    List<Observation> heard = new ArrayList<>();
    if (bands.isKnown()) {
      heard.add(new Observation(Trait.BANDS, bands.isYes()));
    }
    hear(findings, FindingCode.KAPPA_INDEX, Trait.KAPPA_INDEX).ifPresent(heard::add);
    hear(findings, FindingCode.IGG_INDEX, Trait.IGG_INDEX).ifPresent(heard::add);
    hear(findings, FindingCode.MRZ_REACTION, Trait.MRZ_REACTION).ifPresent(heard::add);
    heard.addAll(cells(findings, facts));
    barrier(findings).ifPresent(heard::add);
    hear(findings, FindingCode.BORRELIA_ANTIBODY_INDEX, Trait.BORRELIA).ifPresent(heard::add);
    hear(serology, Serology.MOG_IGG, Trait.MOG_IGG).ifPresent(heard::add);
    hear(serology, Serology.AQP4_IGG, Trait.AQP4_IGG).ifPresent(heard::add);
    return new Observations(heard);
  }

  private static Optional<Observation> hear(Findings findings, FindingCode code, Trait trait) {
    return switch (findings.verdict(code)) {
      case ABOVE -> Optional.of(new Observation(trait, true));
      case WITHIN, BELOW -> Optional.of(new Observation(trait, false));
      case BORDERLINE, UNDETERMINED -> Optional.empty();
    };
  }

  private static Optional<Observation> hear(List<Serology> serology, String test, Trait trait) {
    return serology.stream()
        .filter(s -> s.isDecided(test))
        .findFirst()
        .map(s -> new Observation(trait, s.isPositive(test)));
  }

  private static List<Observation> cells(Findings findings, Facts facts) {
    List<Observation> heard = new ArrayList<>();
    Finding leukocytes = findings.get(FindingCode.LEUKOCYTES);
    hear(findings, FindingCode.LEUKOCYTES, Trait.LEUKOCYTES).ifPresent(heard::add);
    if (leukocytes.verdict() == Verdict.ABOVE && leukocytes.number().isPresent()) {
      double value = leukocytes.number().getAsDouble();
      heard.add(new Observation(Trait.LEUKOCYTES_HIGH, value > facts.number(HIGH)));
    }
    return heard;
  }

  /** The albumin quotient, else the total protein: one of the two. */
  private static Optional<Observation> barrier(Findings findings) {
    Finding albumin = findings.get(FindingCode.ALBUMIN_QUOTIENT);
    boolean isHigherLimit = albumin.limitRule().filter(HIGHER_LIMIT::equals).isPresent();
    Trait trait = isHigherLimit ? Trait.ALBUMIN_QUOTIENT_HIGHER_LIMIT : Trait.ALBUMIN_QUOTIENT;
    return hear(findings, FindingCode.ALBUMIN_QUOTIENT, trait)
        .or(() -> hear(findings, FindingCode.TOTAL_PROTEIN, Trait.TOTAL_PROTEIN));
  }

  /** Whether a trait was heard. */
  public boolean has(Trait trait) {
    return heard.stream().anyMatch(o -> o.trait() == trait);
  }
}
