package cistern.exchange.lab;

import cistern.exchange.lab.LeftOver.Why;
import cistern.measurement.Compartment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The punctures that the results of one report belong to. Tubes of CSF taken within some hours are
 * one puncture; a serum goes with the puncture that it was drawn nearest to, and a puncture uses
 * one serum draw.
 */
final class Draws {

  private final double hours;
  private final List<LeftOver> leftOver;

  Draws(double hours, List<LeftOver> leftOver) {
    this.hours = hours;
    this.leftOver = leftOver;
  }

  /**
   * The results of one puncture.
   *
   * @param csf when the CSF was taken
   * @param serum when the serum that is used was drawn
   * @param results of both
   */
  record Puncture(Optional<Moment> csf, Optional<Moment> serum, List<ReadResult> results) {
    Puncture {
      results = List.copyOf(results);
    }
  }

  /** A group of results of one fluid that were taken together. */
  private record Draw(Optional<Moment> at, List<ReadResult> results) {}

  List<Puncture> of(List<ReadResult> results) {
    List<ReadResult> fluid = new ArrayList<>();
    List<ReadResult> blood = new ArrayList<>();
    results.forEach(r -> (r.in().isEmpty() || r.isIn(Compartment.CSF) ? fluid : blood).add(r));
    List<Draw> csf = draws(fluid);
    List<Draw> serum = draws(blood);
    if (csf.isEmpty()) {
      return serum.stream().map(s -> new Puncture(Optional.empty(), s.at(), s.results())).toList();
    }
    List<List<Draw>> near = nearest(csf, serum);
    List<Puncture> punctures = new ArrayList<>();
    for (int i = 0; i < csf.size(); i++) {
      punctures.add(puncture(csf.get(i), near.get(i)));
    }
    return punctures;
  }

  /** The draws of some results, in order of time; those without a time join the only one. */
  private List<Draw> draws(List<ReadResult> results) {
    List<Draw> draws = new ArrayList<>();
    results.stream()
        .filter(r -> at(r).isPresent())
        .sorted(Comparator.comparing(r -> at(r).orElseThrow().local()))
        .forEach(r -> join(draws, r));
    List<ReadResult> undated = results.stream().filter(r -> at(r).isEmpty()).toList();
    if (undated.isEmpty()) {
      return draws;
    }
    if (draws.size() > 1) {
      undated.forEach(r -> leftOver.add(LeftOver.of(r.from(), Why.TIME_UNCLEAR)));
    } else if (draws.isEmpty()) {
      draws.add(new Draw(Optional.empty(), new ArrayList<>(undated)));
    } else {
      draws.getFirst().results().addAll(undated);
    }
    return draws;
  }

  private void join(List<Draw> draws, ReadResult result) {
    Moment time = at(result).orElseThrow();
    boolean isNew =
        draws.isEmpty()
            || draws.getLast().at().filter(first -> first.hoursTo(time) <= hours).isEmpty();
    if (isNew) {
      draws.add(new Draw(Optional.of(time), new ArrayList<>()));
    }
    draws.getLast().results().add(result);
  }

  /** For each CSF draw the serum draws that are nearer to it than to any other. */
  private List<List<Draw>> nearest(List<Draw> csf, List<Draw> serum) {
    List<List<Draw>> near = new ArrayList<>();
    csf.forEach(draw -> near.add(new ArrayList<>()));
    for (Draw draw : serum) {
      if (csf.size() == 1) {
        near.getFirst().add(draw);
      } else if (draw.at().isEmpty() || csf.stream().anyMatch(c -> c.at().isEmpty())) {
        draw.results().forEach(r -> leftOver.add(LeftOver.of(r.from(), Why.TIME_UNCLEAR)));
      } else {
        near.get(csf.indexOf(closest(csf, draw))).add(draw);
      }
    }
    return near;
  }

  private static Draw closest(List<Draw> draws, Draw to) {
    return draws.stream().min(Comparator.comparingDouble(d -> apart(d, to))).orElseThrow();
  }

  private static double apart(Draw one, Draw other) {
    return one.at().isPresent() && other.at().isPresent()
        ? Math.abs(one.at().get().hoursTo(other.at().get()))
        : 0;
  }

  private Puncture puncture(Draw csf, List<Draw> near) {
    List<ReadResult> all = new ArrayList<>(csf.results());
    if (near.isEmpty()) {
      return new Puncture(csf.at(), Optional.empty(), all);
    }
    Draw used = closest(near, csf);
    all.addAll(used.results());
    near.stream()
        .filter(draw -> !draw.equals(used))
        .flatMap(draw -> draw.results().stream())
        .forEach(r -> leftOver.add(LeftOver.of(r.from(), Why.OTHER_DRAW)));
    return new Puncture(csf.at(), used.at(), all);
  }

  private static Optional<Moment> at(ReadResult result) {
    return result.from().specimen().collectedAt();
  }
}
