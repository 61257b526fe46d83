package cistern.conflict;

import java.util.List;

/** Two answers to one question, exactly one of which says that there is something. */
public sealed interface Conflict
    permits AgeRulesDisagree,
        BandsAgainstFraction,
        BandsAgainstKappa,
        CountsAgainstPattern,
        IndexAgainstHyperbola,
        KappaIndexAgainstFraction,
        RateAgainstFraction {

  /** The name in files. */
  String code();

  /** The findings that disagree, by their names in files. */
  List<String> findings();

  /** Which disagree, why, and on which to lean. */
  String text();
}
