package cistern.puncture.procedure;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** An antithrombotic for which a guideline gives, or may give, an interval. */
public enum Drug {
  ASPIRIN("aspirin", false, "acetylsalicylic acid"),
  NSAID("nsaid", false, "ibuprofen", "naproxen", "diclofenac"),
  CLOPIDOGREL("clopidogrel", false),
  PRASUGREL("prasugrel", false),
  TICAGRELOR("ticagrelor", false),
  DIPYRIDAMOLE("dipyridamole", false),
  CILOSTAZOL("cilostazol", false),
  TIROFIBAN("tirofiban", false),
  EPTIFIBATIDE("eptifibatide", false),
  ABCIXIMAB("abciximab", false),
  WARFARIN("warfarin", false),
  ACENOCOUMAROL("acenocoumarol", false),
  PHENPROCOUMON("phenprocoumon", false),
  LMWH(
      "lmwh",
      true,
      "enoxaparin",
      "dalteparin",
      "tinzaparin",
      "nadroparin",
      "certoparin",
      "low-molecular-weight heparin"),
  UFH_IV("ufh-iv", false, "heparin iv", "unfractionated heparin iv"),
  UFH_SC("ufh-sc", true, "heparin sc", "unfractionated heparin sc"),
  FONDAPARINUX("fondaparinux", true),
  RIVAROXABAN("rivaroxaban", true),
  APIXABAN("apixaban", true),
  EDOXABAN("edoxaban", true),
  DABIGATRAN("dabigatran", true);

  private final String code;
  private final boolean hasDoseClasses;
  private final List<String> synonyms;

  Drug(String code, boolean hasDoseClasses, String... synonyms) {
    this.code = code;
    this.hasDoseClasses = hasDoseClasses;
    this.synonyms = List.of(synonyms);
  }

  /** The name in files and in the keys of facts. */
  public String code() {
    return code;
  }

  /** Whether the guidelines tell a low (prophylactic) from a high (therapeutic) dose. */
  public boolean hasDoseClasses() {
    return hasDoseClasses;
  }

  /** The drug of a name, if it is one of these; capitals do not matter. */
  public static Optional<Drug> parse(String name) {
    String plain = name.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values())
        .filter(d -> d.code.equals(plain) || d.synonyms.contains(plain))
        .findFirst();
  }
}
