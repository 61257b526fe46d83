package cistern.finding;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** All findings of one puncture: every code exactly once, in order. */
public final class Findings {

  private final Map<FindingCode, Finding> byCode = new EnumMap<>(FindingCode.class);
  private final List<Finding> inOrder;

  private Findings(List<Finding> all) {
    for (Finding finding : all) {
      if (byCode.put(finding.code(), finding) != null) {
        throw new IllegalArgumentException(finding.code().code() + " stands twice");
      }
    }
    Arrays.stream(FindingCode.values())
        .filter(code -> !byCode.containsKey(code))
        .findFirst()
        .ifPresent(
            code -> {
              throw new IllegalArgumentException(code.code() + " is missing");
            });
    inOrder = List.copyOf(byCode.values());
  }

  /**
   * The findings of one puncture.
   *
   * @throws IllegalArgumentException when a code is missing or comes twice
   */
  public static Findings of(List<Finding> all) {
    return new Findings(all);
  }

  /** The finding of a code. */
  public Finding get(FindingCode code) {
    Finding finding = byCode.get(code);
    if (finding == null) {
      throw new IllegalStateException(code.code() + " is missing");
    }
    return finding;
  }

  /** The verdict of a code. */
  public Verdict verdict(FindingCode code) {
    return get(code).verdict();
  }

  /** All findings in order. */
  public List<Finding> all() {
    return inOrder;
  }
}
