package cistern.statement;

import cistern.finding.Chances;

/**
 * The verdict that would change most often if every sample were measured once more.
 *
 * @param term what the verdict is on
 * @param chance the chance that it changes, 0 to 1
 */
public record Repeatability(String term, double chance) implements Statement {

  @Override
  public String code() {
    return "repeatability";
  }

  @Override
  public String text() {
    return "If every sample were measured once more, the verdict on the %s would be likeliest to change: %s. A repeat carries the errors of both measurements."
        .formatted(term, Chances.of(chance));
  }
}
