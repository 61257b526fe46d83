package cistern.puncture.bleeding;

import cistern.puncture.procedure.Coagulation;
import java.util.OptionalDouble;

/** A value of clotting that guidelines set limits for. */
public enum ClottingTest {
  PLATELETS("platelets", "platelets", "10⁹/L"),
  INR("inr", "INR", ""),
  APTT_RATIO("aptt-ratio", "aPTT ratio", "");

  private final String code;
  private final String term;
  private final String unit;

  ClottingTest(String code, String term, String unit) {
    this.code = code;
    this.term = term;
    this.unit = unit;
  }

  /** The name in files and in the keys of facts. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }

  /** The unit as printed; empty for ratios. */
  public String unit() {
    return unit;
  }

  /** The value, if it was measured. */
  public OptionalDouble value(Coagulation coagulation) {
    return switch (this) {
      case PLATELETS -> coagulation.platelets();
      case INR -> coagulation.inr();
      case APTT_RATIO -> coagulation.apttRatio();
    };
  }
}
