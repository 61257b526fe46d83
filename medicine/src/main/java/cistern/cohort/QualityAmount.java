package cistern.cohort;

import cistern.interpretation.Judged;
import cistern.panel.Draw;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.After.SentTest;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a clinic measures of its own punctures: times and volumes. */
public enum QualityAmount {
  DRAW_INTERVAL("draw-interval", "h", "from the CSF to the serum, whichever was first"),
  VOLUME("volume", "mL", "CSF taken"),
  TO_LABORATORY("to-laboratory", "h", "from the puncture to the laboratory"),
  TURNAROUND("turnaround", "h", "from sending to the last result that came"),
  TOLD("told", "min", "from a result to telling somebody of it");

  private static final double SECONDS_PER_MINUTE = 60;
  private static final double MINUTES_PER_HOUR = 60;

  private final String code;
  private final String unit;
  private final String text;

  QualityAmount(String code, String unit, String text) {
    this.code = code;
    this.unit = unit;
    this.text = text;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** The unit, UCUM. */
  public String unit() {
    return unit;
  }

  /** What is measured, in words. */
  public String text() {
    return text;
  }

  /** How much it was in one puncture; empty when a time is missing or they are in wrong order. */
  OptionalDouble of(Judged judged) {
    Draw csf = judged.workup().panel().csf();
    After after = judged.workup().procedure().after();
    return switch (this) {
      case DRAW_INTERVAL -> {
        OptionalDouble apart = judged.puncture().panel().pairing().hoursApart();
        yield apart.isPresent()
            ? OptionalDouble.of(Math.abs(apart.getAsDouble()))
            : OptionalDouble.empty();
      }
      case VOLUME -> csf.volumeMl();
      case TO_LABORATORY -> hours(minutes(csf.at(), csf.receivedAt()));
      case TURNAROUND -> turnaround(after);
      case TOLD -> after.sent().stream().flatMapToDouble(sent -> toldMinutes(sent).stream()).min();
    };
  }

  private static OptionalDouble turnaround(After after) {
    return hours(
        after.sent().stream()
            .flatMapToDouble(sent -> minutes(sent.sentAt(), sent.receivedAt()).stream())
            .max());
  }

  /** The minutes from a result to the first person who was told of it. */
  static OptionalDouble toldMinutes(SentTest sent) {
    return sent.told().stream()
        .flatMapToDouble(told -> minutes(sent.receivedAt(), told.at()).stream())
        .min();
  }

  private static OptionalDouble minutes(
      Optional<OffsetDateTime> from, Optional<OffsetDateTime> to) {
    if (from.isEmpty() || to.isEmpty()) {
      return OptionalDouble.empty();
    }
    double minutes = Duration.between(from.get(), to.get()).toSeconds() / SECONDS_PER_MINUTE;
    return minutes < 0 ? OptionalDouble.empty() : OptionalDouble.of(minutes);
  }

  private static OptionalDouble hours(OptionalDouble minutes) {
    return minutes.isPresent()
        ? OptionalDouble.of(minutes.getAsDouble() / MINUTES_PER_HOUR)
        : minutes;
  }
}
