package cistern.clinic.trail;

import cistern.clinic.audit.AuditTrail.Filter;
import cistern.clinic.web.PageRequest;

/**
 * Which part of the trail is shown. It stands in the address, so that it holds identifiers and
 * numbers only.
 *
 * @param filter which entries
 * @param before the number that those shown come before; 0 for none
 * @param after the number that those shown follow; 0 for none
 */
record TrailPart(Filter filter, long before, long after) {

  static final String CASE = "case";
  static final String PERSON = "person";

  private static final String BEFORE = "before";
  private static final String AFTER = "after";
  private static final String IDENTIFIER = "|[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}";

  /** What a visit asks for; what is no identifier or number is not looked for. */
  static TrailPart of(PageRequest visit) {
    return new TrailPart(
        new Filter(known(visit.field(CASE)), known(visit.field(PERSON))),
        number(visit.field(BEFORE)),
        number(visit.field(AFTER)));
  }

  /** A text that is an identifier; empty when it is none. */
  static String known(String text) {
    return text.matches(IDENTIFIER) ? text : "";
  }

  static boolean isValid(Filter filter) {
    return filter.about().matches(IDENTIFIER) && filter.person().matches(IDENTIFIER);
  }

  private static long number(String text) {
    return text.matches("[1-9]\\d{0,17}") ? Long.parseLong(text) : 0;
  }

  TrailPart withBefore(long number) {
    return new TrailPart(filter, number, 0);
  }

  TrailPart withAfter(long number) {
    return new TrailPart(filter, 0, number);
  }

  /** Its address. */
  String toPath() {
    String path =
        part(CASE, filter.about())
            + part(PERSON, filter.person())
            + part(BEFORE, before)
            + part(AFTER, after);
    return "/trail" + path.replaceFirst("&", "?");
  }

  private static String part(String name, String value) {
    return value.isEmpty() ? "" : "&" + name + "=" + value;
  }

  private static String part(String name, long value) {
    return part(name, value == 0 ? "" : Long.toString(value));
  }
}
