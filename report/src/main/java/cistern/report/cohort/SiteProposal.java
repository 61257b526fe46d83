package cistern.report.cohort;

import cistern.cohort.ReferenceLimits.Estimate;
import cistern.cohort.SiteLimit;
import cistern.differential.Proportion;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.report.json.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;

/**
 * What a site's own people suggest in place of the facts in force: a policy file that says nothing
 * until a person signs it: unsigned, the reader of policies refuses it.
 *
 * @param facts each by key
 * @param signedBy who signed it
 */
public record SiteProposal(List<Proposed> facts, Optional<String> signedBy) {

  private static final Map<FindingCode, String> KEYS =
      Map.of(
          FindingCode.IGG_INDEX, "igg-index.upper",
          FindingCode.KAPPA_INDEX, "kappa-index.upper",
          FindingCode.LACTATE, "lactate.upper");

  /** Copies the list. */
  public SiteProposal {
    facts = List.copyOf(facts);
  }

  /**
   * One fact.
   *
   * @param key of the fact
   * @param value proposed
   * @param unit UCUM
   * @param source what it rests on
   */
  public record Proposed(String key, double value, String unit, String source) {}

  /** The proposal of a report; none where no estimate is good enough to propose. */
  public static Optional<SiteProposal> of(CohortReport report, Facts facts) {
    List<Proposed> all = new ArrayList<>();
    for (SiteLimit limit : report.site().limits()) {
      String key = KEYS.getOrDefault(limit.code(), "");
      if (limit.estimate() instanceof Estimate.ByRank ranks && facts.find(key).isPresent()) {
        String source =
            "97.5th percentile of %d own controls (%s), by rank; 90 %% interval %s to %s"
                .formatted(
                    ranks.people(),
                    String.join(", ", report.groups().controls()),
                    ranks.upperBetween().lower(),
                    ranks.upperBetween().upper());
        all.add(new Proposed(key, ranks.upper(), limit.code().unit().ucum(), source));
      }
    }
    report
        .site()
        .shareOfBands()
        .filter(share -> share.of() >= facts.number("cohort.performance.people"))
        .filter(share -> share.share() > 0 && share.share() < 1)
        .ifPresent(share -> all.add(share(share)));
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(new SiteProposal(all, report.groups().signedBy()));
  }

  private static Proposed share(Proportion share) {
    return new Proposed(
        "probability.share.own",
        share.share(),
        "1",
        "bands in %s of %s own people with a typical first attack"
            .formatted(Printed.decimals(share.positive(), 0), Printed.decimals(share.of(), 0)));
  }

  /** The name of its file. */
  public String file() {
    return signedBy.isPresent() ? "policy.json" : "proposed-policy.json";
  }

  /** Writes it as a policy file. */
  public void write(JsonGenerator json) {
    JsonObject.write(
        json,
        policy -> {
          policy.with("policy", 1);
          policy.with(
              "name",
              signedBy.map(name -> "this site's own limits, signed by " + name).orElse("proposed"));
          if (signedBy.isEmpty()) {
            policy.nothing("signedBy");
          }
          policy.object(
              "facts",
              all ->
                  facts.forEach(
                      fact ->
                          all.object(
                              fact.key(),
                              object -> {
                                object.with("value", fact.value());
                                object.with("unit", fact.unit());
                                object.with("source", fact.source());
                              })));
        });
  }
}
