package cistern.redflag;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Every red flag that a puncture raises, in one order. */
public final class RedFlags {

  private static final List<Function<FlagInput, Optional<RedFlag>>> CHECKS =
      List.of(
          MogAntibody::check,
          Aqp4Antibody::check,
          LeukocytesBeyondMs::check,
          GlucoseRatioLow::check,
          LactateHigh::check,
          ProteinHigh::check,
          AlbuminQuotientHigh::check,
          NeutrophilsProminent::check,
          EosinophilsProminent::check,
          BorreliaAntibodyRaised::check,
          ThreeClassSynthesis::check,
          IgmDominantSynthesis::check,
          MrzNegativeWithSign::check,
          LeukocytesRaised::check,
          MonoclonalLadder::check,
          BandsAlike::check,
          NoCsfOnlyBands::check,
          XanthochromicFluid::check);

  private RedFlags() {}

  /** The flags, those that most urgently ask for another thought first. */
  public static List<RedFlag> check(FlagInput input) {
    return CHECKS.stream().map(check -> check.apply(input)).flatMap(Optional::stream).toList();
  }
}
