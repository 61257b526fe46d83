package cistern.statement;

import cistern.criteria.CriteriaResult;
import cistern.criteria.Item;
import cistern.criteria.Ways;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What each edition of the criteria says, never merged into one.
 *
 * @param results both editions
 */
public record CriteriaStatement(List<CriteriaResult> results) implements Statement {

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
    return "; they would be met by: " + Ways.say(result.missing(), Item::term);
  }
}
