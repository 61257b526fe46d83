package cistern.uncertainty;

import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;

/**
 * How often verdicts would change if every sample were measured once more. Seen from one
 * measurement, another differs by the errors of both, so that it varies with twice the variance.
 *
 * <p>Counted are the decided verdicts on quotients, fractions, indices, the synthesis rate and
 * antibody indices, and on what is measured in CSF alone. The MRZ reaction follows from the
 * antibody indices, a local amount from its fraction; corrected values only stand beside measured
 * ones. Cells without a known imprecision are taken to stay as they are.
 *
 * @param any the chance that at least one counted verdict changes, 0 to 1
 * @param each the chance of every counted verdict by itself
 */
public record RepeatChange(double any, Map<FindingCode, Double> each) {

  /** Copies the map. */
  public RepeatChange {
    each = each.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(each));
  }

  static RepeatChange of(PanelErrors once, Rules rules, Findings findings) {
    Set<FindingCode> counted = EnumSet.noneOf(FindingCode.class);
    findings.all().stream().filter(f -> isCounted(f, once)).forEach(f -> counted.add(f.code()));
    KeptVerdicts kept = new KeptVerdicts(once.repeated(), rules, findings);
    Map<FindingCode, Double> each = new EnumMap<>(FindingCode.class);
    counted.forEach(code -> each.put(code, 1 - kept.chance(EnumSet.of(code))));
    return new RepeatChange(1 - kept.chance(counted), each);
  }

  private static boolean isCounted(Finding finding, PanelErrors errors) {
    return finding.verdict().isDecided()
        && finding.number().isPresent()
        && KeptVerdicts.isCounted(finding.code())
        && errors.isExact(finding.inputs())
        && errors.isImprecisionKnown(finding.inputs());
  }
}
