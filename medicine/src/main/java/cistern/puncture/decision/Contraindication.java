package cistern.puncture.decision;

import cistern.fact.Grounds;
import cistern.measurement.Answer;
import java.util.List;

/**
 * Something that may forbid or delay a puncture.
 *
 * @param code the name in files
 * @param present whether it is there; unknown while a question is open
 * @param go what it asks for when it is there
 * @param text the sentence
 * @param instead what else can be done
 * @param reasons what was recorded, or what is to be asked
 * @param grounds what it rests on
 */
public record Contraindication(
    String code,
    Answer present,
    Go go,
    String text,
    String instead,
    List<String> reasons,
    Grounds grounds) {

  /** Copies the reasons. */
  public Contraindication {
    reasons = List.copyOf(reasons);
  }

  /** What to do about a puncture, heaviest first. */
  public enum Go {
    DO_NOT("do-not", "Do not puncture"),
    IMAGE_FIRST("image-first", "Image first"),
    WAIT("wait", "Wait"),
    ASK("ask", "Ask first"),
    GO("go", "Nothing recorded stands in the way");

    private final String word;
    private final String text;

    Go(String word, String text) {
      this.word = word;
      this.text = text;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }

    /** In a sentence. */
    public String text() {
      return text;
    }

    /** The heavier of two. */
    Go and(Go other) {
      return compareTo(other) <= 0 ? this : other;
    }
  }

  /** Present, open or not present, as in files. */
  public String state() {
    return switch (present) {
      case YES -> "present";
      case UNKNOWN -> "open";
      case NO -> "not-present";
    };
  }

  /** What it asks for as it stands. */
  public Go asks() {
    return switch (present) {
      case YES -> go;
      case UNKNOWN -> go == Go.GO ? Go.GO : Go.ASK;
      case NO -> Go.GO;
    };
  }
}
