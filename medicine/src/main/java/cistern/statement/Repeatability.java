package cistern.statement;

import cistern.finding.Chances;

/**
 * How often the whole interpretation would change if every sample were measured once more.
 *
 * @param any the chance that at least one verdict changes, 0 to 1
 */
public record Repeatability(double any) implements Statement {

  @Override
  public String code() {
    return "repeatability";
  }

  @Override
  public String text() {
    return "If every sample were measured once more, there would be %s that at least one verdict changes; a repeat carries the errors of both measurements."
        .formatted(Chances.of(any));
  }
}
