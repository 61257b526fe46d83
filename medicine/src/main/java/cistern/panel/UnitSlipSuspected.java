package cistern.panel;

import cistern.fact.Grounds;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A value that would be plausible if it were 10, 100 or 1000 times larger or smaller. Suggested,
 * never applied.
 *
 * @param analyte whose value it is
 * @param slips every single factor that would make the pair plausible
 * @param place where the first value concerned stands
 * @param grounds what the plausible ranges rest on
 */
public record UnitSlipSuspected(Analyte analyte, List<Slip> slips, String place, Grounds grounds)
    implements PanelTrouble, ValueUnderSuspicion {

  /**
   * One factor on one value.
   *
   * @param sample whose value
   * @param factor 10, 100, 1000 or one over these
   */
  public record Slip(Sample sample, double factor) {
    /** The total protein is watched beside albumin, so that its fluid alone does not name it. */
    private String named() {
      return sample.analyte() == Analyte.TOTAL_PROTEIN
          ? sample.term()
          : sample.in().term() + " value";
    }

    private String text() {
      return factor > 1
          ? "the %s were %d times larger".formatted(named(), Math.round(factor))
          : "the %s were %d times smaller".formatted(named(), Math.round(1 / factor));
    }
  }

  /** Copies the slips. */
  public UnitSlipSuspected {
    slips = List.copyOf(slips);
  }

  @Override
  public List<Sample> suspected() {
    return slips.stream().map(Slip::sample).distinct().toList();
  }

  @Override
  public String code() {
    return "unit-slip-suspected";
  }

  @Override
  public String text() {
    String ifs = slips.stream().map(Slip::text).collect(Collectors.joining(", or "));
    return "The %s would be plausible if %s: perhaps a slip of the unit. Nothing was changed; check value and unit against the laboratory's report."
        .formatted(analyte.term(), ifs);
  }
}
