package cistern.urgent;

import cistern.bedside.RuleReply;
import cistern.fact.Grounds;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * An urgent rule that holds, or that could hold with what is missing.
 *
 * @param code the name in files
 * @param tier how soon somebody must be told
 * @param state whether it holds
 * @param isInfection whether it is a rule for infection
 * @param words what is said and done
 * @param findings what it rests on, as named in files
 * @param answered who answered it, with a name, a time and a reason
 * @param grounds status and sources of its row
 */
public record Urgency(
    String code,
    Tier tier,
    State state,
    boolean isInfection,
    Words words,
    List<String> findings,
    Optional<RuleReply> answered,
    Grounds grounds) {

  /** Copies the findings. */
  public Urgency {
    findings = List.copyOf(findings);
  }

  /** Whether a rule holds. */
  public enum State {
    HOLDS("holds"),
    UNKNOWN("unknown");

    private final String word;

    State(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /**
   * What is said and done.
   *
   * @param say the sentence
   * @param act who, and which test
   * @param missing what is not known of an unknown rule, in words
   */
  public record Words(String say, String act, List<String> missing) {
    /** Copies the list. */
    public Words {
      missing = List.copyOf(missing);
    }

    /** What is done, without the call that the sentence asks for already. */
    public String task() {
      boolean isCalled = say.toLowerCase(Locale.ROOT).contains("treating doctor");
      return isCalled ? act.replaceFirst("^Treating doctor,[^.]*\\. ?", "") : act;
    }

    /** Sentence and task together. */
    public String toText() {
      return (say + " " + task()).strip();
    }
  }

  /** Whether it holds. */
  public boolean holds() {
    return state == State.HOLDS;
  }

  /** Whether it silences what supports MS: it holds, is grave enough and nobody answered it. */
  public boolean isOpen() {
    return holds() && answered.isEmpty() && (tier == Tier.T0 || (tier == Tier.T1 && isInfection));
  }
}
