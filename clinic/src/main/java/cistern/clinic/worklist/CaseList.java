package cistern.clinic.worklist;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.text;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.casework.Desk;
import cistern.clinic.form.Step;
import cistern.clinic.setting.Setting;
import cistern.clinic.standing.Summaries.Asked;
import cistern.clinic.standing.Summaries.Known;
import cistern.clinic.standing.Summary;
import cistern.clinic.web.Html;
import cistern.clinic.web.Visit;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** All cases, a page at a time, and those whose name holds a text. */
final class CaseList {

  private static final String PAGE = "page";

  private final Desk desk;

  CaseList(Desk desk) {
    this.desk = desk;
  }

  static Element link(Summary summary) {
    return Html.link("/cases/" + summary.caseId(), summary.name());
  }

  /** The cases of which something may wait, as far as they are read. */
  Known waiting(Visit visit) {
    Duration looked = Duration.ofDays(Setting.DAY_DAYS.number());
    return desk.summaries()
        .known(
            asked(
                desk.cases()
                    .waiting(
                        visit.account().id(), desk.medicine().clock().instant().minus(looked))),
            Duration.ofMillis(Setting.DAY_WAIT.number()));
  }

  private List<Asked> asked(List<CaseVersion> versions) {
    Map<String, Long> signed = desk.reports().signedVersions();
    return versions.stream().map(v -> asked(v, signed.get(v.caseId()))).toList();
  }

  private static Asked asked(CaseVersion version, @Nullable Long signed) {
    return new Asked(version, signed == null ? OptionalLong.empty() : OptionalLong.of(signed));
  }

  /** As many cases are read at once as there are processors; the order stays. */
  private Stream<Summary> summaries(List<CaseVersion> versions) {
    return asked(versions).parallelStream().map(desk.summaries()::of);
  }

  /** The page that a visit asks for, with ways to the others. */
  Node page(Visit visit) {
    String asked = visit.field(PAGE);
    long number = asked.matches("[1-9]\\d{0,5}") ? Long.parseLong(asked) : 1;
    int most = Setting.CASES_A_PAGE.number();
    List<CaseVersion> versions =
        desk.cases().page(visit.account().id(), (number - 1) * most, most + 1);
    List<Element> ways = new ArrayList<>();
    if (number > 1) {
      ways.add(Html.link("/cases?page=" + (number - 1), "Newer cases"));
    }
    if (versions.size() > most) {
      ways.add(Html.link("/cases?page=" + (number + 1), "Older cases"));
    }
    List<Summary> shown = summaries(versions.stream().limit(most).toList()).toList();
    return Fragment.of(
        finder(visit, ""),
        table("The last changed first", shown),
        Html.division("actions").with(ways));
  }

  /** The cases whose name holds what a visit asks for; it stands in no address. */
  Node found(Visit visit) {
    String asked = visit.field("text");
    String plain = asked.toLowerCase(Locale.ROOT);
    List<Summary> found =
        asked.isEmpty()
            ? List.of()
            : summaries(desk.cases().holding(visit.account().id(), asked))
                .filter(s -> s.name().toLowerCase(Locale.ROOT).contains(plain))
                .toList();
    return Fragment.of(
        finder(visit, asked),
        table("Cases whose name holds this text, the last changed first", found),
        Html.paragraph("").with(Html.link("/cases", "All cases")));
  }

  private static Node finder(Visit visit, String asked) {
    return visit
        .form("/cases/find")
        .with("role", "search")
        .with(
            field("Part of a case's name", input("text", asked).with("autocomplete", "off")),
            button("Find"));
  }

  private static Node table(String caption, List<Summary> summaries) {
    return summaries.isEmpty()
        ? note("empty", "No case.")
        : Html.table(
            caption,
            List.of("Case", "Plan", "Draw", "Results", "Bands", "Report", "After"),
            summaries.stream().map(CaseList::row).toList());
  }

  private static List<Node> row(Summary summary) {
    return List.of(
        link(summary),
        word(summary, Step.PLAN),
        word(summary, Step.DRAW),
        word(summary, Step.RESULTS),
        word(summary, Step.BANDS),
        text(summary.signing()),
        word(summary, Step.AFTER));
  }

  private static Node word(Summary summary, Step step) {
    return text(summary.words().getOrDefault(step, ""));
  }
}
