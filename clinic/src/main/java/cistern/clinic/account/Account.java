package cistern.clinic.account;

/**
 * A person who may come in.
 *
 * @param id made by the program
 * @param name for signing in, lower case
 * @param fullName as it stands under a report
 * @param role what the person may do
 * @param isActive false once the account is closed
 */
public record Account(String id, String name, String fullName, Role role, boolean isActive) {

  /** Whether the person may do something now. */
  public boolean isAllowed(Permission permission) {
    return isActive && role.isAllowed(permission);
  }
}
