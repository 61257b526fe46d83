package cistern.report.text;

import cistern.criteria.CriteriaResult;
import cistern.criteria.Item;
import cistern.differential.DifferentialResult;
import cistern.differential.Disease;
import cistern.differential.Posterior;
import cistern.differential.Weight;
import cistern.finding.Printed;
import cistern.redflag.RedFlag;
import cistern.report.wording.OddsWords;
import cistern.weighing.Weighed;
import java.util.List;
import java.util.stream.Collectors;

/** Criteria, differential, red flags and next steps as plain text. */
final class WeighedText {

  private static final int MOST_NEXT = 5;
  private static final double PER_CENT = 100;

  private final SourceNotes notes;

  WeighedText(SourceNotes notes) {
    this.notes = notes;
  }

  String of(Weighed weighed, boolean isEvidenceStated) {
    return (isEvidenceStated ? criteria(weighed) : "")
        + differential(weighed.differential())
        + flags(weighed.flags())
        + next(weighed);
  }

  private String criteria(Weighed weighed) {
    StringBuilder text = new StringBuilder("Criteria, each edition by itself\n");
    weighed.criteria().forEach(r -> text.append(Wrapped.of("  – ", criterion(r))));
    weighed.difference().ifPresent(d -> text.append(Wrapped.of("  – ", d)));
    weighed
        .prompts()
        .forEach(p -> text.append(Wrapped.of("  – ", p.text() + notes.mark(p.grounds()))));
    String effects =
        weighed.puncture().effects().entrySet().stream()
            .map(e -> "%s %s".formatted(e.getKey(), e.getValue().word().replace('-', ' ')))
            .collect(Collectors.joining(", "));
    text.append(
        Wrapped.of("  – ", "What positive against negative fluid changes: " + effects + "."));
    return text.append('\n').toString();
  }

  private String criterion(CriteriaResult result) {
    String rows =
        result.rows().isEmpty() ? "" : " (by row " + String.join(" or ", result.rows()) + ")";
    String note = result.note().isEmpty() ? "" : "; " + result.note();
    return "%s (%s): %s%s%s%s%s %s"
        .formatted(
            result.edition(),
            result.ruleSet(),
            result.verdict().word().replace('-', ' '),
            rows,
            sets("; would be met by: ", result.missing()),
            sets("; would settle it against: ", result.missingAgainst()),
            note,
            notes.mark(result.grounds()));
  }

  private static String sets(String title, List<List<Item>> sets) {
    if (sets.isEmpty()) {
      return "";
    }
    return title
        + sets.stream()
            .map(set -> set.stream().map(Item::term).collect(Collectors.joining(" with ")))
            .collect(Collectors.joining(", or "));
  }

  private String differential(DifferentialResult result) {
    if (result.weights().isEmpty() && result.posteriors().isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("What else it could be\n");
    result.posteriors().stream()
        .filter(p -> p.probability() >= OddsWords.LEAST_SHOWN || p.disease() == Disease.MS)
        .forEach(p -> text.append(Wrapped.of("  – ", posterior(p))));
    result.weightsOfMs().forEach(w -> text.append(Wrapped.of("  – ", weight(w))));
    if (result.posteriors().isEmpty()) {
      text.append(
          Wrapped.of(
              "  – ", "No probability before the puncture was stated, so none is given after it."));
    }
    return text.append('\n').toString();
  }

  private static String posterior(Posterior posterior) {
    return "%s: %s %% (95 %% interval %s to %s %%; counts: %s)"
        .formatted(
            posterior.disease().term(),
            percent(posterior.probability()),
            percent(posterior.interval95().lower()),
            percent(posterior.interval95().upper()),
            posterior.grounds().status().word());
  }

  private static String weight(Weight weight) {
    return weight.observation().toText() + ": " + OddsWords.of(weight);
  }

  private static String percent(double share) {
    return Printed.decimals(share * PER_CENT, 0);
  }

  private String flags(List<RedFlag> flags) {
    if (flags.isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("Red flags: to think of, not to conclude\n");
    for (RedFlag flag : flags) {
      String diseases =
          flag.suggests().stream().map(Disease::term).collect(Collectors.joining(", "));
      text.append(
          Wrapped.of(
              "  – ",
              "%s To think of: %s. %s"
                  .formatted(flag.text(), diseases, notes.mark(flag.grounds()))));
    }
    return text.append('\n').toString();
  }

  private static String next(Weighed weighed) {
    if (weighed.next().isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("What would tell most for its burden\n");
    weighed.next().stream()
        .limit(MOST_NEXT)
        .forEach(
            item ->
                text.append(
                    Wrapped.of(
                        "  – ",
                        "%s (%s bits, %s)"
                            .formatted(
                                item.text(),
                                Printed.decimals(item.informationBits(), 2),
                                item.burden().word().replace('-', ' ')))));
    return text.append('\n').toString();
  }
}
