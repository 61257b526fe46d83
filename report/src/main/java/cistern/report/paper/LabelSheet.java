package cistern.report.paper;

import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.report.paper.Paper.Label;
import cistern.report.paper.Paper.Labels;
import java.util.ArrayList;
import java.util.List;

/** Labels as a grid whose cells are as large as the stock says. */
final class LabelSheet {

  private LabelSheet() {}

  static Element of(Labels sheet) {
    LabelStock stock = sheet.stock();
    List<Node> rows = new ArrayList<>();
    List<Label> labels = sheet.labels();
    for (int first = 0; first < labels.size(); first += stock.columns()) {
      List<Label> row = labels.subList(first, Math.min(labels.size(), first + stock.columns()));
      rows.add(row(row, stock));
    }
    return Element.of("table", Element.of("tbody").with(rows)).with("class", "label-sheet");
  }

  private static Element row(List<Label> labels, LabelStock stock) {
    List<Node> cells = new ArrayList<>();
    for (Label label : labels) {
      if (!cells.isEmpty() && stock.gap() > 0) {
        cells.add(
            Element.of("td", " ").with("style", "width:%smm;padding:0".formatted(stock.gap())));
      }
      cells.add(cell(label, stock));
    }
    return Element.of("tr").with(cells);
  }

  private static Element cell(Label label, LabelStock stock) {
    List<Node> lines = new ArrayList<>();
    lines.add(Element.of("div", label.heading()).with("class", "label-heading"));
    label.lines().forEach(line -> lines.add(Element.of("div", line)));
    Element inside =
        Element.of("div")
            .with("class", "label-inside")
            .with("style", "height:%smm".formatted(stock.height()))
            .with(lines);
    return Element.of("td", inside).with("style", "width:%smm".formatted(stock.width()));
  }
}
