package cistern.clinic.status;

import cistern.clinic.form.CaseStep;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a list shows of one case.
 *
 * @param caseId which case
 * @param name chosen by people
 * @param words what is done of each step
 * @param signing what is done about signing
 * @param gel what is done about the picture of a gel
 * @param duties what waits
 */
public record Summary(
    String caseId,
    String name,
    Map<CaseStep, String> words,
    String signing,
    String gel,
    Set<Duty> duties) {

  private static final String UNREADABLE = "cannot be read: open it to put it right";
  private static final String UNREAD = "being read";
  private static final List<CaseStep> STEPS = List.of(CaseStep.values());

  /** Copies what waits and the words. */
  public Summary {
    words = Map.copyOf(words);
    duties = Set.copyOf(duties);
  }

  static Summary of(OpenCase open, CaseStatus status) {
    Map<CaseStep, String> words = new EnumMap<>(CaseStep.class);
    STEPS.forEach(step -> words.put(step, status.words(step)));
    return new Summary(
        open.version().caseId(),
        open.name(),
        words,
        status.signing(),
        status.gel(),
        status.duties());
  }

  /** A case that cannot be read now: it stays in every list, and no other case suffers. */
  static Summary unreadable(String caseId, String changedAt) {
    return bare(caseId, changedAt, UNREADABLE);
  }

  private static Summary bare(String caseId, String changedAt, String words) {
    return new Summary(caseId, "Case of " + changedAt, Map.of(), words, "", Set.of());
  }

  /** The text by which it is kept, without the case and its name: a line for each part. */
  String toText() {
    return Stream.concat(
            STEPS.stream().map(step -> words.getOrDefault(step, "")),
            Stream.of(
                signing,
                gel,
                duties.stream().sorted().map(Duty::name).collect(Collectors.joining(","))))
        .collect(Collectors.joining("\n"));
  }

  /** A summary as it is kept; one that was not made yet says so. */
  static Summary parse(String caseId, String name, String changedAt, String text) {
    if (text.isEmpty()) {
      return bare(caseId, changedAt, UNREAD);
    }
    String[] lines = text.split("\n", -1);
    Map<CaseStep, String> words = new EnumMap<>(CaseStep.class);
    int next = 0;
    for (CaseStep step : STEPS) {
      words.put(step, lines[next++]);
    }
    Set<Duty> duties =
        Arrays.stream(lines[next + 2].split(",", -1))
            .filter(word -> !word.isEmpty())
            .map(Duty::valueOf)
            .collect(Collectors.toUnmodifiableSet());
    return new Summary(caseId, name, words, lines[next], lines[next + 1], duties);
  }
}
