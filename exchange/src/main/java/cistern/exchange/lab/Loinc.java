package cistern.exchange.lab;

import cistern.exchange.ucum.Conversion;
import cistern.exchange.ucum.Conversions;
import cistern.fact.Facts;
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
      WordTable.rows("loinc.tsv").stream()
          .map(r -> new LoincCode(r[0], r[1], r[2], r[3], status(r[4]), r[5]))
          .toList();

  private static final Map<String, LoincCode> BY_CODE =
      CODES.stream().collect(Collectors.toUnmodifiableMap(LoincCode::code, Function.identity()));

  private Loinc() {}

  private static Status status(String word) {
    return Status.parse(word).orElseThrow(() -> new IllegalStateException("no status " + word));
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
