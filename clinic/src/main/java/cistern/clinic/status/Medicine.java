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
import cistern.report.wording.PrintedTime;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/**
 * The medicine under the rules in force, and the time at which it is asked. What reads and
 * interprets is made once for some rules: none of it keeps anything of a case.
 */
public final class Medicine {

  private final String software;
  private final Clock clock;
  private final ZoneId zone;
  private final Gels gels;
  private final AtomicReference<Under> under;

  /** What reads and interprets under some rules. */
  private record Under(
      RulesInForce rules,
      Optional<ZoneId> zone,
      WorkupFile files,
      Interpreter interpreter,
      PuncturePlanning plans,
      RepeatPunctures repeats,
      NamedGel named) {

    static Under of(RulesInForce rules) {
      Facts facts = rules.facts();
      return new Under(
          rules,
          PrintedTime.of(facts).zone(),
          WorkupFile.of(facts),
          Interpreter.of(facts),
          PuncturePlanning.of(facts),
          RepeatPunctures.of(facts),
          new NamedGel(facts));
    }

    Interpretation interpret(Workup workup, Gels gels) {
      return interpreter.interpret(withGel(workup, gels));
    }

    Judged judge(Workup workup, Gels gels) {
      return interpreter.judge(withGel(workup, gels));
    }

    private Workup withGel(Workup workup, Gels gels) {
      return workup.bands() instanceof GelNamed gel
          ? gels.find(gel)
              .map(kept -> named.read(gel, Gels.read(kept, rules.facts())))
              .map(read -> workup.withBands(read.report()).withProblems(read.problems()))
              .orElse(workup)
          : workup;
    }
  }

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
    this.software = software;
    this.clock = clock;
    this.zone = zone;
    this.gels = gels;
    under = new AtomicReference<>(Under.of(rules));
  }

  /** Other rules hold from now on, for every case. */
  public void renew(RulesInForce rules) {
    under.set(Under.of(rules));
  }

  /** The same medicine under other rules and at a time that stands still, to compare with. */
  public Medicine under(RulesInForce rules, Instant at) {
    return new Medicine(rules, software, Clock.fixed(at, ZoneOffset.UTC), zone, gels);
  }

  /** What holds for every case. */
  public RulesInForce rules() {
    return under.get().rules();
  }

  /** The facts in force. */
  public Facts facts() {
    return rules().facts();
  }

  /** Name and version of the program. */
  public String software() {
    return software;
  }

  /** The time. */
  public Clock clock() {
    return clock;
  }

  /** The clinic's time: that of the rules, or where none is chosen, that of the machine. */
  public ZoneId zone() {
    return under.get().zone().orElse(zone);
  }

  /** Reads a work-up file. */
  public WorkupReading read(String workup) {
    return under
        .get()
        .files()
        .read(new ByteArrayInputStream(workup.getBytes(StandardCharsets.UTF_8)));
  }

  /** What a work-up says, with the reading of the gel that it names when that is kept here. */
  public Interpretation interpret(Workup workup) {
    return under.get().interpret(workup, gels);
  }

  /** What of a work-up is counted over many. */
  public Judged judge(Workup workup) {
    return under.get().judge(workup, gels);
  }

  /** The plan for its puncture, as of now unless it names another time. */
  public PuncturePlan plan(Interpretation interpretation) {
    return under.get().plans().interpret(interpretation);
  }

  /** A work-up as of now, unless it names another time. */
  public Workup asOfNow(Workup workup) {
    Procedure said = workup.procedure();
    return workup.withProcedure(
        new Procedure(said.before(), said.done(), said.after().withTime(now())));
  }

  /** The time now, in the clinic's time. */
  public OffsetDateTime now() {
    return clock.instant().atZone(zone()).toOffsetDateTime();
  }

  /** The comparison of repeat punctures. */
  public RepeatPunctures repeats() {
    return under.get().repeats();
  }

  /** Names of drugs as people type them. */
  public Drugs drugs() {
    return Drugs.of(facts());
  }

  /** What made a page: the program, the facts and the policy. */
  public String madeBy() {
    Facts facts = facts();
    String policy = facts.policy().map(name -> "local policy " + name).orElse("no local policy");
    return software + "; facts: " + facts.version() + "; " + policy;
  }
}
