package cistern.report.plan;

import cistern.finding.Printed;
import cistern.interpretation.Caution;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.puncture.procedure.RedFlag;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Field;
import cistern.report.paper.Paper.Form;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Section;
import java.util.Arrays;
import java.util.List;

/** The page for the person: what is normal, what helps, and when and whom to call. */
public final class PatientPlan {

  private PatientPlan() {}

  /**
   * The paper for the person.
   *
   * @param foot what made it
   */
  public static Paper of(Workup workup, PuncturePlan plan, String foot) {
    return new Paper(
        "After your lumbar puncture",
        List.of(
            Line.of(draft(workup)),
            Line.of(
                "We take a little fluid from your lower back. Your body makes as much again in"
                    + " about "
                    + Printed.decimals(plan.tubes().volumes().minutes().middle(), 0)
                    + " minutes.")),
        List.of(normal(), headache(), medicines(), call(plan), signed(workup)),
        foot);
  }

  private static String draft(Workup workup) {
    String draft = "This page is a draft until your doctor has signed it.";
    return workup.remarks().isInvented() ? draft + " " + Caution.INVENTED.text() : draft;
  }

  private static Section normal() {
    return Section.of(
        "What is normal",
        new Items(
            "",
            List.of(
                Line.of("Your back may be sore for a day or two."),
                Line.of("You may get a headache. Most go away by themselves."),
                Line.of("You may get up at once. Lying in bed does not stop a headache."),
                Line.of("Take it easy for one day. Take the dressing off after a day."))));
  }

  private static Section headache() {
    return Section.of(
        "If your head hurts when you sit or stand",
        new Items(
            "",
            List.of(
                Line.of("Lie down if it makes you feel better. It is for comfort only."),
                Line.of("Drink as much as you like. Coffee or tea is for comfort only."),
                Line.of("Ask us which pain tablets you can take."),
                Line.of(
                    "If it is strong or stays, call us. Doctors can then think about a blood"
                        + " patch. They put a little of your own blood near the small hole."))));
  }

  private static Section medicines() {
    return Section.of(
        "Your medicines",
        new Paragraphs(
            List.of(
                Line.of(
                    "Do not change your medicines by yourself. If you take a blood thinner, ask"
                        + " the doctor who gave it to you."))));
  }

  private static Section call(PuncturePlan plan) {
    List<Line> signs = Arrays.stream(RedFlag.values()).map(flag -> Line.of(plain(flag))).toList();
    String contact = plan.procedure().after().contact().orElse("");
    return Section.of(
        "Call us at once, day or night, if you have",
        new Items("", signs),
        new Form("Whom to call", List.of(new Field("Name and number, day and night", contact))));
  }

  private static Section signed(Workup workup) {
    return Section.of(
        "For your doctor",
        new Form(
            "Signed",
            List.of(
                new Field("Work-up", workup.id()), new Field("Name", ""), new Field("Date", ""))));
  }

  private static String plain(RedFlag flag) {
    return switch (flag) {
      case LEG_WEAKNESS -> "a weak or numb leg";
      case SADDLE_NUMBNESS -> "a numb feeling between your legs";
      case BLADDER_OR_BOWEL -> "trouble passing or holding urine or stool";
      case SEVERE_BACK_PAIN -> "very bad back pain, or pain that shoots into a leg";
      case FEVER -> "a fever";
      case NECK_STIFFNESS -> "a stiff neck";
      case RASH -> "a new rash";
      case DROWSINESS -> "great sleepiness";
      case SEIZURE -> "a fit";
      case REDUCED_CONSCIOUSNESS -> "confusion";
      case FOCAL_DEFICIT -> "a weak arm or face, or trouble speaking";
      case VISUAL_LOSS -> "loss of sight";
      case NO_LONGER_POSTURAL -> "a headache that used to get better lying down and now does not";
      case NOT_EASING_LYING -> "a headache that does not ease when you lie flat";
      case WORSENING -> "a headache that gets worse";
      case LONG_LASTING -> "a headache that lasts more than a week";
      case DOUBLE_VISION -> "double vision";
      case HEARING_LOSS -> "trouble hearing";
      case LEAK -> "clear fluid from the place of the needle";
      case PUS -> "pus or redness at the place of the needle";
    };
  }
}
