package cistern.puncture.bleeding;

import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.finding.Printed;
import cistern.puncture.bleeding.ThresholdAnswer.Standing;
import cistern.puncture.guideline.Guideline;
import cistern.puncture.procedure.Coagulation;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Platelets, INR and aPTT against every guideline's limit. */
public final class Thresholds {

  private static final String TABLE = "coagulation.";

  private final Facts facts;

  private Thresholds(Facts facts) {
    this.facts = facts;
  }

  /** The limits under some facts. */
  public static Thresholds of(Facts facts) {
    return new Thresholds(facts);
  }

  /** Every test against every guideline that sets a limit for it. */
  public List<ThresholdAnswer> check(Coagulation coagulation) {
    return Arrays.stream(ClottingTest.values())
        .flatMap(
            test ->
                guidelines(test).stream()
                    .map(guideline -> answer(test, guideline, test.value(coagulation))))
        .flatMap(Optional::stream)
        .toList();
  }

  private List<String> guidelines(ClottingTest test) {
    String start = TABLE + test.code() + ".";
    return facts.keys(start).stream()
        .map(key -> key.substring(start.length(), key.indexOf('.', start.length())))
        .distinct()
        .toList();
  }

  /** A guideline's answer; none when no limit is set, as for a local one without a number. */
  private Optional<ThresholdAnswer> answer(
      ClottingTest test, String guideline, OptionalDouble value) {
    Row row = new Row(TABLE + test.code() + "." + guideline + ".");
    if (row.clear().isEmpty()) {
      return Optional.empty();
    }
    Standing standing = value.isEmpty() ? Standing.ASK : row.standing(value.getAsDouble());
    String says =
        switch (standing) {
          case CLEAR -> "no objection";
          case BETWEEN -> facts.word(row.key + "open");
          case OUTSIDE -> facts.word(row.key + "outside");
          case ASK -> "not known; whether it is needed is local policy";
        };
    return Optional.of(
        new ThresholdAnswer(
            test,
            Guideline.of(facts, guideline),
            standing,
            row.limits(test) + ": " + says,
            row.grounds()));
  }

  /** The limits of one guideline for one test. */
  private final class Row {
    private final String key;

    private Row(String key) {
      this.key = key;
    }

    private OptionalDouble number(String cell) {
      Optional<Fact> fact = facts.find(key + cell);
      return fact.isPresent() && fact.get().value() instanceof FactValue.Figure figure
          ? OptionalDouble.of(figure.value())
          : OptionalDouble.empty();
    }

    private Optional<String> clear() {
      return limit("clear");
    }

    private Optional<String> limit(String zone) {
      for (Side side : Side.values()) {
        OptionalDouble at = number(zone + side.suffix);
        if (at.isPresent()) {
          return Optional.of(side.sign + Printed.significant(at.getAsDouble()));
        }
      }
      return Optional.empty();
    }

    private Standing standing(double value) {
      if (isIn("clear", value)) {
        return Standing.CLEAR;
      }
      return isIn("open", value) ? Standing.BETWEEN : Standing.OUTSIDE;
    }

    private boolean isIn(String zone, double value) {
      return Arrays.stream(Side.values())
          .anyMatch(
              side -> {
                OptionalDouble at = number(zone + side.suffix);
                return at.isPresent() && side.holds(value, at.getAsDouble());
              });
    }

    private String limits(ClottingTest test) {
      String unit = test.unit().isEmpty() ? "" : " × " + test.unit();
      String open = limit("open").map(text -> ", left open " + text).orElse("");
      return "clear " + clear().orElseThrow() + open + unit;
    }

    private cistern.fact.Grounds grounds() {
      return facts.grounds(facts.keys(key).toArray(String[]::new));
    }
  }

  /** The side of a number on which a zone lies. */
  private enum Side {
    FROM("-from", "≥ "),
    OVER("-over", "> "),
    UP_TO("-up-to", "≤ ");

    private final String suffix;
    private final String sign;

    Side(String suffix, String sign) {
      this.suffix = suffix;
      this.sign = sign;
    }

    private boolean holds(double value, double at) {
      return switch (this) {
        case FROM -> value >= at;
        case OVER -> value > at;
        case UP_TO -> value <= at;
      };
    }
  }
}
