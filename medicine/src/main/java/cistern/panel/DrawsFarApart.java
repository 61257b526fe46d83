package cistern.panel;

import cistern.fact.Grounds;
import cistern.finding.Printed;
import java.util.Optional;

/**
 * CSF and serum were drawn so far apart that they may not, or do not, compare.
 *
 * @param hours absolute, between the draws
 * @param isInvalid whether values of both fluids must not be compared
 * @param grounds what the allowed hours rest on
 */
public record DrawsFarApart(double hours, boolean isInvalid, Grounds grounds)
    implements PanelTrouble {

  static Optional<DrawsFarApart> check(Pairing pairing) {
    return switch (pairing.verdict()) {
      case VALID, UNKNOWN -> Optional.empty();
      case DOUBTFUL, INVALID ->
          Optional.of(
              new DrawsFarApart(
                  Math.abs(pairing.hoursApart().orElseThrow()),
                  pairing.isInvalid(),
                  pairing.grounds()));
    };
  }

  @Override
  public String code() {
    return "draws-far-apart";
  }

  @Override
  public String place() {
    return "draws";
  }

  @Override
  public String text() {
    String apart =
        "CSF and serum were drawn " + Printed.decimals(hours, hours < 100 ? 1 : 0) + " h apart";
    return isInvalid
        ? apart
            + ": too far to compare them, so every value that uses both fluids is undetermined."
            + " A new pair drawn together would settle it."
        : apart
            + ": the serum may no longer mirror the serum at the puncture. Read quotients and"
            + " indices with reserve, or draw serum and CSF together again.";
  }
}
