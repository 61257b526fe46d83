package cistern.measurement;

import java.util.Optional;

/**
 * One analyte in one fluid.
 *
 * @param analyte what is measured
 * @param in the fluid
 */
public record Sample(Analyte analyte, Compartment in) {

  // Written out: samples are looked up a thousand times a work-up.
  @Override
  public boolean equals(Object other) {
    return other instanceof Sample(Analyte a, Compartment c) && a == analyte && c == in;
  }

  @Override
  public int hashCode() {
    return 31 * analyte.hashCode() + in.hashCode();
  }

  /** In CSF. */
  public static Sample csf(Analyte analyte) {
    return new Sample(analyte, Compartment.CSF);
  }

  /** In serum. */
  public static Sample serum(Analyte analyte) {
    return new Sample(analyte, Compartment.SERUM);
  }

  /** In whole blood. */
  public static Sample blood(Analyte analyte) {
    return new Sample(analyte, Compartment.BLOOD);
  }

  /** The sample of a name in files, if both parts of it are known. */
  public static Optional<Sample> parse(String code) {
    int point = code.lastIndexOf('.');
    Optional<Compartment> in = Compartment.parse(code.substring(point + 1));
    return Analyte.parse(code.substring(0, Math.max(0, point)))
        .flatMap(analyte -> in.map(compartment -> new Sample(analyte, compartment)));
  }

  /** The name in files, {@code albumin.csf}. */
  public String code() {
    return analyte.code() + "." + in.code();
  }

  /** The name in sentences, {@code CSF albumin}. */
  public String term() {
    return in.term() + " " + analyte.term();
  }
}
