package cistern.puncture.procedure;

import java.util.Arrays;
import java.util.Optional;

/** What a tube is filled for. */
public enum CsfTest {
  CELLS("cells", "cell count"),
  CHEMISTRY("chemistry", "glucose, protein, lactate"),
  CULTURE("culture", "Gram stain and culture"),
  TUBERCULOSIS_FUNGI("tuberculosis-fungi", "tuberculosis and fungi"),
  BANDS("bands", "oligoclonal bands"),
  QUOTIENTS("quotients", "albumin and immunoglobulin quotients"),
  KAPPA("kappa-flc", "κ free light chains"),
  CYTOLOGY("cytology", "cytology for malignancy"),
  BIOBANK("biobank", "research samples");

  private final String code;
  private final String term;

  CsfTest(String code, String term) {
    this.code = code;
    this.term = term;
  }

  /** The name in files and in the keys of facts. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }

  /** The one of a name, if there is one. */
  public static Optional<CsfTest> parse(String code) {
    return Arrays.stream(values()).filter(v -> v.code.equals(code)).findFirst();
  }
}
