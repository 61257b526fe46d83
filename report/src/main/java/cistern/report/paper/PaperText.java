package cistern.report.paper;

import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Field;
import cistern.report.paper.Paper.Form;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Table;
import cistern.report.text.SourceNotes;
import cistern.report.text.Wrapped;
import java.util.List;
import java.util.stream.Collectors;

/** A paper as plain text; a table becomes one entry a row, so that long cells stay readable. */
public final class PaperText {

  private static final String BLANK = "____________________";

  private final SourceNotes notes = new SourceNotes();

  private PaperText() {}

  /** The text of a paper, ending with a line break. */
  public static String of(Paper paper) {
    return new PaperText().write(paper);
  }

  private String write(Paper paper) {
    StringBuilder text = new StringBuilder(Wrapped.of("", paper.title()));
    text.append("For research and education. Not a medical device.\n\n");
    paper.answer().forEach(line -> text.append(line("", line)));
    for (Paper.Section section : paper.sections()) {
      text.append('\n').append(Wrapped.of("", section.heading()));
      section.blocks().forEach(block -> text.append(block(block)));
    }
    String sources = notes.toText();
    if (!sources.isEmpty()) {
      text.append("\nSources\n").append(sources);
    }
    return text.append('\n').append(Wrapped.of("", paper.foot())).toString();
  }

  private String block(Block block) {
    return switch (block) {
      case Paragraphs paragraphs -> lines("  ", paragraphs.lines());
      case Items items ->
          (items.heading().isEmpty() ? "" : Wrapped.of("  ", items.heading() + ":"))
              + lines("  – ", items.lines());
      case Table table -> table(table);
      case Form form -> form(form);
      case Picture picture ->
          Wrapped.of("  ", picture.figure().title() + ". " + picture.figure().description());
    };
  }

  private String lines(String prefix, List<Line> lines) {
    return lines.stream().map(line -> line(prefix, line)).collect(Collectors.joining());
  }

  private String line(String prefix, Line line) {
    return Wrapped.of(prefix, line.text() + " " + notes.mark(line.grounds()));
  }

  private String table(Table table) {
    StringBuilder text = new StringBuilder(Wrapped.of("  ", table.caption() + ":"));
    for (Row row : table.rows()) {
      StringBuilder cells = new StringBuilder(row.cells().getFirst());
      for (int i = 1; i < row.cells().size(); i++) {
        if (!row.cells().get(i).isEmpty()) {
          cells.append(i == 1 ? " – " : "; ").append(table.head().get(i)).append(": ");
          cells.append(row.cells().get(i));
        }
      }
      text.append(Wrapped.of("  – ", cells + " " + notes.mark(row.grounds())));
    }
    return text.toString();
  }

  private static String form(Form form) {
    StringBuilder text = new StringBuilder(Wrapped.of("  ", form.title()));
    for (Field field : form.fields()) {
      String value = field.value().isEmpty() ? BLANK : field.value();
      text.append(Wrapped.of("    ", field.name() + ": " + value));
    }
    return text.toString();
  }
}
