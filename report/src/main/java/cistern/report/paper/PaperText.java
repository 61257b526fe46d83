package cistern.report.paper;

import cistern.fact.Grounds;
import cistern.finding.Verdict;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Field;
import cistern.report.paper.Paper.Form;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Labels;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Result;
import cistern.report.paper.Paper.Results;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Seal;
import cistern.report.paper.Paper.Table;
import java.util.List;
import java.util.stream.Collectors;

/** A paper as plain text; a table becomes one entry a row, so that long cells stay readable. */
public final class PaperText {

  private static final String BLANK = "____________________";

  private final Sources sources = new Sources();

  private PaperText() {}

  /** The text of a paper, ending with a line break. */
  public static String of(Paper paper) {
    return new PaperText().write(paper);
  }

  private String write(Paper paper) {
    StringBuilder text = new StringBuilder();
    paper.front().letterhead().lines().forEach(l -> text.append(Wrapped.of("", l)));
    text.append(Wrapped.of("", paper.title()));
    if (!paper.front().taken().isEmpty()) {
      text.append(Wrapped.of("", paper.front().taken()));
    }
    text.append(Wrapped.of("", paper.front().banner())).append('\n');
    paper.answer().forEach(line -> text.append(line("", line)));
    for (Paper.Section section : shown(paper)) {
      text.append('\n');
      if (!section.heading().isEmpty()) {
        text.append(Wrapped.of("", section.heading()));
      }
      section.blocks().forEach(block -> text.append(block(block)));
    }
    List<Sources.Source> all = sources.all();
    if (!all.isEmpty()) {
      text.append("\nSources\n");
      all.forEach(s -> text.append(Wrapped.of("  [%s] ".formatted(s.number()), s.text())));
    }
    return text.append('\n').append(seal(paper)).append(Wrapped.of("", paper.foot())).toString();
  }

  private static List<Paper.Section> shown(Paper paper) {
    return paper.sections().stream().filter(s -> s.place() != Paper.Place.SCREEN).toList();
  }

  private static String seal(Paper paper) {
    return switch (paper.front().seal()) {
      case Seal.NotNeeded none -> "";
      case Seal.Unsigned unsigned -> Wrapped.of("", unsigned.words());
      case Seal.Signed signed -> Wrapped.of("", signed.by());
    };
  }

  private String block(Block block) {
    return switch (block) {
      case Paragraphs paragraphs -> lines("  ", paragraphs.lines());
      case Items items ->
          (items.heading().isEmpty() ? "" : Wrapped.of("  ", items.heading() + ":"))
              + lines("  – ", items.lines());
      case Table table -> table(table);
      case Results results ->
          results.rows().stream().map(this::result).collect(Collectors.joining());
      case Form form -> form(form);
      case Labels labels -> labels(labels);
      case Picture picture ->
          Wrapped.of("  ", picture.figure().title() + ". " + picture.figure().description());
    };
  }

  private String lines(String prefix, List<Line> lines) {
    return lines.stream().map(line -> line(prefix, line)).collect(Collectors.joining());
  }

  private String line(String prefix, Line line) {
    return Wrapped.of(prefix, line.text() + mark(line.grounds()));
  }

  private String mark(Grounds grounds) {
    List<String> numbers = sources.of(grounds);
    return numbers.isEmpty() ? "" : " [" + String.join(",", numbers) + "]";
  }

  private String table(Table table) {
    StringBuilder text =
        new StringBuilder(table.caption().isEmpty() ? "" : Wrapped.of("  ", table.caption() + ":"));
    for (Row row : table.rows()) {
      StringBuilder cells = new StringBuilder(row.cells().getFirst());
      for (int i = 1; i < row.cells().size(); i++) {
        if (!row.cells().get(i).isEmpty()) {
          cells.append(i == 1 ? " – " : "; ").append(table.head().get(i)).append(": ");
          cells.append(row.cells().get(i));
        }
      }
      text.append(Wrapped.of("  – ", cells + mark(row.grounds())));
    }
    return text.toString();
  }

  private String result(Result result) {
    if (result.amount().value().isEmpty() && result.judgement().mark().isEmpty()) {
      String limit = result.judgement().limit();
      String said = result.judgement().word() + (limit.isEmpty() ? "" : ": " + limit);
      return Wrapped.of("    ", result.name() + " – " + said);
    }
    String line =
        "  %s %-31s %9s %-9s %-24s %-13s %s"
            .formatted(
                result.judgement().mark().map(PaperText::shape).orElse(" "),
                result.name(),
                result.amount().value(),
                result.amount().unit(),
                result.judgement().limit(),
                result.judgement().word(),
                mark(result.grounds()).strip());
    String interval = result.amount().interval();
    String beneath =
        (interval.isEmpty() ? "" : "95 % interval " + interval)
            + (interval.isEmpty() || result.note().isEmpty() ? "" : "; ")
            + result.note();
    return line.stripTrailing() + "\n" + (beneath.isEmpty() ? "" : Wrapped.of("      ", beneath));
  }

  private static String shape(Verdict verdict) {
    return switch (verdict) {
      case ABOVE -> "●";
      case BELOW -> "▼";
      case WITHIN -> "○";
      case BORDERLINE -> "◐";
      case UNDETERMINED -> "◌";
    };
  }

  private static String labels(Labels labels) {
    StringBuilder text = new StringBuilder();
    for (Paper.Label label : labels.labels()) {
      text.append(Wrapped.of("  ", label.heading()));
      label.lines().forEach(line -> text.append(Wrapped.of("    ", line)));
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
