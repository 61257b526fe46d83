package cistern.clinic.status;

import cistern.bands.BandReport.GelNamed;
import cistern.clinic.gel.Gels;
import cistern.exchange.workup.WorkupFile;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import cistern.gel.NamedGel;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Judged;
import cistern.interpretation.PuncturePlanning;
import cistern.interpretation.RepeatPunctures;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.puncture.drug.Drugs;
import cistern.puncture.procedure.Procedure;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneId;

/**
 * The medicine under the rules in force, and the time at which it is asked. What reads and
 * interprets is made once: none of it keeps anything of a case.
 */
public final class Medicine {

  private final RulesInForce rules;
  private final String software;
  private final Clock clock;
  private final ZoneId zone;
  private final Gels gels;
  private final WorkupFile files;
  private final Interpreter interpreter;
  private final PuncturePlanning plans;
  private final RepeatPunctures repeats;
  private final NamedGel named;
  private final Drugs drugs;

  /**
   * The medicine of a clinic.
   *
   * @param rules the facts in force, and the policy that changed them
   * @param software name and version of the program
   * @param clock the time
   * @param zone the clinic's time
   * @param gels that work-ups name
   */
  public Medicine(RulesInForce rules, String software, Clock clock, ZoneId zone, Gels gels) {
    this.rules = rules;
    this.software = software;
    this.clock = clock;
    this.zone = zone;
    this.gels = gels;
    files = WorkupFile.of(rules.facts());
    interpreter = Interpreter.of(rules.facts());
    plans = PuncturePlanning.of(rules.facts());
    repeats = RepeatPunctures.of(rules.facts());
    named = new NamedGel(rules.facts());
    drugs = Drugs.of(rules.facts());
  }

  /** What holds for every case. */
  public RulesInForce rules() {
    return rules;
  }

  /** The facts in force. */
  public Facts facts() {
    return rules.facts();
  }

  /** Name and version of the program. */
  public String software() {
    return software;
  }

  /** The time. */
  public Clock clock() {
    return clock;
  }

  /** The clinic's time. */
  public ZoneId zone() {
    return zone;
  }

  /** Reads a work-up file. */
  public WorkupReading read(String workup) {
    return files.read(new ByteArrayInputStream(workup.getBytes(StandardCharsets.UTF_8)));
  }

  /** What a work-up says, with the reading of the gel that it names when that is kept here. */
  public Interpretation interpret(Workup workup) {
    return interpreter.interpret(withGel(workup));
  }

  /** What of a work-up is counted over many. */
  public Judged judge(Workup workup) {
    return interpreter.judge(withGel(workup));
  }

  private Workup withGel(Workup workup) {
    return workup.bands() instanceof GelNamed gel
        ? gels.find(gel)
            .map(kept -> named.read(gel, Gels.read(kept, facts())))
            .map(read -> workup.withBands(read.report()).withProblems(read.problems()))
            .orElse(workup)
        : workup;
  }

  /** The plan for its puncture, as of now unless it names another time. */
  public PuncturePlan plan(Interpretation interpretation) {
    return plans.interpret(interpretation);
  }

  /** A work-up as of now, unless it names another time. */
  public Workup asOfNow(Workup workup) {
    Procedure said = workup.procedure();
    return workup.withProcedure(
        new Procedure(said.before(), said.done(), said.after().withTime(now())));
  }

  /** The time now, in the clinic's time. */
  public OffsetDateTime now() {
    return clock.instant().atZone(zone).toOffsetDateTime();
  }

  /** The comparison of repeat punctures. */
  public RepeatPunctures repeats() {
    return repeats;
  }

  /** Names of drugs as people type them. */
  public Drugs drugs() {
    return drugs;
  }

  /** What made a page: the program, the facts and the policy. */
  public String madeBy() {
    String policy = facts().policy().map(name -> "local policy " + name).orElse("no local policy");
    return software + "; facts: " + facts().version() + "; " + policy;
  }
}
