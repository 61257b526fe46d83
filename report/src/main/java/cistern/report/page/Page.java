package cistern.report.page;

import cistern.fact.Facts;
import cistern.finding.Printed;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.panel.Person;
import cistern.report.chart.ChartComment;
import cistern.report.look.ReportFacts;
import cistern.report.markup.Element;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Seal;
import cistern.report.paper.PaperPage;
import cistern.report.paper.PaperText;
import cistern.report.patient.PatientResult;
import cistern.report.patient.PatientWords;
import cistern.report.wording.PrintedTime;
import cistern.report.wording.WhenDrawn;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The papers of an interpretation, each built once and set as text, for a screen or for print.
 *
 * @param software the name and version of the program
 * @param facts in force
 * @param words of the papers for the person, in their language
 * @param signed who signed them, when and what; nothing while nobody has
 */
public record Page(String software, Facts facts, PatientWords words, Optional<String> signed) {

  private static final String NO_LETTERHEAD = "none";
  private static final String UNSIGNED =
      "Not signed. A clinician must check and sign this page before it is used.";

  /** A writer of papers that nobody has signed, with those for the person in English. */
  public static Page of(String software, Facts facts) {
    return new Page(software, facts, PatientWords.english(), Optional.empty());
  }

  /** A writer of papers that say who signed them and when. */
  public Page withSignature(String by) {
    return new Page(software, facts, words, Optional.of(by));
  }

  /** A writer of papers for the person in another language. */
  public Page withWords(PatientWords language) {
    return new Page(software, facts, language, signed);
  }

  /** A page for a screen, self-contained, printable, without a script. */
  public String toHtml(Interpretation interpretation, Audience audience) {
    return PaperPage.toHtml(toPaper(interpretation, audience));
  }

  /**
   * The same page for paper, as well-formed markup.
   *
   * @param style added to the style sheet of paper: faces and size of the sheet
   */
  public String toPaper(Interpretation interpretation, Audience audience, String style) {
    return PaperPage.toPrint(toPaper(interpretation, audience), style);
  }

  /** The body of the page for a screen, to stand inside another page of the program. */
  public Element toBody(Interpretation interpretation, Audience audience) {
    return PaperPage.toBody(toPaper(interpretation, audience));
  }

  /** The same as plain text, without figures; the comment for the chart alone. */
  public String toPlainText(Interpretation interpretation, Audience audience) {
    return audience == Audience.CHART
        ? ChartComment.of(interpretation, PrintedTime.of(facts)) + "\n"
        : PaperText.of(toPaper(interpretation, audience));
  }

  /** The paper for a reader, under the letterhead of the clinic where it has one. */
  public Paper toPaper(Interpretation said, Audience audience) {
    String words = ReportFacts.of(facts).word("page.letterhead");
    Paper paper = bare(said, audience);
    return words.equals(NO_LETTERHEAD) ? paper : paper.withLetterhead(words);
  }

  private Paper bare(Interpretation said, Audience audience) {
    return switch (audience) {
      case CLINICIAN -> {
        ClinicianPaper clinician = new ClinicianPaper(said, facts);
        Paper.Front front = front(said, Paper.Kind.CLINICIAN, "CSF work-up ");
        yield new Paper(front, clinician.answer(), clinician.sections(), foot(said));
      }
      case REFERRER -> {
        LetterPaper letter = new LetterPaper(said, facts);
        Paper.Front front = front(said, Paper.Kind.LETTER, "Letter about CSF work-up ");
        yield new Paper(front, letter.opening(), letter.sections(), foot(said));
      }
      case PATIENT -> PatientResult.of(words, said, signed, software);
      case CHART ->
          new Paper(
              front(said, Paper.Kind.CLINICIAN, "Chart comment on CSF work-up "),
              List.of(Line.of(ChartComment.of(said, PrintedTime.of(facts)))),
              List.of(),
              foot(said));
    };
  }

  private Paper.Front front(Interpretation said, Paper.Kind kind, String title) {
    String invented =
        said.cautions().contains(Caution.INVENTED) ? " " + Caution.INVENTED.text() : "";
    return new Paper.Front(
        kind,
        title + said.workup().id(),
        taken(said),
        Caution.RESEARCH_ONLY.text() + " Local practice decides." + invented,
        Locale.UK,
        signed.<Seal>map(Seal.Signed::new).orElseGet(() -> new Seal.Unsigned(UNSIGNED)));
  }

  /** Whose samples they are, and how they were taken. */
  private String taken(Interpretation said) {
    WhenDrawn when = new WhenDrawn(PrintedTime.of(facts).like(said.panel().panel().csf().at()));
    List<String> parts = new ArrayList<>();
    Person person = said.panel().panel().person();
    person.id().ifPresent(id -> parts.add("person " + id));
    age(person).ifPresent(parts::add);
    person.sex().ifPresent(parts::add);
    parts.add(when.of("CSF", said.panel().panel().csf()));
    parts.add(when.serum(said.panel()));
    return String.join(" · ", parts);
  }

  /** In days where it was given so. */
  private static Optional<String> age(Person person) {
    OptionalDouble days = person.infant().ageDays();
    if (days.isPresent()) {
      return Optional.of(Printed.decimals(days.getAsDouble(), 0) + " days");
    }
    return person.ageYears().isPresent()
        ? Optional.of(years(person.ageYears().getAsDouble()))
        : Optional.empty();
  }

  private static String years(double years) {
    return Printed.decimals(years, years == Math.rint(years) ? 0 : 1) + " years";
  }

  private String foot(Interpretation said) {
    String policy = said.policy().map(p -> "local policy " + p).orElse("no local policy");
    return "%s; facts: %s; %s. Work-up %s."
        .formatted(software, said.factsVersion(), policy, said.workup().id());
  }
}
