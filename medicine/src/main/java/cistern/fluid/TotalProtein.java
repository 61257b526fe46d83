package cistern.fluid;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;
import cistern.panel.Person;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Total protein in CSF, mg/L, against a table by age (the default) or one limit for all. */
public final class TotalProtein {

  /** The key by which policy chooses the rule. */
  public static final String RULE_KEY = "total-protein.limit-rule";

  /** One limit at every age. */
  public static final String FIXED = "fixed";

  /** Limits by age: the first 90 days, and from 1 to 70 years. */
  public static final String BY_AGE = "by-age";

  private static final Sample CSF = Sample.csf(Analyte.TOTAL_PROTEIN);
  private static final String UPPER = "total-protein.upper";
  private static final String YOUNGEST = "total-protein.by-age.youngest";
  private static final List<String> BANDS =
      List.of("under-11", "under-19", "under-41", "under-51", "under-61", "under-71");

  private final Facts facts;
  private final boolean isByAge;

  private TotalProtein(Facts facts) {
    this.facts = facts;
    this.isByAge = facts.word(RULE_KEY).equals(BY_AGE);
  }

  /** The rule under some facts. */
  public static TotalProtein of(Facts facts) {
    return new TotalProtein(facts);
  }

  /** The limits at an age; none where the chosen table has no row. */
  public Limits limits(Person person) {
    Optional<Infancy> infancy = Infancy.of(person, facts);
    return infancy.isPresent() ? infancy.get().protein(facts) : limits(person.ageYears());
  }

  private Limits limits(OptionalDouble ageYears) {
    return key(ageYears)
        .map(key -> Limits.upper(Threshold.over(facts.number(key))))
        .orElse(Limits.NONE);
  }

  private Optional<String> key(OptionalDouble ageYears) {
    if (!isByAge) {
      return Optional.of(UPPER);
    }
    if (ageYears.isEmpty() || ageYears.getAsDouble() < facts.number(YOUNGEST)) {
      return Optional.empty();
    }
    return BANDS.stream()
        .map(band -> "total-protein.by-age." + band)
        .filter(band -> ageYears.getAsDouble() < facts.number(band + ".age"))
        .map(band -> band + ".upper")
        .findFirst();
  }

  private Grounds grounds(Person person) {
    return Infancy.of(person, facts)
        .map(part -> part.key("total-protein.upper"))
        .filter(key -> facts.find(key).isPresent())
        .or(() -> key(person.ageYears()))
        .map(facts::grounds)
        .orElse(facts.grounds(RULE_KEY));
  }

  /** The finding of a panel. */
  public Finding interpret(CheckedPanel panel) {
    Inputs inputs = Inputs.of(panel, CSF);
    Person person = panel.panel().person();
    Grounds grounds = grounds(person);
    Optional<String> obstacle = inputs.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(
          FindingCode.TOTAL_PROTEIN, grounds, inputs.present(), obstacle.get());
    }
    Interval value = inputs.interval(CSF);
    Limits limits = limits(person);
    Finding finding =
        Finding.of(FindingCode.TOTAL_PROTEIN, value, grounds, inputs.present())
            .withVerdict(limits.judge(value), limits, Optional.of(facts.word(RULE_KEY)));
    return limits.isKnown()
        ? finding
        : finding.withNote(person.ageYears().isPresent() ? "no limit for this age" : "age unknown");
  }
}
