package cistern.clinic.form;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * When a field is asked: many are only after what another one holds. And which questions are asked
 * for themselves, because no to them is not "nothing there": none of these never answers them.
 *
 * @param path of the fields, or the start of it
 * @param only the key of the field that they hang on; empty where they are always asked
 * @param is what that must hold; {@code *} for anything, {@code !male} for anything else or
 *     nothing, {@code !*} for nothing
 * @param isAlone whether it is asked for itself
 */
record Asked(String path, String only, String is, boolean isAlone) {

  private static final String ANYTHING = "*";
  private static final String NOT = "!";

  private static final List<Asked> ALL =
      StepFields.rows("asked.tsv").stream()
          .map(r -> new Asked(r[0], r[1], r[2], r[3].equals("alone")))
          .sorted(Comparator.comparingInt((Asked a) -> a.path().length()).reversed())
          .toList();

  /** What is known of a field: by the longest start of its key. */
  private static Optional<Asked> of(String key) {
    return ALL.stream().filter(a -> a.isAbout(key)).findFirst();
  }

  private boolean isAbout(String key) {
    return key.equals(path) || key.startsWith(path + ".");
  }

  /**
   * Whether a field is asked.
   *
   * @param holds what a field holds, by its key
   */
  static boolean isAsked(String key, UnaryOperator<String> holds) {
    return of(key).filter(a -> !a.only().isEmpty()).map(a -> a.isMet(holds)).orElse(true);
  }

  private boolean isMet(UnaryOperator<String> holds) {
    String held = holds.apply(only);
    return switch (is) {
      case ANYTHING -> !held.isEmpty();
      case NOT + ANYTHING -> held.isEmpty();
      default -> is.startsWith(NOT) ? !held.equals(is.substring(1)) : held.equals(is);
    };
  }

  /** Whether a field is one more of a kind, asked only after the one before it. */
  static boolean isOneMore(String key) {
    return of(key).filter(a -> a.is().equals(ANYTHING)).isPresent();
  }

  /** Whether a question is asked for itself. */
  static boolean isAlone(String key) {
    return of(key).filter(Asked::isAlone).isPresent();
  }
}
