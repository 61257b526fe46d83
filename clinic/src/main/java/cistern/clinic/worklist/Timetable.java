package cistern.clinic.worklist;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.account.Permission;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.Duty;
import cistern.clinic.status.Summaries.Which;
import cistern.clinic.status.Summary;
import cistern.clinic.status.Waiting;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.web.servlet.function.ServerResponse;

/** The day: one row a person, by what comes first and when it is due. */
final class Timetable {

  private static final int MOST = Setting.DAY_ROWS.number();

  private final CaseContext context;
  private final CaseList list;

  Timetable(CaseContext context, CaseList list) {
    this.context = context;
    this.list = list;
  }

  ServerResponse page(PageRequest visit) {
    long unread = list.read(visit);
    return Responses.page(
        context
            .frame()
            .toHtml(
                visit,
                "The day",
                Element.of("h1", "The day"),
                begin(visit),
                division("renewed", reading(unread), table(visit, unread)).with("id", "renewed"),
                note(
                    "empty",
                    "Looked at: every case that is not signed as it stands, every emergency that"
                        + " nobody has closed, and every case that was changed in the last "
                        + Setting.DAY_DAYS.number()
                        + " days.")));
  }

  /** A new case, a search, and what a laboratory sent. */
  private static Node begin(PageRequest visit) {
    Node search =
        visit
            .form("/cases/find")
            .with("role", "search")
            .with(
                field(
                    "Find by name, identifier, question, date or words of the answer",
                    input("text", "").with("autocomplete", "off")),
                button("Find").with("class", "second-button"));
    Node sent =
        visit.isAllowed(Permission.ENTER_RESULTS)
            ? Element.of(
                    "details",
                    Element.of("summary", "From a laboratory: drop, paste or choose a file"),
                    SentScreen.form(visit))
                .with("class", "sending-in")
            : nothing();
    return Fragment.of(
        division(
            "tools",
            visit.isAllowed(Permission.SEE_CASE) ? search : nothing(),
            visit.isAllowed(Permission.WORK_UP) ? Worklist.newCase(visit) : nothing()),
        sent);
  }

  /** What is not on the page yet; the script asks for it, and without it the link does. */
  private static Node reading(long unread) {
    return unread == 0
        ? nothing()
        : note(
                "kept",
                "Still reading "
                    + unread
                    + (unread == 1 ? " case." : " cases.")
                    + " What is read stands below, some of it as it stood some minutes ago. This"
                    + " page renews itself. ")
            .with("role", "status")
            .with("data-renew", Integer.toString(Setting.DAY_RENEWAL.number()))
            .with(link("/day", "Look again"));
  }

  private static Optional<Duty> only(PageRequest visit) {
    return Arrays.stream(Duty.values())
        .filter(d -> word(d).equals(visit.field("only")))
        .findFirst();
  }

  private static String word(Duty duty) {
    return duty.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static long page(String asked) {
    return asked.matches("[1-9]\\d{0,4}") ? Long.parseLong(asked) : 1;
  }

  private Node table(PageRequest visit, long unread) {
    boolean isMine = visit.field("mine").equals("yes");
    Optional<Duty> only = only(visit);
    long page = page(visit.field("page"));
    List<Summary> found =
        context
            .summaries()
            .day(new Which(only, isMine ? visit.account().id() : ""), (page - 1) * MOST, MOST + 1);
    Node ways = ways(only, isMine);
    if (found.isEmpty()) {
      return Fragment.of(ways, note("empty", unread == 0 ? "Nothing waits." : "Nothing yet."));
    }
    return Fragment.of(
        ways,
        rows(visit, found.stream().limit(MOST).toList(), only),
        turns(only, isMine, page, found.size() > MOST));
  }

  private static String address(Optional<Duty> only, boolean isMine, long page) {
    List<String> parts = new ArrayList<>();
    only.ifPresent(d -> parts.add("only=" + word(d)));
    if (isMine) {
      parts.add("mine=yes");
    }
    if (page > 1) {
      parts.add("page=" + page);
    }
    return parts.isEmpty() ? "/day" : "/day?" + String.join("&", parts);
  }

  /** What waits, with how many; each leads to that alone. */
  private Node ways(Optional<Duty> only, boolean isMine) {
    Map<Duty, Long> counts = context.summaries().waiting();
    List<Node> ways = new ArrayList<>();
    ways.add(way(Optional.empty(), isMine, "Everything", only.isEmpty()));
    for (Duty duty : Duty.values()) {
      long count = counts.getOrDefault(duty, 0L);
      if (count > 0) {
        boolean isHere = only.filter(duty::equals).isPresent();
        ways.add(way(Optional.of(duty), isMine, duty.title() + " (" + count + ")", isHere));
      }
    }
    ways.add(
        link(address(only, !isMine, 1), isMine ? "Everybody's" : "Mine: what I have worked on"));
    return Element.of("nav").with(ways).with("class", "ways").with("aria-label", "What waits");
  }

  private static Element way(Optional<Duty> only, boolean isMine, String words, boolean isHere) {
    Element link = link(address(only, isMine, 1), words);
    return isHere ? link.with("aria-current", "true") : link;
  }

  private static Node turns(Optional<Duty> only, boolean isMine, long page, boolean isMore) {
    List<Node> ways = new ArrayList<>();
    if (page > 1) {
      ways.add(link(address(only, isMine, page - 1), "Earlier rows"));
    }
    if (isMore) {
      ways.add(link(address(only, isMine, page + 1), "Further rows"));
    }
    return division("actions").with(ways);
  }

  private Node rows(PageRequest visit, List<Summary> found, Optional<Duty> only) {
    List<Element> groups = new ArrayList<>();
    List<Element> rows = new ArrayList<>();
    Optional<Duty> last = Optional.empty();
    for (Summary summary : found) {
      Waiting first = first(summary, only);
      if (!last.equals(Optional.of(first.duty()))) {
        close(groups, rows);
        rows = new ArrayList<>();
        rows.add(heading(first.duty()));
        last = Optional.of(first.duty());
      }
      rows.add(new TimetableRow(visit, context, summary, first).toElement());
    }
    close(groups, rows);
    return Element.of(
            "table",
            Element.of("caption", "One row a person, by what comes first and when it is due"),
            head())
        .with(groups)
        .with("class", "timetable");
  }

  private static void close(List<Element> groups, List<Element> rows) {
    if (!rows.isEmpty()) {
      groups.add(Element.of("tbody").with(rows));
    }
  }

  private static Element head() {
    List<Element> columns =
        List.of("When", "Person", "What", "To do").stream()
            .map(h -> Element.of("th", h).with("scope", "col"))
            .toList();
    return Element.of("thead", Element.of("tr").with(columns));
  }

  private static Element heading(Duty duty) {
    return Element.of(
            "tr", Element.of("th", duty.title()).with("scope", "rowgroup").with("colspan", "4"))
        .with("class", "group");
  }

  private static Waiting first(Summary summary, Optional<Duty> only) {
    return summary.waiting().stream()
        .filter(w -> only.isEmpty() || w.duty() == only.get())
        .findFirst()
        .orElseGet(() -> new Waiting(Duty.SIGN, "", ""));
  }
}
