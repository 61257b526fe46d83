package cistern.criteria;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/** One edition, with what it was found to say of what may be known. */
final class Rulings {

  private final Edition edition;
  private final Map<Presentation, Completions> completions = new EnumMap<>(Presentation.class);
  private final Kept<Known, Survey> surveys = new Kept<>();
  private final Kept<Known, Missing> missing = new Kept<>();
  private final Kept<Known, Missing> withPresentation = new Kept<>();
  private final Kept<Question, Double> information = new Kept<>();

  Rulings(Edition edition) {
    this.edition = edition;
    for (Presentation presentation : Presentation.values()) {
      completions.put(presentation, new Completions(edition, presentation));
    }
  }

  /**
   * The smallest sets of unknown items that would settle an edition.
   *
   * @param toMet those that would give met, least burden first
   * @param toNotMet those that would give not met
   */
  record Missing(List<List<Item>> toMet, List<List<Item>> toNotMet) {

    /** Nothing that is unknown would settle it, or it is settled. */
    static final Missing NOTHING = new Missing(List.of(), List.of());
  }

  Edition edition() {
    return edition;
  }

  /** What all completions of what is known give. */
  Survey survey(Known known) {
    Completions all = completions(known.presentation());
    return surveys.of(all.read(known), k -> Survey.of(all, k));
  }

  /** What would settle what is known; nothing where it is settled. */
  Missing missing(Known known) {
    if (survey(known).verdict() != CriteriaVerdict.UNDETERMINED) {
      return Missing.NOTHING;
    }
    Completions all = completions(known.presentation());
    return missing.of(
        all.read(known),
        k -> new Missing(SufficientSets.toMet(all, k), SufficientSets.toNotMet(all, k)));
  }

  /**
   * What would settle it once the presentation is known to be that of what is known.
   *
   * @param known of an attack
   */
  Missing withPresentation(Known known) {
    return withPresentation.of(
        completions(known.presentation()).read(known),
        k -> {
          CriteriaVerdict verdict = survey(k).verdict();
          Missing sets = missing(k);
          return new Missing(
              added(verdict == CriteriaVerdict.MET, sets.toMet()),
              added(verdict == CriteriaVerdict.NOT_MET, sets.toNotMet()));
        });
  }

  /** The sets stay in their order, since all get the same item, which is no burden. */
  private static List<List<Item>> added(boolean isEnough, List<List<Item>> sets) {
    return isEnough
        ? List.of(List.of(Item.PRESENTATION))
        : sets.stream()
            .map(set -> Stream.concat(Stream.of(Item.PRESENTATION), set.stream()).toList())
            .toList();
  }

  /**
   * What is asked of the outlook.
   *
   * @param known so far
   * @param chances of the unknown
   * @param items the bits of the items that would become known
   */
  record Question(Known known, Outlook.Chances chances, int items) {}

  /** The bits that something would tell of the verdict, as found or as it is found now. */
  double information(Question question, ToDoubleFunction<Question> look) {
    return information.of(question, look::applyAsDouble);
  }

  Completions completions(Presentation presentation) {
    Completions all = completions.get(presentation);
    if (all == null) {
      throw new IllegalStateException("no completions of " + presentation.code());
    }
    return all;
  }
}
