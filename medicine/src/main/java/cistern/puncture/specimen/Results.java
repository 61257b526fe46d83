package cistern.puncture.specimen;

import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.finding.Printed;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.After.SentTest;
import cistern.puncture.procedure.After.Told;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.Subject;
import cistern.puncture.specimen.CriticalValue.Telling;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What is due when, what is overdue, and which results somebody must be told of. */
public final class Results {

  private static final double SECONDS_PER_MINUTE = 60;
  private static final long SECONDS_PER_HOUR = 3600;

  private final Facts facts;

  private Results(Facts facts) {
    this.facts = facts;
  }

  /** The turnarounds and the critical list under some facts. */
  public static Results of(Facts facts) {
    return new Results(facts);
  }

  /** Every test that was sent. */
  public List<Outstanding> outstanding(After after) {
    return after.sent().stream().map(sent -> outstanding(sent, after.asOf())).toList();
  }

  private Outstanding outstanding(SentTest sent, Optional<OffsetDateTime> asOf) {
    String key = "turnaround." + sent.test().code() + ".hours";
    Optional<OffsetDateTime> due = sent.dueAt().or(() -> due(sent, key));
    return new Outstanding(
        sent.test(), state(sent, due, asOf), due, sent.told(), facts.grounds(key));
  }

  private Optional<OffsetDateTime> due(SentTest sent, String key) {
    OptionalDouble hours = number(key);
    return hours.isPresent()
        ? sent.sentAt()
            .map(at -> at.plusSeconds(Math.round(hours.getAsDouble() * SECONDS_PER_HOUR)))
        : Optional.empty();
  }

  private static Outstanding.State state(
      SentTest sent, Optional<OffsetDateTime> due, Optional<OffsetDateTime> asOf) {
    if (sent.receivedAt().isPresent()) {
      return Outstanding.State.RECEIVED;
    }
    if (due.isEmpty() || asOf.isEmpty()) {
      return Outstanding.State.UNKNOWN;
    }
    return asOf.get().isAfter(due.get())
        ? Outstanding.State.OVERDUE
        : Outstanding.State.OUTSTANDING;
  }

  /** Every result on the local critical list, told or not. */
  public List<CriticalValue> critical(After after, Subject subject) {
    List<CriticalValue> all = new ArrayList<>();
    OptionalDouble glucose = subject.draw().csfGlucose();
    if (glucose.isPresent()) {
      low(glucose.getAsDouble()).ifPresent(text -> all.add(glucose(text, ".lower", after)));
      high(glucose.getAsDouble()).ifPresent(text -> all.add(glucose(text, ".upper", after)));
    }
    OptionalDouble cells = subject.draw().csfLeukocytes();
    OptionalDouble limit = number("critical.leukocytes.upper");
    if (cells.isPresent() && limit.isPresent() && cells.getAsDouble() >= limit.getAsDouble()) {
      all.add(
          value(
              CsfTest.CELLS,
              "leukocytes "
                  + whole(cells.getAsDouble())
                  + "/µL ("
                  + whole(limit.getAsDouble())
                  + " or over)",
              "critical.leukocytes.upper",
              after));
    }
    after.sent().stream()
        .filter(sent -> sent.positive().isYes())
        .forEach(
            sent ->
                all.add(
                    value(
                        sent.test(),
                        "positive: " + sent.test().term(),
                        "critical.positive",
                        after)));
    return all;
  }

  private Optional<String> low(double glucose) {
    double limit = facts.number("critical.glucose.lower");
    return glucose <= limit ? Optional.of(glucoseText(glucose, limit, "under")) : Optional.empty();
  }

  private Optional<String> high(double glucose) {
    double limit = facts.number("critical.glucose.upper");
    return glucose >= limit ? Optional.of(glucoseText(glucose, limit, "over")) : Optional.empty();
  }

  private static String glucoseText(double glucose, double limit, String side) {
    return "CSF glucose "
        + Printed.decimals(glucose, 1)
        + " mmol/L ("
        + Printed.decimals(limit, 1)
        + " or "
        + side
        + ")";
  }

  private CriticalValue glucose(String text, String limit, After after) {
    return value(CsfTest.CHEMISTRY, text, "critical.glucose" + limit, after);
  }

  private CriticalValue value(CsfTest test, String text, String key, After after) {
    List<Telling> told =
        after.sent().stream()
            .filter(sent -> sent.test() == test)
            .flatMap(sent -> sent.told().stream().map(t -> new Telling(t, delay(sent, t))))
            .toList();
    return new CriticalValue(test, text, told, facts.grounds(key, "critical.told-minutes"));
  }

  private String delay(SentTest sent, Told told) {
    if (sent.receivedAt().isEmpty() || told.at().isEmpty()) {
      return "";
    }
    double minutes =
        Duration.between(sent.receivedAt().get(), told.at().get()).toSeconds() / SECONDS_PER_MINUTE;
    double limit = facts.number("critical.told-minutes");
    return whole(minutes)
        + " min after the result, "
        + (minutes <= limit ? "within " : "later than ")
        + whole(limit)
        + " min";
  }

  private OptionalDouble number(String key) {
    Fact fact = facts.fact(key);
    return fact.value() instanceof FactValue.Figure figure
        ? OptionalDouble.of(figure.value())
        : OptionalDouble.empty();
  }

  private static String whole(double value) {
    return Printed.decimals(value, 0);
  }
}
