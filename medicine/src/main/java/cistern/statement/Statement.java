package cistern.statement;

/** One sentence of a report, built from typed findings. */
public interface Statement {

  /** The name in files. */
  String code();

  /** The sentence. */
  String text();
}
