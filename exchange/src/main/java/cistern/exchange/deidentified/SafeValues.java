package cistern.exchange.deidentified;

import cistern.bedside.TreatmentKind;
import cistern.exchange.deidentified.KeptFields.Field;
import cistern.exchange.json.Json;
import cistern.measurement.Analyte;
import cistern.puncture.drug.DrugEntry;
import cistern.puncture.drug.Drugs;
import cistern.puncture.drug.TypedDrug;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The safe form of one value, if it has one.
 *
 * @param secret of the site
 * @param drugs by the names that people type
 * @param subject whose work-up it is
 */
record SafeValues(SiteSecret secret, Drugs drugs, Subject subject) {

  private static final Set<String> ANSWERS = Set.of("yes", "no", "unknown");
  private static final Pattern NOT_PLAIN = Pattern.compile("[^A-Za-z0-9 ,;:/.()+_-]");
  private static final Pattern BETWEEN = Pattern.compile("[^A-Za-z0-9]+");
  private static final Pattern LIMIT =
      Pattern.compile("[<>=≤≥ ]{0,4}\\d{1,9}([.,]\\d{1,6})?( ?(-|–|to) ?\\d{1,9}([.,]\\d{1,6})?)?");
  private static final Pattern TITRE = Pattern.compile("1 ?[:/] ?\\d{1,9}");
  private static final Pattern DATED =
      Pattern.compile(
          "(\\d{4}-?\\d{2}-?\\d{2})(T\\d{2}:?\\d{2}(:?\\d{2}([.,]\\d{1,9})?)?"
              + "(Z|[+-]\\d{2}(:?\\d{2}){0,2}))?");
  private static final Pattern REMARK = Pattern.compile("\\{[^{}]*\\}");

  /** What is counted, as units say it in braces; any other text in braces is taken out. */
  private static final Set<String> COUNTED =
      Set.of("{cells}", "{cell}", "{ratio}", "{index}", "{bands}", "{titer}", "{copies}");

  private static final String NO_REMARK = "{_}";

  /**
   * Whose work-up it is.
   *
   * @param key by which dates are shifted
   * @param isOld whether the age is one that is grouped
   * @param isBorn whether a draw beside the day of birth shows that the age is known
   */
  record Subject(String key, boolean isOld, boolean isBorn) {}

  /** The safe form of a value that is no structure; a list is kept only as a whole. */
  Optional<Json> of(Field field, Json value) {
    if (value instanceof Json.Sequence(List<Json> items)) {
      List<Json> safe = items.stream().flatMap(item -> of(field, item).stream()).toList();
      return safe.size() == items.size() ? Optional.of(new Json.Sequence(safe)) : Optional.empty();
    }
    return switch (field.rule()) {
      case OUT, WHOLE -> Optional.empty();
      case TRUTH -> Optional.of(value).filter(Json.Truth.class::isInstance);
      case NUMBER -> number(value);
      case ANSWER -> text(value, ANSWERS::contains);
      case WORD -> text(value, text -> isOfWords(text, field.words()));
      case SITE ->
          text(value, text -> isOfWords(text, field.words()))
              .or(() -> Optional.of(new Json.Text("other")));
      case TIME -> words(value).flatMap(this::earlier);
      case UNIT -> words(value).map(SafeValues::unit);
      case LIMIT -> text(value, text -> LIMIT.matcher(text).matches());
      case TITRE -> text(value, text -> TITRE.matcher(text).matches());
      case ANALYTE -> text(value, text -> Analyte.parse(text).isPresent());
      case DRUG -> words(value).flatMap(this::drug);
      case AGE_YEARS -> subject.isOld() ? Optional.empty() : number(value);
      case AGE_DAYS -> subject.isOld() ? Optional.empty() : number(value);
      case BIRTH ->
          words(value)
              .filter(text -> subject.isBorn() && !subject.isOld() && text.length() == 10)
              .flatMap(this::earlier);
      case PERSON -> words(value).map(text -> new Json.Text(secret.ofPerson(text.strip())));
      case WORKUP -> words(value).map(text -> new Json.Text(secret.ofWorkup(text)));
    };
  }

  private static Optional<Json> number(Json value) {
    boolean isUnknown = value instanceof Json.Text(String text) && text.equals("unknown");
    return Optional.of(value).filter(v -> v instanceof Json.Numeral || isUnknown);
  }

  private static Optional<String> words(Json value) {
    return value instanceof Json.Text(String text) ? Optional.of(text) : Optional.empty();
  }

  private static Optional<Json> text(Json value, Predicate<String> isSafe) {
    return words(value).filter(isSafe).map(Json.Text::new);
  }

  private static boolean isOfWords(String text, Set<String> words) {
    return !NOT_PLAIN.matcher(text).find()
        && BETWEEN
            .splitAsStream(text.toLowerCase(Locale.ROOT))
            .filter(word -> !word.isEmpty())
            .allMatch(words::contains);
  }

  /** A day, with or without a time of day, shifted; the time of day and the zone stay. */
  private Optional<Json> earlier(String text) {
    Matcher dated = DATED.matcher(text);
    if (!dated.matches()) {
      return Optional.empty();
    }
    String day = dated.group(1);
    DateTimeFormatter form =
        day.contains("-") ? DateTimeFormatter.ISO_LOCAL_DATE : DateTimeFormatter.BASIC_ISO_DATE;
    try {
      LocalDate shifted = LocalDate.parse(day, form).minusDays(secret.daysEarlier(subject.key()));
      return Optional.of(new Json.Text(form.format(shifted) + text.substring(day.length())));
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }

  private static Json unit(String text) {
    return new Json.Text(
        REMARK
            .matcher(text)
            .replaceAll(remark -> COUNTED.contains(remark.group()) ? remark.group() : NO_REMARK));
  }

  /** The international names, or the kind of an immune treatment; empty when a name is unknown. */
  private Optional<Json> drug(String typed) {
    List<TypedDrug> named = drugs.parse(typed);
    if (named.stream().allMatch(drug -> drug.entry().isPresent())) {
      String names =
          named.stream()
              .flatMap(drug -> drug.entry().stream())
              .map(DrugEntry::name)
              .distinct()
              .collect(Collectors.joining(" + "));
      return Optional.of(new Json.Text(names));
    }
    return TreatmentKind.of(typed).map(kind -> new Json.Text(kind.term()));
  }
}
