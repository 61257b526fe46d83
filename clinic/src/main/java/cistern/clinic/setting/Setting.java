package cistern.clinic.setting;

import cistern.fact.FactTable;
import cistern.fact.Facts;

/** One number that the clinic's program takes as given. */
public enum Setting {
  /** The least length of a password, in characters. */
  PASSWORD_LEAST("clinic.password.least"),
  /** The greatest length of a password, in bytes of UTF-8: more, and the hash would not see it. */
  PASSWORD_MOST("clinic.password.most"),
  /** The work of one password hash: the logarithm to base 2 of its rounds. */
  PASSWORD_ROUNDS("clinic.password.rounds"),
  /** How many wrong passwords in a row lock an account. */
  LOCK_OUT_FAILURES("clinic.lock-out.failures"),
  /** How long an account stays locked, in minutes. */
  LOCK_OUT_MINUTES("clinic.lock-out.minutes"),
  /** How long a session lives without a request, in minutes. */
  SESSION_MINUTES("clinic.session.minutes"),
  /** How long a session lives, however busy it is, in hours. */
  SESSION_HOURS("clinic.session.hours"),
  /** How long a one-time code may be used, in minutes. */
  CODE_MINUTES("clinic.code.minutes"),
  /** How many sign-ins one address may try in a minute. */
  SIGN_INS_A_MINUTE("clinic.rate.sign-ins"),
  /** How many bits of an IPv6 address tell one caller from another. */
  CALLER_BITS("clinic.rate.bits"),
  /** How long a change waits for another to end, in milliseconds. */
  STORE_BUSY("clinic.store.busy"),
  /** How many connections to the store are held. */
  STORE_CONNECTIONS("clinic.store.connections"),
  /** How long a request waits for a connection, in milliseconds. */
  STORE_WAIT("clinic.store.wait"),
  /** The greatest size of what is sent to the program, in bytes. */
  UPLOAD_BYTES("clinic.upload.bytes"),
  /** The greatest size of a gel's picture that is sent to the program, in bytes. */
  PICTURE_BYTES("clinic.picture.bytes"),
  /** How many bands a person draws into one pair of a gel at most. */
  BANDS_ADDED("clinic.gel.added"),
  /** Of how many pairs of lanes the density curves are held. */
  GEL_CURVES("clinic.gel.curves"),
  /** How many placings of a gel's lanes can be undone one after the other. */
  PLACINGS_KEPT("clinic.gel.placings"),
  /** How many lanes of one picture a person places at most. */
  LANES_PLACED("clinic.gel.lanes"),
  /** How far a band may have moved when its lanes are read anew and be the same, in pixels. */
  BAND_MOVED("clinic.gel.moved"),
  /** In how many of the cases that were changed last a new rule is tried before it is saved. */
  RULE_CASES("clinic.rule.cases"),
  /** The longest key of a rule, and name of a laboratory in it, in characters. */
  RULE_MOST("clinic.rule.most"),
  /** The longest reason for a change, and what else is typed with one, in characters. */
  REASON_MOST("clinic.reason.most"),
  /** How many entries one page of the audit trail shows. */
  ENTRIES_A_PAGE("clinic.trail.entries"),
  /** The longest address inside the program that a form carries, in characters. */
  ADDRESS_MOST("clinic.address.most"),
  /** The longest text that is searched for, in characters. */
  SEARCH_MOST("clinic.search.most"),
  /** For how many days a browser may keep the style sheet and the script. */
  ASSET_DAYS("clinic.asset.days"),
  /** For how many days a browser that came by HTTPS asks for nothing else. */
  HTTPS_DAYS("clinic.https.days"),
  /** How many cases one page of their list shows. */
  CASES_A_PAGE("clinic.list.cases"),
  /** For how many minutes a list shows a case as it stood then. */
  SUMMARY_MINUTES("clinic.list.minutes"),
  /** For how many days a case that is signed as it stands is looked at for what waits. */
  DAY_DAYS("clinic.day.days"),
  /** How many cases the day shows for one duty. */
  DAY_ROWS("clinic.day.rows"),
  /** How long the day waits for cases that are being read, in milliseconds. */
  DAY_WAIT("clinic.day.wait"),
  /** After how many seconds a day on which cases are still being read is asked for again. */
  DAY_RENEWAL("clinic.day.renewal"),
  /** How many cases are held as they were read and interpreted last. */
  CASES_OPEN("clinic.cases.open"),
  /** In how many of the cases that were changed last a laboratory's units are looked for. */
  UNIT_CASES("clinic.unit.cases"),
  /** After how many hours somebody asks about a headache. */
  CALL_HOURS("clinic.call.hours"),
  /** After how many days nobody asks any more: such a headache goes within two weeks. */
  CALL_DAYS("clinic.call.days");

  private static final Facts STANDARD = Facts.standard().with(table());

  private final String key;

  Setting(String key) {
    this.key = key;
  }

  /** The table of all settings. */
  public static FactTable table() {
    return FactTable.read(Setting.class, "clinic.tsv");
  }

  /** The number, whole, in the unit of the table. */
  public int number() {
    return Math.toIntExact(Math.round(STANDARD.number(key)));
  }
}
