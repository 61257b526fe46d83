package cistern.clinic.web;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.link;

import cistern.clinic.account.Permission;
import cistern.report.look.Tokens;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.report.page.PageFrame;
import cistern.report.paper.PaperPage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What stands around every screen.
 *
 * @param isInvented whether every case in the store is invented
 * @param policy the local policy in force, with what tells its version
 */
public record Frame(boolean isInvented, Optional<String> policy) {

  /** The style sheet of all screens: the tokens and the page of reports, then what is ours. */
  public static String style() {
    return Tokens.standard().toStyle()
        + PageFrame.read(PageFrame.class, "screen.css")
        + PageFrame.read(PaperPage.class, "screen.css")
        + PageFrame.read(Frame.class, "clinic.css");
  }

  /** A screen. */
  public String toHtml(Visit visit, String title, Node... content) {
    Element head =
        Element.of(
            "head",
            Element.of("meta").with("charset", "utf-8"),
            Element.of("meta")
                .with("name", "viewport")
                .with("content", "width=device-width, initial-scale=1"),
            Element.of("title", title + " · Cistern"),
            Element.of("link")
                .with("rel", "icon")
                .with("type", "image/svg+xml")
                .with("href", "/icon.svg"),
            Element.of("link").with("rel", "stylesheet").with("href", "/look.css"),
            Element.of("script").with("src", "/clinic.js").with("defer", "defer"));
    Element body =
        Element.of(
            "body",
            link("#content", "To the content").with("class", "skip"),
            top(visit),
            Element.of("main").with("id", "content").with("tabindex", "-1").with(content),
            foot(visit),
            Shortcuts.dialog());
    Element html = Element.of("html", head, body).with("lang", "en-GB");
    return "<!DOCTYPE html>\n" + html.toText();
  }

  private static Element top(Visit visit) {
    List<Node> parts = new ArrayList<>();
    parts.add(link("/", "Cistern").with("class", "name"));
    parts.add(Element.of("nav").with("aria-label", "Places").with(places(visit)));
    visit
        .visitor()
        .ifPresent(
            account ->
                parts.add(
                    division(
                        "who",
                        Element.of("span", account.fullName() + ", " + account.role().word()),
                        link("/me", "Password"),
                        visit
                            .form("/sign-out")
                            .with(
                                Element.of("button", "Sign out")
                                    .with("type", "submit")
                                    .with("class", "plain")))));
    return Element.of("header").with("class", "top").with(parts);
  }

  private static List<Element> places(Visit visit) {
    List<Element> places = new ArrayList<>();
    place(visit, Permission.SEE_DAY, "/day", "The day").ifPresent(places::add);
    place(visit, Permission.SEE_CASE, "/cases", "Cases").ifPresent(places::add);
    place(visit, Permission.SEE_TRAIL, "/trail", "Audit trail").ifPresent(places::add);
    place(visit, Permission.KEEP_ACCOUNTS, "/accounts", "Accounts").ifPresent(places::add);
    return places;
  }

  private static Optional<Element> place(
      Visit visit, Permission permission, String path, String words) {
    if (!visit.isAllowed(permission)) {
      return Optional.empty();
    }
    Element link = link(path, words);
    boolean isHere = visit.request().path().startsWith(path);
    return Optional.of(isHere ? link.with("aria-current", "true") : link);
  }

  private Element foot(Visit visit) {
    String invented = isInvented ? " All cases here are invented." : "";
    return Element.of(
            "footer",
            Html.paragraph(
                "For research and education. This is not a medical device. Local practice and the"
                    + " responsible clinician decide."
                    + invented),
            visit.visitor().isEmpty() ? Html.nothing() : rules(),
            Shortcuts.button())
        .with("class", "foot");
  }

  /** What every number on the screens stands on. */
  private Element rules() {
    return Html.paragraph(policy.map(p -> "Local policy " + p + ". ").orElse("No local policy. "))
        .with(link("/facts", "Facts in force"));
  }
}
