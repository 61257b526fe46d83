package cistern.clinic.status;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.store.StoreTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.workup.WorkupReading;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import java.util.List;

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
   * @throws UnreadableCase when the rules in force reject it, or the program has a fault with it
   */
  public static OpenCase of(CaseVersion version, Medicine medicine) {
    try {
      return switch (medicine.read(version.workup())) {
        case WorkupReading.Understood understood -> of(version, understood, medicine);
        case WorkupReading.NotValid notValid ->
            throw new UnreadableCase(version, notValid.problems());
      };
    } catch (UnreadableCase e) {
      throw e;
    } catch (RuntimeException | StackOverflowError fault) {
      throw contained(version, fault);
    }
  }

  /** A fault in one case stays in it; what the store itself cannot do is no case's fault. */
  private static RuntimeException contained(CaseVersion version, Throwable fault) {
    return fault instanceof RuntimeException failure && StoreTrouble.of(failure).isPresent()
        ? failure
        : new UnreadableCase(version, List.of()).because(fault);
  }

  /** A version that was read already. */
  private static OpenCase of(
      CaseVersion version, WorkupReading.Understood understood, Medicine medicine) {
    Interpretation said = medicine.interpret(medicine.asOfNow(understood.workup()));
    return new OpenCase(version, understood.document(), said, medicine.plan(said));
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
