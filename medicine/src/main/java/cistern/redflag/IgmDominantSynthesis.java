package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Intrathecal IgM synthesis that exceeds that of IgG and IgA.
 *
 * @param grounds what it rests on
 */
record IgmDominantSynthesis(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    OptionalDouble igm = input.least(FindingCode.IGM_FRACTION);
    boolean isSynthesis = input.puncture().findings().get(FindingCode.IGM_FRACTION).isAbove();
    return isSynthesis && igm.isPresent() && isOver(igm.getAsDouble(), input)
        ? Optional.of(new IgmDominantSynthesis(input.facts().grounds("flag.igm-dominant")))
        : Optional.empty();
  }

  private static boolean isOver(double igm, FlagInput input) {
    OptionalDouble igg = input.least(FindingCode.IGG_FRACTION);
    OptionalDouble iga = input.least(FindingCode.IGA_FRACTION);
    return igg.isPresent() && igm > igg.getAsDouble() && (iga.isEmpty() || igm > iga.getAsDouble());
  }

  @Override
  public String code() {
    return "igm-dominant-synthesis";
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
    return "Antibody made inside the CNS is mostly IgM.";
  }
}
