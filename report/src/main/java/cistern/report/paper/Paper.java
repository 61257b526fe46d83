package cistern.report.paper;

import cistern.fact.Grounds;
import cistern.report.figure.Figure;
import java.util.List;

/**
 * A document for people.
 *
 * @param title what it is and of whom
 * @param answer what matters first
 * @param sections in order
 * @param foot what made it
 */
public record Paper(String title, List<Line> answer, List<Section> sections, String foot) {

  /** Copies the lists. */
  public Paper {
    answer = List.copyOf(answer);
    sections = List.copyOf(sections);
  }

  /**
   * A part with a heading.
   *
   * @param heading what it is about
   * @param blocks in order
   */
  public record Section(String heading, List<Block> blocks) {
    /** Copies the blocks. */
    public Section {
      blocks = List.copyOf(blocks);
    }

    /** A part of some blocks. */
    public static Section of(String heading, Block... blocks) {
      return new Section(heading, List.of(blocks));
    }
  }

  /**
   * A sentence with what it rests on.
   *
   * @param text the sentence
   * @param grounds what it rests on; nothing when it is only what was given
   */
  public record Line(String text, Grounds grounds) {

    /** A sentence that rests on what was given. */
    public static Line of(String text) {
      return new Line(text, Grounds.MEASURED);
    }
  }

  /** One block of a part. */
  public sealed interface Block {}

  /**
   * Sentences one after another.
   *
   * @param lines in order
   */
  public record Paragraphs(List<Line> lines) implements Block {
    /** Copies the lines. */
    public Paragraphs {
      lines = List.copyOf(lines);
    }
  }

  /**
   * A list.
   *
   * @param heading above it; may be empty
   * @param lines in order
   */
  public record Items(String heading, List<Line> lines) implements Block {
    /** Copies the lines. */
    public Items {
      lines = List.copyOf(lines);
    }
  }

  /**
   * A table.
   *
   * @param caption what it shows
   * @param head the names of the columns
   * @param rows each as long as the head
   */
  public record Table(String caption, List<String> head, List<Row> rows) implements Block {
    /** Copies the lists and checks the lengths. */
    public Table {
      head = List.copyOf(head);
      rows = List.copyOf(rows);
      int width = head.size();
      if (rows.stream().anyMatch(r -> r.cells().size() != width)) {
        throw new IllegalArgumentException("a row is as long as the head");
      }
    }
  }

  /**
   * A row.
   *
   * @param cells one a column
   * @param grounds what the row rests on
   */
  public record Row(List<String> cells, Grounds grounds) {
    /** Copies the cells. */
    public Row {
      cells = List.copyOf(cells);
    }

    /** A row that rests on what was given. */
    public static Row of(String... cells) {
      return new Row(List.of(cells), Grounds.MEASURED);
    }
  }

  /**
   * Labels to cut out or a form to fill in: names with what is known of them; the rest is left to
   * write.
   *
   * @param title of the form
   * @param fields in order
   */
  public record Form(String title, List<Field> fields) implements Block {
    /** Copies the fields. */
    public Form {
      fields = List.copyOf(fields);
    }
  }

  /**
   * One field of a form.
   *
   * @param name what is written there
   * @param value what is known; empty to be written by hand
   */
  public record Field(String name, String value) {}

  /**
   * A figure.
   *
   * @param figure with its title, its text alternative and its table
   */
  public record Picture(Figure figure) implements Block {}
}
