package cistern.puncture.procedure;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** An antithrombotic for which a guideline gives, or may give, an interval. */
public enum Drug {
  ASPIRIN("aspirin", "acetylsalicylic acid"),
  NSAID("nsaid", "ibuprofen, naproxen, diclofenac"),
  CLOPIDOGREL("clopidogrel", ""),
  PRASUGREL("prasugrel", ""),
  TICAGRELOR("ticagrelor", ""),
  DIPYRIDAMOLE("dipyridamole", ""),
  CILOSTAZOL("cilostazol", ""),
  TIROFIBAN("tirofiban", ""),
  EPTIFIBATIDE("eptifibatide", ""),
  ABCIXIMAB("abciximab", ""),
  WARFARIN("warfarin", ""),
  ACENOCOUMAROL("acenocoumarol", ""),
  PHENPROCOUMON("phenprocoumon", ""),
  LMWH(
      "lmwh",
      "enoxaparin, dalteparin, tinzaparin, nadroparin, certoparin, low-molecular-weight heparin"),
  UFH_IV("ufh-iv", "heparin iv, unfractionated heparin iv"),
  UFH_SC("ufh-sc", "heparin sc, unfractionated heparin sc"),
  FONDAPARINUX("fondaparinux", ""),
  RIVAROXABAN("rivaroxaban", ""),
  APIXABAN("apixaban", ""),
  EDOXABAN("edoxaban", ""),
  DABIGATRAN("dabigatran", "");

  private final String code;
  private final String synonyms;

  Drug(String code, String synonyms) {
    this.code = code;
    this.synonyms = synonyms;
  }

  /** The name in files and in the keys of facts. */
  public String code() {
    return code;
  }

  /** The drug of a name, if it is one of these; capitals do not matter. */
  public static Optional<Drug> parse(String name) {
    String plain = name.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values())
        .filter(d -> !plain.isEmpty())
        .filter(d -> d.code.equals(plain) || List.of(d.synonyms.split(", ", -1)).contains(plain))
        .findFirst();
  }
}
