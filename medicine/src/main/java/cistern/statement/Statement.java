package cistern.statement;

/** One sentence of a report, built from typed findings. */
public interface Statement {

  /** The name in files. */
  String code();

  /** The sentence. */
  String text();

  /** Whether it must be acted on before anything else is read. */
  default boolean isUrgent() {
    return false;
  }
}
