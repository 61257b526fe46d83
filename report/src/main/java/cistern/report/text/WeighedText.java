package cistern.report.text;

import cistern.differential.DifferentialResult;
import cistern.differential.Disease;
import cistern.differential.PracticeCompared;
import cistern.differential.Weight;
import cistern.redflag.RedFlag;
import cistern.report.wording.CriteriaWords;
import cistern.report.wording.DifferentialWords;
import cistern.report.wording.OddsWords;
import cistern.weighing.NextItem;
import cistern.weighing.Weighed;
import java.util.List;
import java.util.stream.Collectors;

/** Criteria, differential, red flags and next steps as plain text. */
final class WeighedText {

  private static final int MOST_NEXT = 5;
  private static final String ITEM = "  – ";

  private final SourceNotes notes;

  WeighedText(SourceNotes notes) {
    this.notes = notes;
  }

  String of(Weighed weighed, boolean isEvidenceStated) {
    return (isEvidenceStated ? criteria(weighed) : "")
        + flags(weighed.flags())
        + differential(weighed.differential())
        + next(weighed.next());
  }

  private String criteria(Weighed weighed) {
    StringBuilder text = new StringBuilder("Criteria, each edition by itself\n");
    weighed
        .criteria()
        .forEach(
            r ->
                text.append(Wrapped.of(ITEM, CriteriaWords.of(r) + " " + notes.mark(r.grounds()))));
    weighed.difference().ifPresent(d -> text.append(Wrapped.of(ITEM, d)));
    weighed
        .prompts()
        .forEach(p -> text.append(Wrapped.of(ITEM, p.text() + " " + notes.mark(p.grounds()))));
    text.append(Wrapped.of(ITEM, CriteriaWords.puncture(weighed.puncture().effects())));
    return text.append('\n').toString();
  }

  private String flags(List<RedFlag> flags) {
    if (flags.isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("Less usual in MS: to think of, not to conclude\n");
    flags.forEach(
        f ->
            text.append(Wrapped.of(ITEM, DifferentialWords.of(f) + " " + notes.mark(f.grounds()))));
    return text.append('\n').toString();
  }

  private static String differential(DifferentialResult result) {
    if (result.weights().isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("What else it could be\n");
    result.posteriors().stream()
        .filter(p -> p.probability() >= OddsWords.LEAST_SHOWN || p.disease() == Disease.MS)
        .forEach(p -> text.append(Wrapped.of(ITEM, DifferentialWords.of(p))));
    result.weightsOfMs().forEach(w -> text.append(Wrapped.of(ITEM, weight(w))));
    if (result.posteriors().isEmpty()) {
      text.append(
          Wrapped.of(
              ITEM, "No probability before the puncture was stated, so none is given after it."));
    }
    return text.append('\n') + grounds(result);
  }

  /** What the numbers rest on. */
  private static String grounds(DifferentialResult result) {
    return lines(
            "Diseases with too few counts for a number",
            result.arguments().stream().map(DifferentialWords::of).toList())
        + lines(
            "What the trade says without a source",
            result.practice().stream().map(PracticeCompared::text).toList())
        + lines("What was assumed", result.assumptions());
  }

  private static String lines(String title, List<String> lines) {
    return lines.isEmpty()
        ? ""
        : title
            + "\n"
            + lines.stream().map(line -> Wrapped.of(ITEM, line)).collect(Collectors.joining())
            + "\n";
  }

  private static String weight(Weight weight) {
    return weight.observation().toText() + ": " + OddsWords.of(weight);
  }

  private static String next(List<NextItem> items) {
    if (items.isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("What would tell most for its burden\n");
    items.stream()
        .limit(MOST_NEXT)
        .forEach(item -> text.append(Wrapped.of(ITEM, DifferentialWords.of(item))));
    return text.append('\n').toString();
  }
}
