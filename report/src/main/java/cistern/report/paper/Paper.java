package cistern.report.paper;

import cistern.fact.Grounds;
import cistern.finding.Verdict;
import cistern.interpretation.Caution;
import cistern.report.figure.Figure;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A document for people: built once, set as text, for a screen and for print.
 *
 * @param front what it is, of whom, and who answers for it
 * @param answer what matters first
 * @param sections in order
 * @param foot what made it
 */
public record Paper(Front front, List<Line> answer, List<Section> sections, String foot) {

  /** Copies the lists. */
  public Paper {
    answer = List.copyOf(answer);
    sections = List.copyOf(sections);
  }

  /** A paper that nobody signs, such as a plan or a comparison. */
  public Paper(String title, List<Line> answer, List<Section> sections, String foot) {
    this(
        new Front(
            Kind.LEAF, title, "", Caution.RESEARCH_ONLY.text(), Locale.UK, new Seal.NotNeeded()),
        answer,
        sections,
        foot);
  }

  /** What it is and of whom. */
  public String title() {
    return front.title();
  }

  /** What a reader holds in hand; it decides how large and how close everything is set. */
  public enum Kind {
    CLINICIAN("clinician", "Interpretation of cerebrospinal fluid and serum"),
    LETTER("letter", "Letter about cerebrospinal fluid"),
    PATIENT("patient", "Page for the person"),
    LEAF("leaf", "Lumbar puncture"),
    CARD("card", "Lumbar puncture, pocket card"),
    LABELS("labels", "Labels for the samples of a lumbar puncture");

    private final String word;
    private final String subject;

    Kind(String word, String subject) {
      this.word = word;
      this.subject = subject;
    }

    /** The class in style sheets. */
    String word() {
      return word;
    }

    /** What the document is about, for its metadata. */
    String subject() {
      return subject;
    }
  }

  /**
   * What stands above the first sentence and on every printed page.
   *
   * @param kind of document
   * @param title what it is and of whom
   * @param taken whose samples, and when they were drawn; may be empty
   * @param banner what every page says: what the program is for, and that data are invented
   * @param language of the words
   * @param seal who answers for it
   * @param letterhead whose paper it is, line by line; may be empty
   */
  public record Front(
      Kind kind,
      String title,
      String taken,
      String banner,
      Locale language,
      Seal seal,
      String letterhead) {

    /** A front without a letterhead. */
    public Front(Kind kind, String title, String taken, String banner, Locale language, Seal seal) {
      this(kind, title, taken, banner, language, seal, "");
    }

    private Front withLetterhead(String words) {
      return new Front(kind, title, taken, banner, language, seal, words);
    }
  }

  /** The same under a letterhead. */
  public Paper withLetterhead(String words) {
    return new Paper(front.withLetterhead(words), answer, sections, foot);
  }

  /** Who answers for a paper. */
  public sealed interface Seal {

    /** Nobody signs it. */
    record NotNeeded() implements Seal {}

    /**
     * It counts once somebody has signed it; until then every page says so.
     *
     * @param words what every page says
     */
    record Unsigned(String words) implements Seal {}

    /**
     * Signed.
     *
     * @param by who signed, when and what, as a sentence
     */
    record Signed(String by) implements Seal {}
  }

  /** Where a part stands. */
  public enum Place {
    /** On the first pages. */
    PAGE,
    /** After the first pages in print and in text; on a screen it unfolds. */
    ANNEX,
    /** On a screen only, where it unfolds. */
    SCREEN
  }

  /**
   * A part with a heading.
   *
   * @param heading what it is about
   * @param blocks in order
   * @param place on the first pages or after them
   */
  public record Section(String heading, List<Block> blocks, Place place) {

    /** Copies the blocks. */
    public Section {
      blocks = List.copyOf(blocks);
    }

    /** A part of the first pages. */
    public Section(String heading, List<Block> blocks) {
      this(heading, blocks, Place.PAGE);
    }

    /** A part of some blocks. */
    public static Section of(String heading, Block... blocks) {
      return new Section(heading, List.of(blocks));
    }

    /** A part that stands after the first pages. */
    public static Section annex(String heading, Block... blocks) {
      return new Section(heading, List.of(blocks), Place.ANNEX);
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

    /** Some sentences that rest on what was given. */
    public static Paragraphs of(String... sentences) {
      return new Paragraphs(List.of(sentences).stream().map(Line::of).toList());
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

    /** A list without a heading of sentences that rest on what was given. */
    public static Items of(List<String> sentences) {
      return new Items("", sentences.stream().map(Line::of).toList());
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
   * Results against their limits, as one table with aligned decimals.
   *
   * @param caption what it shows
   * @param rows in the order in which they are read
   * @param beside figures of what the rows show, beside them on paper
   */
  public record Results(String caption, List<Result> rows, List<Figure> beside) implements Block {

    /** Copies the lists. */
    public Results {
      rows = List.copyOf(rows);
      beside = List.copyOf(beside);
    }
  }

  /**
   * One result.
   *
   * @param group under which it is read
   * @param name of what was measured or computed
   * @param amount how much
   * @param judgement what is made of it
   * @param note what is to be kept in mind; remarks with a semicolon and a space between them
   * @param ruler the value against its limit, drawn
   * @param grounds what the limit rests on
   */
  public record Result(
      String group,
      String name,
      Amount amount,
      Judgement judgement,
      String note,
      Optional<Figure> ruler,
      Grounds grounds) {}

  /**
   * How much.
   *
   * @param value as printed
   * @param unit beside it; may be empty
   * @param interval where it lies with 95 %; may be empty
   */
  public record Amount(String value, String unit, String interval) {}

  /**
   * What is made of a value.
   *
   * @param limit what counts as within, with its rule; may be empty
   * @param mark the shape of the verdict
   * @param word the verdict; may be empty
   */
  public record Judgement(String limit, Optional<Verdict> mark, String word) {}

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
   * Labels on a sheet of stock, row by row.
   *
   * @param stock the sheet
   * @param labels in order
   */
  public record Labels(LabelStock stock, List<Label> labels) implements Block {

    /** Copies the labels. */
    public Labels {
      labels = List.copyOf(labels);
    }
  }

  /**
   * One label.
   *
   * @param heading what is in the tube
   * @param lines whose it is, and what is written by hand
   */
  public record Label(String heading, List<String> lines) {

    /** Copies the lines. */
    public Label {
      lines = List.copyOf(lines);
    }
  }

  /**
   * A figure.
   *
   * @param figure with its title, its text alternative and its table
   */
  public record Picture(Figure figure) implements Block {}
}
