package cistern.exchange.lab;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * What a laboratory's own codes, headings and words mean, as a person confirmed it.
 *
 * @param confirmedBy who confirmed it; empty for a report that is read without one
 * @param mark how its numbers are written
 * @param dates how its dates are written
 * @param zone the zone of times without an offset
 * @param entries each meaning
 */
public record LocalMapping(
    Optional<String> confirmedBy,
    DecimalMark mark,
    DateOrder dates,
    Optional<ZoneId> zone,
    List<Entry> entries) {

  /** No mapping: only what the standards and the lists of names say. */
  public static final LocalMapping NONE =
      new LocalMapping(
          Optional.empty(), DecimalMark.UNTOLD, DateOrder.UNTOLD, Optional.empty(), List.of());

  /** Copies the entries. */
  public LocalMapping {
    entries = List.copyOf(entries);
  }

  /** This mapping with a zone for times without an offset. */
  public LocalMapping in(ZoneId named) {
    return new LocalMapping(confirmedBy, mark, dates, Optional.of(named), entries);
  }

  /** This mapping for numbers whose mark has been turned into a point where it was clear. */
  public LocalMapping withPlainNumbers() {
    return new LocalMapping(confirmedBy, DecimalMark.UNTOLD, dates, zone, entries);
  }

  /** Which of day and month comes first in a date that does not begin with the year. */
  public enum DateOrder {
    DAY_FIRST,
    MONTH_FIRST,
    UNTOLD
  }

  /** What an entry is about. */
  public enum Kind {
    CODE,
    HEADING,
    WORD
  }

  /**
   * One meaning.
   *
   * @param kind a code of a message, a heading of a table, or a word for a specimen
   * @param key the code, heading or word
   * @param system of a code; empty for any
   * @param meaning what it stands for; the subject {@code ignore} for nothing
   * @param place where the entry stands in the mapping file
   */
  public record Entry(Kind kind, String key, String system, Meaning meaning, String place) {}

  /** The meaning of a code. */
  Optional<Meaning> code(Coding coding) {
    return entries.isEmpty() ? Optional.empty() : coded(coding);
  }

  private Optional<Meaning> coded(Coding coding) {
    return entries.stream()
        .filter(e -> e.kind() == Kind.CODE)
        .filter(e -> e.key().equals(coding.code().isEmpty() ? coding.text() : coding.code()))
        .filter(e -> e.system().isEmpty() || e.system().equals(coding.system()))
        .map(Entry::meaning)
        .findFirst();
  }

  /** The meaning of a heading. */
  public Optional<Entry> heading(String heading) {
    return entries.stream()
        .filter(e -> e.kind() == Kind.HEADING)
        .filter(e -> WordTable.plain(e.key()).equals(WordTable.plain(heading)))
        .findFirst();
  }

  /** The fluid of a specimen's words, by the mapping alone. */
  Optional<Meaning> word(List<String> words) {
    return entries.stream()
        .filter(e -> e.kind() == Kind.WORD)
        .filter(e -> words.stream().anyMatch(w -> w.strip().equalsIgnoreCase(e.key().strip())))
        .map(Entry::meaning)
        .findFirst();
  }
}
