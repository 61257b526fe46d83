package cistern.report.paper;

import cistern.report.figure.Figure;
import cistern.report.figure.FigureTable;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.page.Medium;
import cistern.report.page.PageFrame;
import cistern.report.page.Sources;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Field;
import cistern.report.paper.Paper.Form;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import java.util.ArrayList;
import java.util.List;

/** A paper as a page that needs nothing but itself, for a screen and for print. */
public final class PaperPage {

  private static final String SUBJECT = "Lumbar puncture";
  private static final String BANNER = "For research and education. This is not a medical device.";

  private final Sources sources;
  private final boolean isPrint;

  private PaperPage(boolean isPrint) {
    this.isPrint = isPrint;
    sources = new Sources(isPrint ? Medium.PAPER : Medium.SCREEN);
  }

  /** The page for a screen. */
  public static String toHtml(Paper paper) {
    return PageFrame.toScreen(
        paper.title(),
        PageFrame.read(PaperPage.class, "screen.css"),
        new PaperPage(false).main(paper));
  }

  /** The body of the page for a screen, to stand inside another page of the program. */
  public static Element toBody(Paper paper) {
    return new PaperPage(false).main(paper);
  }

  /**
   * The page for print, as well-formed markup.
   *
   * @param style added to the style sheet: faces and size of the sheet
   */
  public static String toPrint(Paper paper, String style) {
    return PageFrame.toPaper(
        paper.title(),
        SUBJECT,
        style + PageFrame.read(PaperPage.class, "print.css"),
        new PaperPage(true).main(paper));
  }

  private Element main(Paper paper) {
    List<Node> parts = new ArrayList<>();
    parts.add(Element.of("p", BANNER).with("class", "banner"));
    parts.add(Element.of("h1", paper.title()));
    for (int i = 0; i < paper.answer().size(); i++) {
      Element said = paragraph(paper.answer().get(i));
      parts.add(i == 0 ? said.with("class", "answer") : said);
    }
    paper.sections().forEach(section -> parts.add(section(section)));
    Node list = sources.toList();
    if (!sources.isEmpty()) {
      parts.add(Element.of("section", Element.of("h2", "Sources"), list));
    }
    parts.add(Element.of("footer", Element.of("p", paper.foot())));
    return Element.of("main").with("class", "leaf").with(parts);
  }

  private Element section(Section section) {
    return Element.of("section", Element.of("h2", section.heading()))
        .with(section.blocks().stream().map(this::block).toList());
  }

  private Node block(Block block) {
    return switch (block) {
      case Paragraphs paragraphs ->
          new Fragment(paragraphs.lines().stream().<Node>map(this::paragraph).toList());
      case Items items -> items(items);
      case Table table -> table(table);
      case Form form -> form(form);
      case Picture picture -> picture(picture);
    };
  }

  private Element paragraph(Line line) {
    return Element.of("p", line.text() + " ").with(sources.mark(line.grounds()));
  }

  private Node items(Items items) {
    Element list =
        Element.of("ul")
            .with(
                items.lines().stream()
                    .map(
                        line ->
                            Element.of("li", line.text() + " ").with(sources.mark(line.grounds())))
                    .toList());
    return items.heading().isEmpty() ? list : Fragment.of(Element.of("h3", items.heading()), list);
  }

  private Node table(Table table) {
    Element head =
        Element.of(
            "thead",
            Element.of("tr")
                .with(
                    table.head().stream()
                        .map(name -> Element.of("th", heading(name)).with("scope", "col"))
                        .toList()));
    Element body = Element.of("tbody").with(table.rows().stream().map(this::row).toList());
    Element whole =
        Element.of("table", Element.of("caption", table.caption()), head, body)
            .with("class", "leaf-table");
    return isPrint
        ? whole
        : Element.of("div", whole)
            .with("class", "scroll")
            .with("tabindex", "0")
            .with("role", "region")
            .with("aria-label", table.caption());
  }

  /** A heading begins with a capital; a Greek letter is a name, a unit such as mL stays. */
  private static String heading(String name) {
    boolean isLatin = !name.isEmpty() && name.charAt(0) >= 'a' && name.charAt(0) <= 'z';
    boolean isUnit = name.length() > 1 && Character.isUpperCase(name.charAt(1));
    return isLatin && !isUnit ? Character.toUpperCase(name.charAt(0)) + name.substring(1) : name;
  }

  private Element row(Row row) {
    List<Node> cells = new ArrayList<>();
    for (int i = 0; i < row.cells().size(); i++) {
      String text = row.cells().get(i);
      boolean isLast = i == row.cells().size() - 1;
      Element cell = i == 0 ? Element.of("th", text).with("scope", "row") : Element.of("td", text);
      cells.add(isLast ? cell.withText(" ").with(sources.mark(row.grounds())) : cell);
    }
    return Element.of("tr").with(cells);
  }

  private static Node form(Form form) {
    List<Node> rows = new ArrayList<>();
    for (Field field : form.fields()) {
      rows.add(
          Element.of(
              "tr",
              Element.of("th", field.name()).with("scope", "row"),
              Element.of("td", field.value())));
    }
    return Element.of("table", Element.of("caption", form.title()), Element.of("tbody").with(rows))
        .with("class", "leaf-form");
  }

  private Node picture(Picture picture) {
    Figure figure = picture.figure();
    Element drawing = figure.toSvg();
    Element title = Element.of("p", figure.title()).with("class", "caption");
    Node numbers = numbers(figure.table());
    return isPrint
        ? Element.of(
                "div",
                drawing.with("alt", figure.title() + ". " + figure.description()),
                title,
                numbers)
            .with("class", "leaf-figure")
        : Element.of(
            "figure",
            drawing,
            Element.of(
                "figcaption",
                Element.of("p", figure.title()),
                Element.of(
                    "details", Element.of("summary", "The same numbers as a table"), numbers)));
  }

  private static Node numbers(FigureTable data) {
    Element head =
        Element.of(
            "thead",
            Element.of("tr")
                .with(
                    data.headings().stream()
                        .map(name -> Element.of("th", heading(name)).with("scope", "col"))
                        .toList()));
    List<Element> rows =
        data.rows().stream()
            .map(row -> Element.of("tr").with(row.stream().map(c -> Element.of("td", c)).toList()))
            .toList();
    return Element.of("table", head, Element.of("tbody").with(rows)).with("class", "leaf-table");
  }
}
