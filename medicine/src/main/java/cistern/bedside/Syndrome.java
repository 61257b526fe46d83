package cistern.bedside;

import java.util.Arrays;
import java.util.Optional;

/** How an attack has shown itself. */
public enum Syndrome {
  OPTIC_NEURITIS("optic-neuritis", true),
  MYELITIS("myelitis", true),
  ADEM("adem", true),
  BRAINSTEM("brainstem", true),
  CEREBELLAR("cerebellar", true),
  CEREBRAL_MONOFOCAL("cerebral-monofocal", true),
  CORTICAL_ENCEPHALITIS("cortical-encephalitis", true),
  SIXTH_NERVE_PALSY("sixth-nerve-palsy", false);

  private final String code;
  private final boolean isCoreEvent;

  Syndrome(String code, boolean isCoreEvent) {
    this.code = code;
    this.isCoreEvent = isCoreEvent;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** Whether it is a core event of the disease with MOG antibodies (Banwell 2023, table 3). */
  public boolean isCoreEvent() {
    return isCoreEvent;
  }

  /** The syndrome of a name in a file, if it is one. */
  public static Optional<Syndrome> parse(String code) {
    return Arrays.stream(values()).filter(s -> s.code.equals(code)).findFirst();
  }
}
