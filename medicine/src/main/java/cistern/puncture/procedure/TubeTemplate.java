package cistern.puncture.procedure;

import java.util.Arrays;
import java.util.Optional;

/** An order of tubes that a laboratory uses; there is no standard. */
public enum TubeTemplate {
  CELLS_FIRST("cells-first", "cells first"),
  CHEMISTRY_FIRST("chemistry-first", "chemistry and bands first"),
  CELLS_THIRD("cells-third", "chemistry, then cells"),
  BANDS_LAST("bands-last", "chemistry first, bands last");

  private final String code;
  private final String term;

  TubeTemplate(String code, String term) {
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
  public static Optional<TubeTemplate> parse(String code) {
    return Arrays.stream(values()).filter(v -> v.code.equals(code)).findFirst();
  }
}
