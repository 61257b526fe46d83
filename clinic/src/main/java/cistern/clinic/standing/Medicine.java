package cistern.clinic.standing;

import cistern.bands.BandReport.GelNamed;
import cistern.clinic.gel.Gels;
import cistern.exchange.json.Json;
import cistern.exchange.workup.WorkupFile;
import cistern.exchange.workup.WorkupReading;
import cistern.fact.Facts;
import cistern.gel.NamedGel;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.interpretation.PuncturePlanning;
import cistern.interpretation.RepeatPunctures;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.puncture.procedure.Procedure;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneId;

/**
 * The medicine under the rules in force, and the time at which it is asked.
 *
 * @param rules the facts in force, and the policy that changed them
 * @param software name and version of the program
 * @param clock the time
 * @param zone the clinic's time
 * @param gels that work-ups name
 */
public record Medicine(Rules rules, String software, Clock clock, ZoneId zone, Gels gels) {

  /** The facts in force. */
  public Facts facts() {
    return rules.facts();
  }

  /** Reads a work-up file. */
  public WorkupReading read(String workup) {
    return WorkupFile.of(facts())
        .read(new ByteArrayInputStream(workup.getBytes(StandardCharsets.UTF_8)));
  }

  /** What a work-up says, with the reading of the gel that it names when that is kept here. */
  public Interpretation interpret(Workup workup) {
    return Interpreter.of(facts()).interpret(withGel(workup));
  }

  private Workup withGel(Workup workup) {
    return workup.bands() instanceof GelNamed named
        ? gels.find(named)
            .map(kept -> new NamedGel(facts()).read(named, Gels.read(kept, facts())))
            .map(gel -> workup.withBands(gel.report()).withProblems(gel.problems()))
            .orElse(workup)
        : workup;
  }

  /** The plan for its puncture, as of now unless it names another time. */
  public PuncturePlan plan(Interpretation interpretation) {
    return PuncturePlanning.of(facts()).interpret(interpretation);
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
    return RepeatPunctures.of(facts());
  }

  /** What made a page: the program, the facts and the policy. */
  public String madeBy() {
    String policy = facts().policy().map(name -> "local policy " + name).orElse("no local policy");
    return software + "; facts: " + facts().version() + "; " + policy;
  }

  /** The tree of a work-up file that is known to be valid. */
  public Json.Structure tree(String workup) {
    return switch (read(workup)) {
      case WorkupReading.Understood understood -> understood.document();
      case WorkupReading.NotValid notValid ->
          throw new IllegalStateException("only valid work-ups are kept");
    };
  }
}
