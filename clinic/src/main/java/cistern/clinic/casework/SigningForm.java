package cistern.clinic.casework;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.hidden;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.account.Permission;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.interpretation.Interpretation;
import cistern.report.chart.ChartComment;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.wording.PrintedTime;
import java.util.List;

/**
 * What is signed, side by side: the comment for the chart, the letter and the page for the person,
 * with the words that only the signing person can write, and what is open beside the button.
 */
final class SigningForm {

  private final CaseContext context;
  private final PageRequest visit;
  private final OpenCase open;
  private final LetterFields letter;

  SigningForm(CaseContext context, PageRequest visit, OpenCase open, LetterFields letter) {
    this.context = context;
    this.visit = visit;
    this.open = open;
    this.letter = letter;
  }

  /** The papers; above them the form for whoever may sign. */
  Node toNode(Interpretation said, boolean isAmendment) {
    return Fragment.of(
        visit.isAllowed(Permission.SIGN) ? form(isAmendment) : nothing(), papers(said));
  }

  private Element form(boolean isAmendment) {
    String path = "/cases/" + open.version().caseId() + "/report";
    Element reason = input("reason", "").with("autocomplete", "off").with("data-unkept", "");
    return visit
        .form(path)
        .with("class", "signing")
        .with("data-keep", path)
        .with("data-look", "letter")
        .with("data-look-at", path + "/look")
        .with(
            division(
                "words",
                field("Letter to", Html.area("to", letter.to()).with("rows", "2")),
                field("Salutation", input("salutation", letter.salutation())),
                field(
                    "Conclusion, in your own words",
                    Html.area("conclusion", letter.conclusion()).with("rows", "4"))),
            division(
                "sealing",
                hidden("version", Long.toString(open.version().number())),
                seen(),
                openPoints(),
                isAmendment ? field("Why it is amended", reason) : nothing(),
                note(
                    "quiet",
                    "One signature covers the report with its numbers, the comment, the letter and"
                        + " the page for the person, of version "
                        + open.version().number()
                        + ". Inputs, program, facts and policy are frozen with them."),
                button(
                    (isAmendment ? "Sign the amendment as " : "Sign as ")
                        + visit.account().fullName())));
  }

  private Element seen() {
    return Element.of("span", hidden("seen", sealed())).with("id", "seen");
  }

  private String sealed() {
    return letter.seen(open.version().number(), context.medicine().madeBy());
  }

  /** What is open when it is signed as it stands. */
  private Node openPoints() {
    List<String> all = context.status(open).open();
    return all.isEmpty()
        ? note("quiet", "Nothing that the program knows of is open.")
        : division(
            "open-points",
            Element.of("h2", "Open when you sign it now"),
            Html.list(all.stream().map(Html::text).toList(), ""));
  }

  private Node papers(Interpretation said) {
    return division(
        "papers",
        paper(
            "chart",
            "Chart comment",
            Html.paragraph(ChartComment.of(said, PrintedTime.of(context.medicine().facts())))
                .with("id", "chart-text"),
            copy("chart-text")),
        paper("letter-part", "Letter", division("sheet", letter(said)).with("id", "letter")),
        paper("patient-part", "For the person", division("sheet", page(said, Audience.PATIENT))));
  }

  private static Element paper(String id, String heading, Node... content) {
    return Element.of("section", Element.of("h2", heading).with("id", id))
        .with("aria-labelledby", id)
        .with(content);
  }

  /** Copies a text; the script shows it. */
  static Element copy(String id) {
    return Element.of("button", "Copy")
        .with("type", "button")
        .with("class", "second-button")
        .with("data-copy", id)
        .with("hidden", "hidden");
  }

  private Node letter(Interpretation said) {
    return page(said, Audience.REFERRER);
  }

  /** A paper without the headings of a page of its own, which stand around it here. */
  private Node page(Interpretation said, Audience audience) {
    Element body =
        Page.of(context.medicine().software(), context.medicine().facts()).toBody(said, audience);
    return new Fragment(Inner.of(body.children(), audience.word()));
  }

  /** The letter as it is typed, and that it was seen so. */
  Node look(Interpretation said) {
    return Fragment.of(
        division("live", Element.of("span", hidden("seen", sealed())).with("data-at", "seen"))
            .with("hidden", "hidden"),
        letter(said));
  }
}
