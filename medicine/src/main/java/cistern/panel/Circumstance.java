package cistern.panel;

import java.util.Arrays;
import java.util.Optional;

/** What about the person or the treatment can make a pair misleading. */
public enum Circumstance {
  IMMUNOGLOBULIN_INFUSION("immunoglobulinInfusion"),
  PLASMA_EXCHANGE("plasmaExchange"),
  CORTICOSTEROIDS("corticosteroids"),
  B_CELL_DEPLETION("bCellDepletion"),
  MONOCLONAL_GAMMOPATHY("monoclonalGammopathy"),
  RENAL_FAILURE("renalFailure"),
  PREGNANCY("pregnancy");

  private final String code;

  Circumstance(String code) {
    this.code = code;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** The circumstance of a name in a file, if it is one. */
  public static Optional<Circumstance> parse(String code) {
    return Arrays.stream(values()).filter(c -> c.code.equals(code)).findFirst();
  }
}
