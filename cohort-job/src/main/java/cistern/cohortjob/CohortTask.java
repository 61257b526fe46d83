package cistern.cohortjob;

import cistern.cohort.CohortMember;
import cistern.cohort.CohortSummary;
import cistern.cohort.ColumnProfile;
import cistern.cohort.SitePeople;
import cistern.cohort.SiteStudy;
import cistern.exchange.intake.CohortPart;
import cistern.exchange.intake.CohortReading;
import cistern.exchange.intake.Intake;
import cistern.exchange.json.InputProblem;
import cistern.exchange.workup.WorkupReading;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.report.cohort.CohortRows;
import java.io.Serial;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What is done with each block, on whatever machine: pure functions of the block, so that a block
 * that is done twice gives the same twice.
 */
final class CohortTask implements Serializable {

  @Serial private static final long serialVersionUID = 1L;

  private final CohortRules rules;
  private final TreeSet<String> controls;
  private final TreeSet<String> cases;
  private transient @Nullable Tools tools;

  /**
   * A task.
   *
   * @param rules under which it reads and interprets
   * @param controls the diagnoses that count as without the disease
   * @param cases the diagnoses that count as with it
   */
  CohortTask(CohortRules rules, Set<String> controls, Set<String> cases) {
    this.rules = rules;
    this.controls = new TreeSet<>(controls);
    this.cases = new TreeSet<>(cases);
  }

  /** What reads and interprets, made once on each machine. */
  private record Tools(Intake intake, CohortReading reading) {}

  private synchronized Tools tools() {
    Tools made = tools;
    if (made == null) {
      Facts facts = rules.facts();
      made = new Tools(Intake.of(facts, rules.mapping(facts)), CohortReading.of(facts));
      tools = made;
    }
    return made;
  }

  /**
   * A work-up that is valid, or why one is not.
   *
   * @param name the file, with the line where a line is a work-up
   * @param problem of the first kind, its place counted from the beginning of the division
   */
  record Refused(String name, boolean isTable, long line, InputProblem problem)
      implements Serializable {}

  /**
   * What a block shows before anything is computed from it.
   *
   * @param at where its first line stands
   * @param end the line after its last
   * @param ids of its work-ups, in their order; empty where one is not valid
   * @param refused what is not valid
   * @param profile how the columns lie
   * @param isOpen whether its last row is broken off
   */
  record Looked(
      LinePlace at,
      long end,
      List<String> ids,
      List<Refused> refused,
      ColumnProfile profile,
      boolean isOpen)
      implements Serializable {}

  /** Reads a block. */
  Looked look(Block block) {
    List<String> ids = new ArrayList<>();
    List<Refused> refused = new ArrayList<>();
    List<Understood> valid = new ArrayList<>();
    for (CohortPart part : block.parts()) {
      part.read(
          tools().intake(),
          reading -> {
            switch (reading) {
              case Understood understood -> {
                ids.add(understood.workup().id());
                valid.add(understood);
              }
              case WorkupReading.NotValid notValid -> {
                ids.add("");
                notValid.problems().stream()
                    .map(p -> new Refused(part.place(), block.isTable(), part.rowsBefore(), p))
                    .forEach(refused::add);
              }
            }
          });
    }
    ColumnProfile profile = tools().reading().profile(valid);
    return new Looked(block.at(), block.end(), ids, refused, profile, block.isOpen());
  }

  /**
   * What a block gives.
   *
   * @param rows of the table of interpretations
   * @param summary of its work-ups
   * @param people with a final diagnosis
   * @param refused how many work-ups are left out
   * @param isInvented whether one says that it is invented
   */
  record Answered(
      List<String> rows, CohortSummary summary, SitePeople people, long refused, boolean isInvented)
      implements Serializable {

    /** The same without its rows. */
    Answered withoutRows() {
      return new Answered(List.of(), summary, people, refused, isInvented);
    }

    /** Both, without their rows; takes the people of the other into its own. */
    Answered merge(Answered other) {
      people.addAll(other.people);
      return new Answered(
          List.of(),
          summary.merge(other.summary),
          people,
          refused + other.refused,
          isInvented || other.isInvented);
    }
  }

  /** No work-up. */
  Answered nobody() {
    return new Answered(List.of(), CohortSummary.NONE, SiteStudy.people(controls, cases), 0, false);
  }

  /**
   * Interprets a block.
   *
   * @param block its text
   * @param kept of each id that stands more than once the one that counts
   */
  Answered interpret(Block block, Map<String, Twice> kept) {
    List<String> rows = new ArrayList<>();
    List<CohortSummary> summaries = new ArrayList<>();
    SitePeople people = SiteStudy.people(controls, cases);
    long refused = 0;
    boolean isInvented = false;
    List<WorkupReading> readings = new ArrayList<>();
    block.parts().forEach(part -> part.read(tools().intake(), readings::add));
    for (int i = 0; i < readings.size(); i++) {
      if (readings.get(i) instanceof Understood read && counts(read, block.at(), i, kept)) {
        CohortMember member = tools().reading().interpret(read);
        rows.add(CohortRows.row(member));
        summaries.add(CohortSummary.of(member));
        people.add(member);
        isInvented |= read.workup().remarks().isInvented();
      } else {
        refused++;
      }
    }
    return new Answered(rows, CohortSummary.merged(summaries), people, refused, isInvented);
  }

  private static boolean counts(Understood read, LinePlace at, int index, Map<String, Twice> kept) {
    Twice twice = kept.get(read.workup().id());
    return twice == null || (twice.at().equals(at) && twice.index() == index);
  }

  /**
   * The first work-up of an id, and how many there are.
   *
   * @param at its block
   * @param index within the block
   * @param count how many have the id
   */
  record Twice(LinePlace at, int index, long count) implements Serializable {

    /** Those of both, the first of them. */
    Twice merge(Twice other) {
      int order = at.compareTo(other.at);
      Twice first = order < 0 || (order == 0 && index < other.index) ? this : other;
      return new Twice(first.at, first.index, count + other.count);
    }
  }
}
