package cistern.cli;

import cistern.cohort.CohortMember;
import cistern.cohort.CohortSummary;
import cistern.cohort.ColumnProfile;
import cistern.cohort.ColumnsMixedUp;
import cistern.cohort.SitePeople;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.workup.RecordedReader;
import cistern.exchange.workup.WorkupReading;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.interpretation.Interpreter;
import cistern.report.cohort.CohortChanges.Changed;
import cistern.report.cohort.CohortFolder;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * One cohort on all cores of this machine: read once to see whether the columns are what they say,
 * and once more to interpret. Only sums, one number a person with a diagnosis and the names of the
 * work-ups are kept.
 */
final class CohortRun {

  /** Inputs that are taken up together. */
  private static final int BATCH = 256;

  private final Terminal terminal;
  private final Facts facts;
  private final Path input;
  private final WorkupInputs inputs;
  private final Interpreter interpreter;
  private final RecordedReader recorded;
  private final Set<String> ids = new HashSet<>();
  private final List<Changed> changes = new ArrayList<>();
  private CohortSummary summary = CohortSummary.NONE;
  private ColumnProfile profile = ColumnProfile.NONE;
  private boolean isInvented;
  private int refused;

  CohortRun(Terminal terminal, Facts facts, LocalMapping mapping, Path input) {
    this.terminal = terminal;
    this.facts = facts;
    this.input = input;
    this.inputs = new WorkupInputs(terminal, facts, mapping);
    this.interpreter = Interpreter.of(facts);
    this.recorded = RecordedReader.of(facts);
  }

  CohortSummary summary() {
    return summary;
  }

  int refused() {
    return refused;
  }

  boolean isInvented() {
    return isInvented;
  }

  List<Changed> changes() {
    return changes;
  }

  /** What a batch showed of its columns. */
  private record Looked(String place, List<InputProblem> problems, ColumnProfile profile) {}

  /**
   * Reads everything, says what is not valid, and gives what looks mixed up: in the whole, or in a
   * part of it.
   */
  List<ColumnsMixedUp> look() {
    Progress progress = new Progress(terminal.err(), System::nanoTime, "Read");
    List<ColumnsMixedUp> found = new ArrayList<>();
    batches(
        batch -> {
          List<Looked> all = batch.parallelStream().map(this::look).toList();
          ColumnProfile part =
              all.stream().map(Looked::profile).reduce(ColumnProfile.NONE, ColumnProfile::merge);
          all.forEach(one -> one.problems().forEach(problem -> terminal.say(one.place(), problem)));
          profile = profile.merge(part);
          if (found.isEmpty()) {
            ColumnsMixedUp.check(part, facts).stream()
                .map(m -> new ColumnsMixedUp(m.columns(), m.text() + from(all)))
                .forEach(found::add);
          }
          progress.say(profile.people());
        });
    List<ColumnsMixedUp> whole = ColumnsMixedUp.check(profile, facts);
    return whole.isEmpty() ? found : whole;
  }

  private static String from(List<Looked> part) {
    return " It begins in the part from " + part.getFirst().place() + " on.";
  }

  private Looked look(CohortInputs.Input one) {
    List<InputProblem> problems = new ArrayList<>();
    List<ColumnProfile> rows = new ArrayList<>();
    one.read(
        inputs,
        false,
        reading -> {
          switch (reading) {
            case Understood understood ->
                rows.add(ColumnProfile.of(understood.workup().panel(), facts));
            case WorkupReading.NotValid notValid -> problems.addAll(notValid.problems());
          }
        });
    return new Looked(one.place(), problems, merged(rows));
  }

  /** Halves are merged with halves, so that a large profile is not copied for every row. */
  private static ColumnProfile merged(List<ColumnProfile> rows) {
    return switch (rows.size()) {
      case 0 -> ColumnProfile.NONE;
      case 1 -> rows.getFirst();
      default -> {
        int half = rows.size() / 2;
        yield merged(rows.subList(0, half)).merge(merged(rows.subList(half, rows.size())));
      }
    };
  }

  /** One work-up, read and interpreted, or why not. */
  private record Answered(String place, Optional<CohortMember> member, boolean isInvented) {}

  /** Interprets everything. */
  void interpret(CohortFolder folder, SitePeople people, Optional<EarlierVerdicts> earlier) {
    Progress progress = new Progress(terminal.err(), System::nanoTime, "Interpreted");
    batches(
        batch -> {
          for (List<Answered> answers : batch.parallelStream().map(this::answers).toList()) {
            CohortSummary part =
                answers.stream()
                    .flatMap(answer -> accept(answer, folder, people, earlier).stream())
                    .map(CohortSummary::of)
                    .reduce(CohortSummary.NONE, CohortSummary::merge);
            summary = summary.merge(part);
            progress.say(summary.people(), profile.people());
          }
        });
    progress.finish(summary.people());
  }

  private List<Answered> answers(CohortInputs.Input one) {
    List<WorkupReading> readings = new ArrayList<>();
    one.read(inputs, true, readings::add);
    return readings.parallelStream().map(reading -> answered(one.place(), reading)).toList();
  }

  private Answered answered(String place, WorkupReading reading) {
    if (!(reading instanceof Understood read)) {
      return new Answered(place, Optional.empty(), false);
    }
    CohortMember member =
        CohortMember.of(interpreter.judge(read.workup()), recorded.read(read.document()), facts);
    return new Answered(place, Optional.of(member), read.workup().remarks().isInvented());
  }

  private Optional<CohortMember> accept(
      Answered answer, CohortFolder folder, SitePeople people, Optional<EarlierVerdicts> earlier) {
    Optional<CohortMember> member = answer.member().filter(m -> ids.add(m.id()));
    if (member.isEmpty()) {
      refused++;
      if (answer.member().isPresent()) {
        terminal.say(answer.place(), InputProblem.of(InputTrouble.ID_TWICE, "id"));
      }
      return member;
    }
    isInvented |= answer.isInvented();
    write(folder, member.get());
    people.add(member.get());
    earlier.ifPresent(table -> changes.addAll(table.changes(member.get())));
    return member;
  }

  private static void write(CohortFolder folder, CohortMember member) {
    try {
      folder.accept(member);
    } catch (IOException e) {
      throw new NotWritten("interpretations.csv", e);
    }
  }

  private void batches(Consumer<List<CohortInputs.Input>> each) {
    try (Stream<CohortInputs.Input> all = CohortInputs.of(input)) {
      Iterator<CohortInputs.Input> next = all.iterator();
      while (next.hasNext()) {
        List<CohortInputs.Input> batch = new ArrayList<>();
        while (next.hasNext() && batch.size() < BATCH) {
          batch.add(next.next());
        }
        each.accept(batch);
      }
    }
  }
}
