package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;
import java.util.List;
import java.util.Optional;

/**
 * How many of the measles, rubella and varicella-zoster antibody indices are above their limit; two
 * or more are a positive MRZ reaction (Hottenrott 2017, PMC5294835).
 */
public final class MrzReaction {

  private static final int VIRUSES = 3;

  private final List<ReiberLangeAntibodyIndex> indices;
  private final Limits limits;
  private final Grounds grounds;

  private MrzReaction(Facts facts) {
    indices = ReiberLangeAntibodyIndex.all(facts).subList(0, VIRUSES);
    limits = Limits.upper(Threshold.from(facts.number("mrz-reaction.upper")));
    grounds = facts.grounds("mrz-reaction.upper");
  }

  /** The reaction under some facts. */
  public static MrzReaction of(Facts facts) {
    return new MrzReaction(facts);
  }

  /** The finding of a panel. */
  public Finding interpret(CheckedPanel panel) {
    List<Finding> all = indices.stream().map(i -> i.judged(panel)).toList();
    List<Finding> decided = all.stream().filter(f -> f.verdict().isDecided()).toList();
    List<Sample> samples = all.stream().flatMap(f -> f.inputs().stream()).distinct().toList();
    Grounds both = all.stream().map(Finding::grounds).reduce(grounds, Grounds::and);
    if (decided.isEmpty()) {
      return Finding.withoutValue(
          FindingCode.MRZ_REACTION, both, samples, "no antibody index is decided");
    }
    Interval count = Interval.of((double) decided.stream().filter(Finding::isAbove).count());
    Finding finding =
        Finding.of(FindingCode.MRZ_REACTION, count, both, samples)
            .withVerdict(limits.judge(count), limits, Optional.empty());
    Finding assessed =
        decided.size() < VIRUSES && !finding.isAbove()
            ? finding.withDoubt(
                "not fully assessable: %d of 3 antibody indices".formatted(decided.size()))
            : finding;
    Inputs inputs = new Inputs(panel, samples, List.of());
    return inputs.doubt().map(assessed::withDoubt).orElse(assessed);
  }
}
