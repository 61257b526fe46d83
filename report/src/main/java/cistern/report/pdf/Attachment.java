package cistern.report.pdf;

/**
 * A file inside a PDF.
 *
 * @param name of the file
 * @param mediaType its MIME type
 * @param description what it is, for a reader
 * @param relation how it relates to the page
 * @param content its text, written as UTF-8
 */
public record Attachment(
    String name, String mediaType, String description, Relation relation, String content) {

  /** How a file relates to the page (ISO 19005-3, annex E). */
  public enum Relation {
    /** What the page was made from. */
    SOURCE("Source"),
    /** The same as the page for a machine. */
    ALTERNATIVE("Alternative");

    private final String word;

    Relation(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }
}
