package cistern.clinic.standing;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.form.Step;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

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
    Map<Step, String> words,
    String signing,
    String gel,
    Set<Duty> duties) {

  private static final String UNREADABLE = "cannot be read under the rules in force";

  /** Copies what waits and the words. */
  public Summary {
    words = Map.copyOf(words);
    duties = Set.copyOf(duties);
  }

  static Summary of(OpenCase open, Standing standing) {
    return new Summary(
        open.version().caseId(),
        open.name(),
        Arrays.stream(Step.values())
            .collect(Collectors.toMap(Function.identity(), standing::words)),
        standing.signing(),
        standing.gel(),
        standing.duties());
  }

  /** A case that the rules in force do not allow to be read: it stays in every list. */
  static Summary unreadable(CaseVersion version) {
    return new Summary(
        version.caseId(),
        "Case of " + version.at(),
        Arrays.stream(Step.values()).collect(Collectors.toMap(Function.identity(), s -> "")),
        UNREADABLE,
        "",
        Set.of());
  }
}
