package cistern.clinic.account;

/** One thing that a role may do. */
public enum Permission {
  /** To sign out, and to see who one is. */
  BE_HERE,
  /** To see the day and the list of cases. */
  SEE_DAY,
  /** To open a case. */
  SEE_CASE,
  /** To begin a case, to change its question, evidence and plan. */
  WORK_UP,
  /** To note the draw. */
  DRAW,
  /** To enter results and bands. */
  ENTER_RESULTS,
  /** To note what happened after the puncture. */
  CARE_AFTER,
  /** To read reports, letters and pages for patients. */
  READ_REPORT,
  /** To sign a report. */
  SIGN,
  /** To see what all punctures say together. */
  SEE_FIGURES,
  /** To change the rules of the house, and to see first what that alters in cases. */
  KEEP_RULES,
  /** To read and check the audit trail. */
  SEE_TRAIL,
  /** To make and close accounts. */
  KEEP_ACCOUNTS
}
