package cistern.statement;

/**
 * What the answer leans on most and could break first.
 *
 * @param weakness the weakest link
 */
public record WeakestLink(Weakness weakness) implements Statement {

  @Override
  public String code() {
    return "weakest-link";
  }

  @Override
  public String text() {
    return "Weakest link: " + weakness.text() + ".";
  }
}
