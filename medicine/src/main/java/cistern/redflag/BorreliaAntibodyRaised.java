package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import cistern.finding.FindingCode;
import java.util.List;
import java.util.Optional;

/**
 * A raised Borrelia antibody index.
 *
 * @param grounds what it rests on
 */
record BorreliaAntibodyRaised(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    return input.puncture().findings().get(FindingCode.BORRELIA_ANTIBODY_INDEX).isAbove()
        ? Optional.of(new BorreliaAntibodyRaised(input.facts().grounds("flag.borrelia-antibody")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "borrelia-antibody-raised";
  }

  @Override
  public String finding() {
    return "borrelia-antibody-index";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(Disease.NEUROBORRELIOSIS);
  }

  @Override
  public String text() {
    return "The Borrelia antibody index is raised: seen in neuroborreliosis, and in MS after an"
        + " infection.";
  }
}
