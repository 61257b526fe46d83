package cistern.bedside;

import cistern.measurement.Answer;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is known beside the fluid.
 *
 * @param signs the answers given; one that is missing is unknown
 * @param attack how the attack has shown itself and when it began
 * @param microbes tests for microbes
 * @param treatments what the person has had
 * @param replies who answered an urgent rule
 */
public record Bedside(
    Map<Sign, Answer> signs,
    Attack attack,
    List<MicrobeTest> microbes,
    List<Treatment> treatments,
    List<RuleReply> replies) {

  /** Nothing is known. */
  public static final Bedside UNKNOWN =
      new Bedside(Map.of(), Attack.UNKNOWN, List.of(), List.of(), List.of());

  /** Copies the collections. */
  public Bedside {
    signs = signs.isEmpty() ? Map.of() : Map.copyOf(new EnumMap<>(signs));
    microbes = List.copyOf(microbes);
    treatments = List.copyOf(treatments);
    replies = List.copyOf(replies);
  }

  /** What is known of a sign. */
  public Answer answer(Sign sign) {
    return signs.getOrDefault(sign, Answer.UNKNOWN);
  }

  /** The same with other signs and more tests for microbes. */
  public Bedside with(Map<Sign, Answer> known, List<MicrobeTest> tests) {
    return new Bedside(known, attack, tests, treatments, replies);
  }

  /**
   * How the attack has shown itself.
   *
   * @param syndromes as stated; empty when nobody said
   * @param supportingSigns signs of the published table for MOG antibodies, as stated
   * @param onsetAt when it began
   */
  public record Attack(
      List<Syndrome> syndromes, List<String> supportingSigns, Optional<OffsetDateTime> onsetAt) {

    /** Nothing is known. */
    public static final Attack UNKNOWN = new Attack(List.of(), List.of(), Optional.empty());

    /** Copies the lists. */
    public Attack {
      syndromes = List.copyOf(syndromes);
      supportingSigns = List.copyOf(supportingSigns);
    }
  }
}
