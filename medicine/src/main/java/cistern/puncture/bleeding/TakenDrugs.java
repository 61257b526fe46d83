package cistern.puncture.bleeding;

import cistern.bedside.Treatment;
import cistern.measurement.Answer;
import cistern.puncture.drug.TypedDrug;
import cistern.puncture.procedure.Antithrombotic;
import java.util.List;
import java.util.stream.Stream;

/**
 * Everything that was typed as taken, name by name.
 *
 * @param isAsked whether anybody asked
 * @param all in the order of the work-up
 */
public record TakenDrugs(boolean isAsked, List<Taken> all) {

  /** Copies the names. */
  public TakenDrugs {
    all = List.copyOf(all);
  }

  /**
   * One name with what was said of it.
   *
   * @param drug the name
   * @param taken when and how much; under the international name where it is known
   */
  public record Taken(TypedDrug drug, Antithrombotic taken) {}

  /** The antithrombotics whose guidelines are asked. */
  public List<Taken> antithrombotics() {
    return all.stream()
        .filter(t -> t.drug.entry().filter(e -> e.isAntithrombotic()).isPresent())
        .toList();
  }

  /** Those that must be asked about before a puncture. */
  public List<Taken> askedAbout() {
    return all.stream().filter(t -> t.drug.isAskedAbout()).toList();
  }

  /**
   * Whether any thins the blood, known or not: unknown when nobody asked or a name is not known.
   */
  public Answer anticoagulant() {
    boolean isAny =
        all.stream().anyMatch(t -> t.drug.entry().filter(e -> e.isAnticoagulant()).isPresent());
    if (isAny) {
      return Answer.YES;
    }
    return !isAsked || all.stream().anyMatch(t -> t.drug.entry().isEmpty())
        ? Answer.UNKNOWN
        : Answer.NO;
  }

  /** Whether any antithrombotic is taken. */
  public Answer antithrombotic() {
    if (!antithrombotics().isEmpty() || anticoagulant().isYes()) {
      return Answer.YES;
    }
    return anticoagulant();
  }

  /** The drugs of the treatments that still go on, as typed names. */
  static Stream<String> names(List<Treatment> treatments) {
    return treatments.stream().filter(t -> t.to().isEmpty()).map(Treatment::drug);
  }
}
