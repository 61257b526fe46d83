package cistern.panel;

import cistern.measurement.Answer;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.util.Collections;
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
 * @param circumstances what is known of the person and the treatment
 */
public record Panel(
    Person person,
    Draw csf,
    Draw serum,
    SequencedMap<Sample, Measurement> results,
    Map<Circumstance, Answer> circumstances) {

  /** Copies the results. */
  public Panel {
    results = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(results));
    circumstances = Map.copyOf(circumstances);
  }

  /** A panel of some results. */
  public static Panel of(Person person, List<Measurement> results) {
    SequencedMap<Sample, Measurement> bySample = new LinkedHashMap<>();
    results.forEach(m -> bySample.put(m.sample(), m));
    return new Panel(person, Draw.UNKNOWN, Draw.UNKNOWN, bySample, Map.of());
  }

  /** This panel with other draws. */
  public Panel withDraws(Draw csfDraw, Draw serumDraw) {
    return new Panel(person, csfDraw, serumDraw, results, circumstances);
  }

  /** This panel under known circumstances. */
  public Panel withCircumstances(Map<Circumstance, Answer> known) {
    return new Panel(person, csf, serum, results, known);
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
