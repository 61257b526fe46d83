package cistern.exchange.json;

/** What can make an input not valid: a key for programs and a sentence for a doctor. */
public enum InputTrouble {
  UNREADABLE("file-unreadable", "The file cannot be read: %s."),
  EMPTY("file-empty", "The file is empty."),
  TOO_LARGE("file-too-large", "The file is larger than %s MiB; a work-up takes a few kilobytes."),
  TOO_MANY_VALUES("too-many-values", "The file holds more than %s values."),
  TOO_DEEP("nested-too-deeply", "Objects and lists lie within each other more than %s deep."),
  OTHER_ENCODING("not-utf-8", "The text is UTF-16 or UTF-32: save it again as UTF-8."),
  NOT_UTF_8(
      "not-utf-8",
      "A character on line %s is not UTF-8 (the file may be in a Windows or Latin-1 encoding): save"
          + " it again as UTF-8."),
  NOT_JSON(
      "not-json",
      "This is not JSON from line %s, column %s on: look for a decimal comma, a missing comma or"
          + " quotation mark, or a number written in an unusual way."),
  ENDS_EARLY("ends-early", "The file ends too early, on line %s, column %s: a part is missing."),
  MORE_AFTER_END("more-after-end", "Something follows after the end, on line %s, column %s."),
  TWICE("field-twice", "The field stands twice in the same object: one of them would be lost."),
  BROKEN_TEXT("text-broken", "The text holds half a character (an unpaired surrogate)."),
  NOT_AN_OBJECT("not-an-object", "The file must hold one object { }, not %s."),
  MISSING("field-missing", "This is missing."),
  WRONG_TYPE("wrong-type", "This must be %s, not %s."),
  NOT_A_WORD("unknown-word", "This must be one of: %s."),
  ILL_FORMED("ill-formed", "This must be %s."),
  BLANK("text-blank", "This must not be blank."),
  NOT_FINITE("number-not-finite", "This is not a finite number."),
  TOO_SMALL("number-too-small", "The number is so close to zero that it cannot be computed with."),
  TOO_LONG("number-too-long", "The number has more than %s characters."),
  NEGATIVE("number-negative", "The number must not be negative."),
  NOT_POSITIVE("number-not-positive", "The number must be greater than zero."),
  NOT_A_FRACTION("number-not-a-fraction", "The number must lie between 0 and 1."),
  NOT_A_SHARE(
      "number-not-a-share",
      "A share lies between 0 and 1 and is neither of them: nobody and everybody have no odds."),
  NOT_WHOLE("number-not-whole", "The number must be whole, and not larger than %s."),
  TOO_LARGE_NUMBER("number-too-large", "The number must not be larger than %s%s."),
  TOO_FAR_TIME("time-too-far", "The time must lie between the years %s and %s."),
  NOT_A_TIME(
      "time-ill-formed",
      "The time must be ISO 8601 with its offset, such as 2031-03-02T10:15:00Z or"
          + " 2031-03-02T11:15:00+01:00."),
  VERSION("version-unknown", "This program reads versions %s of this kind of file only."),
  NOT_ONE_VALUE(
      "value-not-one", "A result needs exactly one of value, below and above; this has %s."),
  RESULT_TWICE("result-twice", "The same analyte in the same fluid already stands in %s."),
  UNKNOWN_UNIT("unit-unknown", "“%s” is not a UCUM unit.%s"),
  OTHER_DIMENSION(
      "unit-of-other-dimension", "“%s” is not a unit of %s, which is given in units like “%s”.%s"),
  OTHER_DIMENSION_THAN_PAIR(
      "unit-of-other-dimension",
      "“%s” cannot be compared with the unit of the same antibody in the other fluid (%s): both"
          + " need one kind of unit."),
  OVERFLOW("number-not-finite", "Converted to %s this is not a number that can be computed with."),
  GEL_UNREADABLE("gel-unreadable", "The picture of the gel cannot be read: %s."),
  UNKNOWN_FACT("fact-unknown", "No fact has this key; ./cistern facts lists them all."),
  UNKNOWN_FIELD("field-unknown", "A policy has no such field; check its spelling."),
  FIXED_FACT("fact-fixed", "This describes the program itself and cannot be changed."),
  NOT_CONFIRMED(
      "not-confirmed",
      "Nobody has confirmed this mapping: check each line and put your name here."),
  ENTRY_TWICE("entry-twice", "This already stands in the same list."),
  HEADING_MISSING(
      "heading-missing", "The table has no such heading: is it the mapping of this table?"),
  MAPPED_OTHERWISE("mapped-otherwise", "The heading itself says %s, the mapping %s."),
  TWO_PERSONS(
      "two-persons",
      "This names another person than %s does: a report that mixes two persons is not read."),
  NO_PERSON("no-person", "This belongs to a person whom the report does not hold."),
  REFERENCE_TWICE(
      "id-of-two", "The same identifier already stands in %s: a reference to it is unclear."),
  NOT_XML("not-xml", "This is not well-formed XML from line %s, column %s on."),
  DOCTYPE("doctype", "A document type or an entity has no place in a report; the file is refused."),
  NOT_A_REPORT("not-a-report", "This holds no laboratory report: %s."),
  NOT_A_CARRIER(
      "format-unknown", "This is no work-up, FHIR resource, HL7 v2 message or table: %s."),
  SEGMENT_MISSING("segment-missing", "The message has no %s segment."),
  DELIMITERS("delimiters", "The delimiters of the message are not five different signs."),
  CHARSET("charset", "The text is not in the declared encoding %s."),
  NOTHING_UNDERSTOOD(
      "nothing-understood",
      "No result in it is understood. First: %s. A mapping file says what local codes and headings"
          + " mean: cistern convert FILE --propose-mapping writes one to be confirmed."),
  SEVERAL("several", "This holds %s work-ups and one is needed: convert it into a folder first."),
  ZIP("zip", "The workbook cannot be unpacked: %s."),
  ROW_TOO_LONG("row-too-long", "A row has more than %s cells."),
  SECRET(
      "secret",
      "This cannot be the secret of a site: %s. Make one, and keep it where only you can read it:"
          + " umask 077; openssl rand -hex 32 > site.secret"),
  ID_TWICE("id-twice", "Another input before this one has the same id.");

  private final String key;
  private final String sentence;

  InputTrouble(String key, String sentence) {
    this.key = key;
    this.sentence = sentence;
  }

  /** The name for programs. */
  public String key() {
    return key;
  }

  /** The sentence with its arguments. */
  String toText(Object... arguments) {
    return sentence.formatted(arguments);
  }
}
