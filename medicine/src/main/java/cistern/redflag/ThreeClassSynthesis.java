package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import java.util.List;
import java.util.Optional;

/**
 * Intrathecal synthesis of IgG, IgA and IgM together.
 *
 * @param grounds what it rests on
 */
record ThreeClassSynthesis(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    boolean isThree =
        input.puncture().findings().get(FindingCode.IGG_FRACTION).isAbove()
            && input.puncture().findings().get(FindingCode.IGA_FRACTION).isAbove()
            && input.puncture().findings().get(FindingCode.IGM_FRACTION).isAbove();
    return isThree
        ? Optional.of(new ThreeClassSynthesis(input.facts().grounds("flag.three-classes")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "three-class-synthesis";
  }

  @Override
  public String finding() {
    return "igm-intrathecal-fraction";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(Disease.NEUROBORRELIOSIS, Disease.INFECTION, Disease.LYMPHOMA);
  }

  @Override
  public String text() {
    return "IgG, IgA and IgM are all made inside the CNS.";
  }
}
