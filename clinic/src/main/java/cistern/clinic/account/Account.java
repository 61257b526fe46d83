package cistern.clinic.account;

/**
 * A person who may come in.
 *
 * @param id made by the program
 * @param name for signing in, lower case
 * @param fullName as it stands under a report
 * @param role what the person may do
 * @param isActive false once the account is closed
 * @param generation counts what ends the sessions that were begun before: a new password, a code
 */
public record Account(
    String id, String name, String fullName, Role role, boolean isActive, long generation) {

  /** Whether the person may do something now. */
  public boolean isAllowed(Permission permission) {
    return isActive && role.isAllowed(permission);
  }
}
