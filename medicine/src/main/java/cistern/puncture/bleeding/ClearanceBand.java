package cistern.puncture.bleeding;

import java.util.OptionalDouble;

/**
 * The creatinine clearances for which a rule was written, mL/min.
 *
 * @param from the least, itself included
 * @param over the least, itself left out
 * @param upTo the most, itself included
 * @param below the most, itself left out
 */
record ClearanceBand(
    OptionalDouble from, OptionalDouble over, OptionalDouble upTo, OptionalDouble below) {

  boolean isEvery() {
    return from.isEmpty() && over.isEmpty() && upTo.isEmpty() && below.isEmpty();
  }

  boolean contains(double clearance) {
    return clearance >= from.orElse(0)
        && clearance > over.orElse(-1)
        && clearance <= upTo.orElse(Double.MAX_VALUE)
        && clearance < below.orElse(Double.POSITIVE_INFINITY);
  }

  String toText() {
    if (isEvery()) {
      return "";
    }
    StringBuilder text = new StringBuilder("creatinine clearance ");
    from.ifPresent(v -> text.append("from ").append(whole(v)));
    over.ifPresent(v -> text.append("over ").append(whole(v)));
    upTo.ifPresent(v -> text.append(" up to ").append(whole(v)));
    below.ifPresent(v -> text.append(from.isPresent() ? " to under " : "under ").append(whole(v)));
    return text.append(" mL/min").toString();
  }

  private static String whole(double value) {
    return cistern.finding.Printed.decimals(value, value == Math.rint(value) ? 0 : 1);
  }
}
