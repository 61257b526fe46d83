package cistern.cli;

import cistern.cohort.CohortMember;
import cistern.cohort.CohortSummary;
import cistern.cohort.ColumnProfile;
import cistern.cohort.ColumnsMixedUp;
import cistern.cohort.SitePeople;
import cistern.exchange.intake.CohortReading;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.workup.WorkupReading;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.report.cohort.CohortChanges.Changed;
import cistern.report.cohort.CohortFolder;
import cistern.report.cohort.CohortRows;
import cistern.report.cohort.Progress;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * One cohort on all cores of this machine, read once, some inputs at a time: whether their columns
 * are what they say is seen before any of them is interpreted. Only sums, one number a person with
 * a diagnosis and the names of the work-ups are kept.
 */
final class CohortRun {

  /** Bytes that are taken up together; what is made of them takes some dozen times as much. */
  private static final long BATCH = 1 << 20;

  /** Members whose sums are made together, whatever the number of cores. */
  private static final int SUMMED = 64;

  private final Terminal terminal;
  private final Facts facts;
  private final Path input;
  private final WorkupInputs inputs;
  private final CohortReading reading;
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
    this.reading = CohortReading.of(facts);
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

  /**
   * Where the members of a cohort go.
   *
   * @param folder the table
   * @param people those with a final diagnosis
   * @param earlier what was said of them before
   * @param isConfirmed whether a person says that odd columns are right
   */
  record Target(
      CohortFolder folder,
      SitePeople people,
      Optional<EarlierVerdicts> earlier,
      boolean isConfirmed) {}

  /** One input, read. */
  private record Read(String place, List<WorkupReading> readings) {
    private Stream<Understood> valid() {
      return readings.stream().filter(Understood.class::isInstance).map(Understood.class::cast);
    }
  }

  /**
   * Reads and interprets everything, or until columns look mixed up that nobody confirmed.
   *
   * @return what looks mixed up, in the whole or in a part of it
   */
  List<ColumnsMixedUp> interpret(Target target) {
    Progress progress = new Progress(terminal.err(), System::nanoTime, "Interpreted");
    List<ColumnsMixedUp> found = new ArrayList<>();
    long whole = Math.max(1, CohortInputs.size(input));
    long done = 0;
    try (Stream<CohortInputs.Input> all = CohortInputs.of(input)) {
      Iterator<CohortInputs.Input> next = all.iterator();
      while (next.hasNext() && (found.isEmpty() || target.isConfirmed())) {
        List<CohortInputs.Input> batch = batch(next);
        List<Read> read = batch.parallelStream().map(this::read).toList();
        if (found.isEmpty()) {
          boolean isWhole = done == 0 && !next.hasNext();
          found.addAll(look(read, isWhole));
        }
        if (found.isEmpty() || target.isConfirmed()) {
          accept(read, target);
        }
        done += batch.stream().mapToLong(CohortInputs.Input::size).sum();
        progress.say(summary.people(), (double) done / whole);
      }
    }
    if (found.isEmpty()) {
      found.addAll(ColumnsMixedUp.check(profile, facts));
    }
    if (found.isEmpty() || target.isConfirmed()) {
      progress.finish(summary.people());
    }
    return found;
  }

  private static List<CohortInputs.Input> batch(Iterator<CohortInputs.Input> next) {
    List<CohortInputs.Input> batch = new ArrayList<>();
    long size = 0;
    while (next.hasNext() && size < BATCH) {
      CohortInputs.Input one = next.next();
      size += one.size();
      batch.add(one);
    }
    return batch;
  }

  private Read read(CohortInputs.Input one) {
    List<WorkupReading> readings = new ArrayList<>();
    one.read(inputs, readings::add);
    return new Read(one.place(), readings);
  }

  /** Takes the columns of some inputs into the profile; what looks mixed up in them. */
  private List<ColumnsMixedUp> look(List<Read> read, boolean isWhole) {
    ColumnProfile part =
        read.parallelStream()
            .map(one -> reading.profile(one.valid().toList()))
            .reduce(ColumnProfile.NONE, ColumnProfile::merge);
    profile = profile.merge(part);
    String from = isWhole ? "" : " It begins in the part from " + read.getFirst().place() + " on.";
    return ColumnsMixedUp.check(part, facts).stream()
        .map(m -> new ColumnsMixedUp(m.columns(), m.text() + from))
        .toList();
  }

  /** One work-up, interpreted, with its row of the table; or why not. */
  private record Answered(
      String place,
      Optional<CohortMember> member,
      String row,
      boolean isInvented,
      List<InputProblem> problems) {}

  private void accept(List<Read> read, Target target) {
    List<Answered> answers =
        read.stream()
            .flatMap(one -> one.readings().stream().map(r -> new Read(one.place(), List.of(r))))
            .toList()
            .parallelStream()
            .map(one -> answered(one.place(), one.readings().getFirst()))
            .toList();
    List<CohortMember> accepted =
        answers.stream().flatMap(answer -> accepted(answer, target).stream()).toList();
    summary = summary.merge(sum(accepted));
  }

  private Answered answered(String place, WorkupReading one) {
    return switch (inputs.withGel(place, one)) {
      case WorkupReading.NotValid(List<InputProblem> problems) ->
          new Answered(place, Optional.empty(), "", false, problems);
      case Understood read -> {
        CohortMember member = reading.interpret(read);
        boolean saysInvented = read.workup().remarks().isInvented();
        String row = CohortRows.row(member);
        yield new Answered(place, Optional.of(member), row, saysInvented, List.of());
      }
    };
  }

  private Optional<CohortMember> accepted(Answered answer, Target target) {
    answer.problems().forEach(problem -> terminal.say(answer.place(), problem));
    Optional<CohortMember> member = answer.member().filter(m -> ids.add(m.id()));
    if (member.isEmpty()) {
      refused++;
      if (answer.member().isPresent()) {
        terminal.say(answer.place(), InputProblem.of(InputTrouble.ID_TWICE, "id"));
      }
      return member;
    }
    isInvented |= answer.isInvented();
    write(target.folder(), answer.row());
    target.people().add(member.get());
    target.earlier().ifPresent(table -> changes.addAll(table.changes(member.get())));
    return member;
  }

  /** The sums of some members, in parts that do not depend on the machine. */
  private static CohortSummary sum(List<CohortMember> members) {
    int parts = (members.size() + SUMMED - 1) / SUMMED;
    List<CohortSummary> sums =
        IntStream.range(0, parts)
            .parallel()
            .mapToObj(i -> members.subList(i * SUMMED, Math.min(members.size(), (i + 1) * SUMMED)))
            .map(part -> CohortSummary.merged(part.stream().map(CohortSummary::of).toList()))
            .toList();
    return CohortSummary.merged(sums);
  }

  private static void write(CohortFolder folder, String row) {
    try {
      folder.accept(row);
    } catch (IOException e) {
      throw new NotWritten("interpretations.csv", e);
    }
  }
}
