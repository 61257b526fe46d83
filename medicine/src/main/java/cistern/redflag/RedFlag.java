package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import java.util.List;

/** A finding that is unusual in MS: it prompts a thought and rules nothing out. */
public sealed interface RedFlag
    permits AlbuminQuotientHigh,
        Aqp4Antibody,
        BandsAlike,
        BorreliaAntibodyRaised,
        EosinophilsProminent,
        GlucoseRatioLow,
        IgmDominantSynthesis,
        LactateHigh,
        LeukocytesBeyondMs,
        LeukocytesRaised,
        MogAntibody,
        MonoclonalLadder,
        MrzNegativeWithSign,
        NeutrophilsProminent,
        NoCsfOnlyBands,
        ProteinHigh,
        ThreeClassSynthesis,
        XanthochromicFluid {

  /** The name in files. */
  String code();

  /** The finding it was seen in. */
  String finding();

  /** What to think of. */
  List<Disease> suggests();

  /** The finding in words, for a doctor. */
  String text();

  /** What it rests on. */
  Grounds grounds();
}
