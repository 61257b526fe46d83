package cistern.exchange.workup;

import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Shown;
import cistern.exchange.ucum.Conversion;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Ratio;
import cistern.measurement.Analyte;
import cistern.measurement.CanonicalUnit;
import cistern.measurement.Compartment;
import java.util.Optional;

/** Units of results: into the canonical one, or for specific antibodies into that of the CSF. */
final class ResultUnits {

  private final Conversions conversions;

  ResultUnits(Conversions conversions) {
    this.conversions = conversions;
  }

  /** The factor that a result is multiplied by; noted when there is none. */
  Optional<Ratio> factor(RawResult result, Optional<RawResult> counterpart) {
    Analyte analyte = result.sample().analyte();
    if (analyte.unit() == CanonicalUnit.ARBITRARY) {
      return arbitrary(result, counterpart);
    }
    return switch (conversions.conversion(result.unit(), analyte)) {
      case Conversion.By by -> Optional.of(by.ratio());
      case Conversion.Unknown unknown -> unknown(result, unknown.meant());
      case Conversion.OtherDimension other -> {
        result
            .fields()
            .add(
                "unit",
                InputTrouble.OTHER_DIMENSION,
                Shown.of(result.unit()).text(),
                analyte.term(),
                analyte.unit().ucum() + " or the like",
                hint(other.meant()));
        yield Optional.empty();
      }
    };
  }

  private Optional<Ratio> arbitrary(RawResult result, Optional<RawResult> counterpart) {
    if (!conversions.isUnit(result.unit())) {
      return unknown(result, Optional.empty());
    }
    boolean isReference = result.sample().in() == Compartment.CSF || counterpart.isEmpty();
    if (isReference || !conversions.isUnit(counterpart.get().unit())) {
      return Optional.of(Ratio.ONE);
    }
    return switch (conversions.conversion(result.unit(), counterpart.get().unit())) {
      case Conversion.By by -> Optional.of(by.ratio());
      case Conversion.Unknown unknown -> unknown(result, unknown.meant());
      case Conversion.OtherDimension other -> {
        result
            .fields()
            .add(
                "unit",
                InputTrouble.OTHER_DIMENSION_THAN_PAIR,
                Shown.of(result.unit()).text(),
                Shown.of(counterpart.get().unit()).text());
        yield Optional.empty();
      }
    };
  }

  private static Optional<Ratio> unknown(RawResult result, Optional<String> meant) {
    result
        .fields()
        .add("unit", InputTrouble.UNKNOWN_UNIT, Shown.of(result.unit()).text(), hint(meant));
    return Optional.empty();
  }

  private static String hint(Optional<String> meant) {
    return meant.map(unit -> " Perhaps “%s” is meant.".formatted(unit)).orElse("");
  }
}
