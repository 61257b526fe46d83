package cistern.report.cohort;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandVerdict;
import cistern.cohort.CohortMember;
import cistern.cohort.CohortMember.Foretold;
import cistern.cohort.CohortSummary;
import cistern.cohort.QualityAmount;
import cistern.cohort.QualityFigure;
import cistern.cohort.SitePeople;
import cistern.cohort.SiteStudy;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import cistern.report.cohort.CohortChanges.Changed;
import cistern.report.cohort.CohortReport.Groups;
import cistern.report.cohort.CohortReport.Made;
import cistern.report.pdf.PdfDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said of a cohort; its people are drawn here and nobody's. */
class CohortFolderTest {

  private static final Facts FACTS = Facts.standard();

  @TempDir private Path folder;

  private static CohortMember member(int i, Random random) {
    boolean isCase = i % 3 == 0;
    double index = Math.exp(random.nextGaussian() * 0.2) * (isCase ? 0.9 : 0.5);
    double age = 20 + i % 60;
    return new CohortMember(
        "invented-" + i,
        OptionalDouble.of(age),
        Optional.of(YearMonth.of(2034, 1 + i % 12)),
        Map.of(
            FindingCode.IGG_INDEX,
            index,
            FindingCode.ALBUMIN_QUOTIENT,
            (3 + age / 20 + random.nextDouble()) / 1000),
        Map.of(FindingCode.IGG_INDEX, index > 0.7 ? Verdict.ABOVE : Verdict.WITHIN),
        Map.of("2017", "met", "2024", isCase ? "met" : "undetermined"),
        Map.of(
            QualityFigure.HEADACHE,
            i % 5 == 0 ? Answer.YES : Answer.NO,
            QualityFigure.BLOODY,
            i % 9 == 0 ? Answer.YES : Answer.UNKNOWN),
        Map.of(QualityAmount.VOLUME, 6.0 + i % 5),
        i % 4 == 0 ? "cutting 20G" : "atraumatic 22G",
        new CohortMember.Gel(
            isCase ? BandVerdict.POSITIVE : BandVerdict.NEGATIVE,
            Optional.of(i % 10 == 0 ? BandVerdict.BORDERLINE : BandVerdict.NEGATIVE),
            true),
        Optional.of(
            new Foretold(isCase, 0.5, isCase ? 0.9 : 0.1, isCase ? 0.7 : 0, isCase ? 1 : 0.3)),
        Optional.of(isCase ? "ms" : "none"));
  }

  private static CohortReport report(int people, Groups groups, List<Changed> changes) {
    Random random = new Random(5);
    SitePeople site = SiteStudy.people(groups.controls(), groups.cases());
    CohortSummary summary = CohortSummary.NONE;
    for (int i = 0; i < people; i++) {
      CohortMember member = member(i, random);
      site.add(member);
      summary = summary.merge(CohortSummary.of(member));
    }
    return new CohortReport(
        new Made("Cistern test", "facts 1", Optional.of("this site")),
        groups,
        true,
        summary,
        2,
        CohortReport.Site.of(new SiteStudy(FACTS, site, 1)),
        !changes.isEmpty(),
        changes);
  }

  private static Groups groups(Optional<String> signedBy) {
    return new Groups(Set.of("none"), Set.of("ms"), Optional.of("Dr Looked"), signedBy);
  }

  private Path write(CohortReport report, String name) throws IOException {
    Path place = folder.resolve(name);
    try (CohortFolder out = CohortFolder.beside(place)) {
      out.accept(CohortRows.row(member(0, new Random(5))));
      out.finish(report, FACTS, PdfDocument.of("Cistern test", FACTS));
    }
    return place;
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void finish_aSignedCohort_saysWhatStandsOut() throws IOException {
    List<Changed> changes = new ArrayList<>();
    for (int i = 0; i < 201; i++) {
      changes.add(new Changed("w-" + i, "igg-index.verdict", "within", "above", "the value"));
    }
    Path out = write(report(360, groups(Optional.of("Dr Signed")), changes), "signed");

    assertThat(names(out))
        .containsExactly(
            "changes.csv",
            "dictionary.csv",
            "interpretations.csv",
            "policy.json",
            "report.html",
            "report.pdf",
            "summary.json");
    assertThat(Files.readString(out.resolve("report.html")))
        .contains("Cohort of 360 punctures", "Punctures from 2034-01 to 2034-12")
        .contains("headache afterwards in 20 % (16 to 24 %; 72 of 360)", "with cutting 20G")
        .contains("201 verdicts differ from the earlier table", "the first 200; all stand in")
        .contains("2 inputs were not valid", "confirmed by Dr Looked", "local policy this site")
        .contains("The probabilities fit the people of this site.")
        .contains("Limits of this site", "controls (none)", "Two readings of the same gel");
    // 240 of 360 are controls: limits by rank
    assertThat(Files.readString(out.resolve("policy.json")))
        .contains("igg-index.upper", "240 own controls (none), by rank", "signed by Dr Signed");
    assertThat(Files.readString(out.resolve("summary.json")))
        .contains("\"punctures\" : 360", "\"method\" : \"rank\"");
    assertThat(Files.readAllLines(out.resolve("changes.csv"))).hasSize(202);
  }

  @Test
  void finish_aFewPeople_protectsThemAndRefusesLimits() throws IOException {
    Groups none = new Groups(Set.of(), Set.of(), Optional.empty(), Optional.empty());
    Path out = write(report(4, none, List.of()), "few");
    String page = Files.readString(out.resolve("report.html"));

    assertThat(names(out)).doesNotContain("policy.json", "proposed-policy.json", "changes.csv");
    assertThat(page)
        .contains("Too little is recorded of how the punctures went", "under 5")
        .doesNotContain("Month by month", "Limits of this site", "Two readings of the same gel");
  }

  /** Six punctures: four people in one group, two in the other, one or two with another needle. */
  @Test
  void finish_groupsOfAFew_tellNeitherTheirSizeNorTheirResults() throws IOException {
    String page =
        Files.readString(
            write(report(6, groups(Optional.empty()), List.of()), "groups").resolve("report.html"));

    assertThat(page)
        .contains("cutting 20G</th><td>–</td><td>under 5</td><td>–</td><td>– </td>")
        .contains("IgG index</th><td>under 5</td><td>too few</td>")
        .contains("with bands</th><td>under 5</td><td>–</td>")
        .doesNotContain("of 4)", "flatters itself");
  }

  @Test
  void finish_aFolderThatIsThere_keepsWhatElseIsInIt() throws IOException {
    Path place = Files.createDirectory(folder.resolve("there"));
    Files.writeString(place.resolve("mine.txt"), "mine");
    Files.writeString(place.resolve("report.html"), "old");
    write(report(30, groups(Optional.empty()), List.of()), "there");

    assertThat(names(place)).contains("mine.txt", "report.html", "summary.json");
    assertThat(Files.readString(place.resolve("report.html"))).contains("Cohort of 30 punctures");
    assertThat(names(folder)).containsExactly("there");
  }

  @Test
  void close_beforeItIsWhole_leavesNothing() throws IOException {
    try (CohortFolder out = CohortFolder.beside(folder.resolve("never"))) {
      out.accept(CohortRows.row(member(0, new Random(5))));
    }

    assertThat(names(folder)).isEmpty();
  }
}
