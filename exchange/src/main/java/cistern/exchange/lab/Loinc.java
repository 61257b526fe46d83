package cistern.exchange.lab;

import cistern.exchange.ucum.Conversion;
import cistern.exchange.ucum.Conversions;
import cistern.fact.Facts;
import cistern.fact.Provenance;
import cistern.fact.Status;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The LOINC codes that are read, and which of them are written. Codes that were only recalled are
 * written out when policy says so. LOINC is copyright of the Regenstrief Institute; see NOTICE.
 */
public final class Loinc {

  /** The fact that says whether codes from memory are written. */
  public static final String POLICY_KEY = "codes.from-memory";

  /** The word of that fact by which they are. */
  public static final String WRITTEN = "written";

  /** The word of that fact by which they are not. */
  public static final String WITHHELD = "withheld";

  private static final List<LoincCode> CODES =
      WordTable.rows("loinc.tsv").stream().map(Loinc::code).toList();

  private static final Map<String, LoincCode> BY_CODE =
      CODES.stream().collect(Collectors.toUnmodifiableMap(LoincCode::code, Function.identity()));

  private Loinc() {}

  private static LoincCode code(String[] row) {
    Status status =
        Status.parse(row[4])
            .orElseThrow(() -> new IllegalStateException(row[0] + ": no status " + row[4]));
    return new LoincCode(row[0], row[1], row[2], row[3], status, Provenance.parse(row[5], status));
  }

  /** Every code of the table. */
  public static List<LoincCode> all() {
    return CODES;
  }

  /** The code of a number, if it is one that is read here. */
  public static Optional<LoincCode> find(String code) {
    return Optional.ofNullable(BY_CODE.get(code));
  }

  /** The code that may be written for a meaning that has no unit. */
  public static Optional<LoincCode> toWrite(String meaning, Facts facts) {
    return CODES.stream()
        .filter(c -> c.meaning().equals(meaning) && isWritten(c, facts))
        .findFirst();
  }

  /**
   * The code that may be written for a value: of the same dimension, so that mass and substance
   * have codes of their own, and for a fraction of the same unit, because the codes are in percent.
   */
  public static Optional<LoincCode> toWrite(String meaning, String unit, Facts facts) {
    Conversions conversions = Conversions.of(facts);
    return CODES.stream()
        .filter(c -> c.meaning().equals(meaning) && isWritten(c, facts))
        .filter(c -> isSameKind(c.unit(), unit, conversions))
        .findFirst();
  }

  private static boolean isSameKind(String wanted, String unit, Conversions conversions) {
    if (wanted.equals("%")) {
      return unit.equals(wanted);
    }
    return conversions.isUnit(unit)
        && conversions.isUnit(wanted)
        && conversions.conversion(unit, wanted) instanceof Conversion.By;
  }

  private static boolean isWritten(LoincCode code, Facts facts) {
    return code.status() != Status.MEMORY || facts.word(POLICY_KEY).equals(WRITTEN);
  }
}
