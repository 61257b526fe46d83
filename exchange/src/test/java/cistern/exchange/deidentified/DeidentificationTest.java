package cistern.exchange.deidentified;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.json.JsonText;
import cistern.exchange.lab.SentWorkup;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What of a work-up is kept, shifted and left out; invented data. */
class DeidentificationTest {

  private static final Pattern DAY = Pattern.compile("(\\d{4}-\\d{2}-\\d{2})|(\\d{8})(?=T)");

  private final Site site = new Site(Site.FIRST);

  private static SentWorkup sent(Deidentified safe) {
    return new SentWorkup(safe.document(), Site.FACTS);
  }

  @Test
  void of_fullWorkup_listsWhatIsLeftOutByItsPlace() {
    assertThat(site.safe(FullWorkup.TEXT).leftOut())
        .containsExactly(
            "question",
            "note",
            "clinician",
            "laboratory",
            "person.name",
            "results[0].assay",
            "results[0].originalCode",
            "results[0].originalText",
            "bands.gel",
            "bands.lanes",
            "bands.pair",
            "bands.confirmedBy",
            "bands.struck",
            "bands.added",
            "serology[0].assay",
            "answers",
            "letter",
            "source",
            "leftOver",
            "procedure.before.antithrombotics[0].dose",
            "procedure.before.antithrombotics[0].indication",
            "procedure.done.operator",
            "procedure.after.contact",
            "procedure.after.sent[0].told");
  }

  @Test
  void of_fullWorkup_keepsTheRestToTheLetterButIdsDatesAndDrugs() {
    Set<String> kept = lines(site.text(FullWorkup.TEXT));
    String given = JsonText.of(Site.understood(FullWorkup.TEXT).getFirst().document());
    String rest =
        given.replaceAll(
            "(?s)\"(letter|source|leftOver|answers|told|added|struck|lanes)\": .*?[}\\]],?\n", "");
    assertThat(lines(rest).stream().filter(line -> !kept.contains(line)))
        .filteredOn(line -> !DAY.matcher(line).find())
        .allMatch(
            line ->
                line.matches(
                    "\"(id|question|note|clinician|laboratory|name|assay|original.*|gel|pair"
                        + "|confirmedBy|drug|dose|indication|operator|contact)\": .*"));
    assertThat(site.text(FullWorkup.TEXT))
        .contains("220.00", "0.30", "110 - 350", "L3/4", "HSV-1", "optic disc oedema", "1:100")
        .contains("\"drug\": \"apixaban\"", "\"drug\": \"steroids\"", "slightly xanthochromic");
  }

  private static Set<String> lines(String text) {
    return new HashSet<>(text.lines().map(line -> line.strip().replaceAll(",$", "")).toList());
  }

  @Test
  void of_everyDate_isShiftedByOneNumberOfDaysAndKeepsItsTimeOfDay() {
    String safe = site.text(FullWorkup.TEXT);
    List<LocalDate> before =
        days(FullWorkup.TEXT.replaceAll("(?s)\"answers\".*?\\]|\"told\".*?\\]", ""));
    List<LocalDate> after = days(safe);
    long shift = ChronoUnit.DAYS.between(after.getFirst(), before.getFirst());
    assertThat(shift).isBetween(1L, 365L);
    assertThat(after.stream().map(day -> day.plusDays(shift))).containsExactlyElementsOf(before);
    assertThat(safe).contains("T10:15:00.5+01:00\"", "T1040Z\"", "T11:00:00+01:00\"");
  }

  private static List<LocalDate> days(String text) {
    return DAY.matcher(text)
        .results()
        .map(found -> found.group().replaceAll("(\\d{4})-?(\\d{2})-?(\\d{2})", "$1-$2-$3"))
        .map(LocalDate::parse)
        .toList();
  }

  @Test
  void of_onePersonInTwoFiles_hasOnePseudonymAndOneShift() {
    String other =
        "{\"id\":\"b\",\"person\":{\"id\":\" p-7 \"},\"draws\":{\"csf\":{\"at\":\"2032-03-02T10:15:00Z\"}}}";
    SentWorkup first = sent(site.safe(FullWorkup.TEXT));
    SentWorkup second = sent(site.safe(other));
    assertThat(second.text("person", "id")).isEqualTo(first.text("person", "id"));
    assertThat(first.text("person", "id").orElseThrow()).matches("p-[0-9a-f]{32}");
    assertThat(second.id()).matches("w-[0-9a-f]{32}").isNotEqualTo(first.id());
    OffsetDateTime at = first.time("draws", "csf", "at").orElseThrow();
    // 2031-03-02 to 2032-03-02: 366 days, with the 29th of February 2032.
    assertThat(
            ChronoUnit.DAYS.between(
                at.toLocalDate(), second.time("draws", "csf", "at").orElseThrow().toLocalDate()))
        .isEqualTo(366);
  }

  @Test
  void of_anotherSecret_hasOtherPseudonymsAndShifts() {
    Set<String> ids = new HashSet<>();
    Set<String> days = new HashSet<>();
    for (String secret :
        List.of(
            Site.FIRST, "another-invented-secret-of-32-by", "a-third-one-of-a-site-elsewhere!")) {
      SentWorkup safe = sent(new Site(secret).safe(FullWorkup.TEXT));
      ids.add(safe.text("person", "id").orElseThrow());
      days.add(safe.text("draws", "csf", "at").orElseThrow());
    }
    assertThat(ids).hasSize(3);
    assertThat(days).hasSize(3);
  }

  @ParameterizedTest
  @CsvSource({"89, 89", "89.0, 89.0", "89.1, 90", "90, 90", "104, 90", "0.25, 0.25"})
  void of_age_over89IsOneGroup(String given, String kept) {
    Deidentified safe =
        site.safe("{\"id\":\"a\",\"person\":{\"id\":\"x\",\"ageYears\":%s}}".formatted(given));
    assertThat(sent(safe).text("person", "ageYears")).contains(kept);
  }

  @ParameterizedTest
  @CsvSource({
    "1941-03-02, true",
    "1941-03-03, false",
    "1997-03-02, false",
    "1941-03, false",
    "Example, false"
  })
  void of_birthDate_leavesOnlyWithADayAndAnAgeThatIsNotGrouped(String born, boolean isOld) {
    Deidentified safe =
        site.safe(
            ("{\"id\":\"a\",\"person\":{\"id\":\"x\",\"birthDate\":\"%s\"},"
                    + "\"draws\":{\"serum\":{\"at\":\"2031-03-02T10:15:00Z\"}}}")
                .formatted(born));
    assertThat(sent(safe).text("person", "birthDate").isPresent())
        .isEqualTo(!isOld && born.length() == 10);
    assertThat(sent(safe).text("person", "ageYears").isPresent()).isEqualTo(isOld);
    assertThat(site.text("{\"id\":\"a\",\"person\":{\"birthDate\":\"1997-03-02\"}}"))
        .doesNotContain("birthDate");
  }

  @Test
  void of_partsThatMeanSomethingElseAlone_leaveTogether() {
    Deidentified safe =
        site.safe(
            """
            { "id": "a", "draws": { "csf": { "site": "at home in Bern" } },
              "results": [
                { "analyte": "Example", "in": "csf", "value": 2, "unit": "mg/L" },
                { "analyte": "albumin", "in": "csf", "value": 220, "unit": "mg/L{of Ann}" } ],
              "microbiology": [ { "test": "pcr", "target": "Ann", "result": "positive" },
                                { "test": "gram", "result": "negative" } ],
              "procedure": { "before": { "antithrombotics": [
                { "drug": "aspirin" }, { "drug": "what Ann takes" } ] } } }
            """);
    assertThat(safe.leftOut())
        .containsExactly("results[0]", "microbiology[0]", "procedure.before.antithrombotics");
    assertThat(safe.hasPerson()).isFalse();
    String text = JsonText.of(safe.document());
    assertThat(text).contains("\"site\": \"other\"", "\"unit\": \"mg/L{_}\"").doesNotContain("Ann");
    assertThat(Site.understood(text)).hasSize(1);
  }

  @Test
  void of_unknownFields_areCountedAndNotNamed() {
    Deidentified safe =
        site.safe(
            "{\"id\":\"a\",\"Ann\":1,\"person\":{\"Bern\":\"x\",\"street\":{}},\"draws\":{\"urine\":{}}}");
    assertThat(safe.leftOut())
        .containsExactly(
            "person: 2 fields not known here",
            "draws: 1 field not known here",
            "1 field not known here");
  }

  @Test
  void of_emptyListOfDrugs_staysEmpty() {
    // An empty list says that none is taken, a missing one that nobody asked.
    assertThat(site.text("{\"id\":\"a\",\"procedure\":{\"before\":{\"antithrombotics\":[]}}}"))
        .contains("\"antithrombotics\": []");
  }

  @Test
  void of_itsOwnResult_isAWorkupAgain() {
    Matcher label = Pattern.compile("\"deidentified\": true").matcher(site.text(FullWorkup.TEXT));
    assertThat(label.find()).isTrue();
    assertThat(Site.understood(site.text(FullWorkup.TEXT)).getFirst().workup().problems())
        .filteredOn(problem -> problem.code().startsWith("unknown-"))
        .isEmpty();
  }
}
