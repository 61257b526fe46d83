package cistern.report.patient;

import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Seal;
import cistern.report.paper.Paper.Section;
import cistern.urgent.Urgency;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The page for the person before and after the puncture: why it is proposed and what else there is,
 * what to bring, what happens, what is normal, and when and whom to call. No result, no chance.
 */
public final class PatientPuncture {

  private static final String PREGNANCY = "plan.bring.5";
  private static final List<String> LISTS = List.of("plan.bring", "plan.medicines", "plan.happens");
  private static final List<String> AFTER =
      List.of("plan.normal", "plan.after", "plan.headache", "plan.results");

  private PatientPuncture() {}

  /**
   * The paper. While something urgent is open nothing soothes: it only says whom to ask, and when.
   *
   * @param words in the language of the person
   * @param software the name and version of the program
   */
  public static Paper of(PatientWords words, Workup workup, PuncturePlan plan, String software) {
    String contact = workup.procedure().after().contact().orElse("");
    List<Urgency> open = plan.afterwards().care().unanswered();
    if (open.isEmpty() && !plan.subject().beside().fluid().isOpen()) {
      return paper(words, workup, "plan.title", usual(words, contact, left(plan)), software);
    }
    String when = PatientResult.when(open);
    List<Section> sections =
        List.of(
            new Section("", List.of(new Paragraphs(words.list(when)))),
            PatientResult.call(words, contact));
    return paper(words, workup, when + ".title", sections, software);
  }

  /** What is not asked of everybody: pregnancy, of those alone whom the plan asks. */
  private static Set<String> left(PuncturePlan plan) {
    boolean isAsked =
        plan.readiness().precautions().stream().anyMatch(p -> p.code().equals("pregnancy"));
    return isAsked ? Set.of() : Set.of(PREGNANCY);
  }

  private static List<Section> usual(PatientWords words, String contact, Set<String> left) {
    List<Section> sections = new ArrayList<>();
    sections.add(
        new Section(words.of("plan.why"), List.of(new Paragraphs(words.list("plan.why")))));
    LISTS.forEach(key -> sections.add(listed(words, key, left)));
    sections.add(new Section("", List.of(new Picture(PatientDrawing.needle(words)))));
    AFTER.forEach(key -> sections.add(listed(words, key, left)));
    sections.add(PatientResult.call(words, contact));
    sections.add(Section.of("", Paragraphs.of(words.of("plan.consent"))));
    return sections;
  }

  private static Paper paper(
      PatientWords words, Workup workup, String title, List<Section> sections, String software) {
    String invented = workup.remarks().isInvented() ? " " + words.of("invented") : "";
    return new Paper(
        new Paper.Front(
            Paper.Kind.PATIENT,
            words.of(title),
            "",
            words.of("banner") + invented,
            words.locale(),
            new Seal.Unsigned(words.of("draft"))),
        List.of(),
        sections,
        words.of("made", software, workup.id()));
  }

  private static Section listed(PatientWords words, String key, Set<String> left) {
    List<Paper.Line> lines = new ArrayList<>(words.list(key));
    left.forEach(k -> lines.removeIf(l -> l.text().equals(words.of(k))));
    List<Block> blocks = Stream.<Block>of(new Items("", lines)).toList();
    return new Section(words.of(key), blocks);
  }
}
