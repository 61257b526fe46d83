package cistern.report.patient;

import cistern.interpretation.Workup;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Seal;
import cistern.report.paper.Paper.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The page for the person before and after the puncture: why it is proposed and what else there is,
 * what to bring, what happens, what is normal, and when and whom to call. No result, no chance.
 */
public final class PatientPuncture {

  private static final List<String> LISTS = List.of("plan.bring", "plan.medicines", "plan.happens");
  private static final List<String> AFTER =
      List.of("plan.normal", "plan.after", "plan.headache", "plan.results");

  private PatientPuncture() {}

  /**
   * The paper.
   *
   * @param words in the language of the person
   * @param contact whom to call, day and night; empty to be written by hand
   * @param software the name and version of the program
   */
  public static Paper of(PatientWords words, Workup workup, String contact, String software) {
    String invented = workup.remarks().isInvented() ? " " + words.of("invented") : "";
    List<Section> sections = new ArrayList<>();
    sections.add(
        new Section(words.of("plan.why"), List.of(new Paragraphs(words.list("plan.why")))));
    LISTS.forEach(key -> sections.add(listed(words, key)));
    sections.add(new Section("", List.of(new Picture(PatientDrawing.needle(words)))));
    AFTER.forEach(key -> sections.add(listed(words, key)));
    sections.add(PatientResult.call(words, contact));
    sections.add(Section.of("", Paragraphs.of(words.of("plan.consent"))));
    return new Paper(
        new Paper.Front(
            Paper.Kind.PATIENT,
            words.of("plan.title"),
            "",
            words.of("banner") + invented,
            words.locale(),
            new Seal.Unsigned(words.of("draft"))),
        List.of(),
        sections,
        words.of("made", software, workup.id()));
  }

  private static Section listed(PatientWords words, String key) {
    List<Block> blocks = Stream.<Block>of(new Items("", words.list(key))).toList();
    return new Section(words.of(key), blocks);
  }
}
