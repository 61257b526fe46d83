package cistern.clinic.casework;

import cistern.fact.Grounds;
import cistern.finding.Chances;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.finding.Threshold;
import cistern.interpretation.Interpretation;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import cistern.report.paper.CitedText;
import cistern.report.wording.ValueWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Why a value is what it is: the limit, what would change the verdict, where the limit comes from
 * and how well it is known, and the formula with the numbers in it.
 */
final class Why {

  private Why() {}

  static Node of(Finding finding, Interpretation interpretation) {
    return Element.of(
        "details",
        Element.of("summary", finding.code().term() + ": " + finding.verdict().word()),
        list(finding, interpretation).with("id", id(finding.code())));
  }

  /** The whole of it, unfolded. */
  static Element list(Finding finding, Interpretation interpretation) {
    List<Node> lines = new ArrayList<>();
    lines.add(line("Value", value(finding)));
    lines.add(
        line(
            "Limit",
            finding.limits().isKnown()
                ? ValueWords.limit(finding)
                    + ValueWords.rule(finding).map(r -> " (" + r + ")").orElse("")
                : "no limit is known"));
    lines.add(line("Verdict", finding.verdict().word()));
    lines.add(line("What would change it", change(finding)));
    lines.add(line("Source", sources(finding.grounds())));
    lines.add(line("Known how", finding.grounds().status().word()));
    if (!finding.note().isEmpty()) {
      lines.add(line("Note", finding.note()));
    }
    lines.add(line("Formula", Formulas.of(finding.code())));
    lines.add(line("With the numbers", Worked.of(finding, interpretation)));
    return Element.of("dl")
        .with(lines.stream().flatMap(l -> ((Fragment) l).children().stream()).toList());
  }

  private static String value(Finding finding) {
    String interval = ValueWords.interval(finding);
    return ValueWords.valueWithUnit(finding)
        + (interval.isEmpty() ? "" : " (95 % interval " + interval + ")");
  }

  /** Where it stands on its page: inside what unfolds, so that a link to it unfolds it. */
  static String id(FindingCode code) {
    return "why-" + code.code();
  }

  private static Node line(String name, String words) {
    return line(name, new Text(words.isEmpty() ? "not given" : words));
  }

  private static Node line(String name, Node said) {
    return Fragment.of(Element.of("dt", name), Element.of("dd", said));
  }

  private static String change(Finding finding) {
    if (!finding.hasValue()) {
      return finding.note().isEmpty() ? "what is missing" : "what is missing: " + finding.note();
    }
    String limit =
        finding.limits().isKnown()
            ? "a value on the other side of " + ValueWords.limit(finding) + times(finding)
            : "a limit, which nobody has published for this value here";
    var above = finding.uncertainty().probabilityAbove();
    return above.isPresent() ? limit + "; " + Chances.toLieAbove(above.getAsDouble()) : limit;
  }

  /** How many times as large the value would be at its nearest limit. */
  private static String times(Finding finding) {
    double value = finding.number().orElse(0);
    if (value <= 0) {
      return "";
    }
    Stream<Threshold> cuts =
        Stream.of(finding.limits().above(), finding.limits().within()).flatMap(Optional::stream);
    return cuts.map(Threshold::at)
        .filter(at -> at > 0)
        .min(Comparator.comparingDouble(at -> Math.abs(Math.log(at / value))))
        .map(at -> ": " + Printed.decimals(at / value, 2) + " times what it is")
        .orElse("");
  }

  /** Each source with links to its publications. */
  static Node sources(Grounds grounds) {
    if (grounds.citations().isEmpty()) {
      return new Text("not given");
    }
    List<Node> parts = new ArrayList<>();
    for (Grounds.Citation citation : grounds.citations()) {
      if (!parts.isEmpty()) {
        parts.add(new Text("; "));
      }
      parts.add(CitedText.of(citation.source(), citation.references()));
    }
    return new Fragment(parts);
  }
}
