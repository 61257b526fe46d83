package cistern.clinic.worklist;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.hidden;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.text;

import cistern.clinic.casework.CaseContext;
import cistern.clinic.form.CaseStep;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.Summary;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** All cases, a page at a time, and those whose name holds a text. */
final class CaseList {

  private static final String PAGE = "page";
  private static final String TEXT = "text";
  private static final int MOST = Setting.CASES_A_PAGE.number();

  private final CaseContext context;

  CaseList(CaseContext context) {
    this.context = context;
  }

  static Element link(Summary summary) {
    return Html.link("/cases/" + summary.caseId(), summary.name());
  }

  /** Has read what was changed, notes who looks, and says how many cases are not read yet. */
  long read(PageRequest visit) {
    context.cases().listed(visit.account().id());
    return context.summaries().bring(Duration.ofMillis(Setting.DAY_WAIT.number()));
  }

  private static long number(PageRequest visit) {
    String asked = visit.field(PAGE);
    return asked.matches("[1-9]\\d{0,5}") ? Long.parseLong(asked) : 1;
  }

  /** The page that a visit asks for, with ways to the others. */
  Node page(PageRequest visit) {
    read(visit);
    long number = number(visit);
    List<Summary> found = context.summaries().page((number - 1) * MOST, MOST + 1);
    List<Element> ways = new ArrayList<>();
    if (number > 1) {
      ways.add(Html.link("/cases?page=" + (number - 1), "Newer cases"));
    }
    if (found.size() > MOST) {
      ways.add(Html.link("/cases?page=" + (number + 1), "Older cases"));
    }
    return Fragment.of(
        finder(visit, ""),
        table("The last changed first", found),
        Html.division("actions").with(ways));
  }

  /** The cases that hold what a visit asks for; it stands in no address. */
  Node found(PageRequest visit) {
    String asked = visit.field(TEXT);
    if (asked.length() > Setting.SEARCH_MOST.number()) {
      return Fragment.of(
          note(
                  "trouble",
                  "Search for a shorter text, of at most "
                      + Setting.SEARCH_MOST.number()
                      + " signs.")
              .with("role", "alert"),
          finder(visit, ""));
    }
    read(visit);
    long number = number(visit);
    List<Summary> found =
        asked.isEmpty()
            ? List.of()
            : context.summaries().holding(asked, (number - 1) * MOST, MOST + 1);
    List<Node> ways = new ArrayList<>();
    if (number > 1) {
      ways.add(turn(visit, asked, number - 1, "Newer cases"));
    }
    if (found.size() > MOST) {
      ways.add(turn(visit, asked, number + 1, "Older cases"));
    }
    return Fragment.of(
        finder(visit, asked),
        table(
            "Cases whose name, person or question holds this text, the last changed first", found),
        Html.division("actions").with(ways),
        Html.paragraph("").with(Html.link("/cases", "All cases")));
  }

  /** Another page of what was found. */
  private static Node turn(PageRequest visit, String asked, long number, String words) {
    return visit
        .form("/cases/find")
        .with(
            hidden(TEXT, asked),
            hidden(PAGE, Long.toString(number)),
            button(words).with("class", "plain"));
  }

  private static Node finder(PageRequest visit, String asked) {
    return visit
        .form("/cases/find")
        .with("role", "search")
        .with(
            field(
                "Part of a case's name, person or question",
                input(TEXT, asked).with("autocomplete", "off")),
            button("Find"));
  }

  private static Node table(String caption, List<Summary> summaries) {
    return summaries.isEmpty()
        ? note("empty", "No case.")
        : Html.table(
            caption,
            List.of("Case", "Plan", "Draw", "Results", "Bands", "Report", "After"),
            summaries.stream().limit(MOST).map(CaseList::row).toList());
  }

  private static List<Node> row(Summary summary) {
    return List.of(
        link(summary),
        word(summary, CaseStep.PLAN),
        word(summary, CaseStep.DRAW),
        word(summary, CaseStep.RESULTS),
        word(summary, CaseStep.BANDS),
        text(summary.signing()),
        word(summary, CaseStep.AFTER));
  }

  private static Node word(Summary summary, CaseStep step) {
    return text(summary.words().getOrDefault(step, ""));
  }
}
