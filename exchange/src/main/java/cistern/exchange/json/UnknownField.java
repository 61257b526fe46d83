package cistern.exchange.json;

import cistern.finding.Problem;

/**
 * A field that this program does not know: kept, never used.
 *
 * @param place its JSON path
 */
public record UnknownField(String place) implements Problem {

  @Override
  public String code() {
    return "unknown-field";
  }

  @Override
  public String text() {
    return "The field %s is not known here: it is kept and not used. Check its spelling."
        .formatted(place);
  }

  @Override
  public boolean isOfWriting() {
    return true;
  }
}
