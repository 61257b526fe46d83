package cistern.clinic.web;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.link;

import cistern.clinic.account.Account;
import cistern.clinic.account.Permission;
import cistern.clinic.audit.Digest;
import cistern.report.look.Tokens;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.report.paper.PageFrame;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * What stands around every screen.
 *
 * @param isInvented whether every case in the store is invented
 * @param policy tells the local policy in force, with what tells its version
 */
public record Frame(boolean isInvented, Supplier<Optional<String>> policy) {

  /** The style sheet of all screens: the tokens and the page of reports, then what is ours. */
  static final Asset STYLE =
      Asset.of(
          "/look.css",
          Tokens.standard().toStyle()
              + PageFrame.read(PageFrame.class, "screen.css")
              + PageFrame.read(Frame.class, "clinic.css"));

  /** The script of all screens. */
  static final Asset SCRIPT =
      Asset.of(
          "/clinic.js",
          PageFrame.read(Frame.class, "clinic.js") + PageFrame.read(Frame.class, "gel.js"));

  /**
   * A text of the program itself, under an address that tells its content: a browser may keep it.
   *
   * @param address with what tells one content from another
   * @param text the content
   */
  record Asset(String address, String text) {
    /** As much of a digest as tells two releases apart. */
    private static final int SHOWN = 12;

    static Asset of(String path, String text) {
      String digest = Digest.sha256(text.getBytes(StandardCharsets.UTF_8)).substring(0, SHOWN);
      return new Asset(path + "?" + digest, text);
    }
  }

  /** A screen. */
  public String toHtml(PageRequest visit, String title, Node... content) {
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
            Element.of("link").with("rel", "stylesheet").with("href", STYLE.address()),
            Element.of("script").with("src", SCRIPT.address()).with("defer", "defer"));
    Element body =
        Element.of(
            "body",
            link("#content", "To the content").with("class", "skip"),
            top(visit),
            Element.of("main").with("id", "content").with("tabindex", "-1").with(content),
            foot(visit),
            Shortcuts.dialog());
    Element html =
        Element.of("html", head, body.with("data-person", person(visit))).with("lang", "en-GB");
    return "<!DOCTYPE html>\n" + html.toText();
  }

  /** Whose page it is: what is typed in a tab is that person's only. */
  private static String person(PageRequest visit) {
    return visit.visitor().map(Account::id).orElse("");
  }

  private static Element top(PageRequest visit) {
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

  private static List<Element> places(PageRequest visit) {
    List<Element> places = new ArrayList<>();
    place(visit, Permission.SEE_DAY, "/day", "The day").ifPresent(places::add);
    place(visit, Permission.SEE_CASE, "/cases", "Cases").ifPresent(places::add);
    place(visit, Permission.SEE_FIGURES, "/figures", "Figures").ifPresent(places::add);
    place(visit, Permission.KEEP_RULES, "/rules", "House rules").ifPresent(places::add);
    place(visit, Permission.SEE_TRAIL, "/trail", "Audit trail").ifPresent(places::add);
    place(visit, Permission.KEEP_ACCOUNTS, "/accounts", "Accounts").ifPresent(places::add);
    return places;
  }

  private static Optional<Element> place(
      PageRequest visit, Permission permission, String path, String words) {
    if (!visit.isAllowed(permission)) {
      return Optional.empty();
    }
    Element link = link(path, words);
    boolean isHere = visit.request().path().startsWith(path);
    return Optional.of(isHere ? link.with("aria-current", "true") : link);
  }

  private Element foot(PageRequest visit) {
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
    return Html.paragraph(
            policy.get().map(p -> "Local policy " + p + ". ").orElse("No local policy. "))
        .with(link("/facts", "Facts in force"));
  }
}
