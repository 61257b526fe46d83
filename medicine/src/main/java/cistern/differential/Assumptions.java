package cistern.differential;

import java.util.ArrayList;
import java.util.List;

/** What a number assumes, printed with it. */
final class Assumptions {

  private Assumptions() {}

  static List<String> of(Probability probability) {
    if (probability.given().isEmpty()) {
      return List.of();
    }
    Probability.Given given = probability.given().get();
    List<String> all = new ArrayList<>();
    all.add(
        "It speaks of a second attack or new lesions within 2 to 8 years, not of having MS now; the"
            + " probability stated before is kept: with and without bands average to it.");
    all.add(
        ("The interval is predictive: 95 of 100 new cohorts are expected within it. It rests on %d"
                + " %s of %d people.")
            .formatted(
                given.cohorts(),
                given.cohorts() > 2 ? "cohorts" : "adjusted estimates",
                given.people()));
    all.add(
        given.isOwnShare()
            ? "The share of people with bands is this site's own audit."
            : "The share of people with bands is that of published cohorts at this probability.");
    if (given.marker() == Marker.KAPPA_INDEX) {
      all.add("Bands are not reported; κ index stands in their place, with the same constants.");
    }
    if (!probability.unknown().isEmpty()) {
      all.add(
          "Not measured or not stated, and taking the number away if it held: "
              + String.join("; ", probability.unknown())
              + ".");
    }
    return all;
  }
}
