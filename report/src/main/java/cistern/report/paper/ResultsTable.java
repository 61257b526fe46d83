package cistern.report.paper;

import cistern.fact.Grounds;
import cistern.finding.Verdict;
import cistern.report.figure.Figure;
import cistern.report.figure.Spot;
import cistern.report.figure.VerdictMark;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import cistern.report.paper.Paper.Amount;
import cistern.report.paper.Paper.Result;
import cistern.report.paper.Paper.Results;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Results as one table with aligned decimals: on a screen with the ruler of each value and its
 * limit in the margin; in print the figures that explain them stand beside it.
 */
final class ResultsTable {

  private static final double MARK_ROOM = 6;

  /** So many characters of a number stand behind its point in their own column. */
  private static final int ROOM = 4;

  private final PaperRemarks remarks = new PaperRemarks();
  private final boolean isPrint;
  private final Function<Grounds, Node> mark;
  private final Function<Figure, Element> figure;

  ResultsTable(boolean isPrint, Function<Grounds, Node> mark, Function<Figure, Element> figure) {
    this.isPrint = isPrint;
    this.mark = mark;
    this.figure = figure;
  }

  Node of(Results results) {
    boolean isRuled = results.rows().stream().anyMatch(r -> r.ruler().isPresent());
    boolean isNarrow = isPrint && !results.beside().isEmpty();
    boolean isMeasured =
        !isNarrow && results.rows().stream().anyMatch(r -> !r.amount().interval().isEmpty());
    List<Element> rows = new ArrayList<>();
    String group = "";
    for (Result result : results.rows()) {
      if (!isPrint && !result.group().isEmpty() && !result.group().equals(group)) {
        rows.add(heading(result.group()));
      }
      boolean isFirst = !result.group().equals(group);
      group = result.group();
      Element row = row(result, isRuled && !isNarrow, isMeasured);
      rows.add(isPrint && isFirst ? row.with("class", "first") : row);
    }
    Element table =
        Element.of(
                "table",
                Element.of("caption", results.caption()),
                head(isRuled && !isNarrow, isMeasured),
                Element.of("tbody").with(rows))
            .with("class", isNarrow ? "strip narrow" : isRuled ? "strip ruled" : "strip");
    Element beside =
        Element.of("div")
            .with("class", "beside")
            .with(results.beside().stream().map(figure).toList());
    Node figures = results.beside().isEmpty() ? Fragment.of() : beside;
    Node foot = remarks.toParagraph();
    return isPrint ? Fragment.of(figures, table, foot) : Fragment.of(table, foot, figures);
  }

  private static Element heading(String group) {
    return Element.of("tr", Element.of("th", group).with("scope", "rowgroup").with("colspan", "6"))
        .with("class", "group");
  }

  private static Element head(boolean isRuled, boolean isMeasured) {
    List<Element> columns = new ArrayList<>();
    columns.add(column("finding", "Result"));
    columns.add(column("value", "Value"));
    if (isMeasured) {
      columns.add(column("interval", "95 % interval"));
    }
    if (isRuled) {
      columns.add(column("ruler", "Against its limit"));
    }
    columns.add(column("verdict", "Verdict"));
    columns.add(column("margin", "Limit"));
    return Element.of("thead", Element.of("tr").with(columns));
  }

  private static Element column(String name, String words) {
    return Element.of("th", words).with("scope", "col").with("class", name);
  }

  private Element row(Result result, boolean isRuled, boolean isMeasured) {
    List<Node> cells = new ArrayList<>();
    cells.add(Element.of("th", result.name()).with("scope", "row").with("class", "finding"));
    cells.add(amount(result.amount()));
    if (isMeasured) {
      cells.add(Element.of("td", result.amount().interval()).with("class", "interval"));
    }
    if (isRuled) {
      cells.add(
          Element.of("td", result.ruler().<Node>map(this::drawing).orElseGet(Fragment::of))
              .with("class", "ruler"));
    }
    cells.add(
        Element.of("td", result.judgement().mark().<Node>map(this::shape).orElseGet(Fragment::of))
            .with("class", "verdict")
            .withText(" " + result.judgement().word()));
    cells.add(
        Element.of("td", result.judgement().limit())
            .with("class", "margin")
            .with(new Text(" "), mark.apply(result.grounds()), remarks.mark(result.note())));
    return Element.of("tr").with(cells);
  }

  /** The value so that the points of all rows stand under each other, then its unit. */
  private static Element amount(Amount amount) {
    String value = amount.value();
    int point = value.indexOf('.');
    boolean isNumber = value.chars().anyMatch(Character::isDigit) && value.indexOf(' ') < 0;
    boolean isInWords = value.chars().anyMatch(Character::isLetter);
    Element cell = Element.of("td").with("class", isInWords ? "value words" : "value");
    if (!isNumber) {
      return cell.withText(value).with(unit(amount));
    }
    String whole = point < 0 ? value : value.substring(0, point);
    String part = point < 0 ? "" : value.substring(point);
    return cell.withText(whole)
        .with(Element.of("span", part).with("class", isLong(part) ? "decimals long" : "decimals"))
        .with(unit(amount));
  }

  private static boolean isLong(String decimals) {
    return decimals.length() > ROOM;
  }

  private static Element unit(Amount amount) {
    return Element.of("span", " " + amount.unit()).with("class", "unit");
  }

  private Element drawing(Figure drawn) {
    Element svg = drawn.toSvg();
    return isPrint ? svg.with("alt", drawn.description()) : svg;
  }

  private Element shape(Verdict verdict) {
    Element svg =
        Element.of("svg")
            .with("xmlns", "http://www.w3.org/2000/svg")
            .with("class", "mark")
            .with("viewBox", "0 0 12 12")
            .with("width", "12")
            .with("height", "12")
            .with("aria-hidden", "true")
            .with(VerdictMark.PLAIN.of(verdict, new Spot(MARK_ROOM, MARK_ROOM)));
    return isPrint ? svg.with("alt", verdict.word()) : svg;
  }
}
