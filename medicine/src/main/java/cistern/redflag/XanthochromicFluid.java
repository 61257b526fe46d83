package cistern.redflag;

import cistern.differential.Disease;
import cistern.fact.Grounds;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Yellow fluid, as the tap was described.
 *
 * @param grounds what it rests on
 */
record XanthochromicFluid(Grounds grounds) implements RedFlag {

  static Optional<RedFlag> check(FlagInput input) {
    boolean isYellow =
        input
            .puncture()
            .panel()
            .panel()
            .csf()
            .appearance()
            .map(a -> a.toLowerCase(Locale.ROOT))
            .filter(a -> a.startsWith("xanthochrom"))
            .isPresent();
    return isYellow
        ? Optional.of(new XanthochromicFluid(input.facts().grounds("flag.xanthochromia")))
        : Optional.empty();
  }

  @Override
  public String code() {
    return "xanthochromic-fluid";
  }

  @Override
  public String finding() {
    return "appearance";
  }

  @Override
  public List<Disease> suggests() {
    return List.of(Disease.SUBARACHNOID_HAEMORRHAGE);
  }

  @Override
  public String text() {
    return "The fluid was xanthochromic: think of older bleeding.";
  }
}
