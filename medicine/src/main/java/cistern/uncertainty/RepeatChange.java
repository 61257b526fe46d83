package cistern.uncertainty;

import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * How often a verdict would change if every sample were measured once more. Seen from one
 * measurement, another differs by the errors of both, so that it varies with twice the variance.
 *
 * <p>Counted are the decided verdicts on quotients, fractions, indices, the synthesis rate and
 * antibody indices, and on what is measured in CSF alone. The MRZ reaction follows from the
 * antibody indices, a local amount from its fraction; corrected values only stand beside measured
 * ones. Cells without a known imprecision are taken to stay as they are.
 *
 * @param each the chance that a counted verdict changes, 0 to 1
 */
public record RepeatChange(Map<FindingCode, Double> each) {

  /** Copies the map. */
  public RepeatChange {
    each = each.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(each));
  }

  /** The verdict that is likeliest to change, the first of several. */
  public Optional<Map.Entry<FindingCode, Double>> likeliest() {
    return each.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .max(Comparator.comparingDouble(Map.Entry::getValue));
  }

  static RepeatChange of(PanelErrors once, Rules rules, Findings findings) {
    PanelSpreads again = new PanelSpreads(once.repeated(), rules);
    Map<FindingCode, Double> each = new EnumMap<>(FindingCode.class);
    findings.all().stream()
        .filter(f -> isCounted(f, once))
        .forEach(f -> each.put(f.code(), 1 - again.chanceToKeep(f)));
    return new RepeatChange(each);
  }

  private static boolean isCounted(Finding finding, PanelErrors errors) {
    boolean isOneOfThem =
        switch (finding.code().kind()) {
          case QUOTIENT, FRACTION, INDEX, RATE, ANTIBODY_INDEX, RATIO, CSF, SERUM -> true;
          case LOCAL, REACTION, CORRECTED -> false;
        };
    return isOneOfThem
        && finding.verdict().isDecided()
        && finding.number().isPresent()
        && errors.isExact(finding.inputs())
        && errors.isImprecisionKnown(finding.inputs());
  }
}
