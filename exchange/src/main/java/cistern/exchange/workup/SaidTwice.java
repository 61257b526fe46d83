package cistern.exchange.workup;

import cistern.bedside.Bedside;
import cistern.bedside.MicrobeTest;
import cistern.bedside.Sign;
import cistern.exchange.json.InputProblems;
import cistern.interpretation.Workup;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.puncture.procedure.After.SentTest;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.Question;
import cistern.weighing.ClinicalPicture;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Brings together what a work-up may say in two places: with the evidence and with the procedure.
 * Yes in either counts; two that disagree are named.
 */
final class SaidTwice {

  private static final Map<Sign, Question> SIGNS =
      Map.of(
          Sign.NEW_SEIZURE, Question.NEW_SEIZURE,
          Sign.IMMUNOCOMPROMISED, Question.IMMUNOCOMPROMISED);

  private final Workup workup;
  private final InputProblems problems;

  private SaidTwice(Workup workup, InputProblems problems) {
    this.workup = workup;
    this.problems = problems;
  }

  /** The work-up with both places agreed, and everything that reading it showed. */
  static Workup merge(Workup workup, InputProblems problems) {
    return new SaidTwice(workup, problems).merged();
  }

  private Workup merged() {
    Bedside bedside = workup.clinical().bedside();
    Map<Question, Answer> asked = new EnumMap<>(Question.class);
    asked.putAll(workup.procedure().before().answers().byQuestion());
    Map<Sign, Answer> signs = new EnumMap<>(Sign.class);
    signs.putAll(bedside.signs());
    SIGNS.forEach((sign, question) -> agree(sign, signs, question, asked));
    Draw csf = workup.panel().csf();
    Position position = position(csf);
    Draw.Looked looked =
        new Draw.Looked(
            csf.looked().clotted(),
            atypicalCells(csf.looked().atypicalCells()),
            position == Position.UNKNOWN ? Optional.empty() : Optional.of(position.code()));
    Panel panel = workup.panel().withDraws(csf.with(looked), workup.panel().serum());
    ClinicalPicture clinical =
        workup.clinical().withBedside(bedside.with(signs, microbes(bedside.microbes())));
    return new Workup(
        workup.id(),
        workup.remarks(),
        panel,
        workup.bands(),
        clinical,
        procedure(asked, position),
        problems.kept());
  }

  private Procedure procedure(Map<Question, Answer> asked, Position position) {
    Procedure said = workup.procedure();
    Before before = said.before().withAnswers(new ProcedureAnswers(asked));
    return new Procedure(before, said.done().withPosition(position), said.after());
  }

  private void agree(
      Sign sign, Map<Sign, Answer> signs, Question question, Map<Question, Answer> asked) {
    Answer here = signs.getOrDefault(sign, Answer.UNKNOWN);
    Answer there = asked.getOrDefault(question, Answer.UNKNOWN);
    if (here.isKnown() && there.isKnown() && here != there) {
      note("procedure.before.signs." + question.field(), sign.term());
    }
    Answer both = either(here, there);
    if (both.isKnown()) {
      signs.put(sign, both);
      asked.put(question, both);
    }
  }

  private static Answer either(Answer a, Answer b) {
    return a.isYes() || !b.isKnown() ? a : b;
  }

  private void note(String place, String term) {
    problems.add(new SaidTwoWays(place, term));
  }

  /** Two positions that disagree leave it open. */
  private Position position(Draw csf) {
    Done done = workup.procedure().done();
    Position here = csf.looked().position().flatMap(Position::parse).orElse(Position.UNKNOWN);
    if (here == Position.UNKNOWN || here == done.position()) {
      return done.position();
    }
    if (done.position() == Position.UNKNOWN) {
      return here;
    }
    note("procedure.done.position", "the position at the pressure reading");
    return Position.UNKNOWN;
  }

  private Answer atypicalCells(Answer here) {
    Answer there = sent(CsfTest.CYTOLOGY);
    if (here.isKnown() && there.isKnown() && here != there) {
      note("procedure.after.sent", "malignant or atypical cells");
    }
    return either(here, there);
  }

  private Answer sent(CsfTest test) {
    return workup.procedure().after().sent().stream()
        .filter(s -> s.test() == test)
        .map(SentTest::positive)
        .reduce(Answer.UNKNOWN, SaidTwice::either);
  }

  /** The tests for microbes, with those of the list of what was sent. */
  private List<MicrobeTest> microbes(List<MicrobeTest> here) {
    List<MicrobeTest> all = new ArrayList<>(here);
    add(CsfTest.CULTURE, "culture", all, here.stream().filter(SaidTwice::isOfCulture).toList());
    add(
        CsfTest.TUBERCULOSIS_FUNGI,
        "tuberculosis-fungi",
        all,
        here.stream().filter(t -> !isOfCulture(t)).filter(t -> t.isMethod("acid-fast")).toList());
    return all;
  }

  private static boolean isOfCulture(MicrobeTest test) {
    return test.in() == Compartment.CSF && (test.isMethod("gram") || test.isMethod("culture"));
  }

  private void add(CsfTest sent, String name, List<MicrobeTest> all, List<MicrobeTest> sameKind) {
    for (SentTest test : workup.procedure().after().sent()) {
      if (test.test() == sent && test.positive().isKnown()) {
        boolean isPositive = test.positive().isYes();
        MicrobeTest.Result result =
            isPositive ? MicrobeTest.Result.POSITIVE : MicrobeTest.Result.NEGATIVE;
        boolean isOther =
            sameKind.stream()
                .anyMatch(t -> t.result() != MicrobeTest.Result.PENDING && t.result() != result);
        if (isOther) {
          note("procedure.after.sent", "the result of " + sent.term());
        }
        all.add(
            new MicrobeTest(name, Optional.empty(), Compartment.CSF, result, test.receivedAt()));
      }
    }
  }
}
