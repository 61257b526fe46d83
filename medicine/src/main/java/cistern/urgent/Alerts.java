package cistern.urgent;

import cistern.bedside.TreatmentKind;
import cistern.finding.UnitProfile;
import cistern.measurement.Answer;
import cistern.urgent.Stop.Effect;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What comes before any verdict on one puncture.
 *
 * @param urgent what must be said first
 * @param stops what stops a verdict, in the order of the catalogue
 * @param thinkOf what to think of, most specific first
 * @param kappaRaisedAlsoBy what else than synthesis raises the κ index, in words
 * @param treatments what had been given before the fluid was drawn, with its name and date
 * @param notes what is said of infection beside the rules that hold
 * @param isInfant whether the limits of the first months hold, where nothing is said of MS
 */
public record Alerts(
    Urgent urgent,
    List<Stop> stops,
    List<Consideration> thinkOf,
    List<String> kappaRaisedAlsoBy,
    SequencedMap<TreatmentKind, String> treatments,
    List<Note> notes,
    boolean isInfant) {

  /**
   * A sentence that is no rule.
   *
   * @param code the name in files
   * @param text the sentence
   */
  public record Note(String code, String text) {}

  /** Nothing stands before a verdict. */
  public static final Alerts NONE =
      new Alerts(
          Urgent.NONE, List.of(), List.of(), List.of(), new LinkedHashMap<>(), List.of(), false);

  private static final Set<String> WITHOUT_KAPPA = Set.of("not-lumbar", "monoclonal");

  private static final Trigger MANY_CELLS =
      Trigger.over(Quantity.LEUKOCYTES, "stop.atypical.leukocytes.over");

  /** Copies the collections. */
  public Alerts {
    stops = List.copyOf(stops);
    thinkOf = List.copyOf(thinkOf);
    kappaRaisedAlsoBy = List.copyOf(kappaRaisedAlsoBy);
    notes = List.copyOf(notes);
    treatments = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(treatments));
  }

  /**
   * The alerts of some observations.
   *
   * @param observed what was measured and said
   * @param afterwards what holds after the puncture and must be said first
   */
  public static Alerts of(Observed observed, List<Urgency> afterwards) {
    Urgent urgent = UrgentRules.check(observed).with(afterwards);
    List<Stop> stops = Stops.check(observed, urgent);
    boolean isOfMs =
        !observed.isInfant() && stops.stream().noneMatch(s -> s.effect() == Effect.CONTRADICTION);
    return new Alerts(
        urgent,
        stops,
        Considerations.of(observed, urgent, isOfMs),
        kappaRaisedBy(observed),
        Treated.kinds(observed),
        notes(observed, urgent),
        observed.isInfant());
  }

  private static List<Note> notes(Observed observed, Urgent urgent) {
    List<Note> notes = new ArrayList<>();
    HerpesPcr.text(observed, urgent)
        .map(text -> new Note("herpes-pcr", text))
        .ifPresent(notes::add);
    if (UrgentRules.isWithoutPredictors(observed)) {
      String text = observed.facts().word("say.bacterial-predictors-absent");
      notes.add(new Note("bacterial-predictors-absent", text));
    }
    ChildhoodScore.text(observed, urgent)
        .map(text -> new Note("childhood-score", text))
        .ifPresent(notes::add);
    return notes;
  }

  private static List<String> kappaRaisedBy(Observed observed) {
    List<String> reasons = new ArrayList<>();
    boolean isHigh =
        Trigger.over(Quantity.KAPPA_INDEX, "stop.kappa.after-steroids.to").answer(observed)
            == Answer.YES;
    if (Treated.isOnSteroids(observed) && !isHigh) {
      reasons.add("steroids");
    }
    if (observed.isBloody()) {
      reasons.add("blood in the sample");
    }
    if (MANY_CELLS.answer(observed).isYes()) {
      String cells =
          observed
              .value(Quantity.LEUKOCYTES)
              .map(v -> leukocytes(v.lower(), observed))
              .orElse("many leukocytes/µL");
      reasons.add(cells);
    }
    return reasons;
  }

  private static String leukocytes(double held, Observed observed) {
    return Quantity.LEUKOCYTES.toText(held, held, UnitProfile.of(observed.facts()));
  }

  /** These alerts with what is atypical although the criteria are met. */
  public Alerts with(Optional<Stop> whenMet) {
    List<Stop> all = new ArrayList<>(stops);
    whenMet.ifPresent(stop -> all.add(place(all), stop));
    return new Alerts(urgent, all, thinkOf, kappaRaisedAlsoBy, treatments, notes, isInfant);
  }

  /** Before the treatment and the emergency, which close the catalogue. */
  private static int place(List<Stop> all) {
    int place = all.size();
    while (place > 0
        && Set.of("treated-before-sampling", "emergency-open")
            .contains(all.get(place - 1).code())) {
      place--;
    }
    return place;
  }

  /** Whether an urgent rule silences every sentence that supports MS, and every probability. */
  public boolean isSilencing() {
    return urgent.isOpen();
  }

  /**
   * Whether nothing is said of MS: a rule is open, a stop contradicts, or the person is too young.
   */
  public boolean isSilentOfMs() {
    return isSilencing() || isContradicted() || isInfant;
  }

  /** Whether both editions wait for an explanation. */
  public boolean isContradicted() {
    return with(Effect.CONTRADICTION).findAny().isPresent();
  }

  /** Whether the bands are unknown to the criteria and to the answer. */
  public boolean isBandsUnknown() {
    return unusableBands().isPresent();
  }

  /** Why the bands are unknown to the criteria and to the answer, where they are. */
  public Optional<UnusableBands> unusableBands() {
    List<String> codes = with(Effect.INPUT_UNKNOWN).map(Stop::code).toList();
    return Arrays.stream(UnusableBands.values()).filter(w -> codes.contains(w.stop())).findFirst();
  }

  /** Whether a spinal block holds, above which nothing of antibody can be told from quotients. */
  public boolean isBlocked() {
    return urgent.holds("spinal-block");
  }

  /** Whether the κ index is unknown to the criteria and to the answer. */
  public boolean isKappaUnknown() {
    return with(Effect.INPUT_UNKNOWN).map(Stop::code).anyMatch(WITHOUT_KAPPA::contains);
  }

  private Stream<Stop> with(Effect effect) {
    return stops.stream().filter(s -> s.effect() == effect);
  }

  /** Whether a stop holds. */
  public boolean isStoppedBy(String code) {
    return stops.stream().anyMatch(s -> s.code().equals(code));
  }
}
