package cistern.clinic.cases;

/** What came of saving a change. */
public sealed interface Saving {

  /**
   * It is kept.
   *
   * @param version the new version
   */
  record Kept(CaseVersion version) implements Saving {}

  /**
   * Somebody else changed the case since it was opened; nothing of the change is kept yet.
   *
   * @param current the case as it stands now
   */
  record Collided(CaseVersion current) implements Saving {}
}
