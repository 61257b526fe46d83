package cistern.report.paper;

import cistern.fact.Grounds;
import cistern.report.figure.Figure;
import cistern.report.figure.FigureTable;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Field;
import cistern.report.paper.Paper.Form;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Kind;
import cistern.report.paper.Paper.Labels;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Place;
import cistern.report.paper.Paper.Results;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Seal;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A paper as a page that needs nothing but itself, for a screen and for print. */
public final class PaperPage {

  /** A comma and a space that no line breaks at. */
  private static final String AND = ",\u00A0";

  /** What, who and by when. */
  private static final int TASK_COLUMNS = 3;

  private final Sources sources = new Sources();
  private final boolean isPrint;

  private PaperPage(boolean isPrint) {
    this.isPrint = isPrint;
  }

  /** The page for a screen. */
  public static String toHtml(Paper paper) {
    return PageFrame.toScreen(paper, toBody(paper));
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
    return PageFrame.toPaper(paper, style, new PaperPage(true).main(paper));
  }

  private Element main(Paper paper) {
    if (isPrint && paper.front().kind() == Kind.LABELS) {
      return Element.of("main")
          .with("class", paper.front().kind().word())
          .with(paper.sections().stream().map(this::section).toList());
    }
    List<Node> parts = new ArrayList<>();
    if (!paper.front().letterhead().isEmpty()) {
      parts.add(letterhead(paper.front().letterhead().lines().toList()));
    }
    parts.add(Element.of("p", paper.front().banner()).with("class", "banner"));
    parts.add(Element.of("h1", paper.title()));
    if (!paper.front().taken().isEmpty()) {
      parts.add(Element.of("p", paper.front().taken()).with("class", "taken"));
    }
    parts.add(seal(paper.front().seal()));
    for (int i = 0; i < paper.answer().size(); i++) {
      Element said = paragraph(paper.answer().get(i));
      parts.add(i == 0 ? said.with("class", "answer") : said.with("class", "statement"));
    }
    List<Section> annex = annexOf(paper);
    paper.sections().stream()
        .filter(s -> s.place() == Place.PAGE)
        .forEach(section -> parts.add(section(section)));
    if (isPrint && !annex.isEmpty()) {
      parts.add(moved(annex));
    }
    parts.add(Element.of("footer", Element.of("p", paper.foot()).with("class", "versions")));
    parts.add(annex(annex));
    return Element.of("main").with("class", paper.front().kind().word()).with(parts);
  }

  private static Element letterhead(List<String> lines) {
    List<Node> parts = new ArrayList<>();
    for (String line : lines) {
      parts.add(parts.isEmpty() ? Fragment.of() : Element.of("br"));
      parts.add(Element.of("strong", line));
    }
    return Element.of("p").with("class", "letterhead").with(parts);
  }

  private List<Section> annexOf(Paper paper) {
    return paper.sections().stream()
        .filter(s -> s.place() == Place.ANNEX || (s.place() == Place.SCREEN && !isPrint))
        .toList();
  }

  private static Node seal(Seal seal) {
    return switch (seal) {
      case Seal.NotNeeded none -> Fragment.of();
      case Seal.Unsigned unsigned -> Element.of("p", unsigned.words()).with("class", "draft");
      case Seal.Signed signed -> Element.of("p", signed.by()).with("class", "signed");
    };
  }

  /** What a page of print moved to the pages after it. */
  private static Node moved(List<Section> annex) {
    return Element.of(
            "p",
            "On the pages that follow: "
                + annex.stream().map(Section::heading).collect(Collectors.joining("; "))
                + "; sources.")
        .with("class", "moved");
  }

  /** On a screen each part unfolds; in print they stand after the first pages. */
  private Node annex(List<Section> annex) {
    List<Node> parts = new ArrayList<>();
    for (Section section : annex) {
      parts.add(
          isPrint
              ? section(section)
              : Element.of("details", Element.of("summary", section.heading()))
                  .with(section.blocks().stream().map(this::block).toList()));
    }
    List<Sources.Source> all = sources.all();
    if (!all.isEmpty()) {
      parts.add(Element.of("section", Element.of("h2", "Sources"), list(all)));
    }
    if (parts.isEmpty()) {
      return Fragment.of();
    }
    return Element.of("div").with("class", annex.isEmpty() ? "after" : "annex").with(parts);
  }

  private Element list(List<Sources.Source> sources) {
    return Element.of("ol")
        .with("class", "sources")
        .with(
            sources.stream()
                .map(s -> Element.of("li", text(s)).with("id", "source-" + s.number()))
                .toList());
  }

  /** On a screen with links; on paper the words say where it is found. */
  private Node text(Sources.Source source) {
    return isPrint ? new Text(source.text()) : CitedText.of(source.text(), source.references());
  }

  private Element section(Section section) {
    Element whole = Element.of("section");
    return (section.heading().isEmpty() ? whole : whole.with(Element.of("h2", section.heading())))
        .with(section.blocks().stream().map(this::block).toList());
  }

  private Node block(Block block) {
    return switch (block) {
      case Paragraphs paragraphs ->
          new Fragment(paragraphs.lines().stream().<Node>map(this::paragraph).toList());
      case Items items -> items(items);
      case Table table -> table(table);
      case Results results -> new ResultsTable(isPrint, this::mark, this::figure).of(results);
      case Form form -> form(form);
      case Labels labels -> LabelSheet.of(labels);
      case Picture picture -> figure(picture.figure());
    };
  }

  private Element paragraph(Line line) {
    return Element.of("p").with(said(line));
  }

  private List<Node> said(Line line) {
    return line.grounds().citations().isEmpty()
        ? List.of(new Text(line.text()))
        : List.of(new Text(line.text() + " "), mark(line.grounds()));
  }

  /** The numbers of some grounds, on a screen as links to the sources. */
  private Node mark(Grounds grounds) {
    List<String> numbers = sources.of(grounds);
    Element cite = Element.of("span").with("class", "cite");
    if (numbers.isEmpty()) {
      return Fragment.of();
    }
    if (isPrint) {
      return cite.withText("[" + String.join(AND, numbers) + "]");
    }
    List<Node> links = new ArrayList<>();
    for (String number : numbers) {
      links.add(new Text(links.isEmpty() ? "[" : AND));
      links.add(
          Element.of("a", number)
              .with("href", "#source-" + number)
              .with("aria-label", "source " + number));
    }
    return cite.with(links).withText("]");
  }

  private Node items(Items items) {
    Element list =
        Element.of("ul")
            .with(items.lines().stream().map(l -> Element.of("li").with(said(l))).toList());
    return items.heading().isEmpty() ? list : Fragment.of(Element.of("h3", items.heading()), list);
  }

  private Node table(Table table) {
    Element body = Element.of("tbody").with(table.rows().stream().map(this::row).toList());
    List<Node> parts = new ArrayList<>();
    if (!table.caption().isEmpty()) {
      parts.add(Element.of("caption", table.caption()));
    }
    parts.add(head(table.head()));
    parts.add(body);
    boolean isOfTasks = isPrint && table.head().size() == TASK_COLUMNS;
    Element whole =
        Element.of("table")
            .with("class", isOfTasks ? "leaf-table tasks" : "leaf-table")
            .with(parts);
    return isPrint ? whole : scroll(whole, String.join(", ", table.head()));
  }

  static Element scroll(Element table, String caption) {
    return Element.of("div", table)
        .with("class", "scroll")
        .with("tabindex", "0")
        .with("role", "region")
        .with("aria-label", caption);
  }

  private static Element head(List<String> names) {
    return Element.of(
        "thead",
        Element.of("tr")
            .with(
                names.stream()
                    .map(name -> Element.of("th", heading(name)).with("scope", "col"))
                    .toList()));
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
      cells.add(isLast ? cell.withText(" ").with(mark(row.grounds())) : cell);
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

  /** A figure with its title and, where it has numbers, its table. */
  private Element figure(Figure figure) {
    Element title = Element.of("p", figure.title()).with("class", "caption");
    boolean isCounted = !figure.table().headings().isEmpty();
    if (isPrint) {
      Element drawing = figure.toSvg().with("alt", figure.title() + ". " + figure.description());
      return Element.of("div", title, drawing).with("class", "leaf-figure");
    }
    Node numbers =
        isCounted
            ? Element.of(
                "details",
                Element.of("summary", "The same numbers as a table"),
                numbers(figure.table()))
            : Fragment.of();
    return Element.of(
        "figure", figure.toSvg(), Element.of("figcaption", title.with("class", ""), numbers));
  }

  /** The numbers of a figure. */
  private static Node numbers(FigureTable data) {
    List<Element> rows =
        data.rows().stream()
            .map(row -> Element.of("tr").with(row.stream().map(c -> Element.of("td", c)).toList()))
            .toList();
    return Element.of("table", head(data.headings()), Element.of("tbody").with(rows))
        .with("class", "leaf-table");
  }
}
