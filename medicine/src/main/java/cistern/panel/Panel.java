package cistern.panel;

import cistern.measurement.Answer;
import cistern.measurement.Measurement;
import cistern.measurement.Measurement.Tube;
import cistern.measurement.Sample;
import java.time.OffsetDateTime;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;

/**
 * The results of one puncture: CSF, the serum drawn with it, and blood counts.
 *
 * @param person whose they are
 * @param csf how the CSF was taken
 * @param serum how the serum was taken
 * @param results by sample, in the order of the file
 * @param firstTube counts of a first tube, where the results hold those of the last
 * @param circumstances what is known of the person and the treatment
 * @param dated when a circumstance held, where that is said
 */
public record Panel(
    Person person,
    Draw csf,
    Draw serum,
    SequencedMap<Sample, Measurement> results,
    Map<Sample, Measurement> firstTube,
    Map<Circumstance, Answer> circumstances,
    Map<Circumstance, OffsetDateTime> dated) {

  /** Copies the results. */
  public Panel {
    results = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(results));
    firstTube = Map.copyOf(firstTube);
    circumstances = Map.copyOf(circumstances);
    dated = Map.copyOf(dated);
  }

  /** A panel of some results; of two tubes the last one counts. */
  public static Panel of(Person person, List<Measurement> results) {
    SequencedMap<Sample, Measurement> bySample = new LinkedHashMap<>();
    Map<Sample, Measurement> first = new HashMap<>();
    for (Measurement each : results) {
      Optional<Measurement> other = Optional.ofNullable(bySample.get(each.sample()));
      if (other.isPresent() && each.tube() == Tube.FIRST) {
        first.put(each.sample(), each);
      } else {
        other.filter(m -> m.tube() == Tube.FIRST).ifPresent(m -> first.put(m.sample(), m));
        bySample.put(each.sample(), each);
      }
    }
    return new Panel(person, Draw.UNKNOWN, Draw.UNKNOWN, bySample, first, Map.of(), Map.of());
  }

  /** This panel with other draws. */
  public Panel withDraws(Draw csfDraw, Draw serumDraw) {
    return new Panel(person, csfDraw, serumDraw, results, firstTube, circumstances, dated);
  }

  /** This panel under known circumstances. */
  public Panel withCircumstances(Map<Circumstance, Answer> known) {
    return new Panel(person, csf, serum, results, firstTube, known, dated);
  }

  /** This panel with the times at which circumstances held. */
  public Panel withTimes(Map<Circumstance, OffsetDateTime> times) {
    return new Panel(person, csf, serum, results, firstTube, circumstances, times);
  }

  /** The result of a sample, if it was measured. */
  public Optional<Measurement> find(Sample sample) {
    return Optional.ofNullable(results.get(sample));
  }

  /** Whether a sample was measured. */
  public boolean has(Sample sample) {
    return results.containsKey(sample);
  }

  /** What is known of a circumstance. */
  public Answer answer(Circumstance circumstance) {
    return circumstances.getOrDefault(circumstance, Answer.UNKNOWN);
  }
}
