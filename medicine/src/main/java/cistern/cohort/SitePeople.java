package cistern.cohort;

import cistern.finding.FindingCode;
import java.io.Serial;
import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * The people of a site with a final diagnosis, gathered one by one; parts of a cohort are put
 * together in any order.
 *
 * <p>The groups are named by the person who asks: nothing here decides who counts as healthy.
 */
public final class SitePeople implements Serializable {

  @Serial private static final long serialVersionUID = 1L;

  private static final int MOST_DIAGNOSES = 100;

  private final TreeSet<String> diagnoses = new TreeSet<>();
  private final TreeSet<String> controls;
  private final TreeSet<String> cases;
  private final SiteGroup without;
  private final SiteGroup with;
  private Tally bandsOfAttacks = Tally.NONE;
  private Foretelling foretelling = Foretelling.NONE;

  /**
   * Nobody yet.
   *
   * @param codes the findings that are studied
   * @param controls the diagnoses of people who count as without the disease
   * @param cases the diagnoses of people who count as with it
   */
  SitePeople(List<FindingCode> codes, Set<String> controls, Set<String> cases) {
    this.controls = new TreeSet<>(controls);
    this.cases = new TreeSet<>(cases);
    this.without = new SiteGroup(codes);
    this.with = new SiteGroup(codes);
  }

  /** Adds one person, who counts when the final diagnosis is one of those named. */
  public void add(CohortMember member) {
    if (diagnoses.size() < MOST_DIAGNOSES) {
      member.diagnosis().ifPresent(diagnoses::add);
    }
    boolean isCase = member.diagnosis().filter(cases::contains).isPresent();
    if (member.diagnosis().filter(controls::contains).isPresent()) {
      without.add(member);
    }
    if (isCase) {
      with.add(member);
    }
    if (!cases.isEmpty() && member.diagnosis().isPresent()) {
      member.foretold().ifPresent(f -> foretelling = foretelling.with(f, isCase));
    }
    if (member.gel().isOfAttack()) {
      bandsOfAttacks = bandsOfAttacks.merge(Tally.of(member.gel().bands()));
    }
  }

  /** Adds the people of another part of the same cohort. */
  public void addAll(SitePeople other) {
    without.addAll(other.without);
    with.addAll(other.with);
    foretelling = foretelling.merge(other.foretelling);
    bandsOfAttacks = bandsOfAttacks.merge(other.bandsOfAttacks);
    diagnoses.addAll(other.diagnoses);
  }

  /** Why a group is empty: a diagnosis that was named and nobody has, with those that there are. */
  public Optional<String> absent() {
    TreeSet<String> absent = new TreeSet<>(controls);
    absent.addAll(cases);
    absent.removeAll(diagnoses);
    return absent.isEmpty() || diagnoses.size() >= MOST_DIAGNOSES
        ? Optional.empty()
        : Optional.of(
            "nobody has the final diagnosis "
                + String.join(", ", absent)
                + "; recorded are "
                + (diagnoses.isEmpty() ? "none" : String.join(", ", diagnoses)));
  }

  boolean hasControls() {
    return !controls.isEmpty();
  }

  boolean hasCases() {
    return !cases.isEmpty();
  }

  SiteGroup without() {
    return without;
  }

  SiteGroup with() {
    return with;
  }

  Tally bandsOfAttacks() {
    return bandsOfAttacks;
  }

  Foretelling foretelling() {
    return foretelling;
  }
}
