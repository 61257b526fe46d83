package cistern.fact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.net.URI;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BibliographyTest {

  private static final Bibliography STANDARD = Bibliography.standard();

  private static final String CITATION_SEEN =
      "journal, volume and page seen in another text, no number: PubMed's search by them";
  private static final String TITLE_SEEN =
      "title seen in another text, volume and page not: PubMed's search by the recalled ones";
  private static final String WORDS =
      "no volume, page or number seen: PubMed's search by title, or journal, year and subject";
  private static final String LABEL = "a label is replaced when revised: the search gives today's";
  private static final String WHOLE_SITE = "the work is the whole site";
  private static final String SUBSCRIPTION = "behind a subscription: found there by its number";
  private static final String BODY = "the body's own site, the paper's page was not seen";

  /** The entries that no number and no page of their own lead to, with the reason. */
  private static final Map<String, String> WITHOUT_IDENTIFIER =
      Map.ofEntries(
          Map.entry("castrillo-2015", CITATION_SEEN),
          Map.entry("montmollin-2022", CITATION_SEEN),
          Map.entry("spanos-1989", CITATION_SEEN),
          Map.entry("hegen-2016", TITLE_SEEN),
          Map.entry("benkert-2022", TITLE_SEEN),
          Map.entry("horlocker-2003", TITLE_SEEN),
          Map.entry("innsbruck-kappa", WORDS),
          Map.entry("japan-2017", WORDS),
          Map.entry("xarelto-label", LABEL),
          Map.entry("eliquis-label", LABEL),
          Map.entry("lovenox-label", LABEL),
          Map.entry("ukcpa", WHOLE_SITE),
          Map.entry("loinc", WHOLE_SITE),
          Map.entry("hl7-v2-tables", WHOLE_SITE),
          Map.entry("uptodate-neuraxial", SUBSCRIPTION),
          Map.entry("uptodate-esaic", SUBSCRIPTION),
          Map.entry("oaa-2018", BODY));

  @Test
  void standard_everyEntry_saysWhereToFindIt() {
    assertThat(STANDARD.all()).hasSizeGreaterThan(50);
    assertThat(STANDARD.all())
        .allSatisfy(r -> assertThat(r.address()).as(r.key()).matches("(https?://|ISBN ).+"));
  }

  /** Both ways: an entry that has found its number leaves the list. */
  @Test
  void standard_everyEntryWithoutAnIdentifier_standsInTheListWithItsReason() {
    Set<String> without =
        STANDARD.all().stream()
            .filter(r -> !hasIdentifier(r.fields()))
            .map(Reference::key)
            .collect(Collectors.toSet());

    assertThat(without).isEqualTo(WITHOUT_IDENTIFIER.keySet());
  }

  private static boolean hasIdentifier(Map<String, String> fields) {
    return Stream.of("DOI", "PMID", "PMCID", "ISBN").anyMatch(fields::containsKey)
        || isPageOfItsOwn(fields.getOrDefault("URL", ""));
  }

  /** Neither a search nor the front page of a site. */
  private static boolean isPageOfItsOwn(String url) {
    return !url.isEmpty()
        && !url.matches(".*[?](term|query)=.*")
        && URI.create(url).getPath().length() > 1;
  }

  @Test
  void standard_everyNumber_hasTheFormOfItsKind() {
    assertThat(STANDARD.all())
        .allSatisfy(
            r -> {
              assertThat(r.fields().getOrDefault("DOI", "10.1/x")).matches("10[.]\\d+/\\S*[^.\\s]");
              assertThat(r.fields().getOrDefault("PMID", "1")).matches("[1-9]\\d{0,7}");
              assertThat(r.fields().getOrDefault("PMCID", "PMC1")).matches("PMC[1-9]\\d*");
            });
  }

  /** Two works never share a number: a slip of copying would show so. */
  @ParameterizedTest
  @ValueSource(strings = {"DOI", "PMID", "PMCID"})
  void standard_noNumber_standsTwice(String kind) {
    assertThat(STANDARD.all().stream().flatMap(r -> Stream.ofNullable(r.fields().get(kind))))
        .doesNotHaveDuplicates();
  }

  @Test
  void standard_everyEntry_isNamedSoThatAReaderKnowsIt() {
    assertThat(STANDARD.all())
        .allSatisfy(r -> assertThat(r.toText()).as(r.key()).isNotBlank())
        .noneSatisfy(r -> assertThat(r.fields().getOrDefault("title", "")).startsWith("["));
  }

  /** Copies of books that nobody may copy are no place to send a reader to. */
  @Test
  void standard_noEntry_leadsToAMirror() {
    assertThat(STANDARD.all())
        .allSatisfy(
            r ->
                assertThat(r.address())
                    .as(r.key())
                    .doesNotContainPattern(
                        "medilib|uptodatefree|neupsykey|docslib|scribd|vdoc|paperexplained"));
  }

  @Test
  void get_aDoi_isPrintedAndLinked() {
    Reference tumani = STANDARD.get("tumani-2020");

    assertThat(tumani.toText())
        .isEqualTo("Tumani 2020, Neurol Res Pract 2:8, doi 10.1186/s42466-020-0051-z");
    assertThat(tumani.address()).isEqualTo("https://doi.org/10.1186/s42466-020-0051-z");
    assertThatIllegalStateException().isThrownBy(() -> STANDARD.get("nobody-1900"));
  }

  @Test
  void address_onlyJournalAndPage_searchesPubMedForThem() {
    Reference one =
        new Reference(
            "a",
            "",
            "",
            Map.of("title", "t", "container-title", "J Neurol", "volume", "1", "page", "2"));

    assertThat(one.address())
        .isEqualTo("https://pubmed.ncbi.nlm.nih.gov/?term=J+Neurol%5Bta%5D+1%5Bvi%5D+2%5Bpg%5D");
    assertThat(one.toText()).isEqualTo("J Neurol 1:2");
    assertThatIllegalStateException()
        .isThrownBy(() -> new Reference("a", "Nobody", "1900", Map.of("title", "t")));
    assertThat(new Reference("a", "", "", Map.of("PMCID", "PMC1")).toText()).isEqualTo("PMC1");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "[{\"id\": \"a\"",
        "[{\"id\" \"a\"}]",
        "[nothing]",
        "[] []",
        "[{\"id\":\"a\",\"title\":\"t\",\"ISBN\":\"1\"},{\"id\":\"a\",\"title\":\"t\",\"ISBN\":\"1\"}]"
      })
  void of_brokenTextOrAKeyTwice_isAProgrammingError(String text) {
    assertThatIllegalStateException().isThrownBy(() -> Bibliography.of(text));
  }

  @Test
  void of_escapesNumbersAndBodies_areUnderstood() {
    Bibliography one =
        Bibliography.of(
            """
            [{"id":"a","author":[{"literal":"A body"}],"issued":{"date-parts":[[1999,-1]]},
              "title":"Of \\"marks\\"","ISBN":"978-3-16-148410-0"}]
            """);

    assertThat(one.get("a").toText())
        .isEqualTo("A body 1999, Of \"marks\", ISBN 978-3-16-148410-0");
    assertThat(one.get("a").address()).isEqualTo("ISBN 978-3-16-148410-0");
  }

  @Nested
  class Cells {

    @Test
    void parse_oneSeenInAnother_namesBoth() {
      Provenance both = Provenance.parse("thompson-2018 via rocca-2024", Status.SECOND_HAND);

      assertThat(both.references())
          .extracting(Reference::key)
          .containsExactly("thompson-2018", "rocca-2024");
      assertThat(both.words()).contains(", as given in Rocca 2024");
    }

    @Test
    void parse_nothingLookedUp_saysSoInTheSameWordsEverywhere() {
      assertThat(Provenance.parse("", Status.MEMORY).words()).isEqualTo("from memory");
      assertThat(Provenance.parse("", Status.PROJECT_RULE).words()).isEqualTo("project rule");
      assertThat(Provenance.parse("", Status.COMMON_PRACTICE).words())
          .isEqualTo("common practice, no source");
      assertThat(Provenance.parse("tumani-2020", Status.MEMORY).words())
          .startsWith("from memory, to confirm in Tumani 2020");
      assertThat(Provenance.parse("tumani-2020", Status.COMMON_PRACTICE).words())
          .startsWith("common practice; compare Tumani 2020");
      assertThat(Provenance.parse("tumani-2020", Status.PROJECT_RULE).words())
          .startsWith("project rule; compare Tumani 2020");
    }

    @Test
    void parse_noReference_isRefusedUnlessTheStatusSaysThatThereIsNone() {
      Set<Status> without = EnumSet.of(Status.MEMORY, Status.PROJECT_RULE, Status.COMMON_PRACTICE);
      for (Status status : EnumSet.complementOf(EnumSet.copyOf(without))) {
        assertThatIllegalStateException().isThrownBy(() -> Provenance.parse("", status));
      }
      assertThatIllegalStateException()
          .isThrownBy(() -> Provenance.parse("nobody-1900", Status.READ));
    }
  }
}
