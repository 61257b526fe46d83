package cistern.differential;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Everything that the model assumes, printed with every result. */
final class Assumptions {

  private static final List<String> ALWAYS =
      List.of(
          "Bands, κ index and IgG index are one witness: κ and IgG index speak only through what"
              + " they say about bands, by the published joint tables; none was found outside MS,"
              + " so one table stands for all diseases.",
          "Cells, barrier, MRZ reaction and specific antibodies are taken as independent of each"
              + " other once the disease and the bands are known.",
          "Since 2017 bands are part of the diagnosis of MS, so their frequency in MS is too high"
              + " in series that used them.",
          "The weight of bands depends on what the other diseases are: against inflammatory disease"
              + " it is far smaller than against all others. The split of what is not MS is a rule"
              + " of this project; replace it by local audit.",
          "No count weighs more than its effective sample: studies differ more than chance. Counts"
              + " rebuilt from percentages carry rounding error; old methods count less.",
          "A disease without a count of its own borrows that of mixed controls, widened; where they"
              + " have none either, the finding does not move that disease against MS.");

  private Assumptions() {}

  static List<String> of(Optional<Prior> prior) {
    List<String> all = new ArrayList<>(ALWAYS);
    if (prior.isEmpty()) {
      all.add(
          "No probability before the puncture was stated, so none is given after it: only how much"
              + " each finding moves the odds.");
      return all;
    }
    all.add(
        switch (prior.get().usesMri()) {
          case YES ->
              "The stated probability already uses the imaging: for other or unlisted disease,"
                  + " bands are weighed as in people with a first attack who stayed stable.";
          case NO -> "The stated probability does not use the imaging.";
          case UNKNOWN ->
              "It is not stated whether the probability already uses the imaging: bands are weighed"
                  + " as if it did, which moves it less.";
        });
    if (prior.get().isUnmovable()) {
      all.add("A stated probability of 0 or 100 % cannot be moved by any finding.");
    }
    return all;
  }
}
