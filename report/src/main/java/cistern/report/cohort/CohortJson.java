package cistern.report.cohort;

import cistern.cohort.CohortSummary;
import cistern.cohort.ConfidenceInterval;
import cistern.cohort.Distribution;
import cistern.cohort.Foretelling;
import cistern.cohort.QualityFigure;
import cistern.cohort.ReferenceLimits.Estimate;
import cistern.cohort.SiteLimit;
import cistern.cohort.SitePerformance;
import cistern.cohort.Tally;
import cistern.differential.Proportion;
import cistern.finding.FindingCode;
import cistern.report.json.JsonObject;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import tools.jackson.core.JsonGenerator;

/** A cohort's summary as one JSON object; numbers are not rounded. */
public final class CohortJson {

  private static final int VERSION = 1;
  private static final double CONFIDENCE = 0.95;
  private static final double MIDDLE = 0.5;

  private CohortJson() {}

  /** Writes a report. */
  public static void write(JsonGenerator json, CohortReport report) {
    JsonObject.write(json, object -> write(object, report));
  }

  private static void write(JsonObject json, CohortReport report) {
    CohortSummary summary = report.summary();
    json.with("cohort", VERSION);
    json.with("software", report.made().software());
    json.with("facts", report.made().facts());
    json.with("policy", report.made().policy());
    json.with("invented", report.isInvented());
    json.strings("cases", List.copyOf(report.groups().cases()));
    json.strings("controls", List.copyOf(report.groups().controls()));
    json.with("columnsConfirmedBy", report.groups().columnsConfirmedBy());
    whole(json, "punctures", summary.people());
    json.with("refused", report.refused());
    json.list(
        "findings",
        List.of(FindingCode.values()),
        (object, code) -> finding(object, code, summary));
    json.object(
        "criteria",
        editions ->
            summary
                .criteria()
                .forEach(
                    (edition, counts) ->
                        editions.object(
                            edition,
                            o -> counts.forEach((verdict, count) -> whole(o, verdict, count)))));
    quality(json, summary);
    json.list("siteLimits", report.site().limits(), CohortJson::limit);
    json.list("performance", report.site().performance(), CohortJson::performance);
    report.site().shareOfBands().ifPresent(share -> share(json, "bandsOfFirstAttacks", share));
    if (report.site().foretelling().given().people() > 0) {
      json.object("calibration", o -> calibration(o, report.site().foretelling()));
    }
    if (report.isCompared()) {
      json.list("changes", report.changes(), CohortJson::change);
    }
  }

  private static void quality(JsonObject json, CohortSummary summary) {
    json.object("quality", quality -> tallies(quality, summary.quality()));
    json.object(
        "qualityByNeedle",
        needles ->
            summary
                .byNeedle()
                .forEach((needle, tallies) -> needles.object(needle, o -> tallies(o, tallies))));
    json.object(
        "qualityByMonth",
        months ->
            summary
                .byMonth()
                .forEach(
                    (month, tallies) -> months.object(month.toString(), o -> tallies(o, tallies))));
    json.object(
        "amounts",
        amounts ->
            summary
                .amounts()
                .forEach(
                    (amount, of) ->
                        amounts.object(
                            amount.code(),
                            o -> {
                              o.with("unit", amount.unit());
                              distribution(o, of);
                            })));
    json.object(
        "readings",
        readings ->
            summary
                .gels()
                .forEach(
                    (one, others) ->
                        readings.object(
                            one.word(),
                            o -> others.forEach((other, n) -> whole(o, other.word(), n)))));
  }

  private static void whole(JsonObject json, String name, long count) {
    json.with(name, Math.toIntExact(count));
  }

  private static void finding(JsonObject json, FindingCode code, CohortSummary summary) {
    json.with("code", code.code());
    json.with("unit", code.unit().ucum());
    json.object(
        "verdicts",
        counts ->
            summary
                .verdicts()
                .getOrDefault(code, Collections.emptySortedMap())
                .forEach((verdict, count) -> whole(counts, verdict.word(), count)));
    distribution(json, summary.values().getOrDefault(code, Distribution.NONE));
  }

  private static void distribution(JsonObject json, Distribution of) {
    whole(json, "values", of.moments().count());
    if (of.moments().count() > 0) {
      json.with("mean", of.moments().mean());
      json.with("median", of.spectrum().quantile(MIDDLE));
    }
    if (of.moments().count() > 1) {
      json.with("standardDeviation", of.moments().standardDeviation());
    }
  }

  private static void tallies(JsonObject json, Map<QualityFigure, Tally> tallies) {
    tallies.forEach(
        (figure, tally) ->
            json.object(
                figure.code(),
                object -> {
                  whole(object, "yes", tally.yes());
                  whole(object, "no", tally.no());
                  whole(object, "unknown", tally.unknown());
                  tally.share().ifPresent(share -> share(object, share));
                }));
  }

  private static void limit(JsonObject json, SiteLimit limit) {
    json.with("code", limit.code().code());
    json.with("people", limit.estimate().people());
    switch (limit.estimate()) {
      case Estimate.ByRank ranks -> {
        json.with("method", "rank");
        json.with("lower", ranks.lower());
        interval(json, "lowerInterval90", ranks.lowerBetween());
        json.with("upper", ranks.upper());
        interval(json, "upperInterval90", ranks.upperBetween());
      }
      case Estimate.Robust robust -> {
        json.with("method", "robust");
        json.with("lower", robust.lower());
        json.with("upper", robust.upper());
      }
      case Estimate.TooFew few -> {
        json.with("method", "none");
        json.with("needed", few.needed());
      }
    }
    limit
        .byAge()
        .ifPresent(
            line ->
                json.object(
                    "upperByAge",
                    object -> {
                      object.with("atBirth", line.intercept());
                      object.with("perYear", line.perYear());
                    }));
    limit
        .outside()
        .ifPresent(
            share -> {
              share(json, "aboveLimitInForce", share);
            });
    limit.verified().ifPresent(v -> json.with("limitInForceStands", v.stands()));
  }

  private static void performance(JsonObject json, SitePerformance of) {
    json.with("code", of.code().code());
    json.with("cases", of.with());
    json.with("controls", of.without());
    json.with("needed", of.needed());
    of.told()
        .ifPresent(
            told -> {
              json.with("area", told.area());
              interval(json, "areaInterval95", told.between());
              json.with("cutOff", told.cutOff().value());
              interval(json, "cutOffInterval95", told.cutOff().between());
              json.with("sensitivity", told.cutOff().sensitivity());
              json.with("specificity", told.cutOff().specificity());
            });
  }

  private static void calibration(JsonObject json, Foretelling of) {
    whole(json, "people", of.given().people());
    json.with("logScore", of.given().logScore());
    json.with("logScoreOfPrior", of.prior().logScore());
    json.with("brier", of.given().brier());
    json.with("brierOfPrior", of.prior().brier());
    json.list(
        "arms",
        of.arms(),
        (object, arm) -> {
          object.with("bands", arm.equals(of.arms().getFirst()));
          whole(object, "people", arm.people());
          whole(object, "happened", arm.happened());
          object.with("foretold", arm.foretold());
          arm.expected().ifPresent(e -> interval(object, "expected95", e));
          object.with("covered", arm.isCovered());
        });
  }

  private static void change(JsonObject json, CohortChanges.Changed changed) {
    json.with("workup", changed.workup());
    json.with("column", changed.column());
    json.with("from", changed.from());
    json.with("to", changed.to());
    json.with("why", changed.why());
  }

  private static void share(JsonObject json, String name, Proportion share) {
    json.object(
        name,
        object -> {
          object.with("happened", (int) Math.round(share.positive()));
          object.with("of", (int) Math.round(share.of()));
          share(object, share);
        });
  }

  private static void share(JsonObject json, Proportion share) {
    Proportion.Ends ends = share.printed(CONFIDENCE);
    json.with("share", share.share());
    json.numbers("interval95", ends.lower(), ends.upper());
  }

  private static void interval(JsonObject json, String name, ConfidenceInterval interval) {
    json.numbers(name, interval.lower(), interval.upper());
  }
}
