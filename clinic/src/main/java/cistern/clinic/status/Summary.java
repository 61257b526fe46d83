package cistern.clinic.status;

import cistern.clinic.form.CaseStep;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
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
 * @param person identifier, age and sex, as far as they are known; may be empty
 * @param waiting what waits
 */
public record Summary(
    String caseId,
    String name,
    Map<CaseStep, String> words,
    String signing,
    String gel,
    String person,
    List<Waiting> waiting) {

  private static final String UNREADABLE = "cannot be read: open it to put it right";
  private static final String UNREAD = "being read";
  private static final List<CaseStep> STEPS = List.of(CaseStep.values());

  /** The parts of what waits; and as many lines stand between the steps and what waits. */
  private static final int PARTS = 3;

  /** Copies what waits and the words. */
  public Summary {
    words = Map.copyOf(words);
    waiting = List.copyOf(waiting);
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
        Identity.of(open.file()).toText(),
        status.duties().stream().map(duty -> Waiting.of(duty, open, status)).toList());
  }

  /** A case that cannot be read now: it stays in every list, and no other case suffers. */
  static Summary unreadable(String caseId, String changedAt) {
    return bare(caseId, changedAt, UNREADABLE);
  }

  private static Summary bare(String caseId, String changedAt, String words) {
    return new Summary(caseId, "Case of " + changedAt, Map.of(), words, "", "", List.of());
  }

  /** The text by which it is kept, without the case and its name: a line for each part. */
  String toText() {
    return Stream.of(
            STEPS.stream().map(step -> words.getOrDefault(step, "")),
            Stream.of(signing, gel, person),
            waiting.stream().map(w -> w.duty().name() + "\t" + w.dueAt() + "\t" + w.words()))
        .flatMap(lines -> lines)
        .collect(Collectors.joining("\n"));
  }

  /** A summary as it is kept; one that was not made yet, or by another program, says so. */
  static Summary parse(String caseId, String name, String changedAt, String text) {
    List<String> lines = Arrays.asList(text.split("\n", -1));
    int head = STEPS.size() + PARTS;
    List<String[]> rest = lines.stream().skip(head).map(line -> line.split("\t", -1)).toList();
    if (lines.size() < head || rest.stream().anyMatch(cells -> cells.length != PARTS)) {
      return bare(caseId, changedAt, UNREAD);
    }
    Map<CaseStep, String> words = new EnumMap<>(CaseStep.class);
    for (int i = 0; i < STEPS.size(); i++) {
      words.put(STEPS.get(i), lines.get(i));
    }
    int next = STEPS.size();
    return new Summary(
        caseId,
        name,
        words,
        lines.get(next),
        lines.get(next + 1),
        lines.get(next + 2),
        rest.stream().map(c -> new Waiting(Duty.valueOf(c[0]), c[1], c[2])).toList());
  }
}
