package cistern.puncture.aftercare;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.TakenDrugs;
import cistern.puncture.decision.Contraindications.Standing;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.urgent.Urgency;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/** What follows a puncture under one set of facts. */
public final class AfterCares {

  private static final long SECONDS_PER_DAY = 86_400;

  private final Facts facts;
  private final AfterCareRules rules;
  private final PatchRules patches;

  private AfterCares(Facts facts) {
    this.facts = facts;
    rules = new AfterCareRules(facts);
    patches = new PatchRules(facts, rules);
  }

  /** The rules under some facts. */
  public static AfterCares of(Facts facts) {
    return new AfterCares(facts);
  }

  /** What of it must be said first. */
  public List<Urgency> urgent(Procedure procedure, PuncturedPerson person, TakenDrugs drugs) {
    return rules.check(Complaint.of(procedure, person, drugs));
  }

  /**
   * What follows.
   *
   * @param clotting how clotting stands
   * @param today every antithrombotic's interval up to the time at which it is looked at
   */
  public AfterCare check(
      Procedure procedure,
      PuncturedPerson person,
      TakenDrugs drugs,
      Standing clotting,
      List<AntithromboticPlan> today) {
    Complaint complaint = Complaint.of(procedure, person, drugs);
    List<Urgency> urgent = rules.check(complaint);
    AfterCare.PatchInformation patch = patches.check(complaint, urgent, clotting, today);
    return new AfterCare(
        urgent, patch, ladder(complaint, urgent, patch.isHeld()), calls(person.draw().at()));
  }

  /** Nothing that soothes stands beside a red flag or an open emergency of the fluid. */
  private List<AfterCare.LadderStep> ladder(
      Complaint complaint, List<Urgency> urgent, boolean isPatchHeld) {
    boolean isFlagged =
        urgent.stream().anyMatch(u -> u.holds() && !u.code().equals(AfterCareRules.SEVERE))
            || complaint.person().beside().fluid().isOpen();
    if (isFlagged || complaint.present() == Answer.NO) {
      return List.of();
    }
    return rows("ladder.").stream()
        .filter(row -> !(isPatchHeld && row.endsWith("patch")))
        .map(
            row ->
                new AfterCare.LadderStep(
                    row.substring("ladder.".length()),
                    facts.word(row + ".say"),
                    facts.word(row + ".check"),
                    facts.grounds(row + ".say")))
        .toList();
  }

  private List<AfterCare.FollowUpCall> calls(Optional<OffsetDateTime> at) {
    return rows("call.").stream()
        .map(
            row -> {
              double from = facts.number(row + ".from");
              double to = facts.number(row + ".to");
              return new AfterCare.FollowUpCall(
                  row.substring("call.".length()),
                  facts.word(row + ".say"),
                  from,
                  to,
                  at.map(t -> later(t, from)),
                  at.map(t -> later(t, to)),
                  facts.grounds(row + ".say"));
            })
        .toList();
  }

  private static OffsetDateTime later(OffsetDateTime at, double days) {
    return at.plusSeconds(Math.round(days * SECONDS_PER_DAY));
  }

  private List<String> rows(String start) {
    return facts.keys(start).stream()
        .filter(key -> key.endsWith(".say"))
        .map(key -> key.substring(0, key.length() - ".say".length()))
        .toList();
  }
}
