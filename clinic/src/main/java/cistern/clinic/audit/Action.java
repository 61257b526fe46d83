package cistern.clinic.audit;

import java.util.Locale;

/** What can stand in the audit trail. */
public enum Action {
  SIGNED_IN,
  SIGN_IN_REFUSED,
  SIGNED_OUT,
  ACCOUNT_LOCKED,
  ACCOUNT_MADE,
  ACCOUNT_CLOSED,
  CODE_MADE,
  PASSWORD_SET,
  DOOR_REFUSED,
  LIST_READ,
  CASE_MADE,
  CASE_READ,
  CASE_CHANGED,
  CHANGE_COLLIDED,
  REPORT_SIGNED,
  REPORT_READ,
  GEL_KEPT,
  GEL_READ,
  TRAIL_READ,
  STORE_COPIED;

  /** The word in the trail. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
