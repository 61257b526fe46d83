package cistern.puncture.specimen;

import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.finding.Printed;
import cistern.finding.UnitProfile;
import cistern.finding.WrittenUnit;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.After.SentTest;
import cistern.puncture.procedure.After.Told;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.specimen.CriticalValue.Telling;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What is due when, what is overdue, and which results somebody must be told of. */
public final class Results {

  private static final Sample GLUCOSE = Sample.csf(Analyte.GLUCOSE);
  private static final Sample LEUKOCYTES = Sample.csf(Analyte.LEUKOCYTES);
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
  public List<CriticalValue> critical(After after, PuncturedPerson.Draw fluid) {
    List<CriticalValue> all = new ArrayList<>();
    fluid.csfGlucose().ifPresent(glucose -> glucose(glucose, after, all));
    fluid.csfLeukocytes().ifPresent(cells -> leukocytes(cells, after, all));
    after.sent().stream()
        .filter(sent -> sent.positive().isYes())
        .map(
            sent ->
                value(sent.test(), "positive: " + sent.test().term(), "critical.positive", after))
        .forEach(all::add);
    return all;
  }

  /** A bound is critical when every value that it allows is. */
  private void glucose(Interval glucose, After after, List<CriticalValue> all) {
    double low = facts.number("critical.glucose.lower");
    double high = facts.number("critical.glucose.upper");
    if (glucose.upper() <= low) {
      all.add(glucose(glucoseText(glucose, low, "under"), ".lower", after));
    } else if (glucose.lower() >= high) {
      all.add(glucose(glucoseText(glucose, high, "over"), ".upper", after));
    }
  }

  private void leukocytes(Interval cells, After after, List<CriticalValue> all) {
    OptionalDouble limit = number("critical.leukocytes.upper");
    if (limit.isPresent() && cells.lower() >= limit.getAsDouble()) {
      Optional<WrittenUnit> unit = unit(LEUKOCYTES);
      String counted = number(unit, cells.lower());
      String text =
          unit.map(u -> "leukocytes " + u.after(counted)).orElse("leukocytes " + counted + "/µL")
              + " ("
              + number(unit, limit.getAsDouble())
              + " or over)";
      all.add(value(CsfTest.CELLS, text, "critical.leukocytes.upper", after));
    }
  }

  private static String number(Optional<WrittenUnit> unit, double cells) {
    return WrittenUnit.number(unit, u -> u.number(cells), () -> whole(cells));
  }

  private String glucoseText(Interval glucose, double limit, String side) {
    String value =
        glucose.censored()
            ? (side.equals("under") ? "below " : "above ")
                + glucose(side.equals("under") ? glucose.upper() : glucose.lower(), limit)
            : glucose(glucose.lower(), limit);
    String unit = unit(GLUCOSE).map(WrittenUnit::text).orElse("mmol/L");
    return "CSF glucose " + value + " " + unit + " (" + glucose(limit, limit) + " or " + side + ")";
  }

  private String glucose(double held, double limit) {
    return WrittenUnit.number(
        unit(GLUCOSE), unit -> unit.besideLimit(held, limit), () -> Printed.decimals(held, 1));
  }

  private Optional<WrittenUnit> unit(Sample sample) {
    return UnitProfile.of(facts).find(sample);
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
