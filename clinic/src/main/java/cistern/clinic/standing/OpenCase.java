package cistern.clinic.standing;

import cistern.clinic.cases.CaseVersion;
import cistern.exchange.json.Json;
import cistern.exchange.workup.WorkupReading;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;

/**
 * One version of a case, read and interpreted.
 *
 * @param version as it is kept
 * @param file the work-up file
 * @param interpretation what it says, as of now
 * @param plan for its puncture, as of now
 */
public record OpenCase(
    CaseVersion version, Json.Structure file, Interpretation interpretation, PuncturePlan plan) {

  /**
   * Reads a version.
   *
   * @throws UnreadableCase when the rules in force reject it
   */
  public static OpenCase of(CaseVersion version, Medicine medicine) {
    return switch (medicine.read(version.workup())) {
      case WorkupReading.Understood understood -> {
        Interpretation said = medicine.interpret(medicine.asOfNow(understood.workup()));
        yield new OpenCase(version, understood.document(), said, medicine.plan(said));
      }
      case WorkupReading.NotValid notValid ->
          throw new UnreadableCase(version, notValid.problems());
    };
  }

  /** The domain's record of it. */
  public Workup workup() {
    return interpretation.workup();
  }

  /** The name of the work-up, chosen by people. */
  public String name() {
    return workup().id();
  }
}
