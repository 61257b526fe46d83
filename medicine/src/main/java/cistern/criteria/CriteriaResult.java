package cistern.criteria;

import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;

/**
 * What one edition says of one person.
 *
 * @param edition the year by which it is called
 * @param ruleSet the name of the rule set
 * @param verdict by the completion rule
 * @param rows every row that holds in at least one consistent completion, when met; else empty
 * @param disseminationInTime what stands for it, when met by a row of 2017 that asks for it
 * @param grounds the weakest status and the sources of the rows and of the facts behind their
 *     inputs
 * @param missing the smallest sets of unknown items that would give met
 * @param missingAgainst the smallest sets that would give not met
 * @param checklist every item that a row for this presentation reads
 * @param note why, in words; may be empty
 */
public record CriteriaResult(
    String edition,
    String ruleSet,
    CriteriaVerdict verdict,
    List<String> rows,
    Optional<DisseminationInTime> disseminationInTime,
    Grounds grounds,
    List<List<Item>> missing,
    List<List<Item>> missingAgainst,
    List<Checked> checklist,
    String note) {

  /** Copies the lists. */
  public CriteriaResult {
    rows = List.copyOf(rows);
    missing = List.copyOf(missing);
    missingAgainst = List.copyOf(missingAgainst);
    checklist = List.copyOf(checklist);
  }

  /** Whether what was found first waits for an explanation. */
  public boolean isWaiting() {
    return note.equals(Evaluation.WAITING);
  }

  /** Whether the verdict is met. */
  public boolean isMet() {
    return verdict == CriteriaVerdict.MET;
  }
}
