package cistern.panel;

import cistern.measurement.Compartment;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * A result that is older than the draw it is said to come from.
 *
 * @param sample whose result
 * @param place where its time stands
 */
public record ResultBeforeDraw(Sample sample, String place) implements PanelTrouble {

  static List<ResultBeforeDraw> check(Panel panel) {
    return panel.results().values().stream()
        .filter(m -> isEarlier(m.at(), draw(panel, m).at()))
        .map(m -> new ResultBeforeDraw(m.sample(), m.place() + ".at"))
        .toList();
  }

  private static Draw draw(Panel panel, Measurement result) {
    return result.sample().in() == Compartment.CSF ? panel.csf() : panel.serum();
  }

  private static boolean isEarlier(Optional<OffsetDateTime> a, Optional<OffsetDateTime> b) {
    return a.isPresent() && b.isPresent() && a.get().isBefore(b.get());
  }

  @Override
  public String code() {
    return "result-before-draw";
  }

  @Override
  public String text() {
    return "The result of %s is dated before its sample was drawn: it may belong to another puncture, or a time is wrong."
        .formatted(sample.term());
  }
}
