package cistern.criteria;

import cistern.finding.Problem;

/**
 * Evidence that says two things which cannot both be true.
 *
 * @param place where it stands in the work-up
 * @param what the two things
 */
public record EvidenceContradictsItself(String place, String what) implements Problem {

  @Override
  public String code() {
    return "evidence-contradicts-itself";
  }

  @Override
  public String text() {
    return "The evidence contradicts itself: it says %s. Neither edition of the criteria can be"
            .formatted(what)
        + " applied until this is put right.";
  }
}
