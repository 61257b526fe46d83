package cistern.clinic.house;

import cistern.clinic.audit.Digest;

/**
 * One change of a rule of the house. It is never changed itself: a later one replaces it.
 *
 * @param number from 1, without gaps
 * @param at when, ISO 8601 in UTC
 * @param account who
 * @param rule the key of the fact
 * @param typed the value as it was typed; empty when the rule was taken back
 * @param unit as it was typed, UCUM; empty for words
 * @param source who decided it, and where that stands
 * @param reason why it was changed
 */
public record RuleChange(
    long number,
    String at,
    String account,
    String rule,
    String typed,
    String unit,
    String source,
    String reason) {

  /** Whether what lies beneath holds again from this change on. */
  public boolean isTakenBack() {
    return typed.isEmpty();
  }

  /** What an entry of the audit trail calls it. */
  String subject() {
    return "rule/" + number;
  }

  /** The digest that the audit trail keeps of it. */
  String digest() {
    return Digest.of(Long.toString(number), at, account, rule, typed, unit, source, reason);
  }
}
