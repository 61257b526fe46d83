package cistern.statement;

import cistern.differential.Disease;
import cistern.redflag.RedFlag;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What is unusual for MS, and what it suggests: a prompt, never a verdict.
 *
 * @param flags at least one
 */
public record AtypicalForMs(List<RedFlag> flags) implements Statement {

  private static final int MOST_DISEASES = 6;

  /** Flags that a statement on the pattern of the bands already says. */
  private static final Set<String> SAID = Set.of("bands-alike", "monoclonal-ladder");

  /** Copies the flags. */
  public AtypicalForMs {
    flags = List.copyOf(flags);
  }

  /** The statement, where any flag is not said elsewhere. */
  static Optional<AtypicalForMs> of(List<RedFlag> all) {
    List<RedFlag> unsaid = all.stream().filter(f -> !SAID.contains(f.code())).toList();
    return unsaid.isEmpty() ? Optional.empty() : Optional.of(new AtypicalForMs(unsaid));
  }

  @Override
  public String code() {
    return "atypical-for-ms";
  }

  @Override
  public String text() {
    String seen = flags.stream().map(RedFlag::text).collect(Collectors.joining(" "));
    String suggested =
        flags.stream()
            .flatMap(flag -> flag.suggests().stream())
            .distinct()
            .limit(MOST_DISEASES)
            .map(Disease::term)
            .collect(Collectors.joining(", "));
    return "Less usual in multiple sclerosis: %s To think of: %s.".formatted(seen, suggested);
  }
}
