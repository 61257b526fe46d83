package cistern.clinic.web;

import cistern.clinic.account.Permission;

/** Who may use a route. */
public sealed interface Access {

  /** Everybody, signed in or not. */
  record Everybody() implements Access {}

  /**
   * Who is signed in and may do something.
   *
   * @param permission what the role must allow
   */
  record Needs(Permission permission) implements Access {}
}
