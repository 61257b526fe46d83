package cistern.statement;

import cistern.criteria.CriteriaResult;
import cistern.criteria.Item;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What each edition of the criteria says, never merged into one.
 *
 * @param results both editions
 */
public record CriteriaStatement(List<CriteriaResult> results) implements Statement {

  private static final int MOST_SETS = 3;

  /** Copies the results. */
  public CriteriaStatement {
    results = List.copyOf(results);
  }

  @Override
  public String code() {
    return "criteria";
  }

  @Override
  public String text() {
    return results.stream().map(CriteriaStatement::sentence).collect(Collectors.joining(" "));
  }

  private static String sentence(CriteriaResult result) {
    return switch (result.verdict()) {
      case MET -> "The %s criteria are met.".formatted(result.edition());
      case NOT_MET -> "The %s criteria are not met.".formatted(result.edition());
      case UNDETERMINED ->
          "The %s criteria are undetermined%s.".formatted(result.edition(), open(result));
    };
  }

  private static String open(CriteriaResult result) {
    if (result.isWaiting()) {
      return ": " + result.note();
    }
    if (result.missing().isEmpty()) {
      return result.note().isEmpty() ? "" : ": " + result.note();
    }
    String sets =
        result.missing().stream()
            .limit(MOST_SETS)
            .map(set -> set.stream().map(Item::term).collect(Collectors.joining(" with ")))
            .collect(Collectors.joining(", or "));
    String more = result.missing().size() > MOST_SETS ? ", or another way" : "";
    return "; they would be met by: " + sets + more;
  }
}
