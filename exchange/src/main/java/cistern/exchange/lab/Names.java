package cistern.exchange.lab;

import java.util.Optional;

/** Names of analytes and of the columns of tables, as laboratories write them; a declared list. */
public final class Names {

  private static final WordTable NAMES = WordTable.read("names.tsv");

  private Names() {}

  /** What a name stands for, if it is listed. */
  public static Optional<String> find(String name) {
    return NAMES.find(name);
  }
}
