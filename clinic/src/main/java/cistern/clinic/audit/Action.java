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
  /** An account of a store from before the trail held accounts, as it was found. */
  ACCOUNT_KEPT,
  /** From here on the trail holds every account. */
  ACCOUNTS_CHAINED,
  CODE_MADE,
  CODE_USED,
  PASSWORD_SET,
  DOOR_REFUSED,
  LIST_READ,
  CASES_COUNTED,
  CASE_MADE,
  CASE_READ,
  CASE_CHANGED,
  CHANGE_COLLIDED,
  REPORT_SIGNED,
  REPORT_READ,
  GEL_KEPT,
  GEL_READ,
  RULE_CHANGED,
  TRAIL_READ,
  STORE_COPIED;

  /** Whether an entry of this kind with a digest tells what an account is from then on. */
  boolean isOfAccount() {
    return switch (this) {
      case ACCOUNT_MADE, ACCOUNT_CLOSED, ACCOUNT_KEPT, CODE_MADE, PASSWORD_SET -> true;
      case SIGNED_IN,
          SIGN_IN_REFUSED,
          SIGNED_OUT,
          ACCOUNT_LOCKED,
          ACCOUNTS_CHAINED,
          CODE_USED,
          DOOR_REFUSED,
          LIST_READ,
          CASES_COUNTED,
          CASE_MADE,
          CASE_READ,
          CASE_CHANGED,
          CHANGE_COLLIDED,
          REPORT_SIGNED,
          REPORT_READ,
          GEL_KEPT,
          GEL_READ,
          RULE_CHANGED,
          TRAIL_READ,
          STORE_COPIED ->
          false;
    };
  }

  /** The word in the trail. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
