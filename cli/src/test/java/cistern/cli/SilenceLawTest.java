package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.criteria.CriteriaResult;
import cistern.criteria.CriteriaVerdict;
import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.urgent.Urgency;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws of the urgent rules over random work-ups. */
class SilenceLawTest {

  private static final int SEEDS = 60;

  private static final List<String> RESULTS =
      List.of(
          "leukocytes=1200",
          "leukocytes=60",
          "leukocytes=12",
          "leukocytes=2",
          "neutrophils=0.9",
          "neutrophils=0.1",
          "lymphocytes=0.9",
          "total-protein=2400",
          "total-protein=600",
          "total-protein=420",
          "glucose=1.2",
          "glucose=2.1",
          "glucose=3.4",
          "glucose.serum=6",
          "lactate=4.5",
          "lactate=1.6",
          "albumin=400",
          "albumin.serum=42000",
          "igg=60",
          "igg.serum=10000",
          "kappa-flc=3",
          "kappa-flc.serum=12",
          "borrelia-igg=900",
          "borrelia-igg.serum=10000",
          "measles-igg=900",
          "measles-igg.serum=10000");

  private static final List<String> EVIDENCE =
      List.of(
          "\"fever\":\"yes\"",
          "\"confusion\":\"yes\"",
          "\"suddenHeadache14d\":\"yes\"",
          "\"ascendingWeakness\":\"yes\"",
          "\"immunocompromised\":\"yes\"",
          "\"legOrBladderSigns\":\"yes\"",
          "\"visualLoss\":\"yes\"");

  private static final List<String> MEMBERS =
      List.of(
          "\"bands\":{\"csfOnly\":6,\"shared\":0,\"serumOnly\":0}",
          "\"person\":{\"ageYears\":34}",
          "\"draws\":{\"csf\":{\"appearance\":\"xanthochromic\",\"clotted\":\"yes\"}}",
          "\"microbiology\":[{\"test\":\"gram\",\"in\":\"csf\",\"result\":\"positive\"}]",
          "\"serology\":[{\"test\":\"aqp4-igg\",\"in\":\"serum\",\"result\":\"positive\"}]");

  /** What supports MS, or soothes, in any paper. */
  private static final List<String> SUPPORTING =
      List.of(
          "this supports, but",
          "fits multiple sclerosis",
          "often seen in people with multiple sclerosis",
          "good sign",
          "criteria are met",
          "2017: met",
          "2024: met",
          "made inside the cns:",
          "multiple sclerosis:",
          "less likely",
          "makes ms",
          "towards ms");

  /** Rules that another finding may take away by their own row, and those that ask for it. */
  private static final Set<String> EXCLUDABLE =
      Set.of(
          "protein-without-cells",
          "low-sugar-no-microbe",
          "many-cells",
          "yellow-or-bloody",
          "bacterial-pattern",
          "few-cells-do-not-exclude");

  static List<Integer> seeds() {
    return new Random(17).ints(SEEDS).boxed().toList();
  }

  private record Draft(List<String> results, List<String> evidence, List<String> members) {

    Interpretation interpret() {
      List<String> all = new ArrayList<>(members);
      all.add(
          "\"evidence\":{"
              + evidence.stream().map(e -> e + ",").collect(Collectors.joining())
              + "\"presentation\":\"attack\",\"attacks\":2,\"objectiveLesions\":2,"
              + "\"noBetterExplanation\":\"yes\",\"regions\":{\"periventricular\":\"yes\","
              + "\"infratentorial\":\"yes\",\"corticalJuxtacortical\":\"yes\","
              + "\"spinalCord\":\"yes\",\"opticNerve\":\"yes\"}}");
      return ShortWorkup.interpret(String.join(" ", results), String.join(",", all));
    }
  }

  private static Draft draft(int seed) {
    Random random = new Random(seed);
    List<String> results = new ArrayList<>();
    for (String each : RESULTS) {
      String analyte = each.substring(0, each.indexOf('='));
      boolean isThere = results.stream().anyMatch(r -> r.startsWith(analyte + "="));
      if (!isThere && random.nextInt(3) == 0) {
        results.add(each);
      }
    }
    return new Draft(results, some(EVIDENCE, random), some(MEMBERS, random));
  }

  private static List<String> some(List<String> all, Random random) {
    return new ArrayList<>(all.stream().filter(e -> random.nextInt(4) == 0).toList());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void papers_whileARuleIsOpen_supportNothingAndSayItFirst(int seed) {
    Interpretation got = draft(seed).interpret();
    if (!got.alerts().isSilencing()) {
      return;
    }
    Urgency first = got.alerts().urgent().open().getFirst();

    assertThat(got.statements().getFirst().code()).isEqualTo(first.code());
    assertThat(got.weighed().criteria()).allMatch(c -> c.verdict() == CriteriaVerdict.UNDETERMINED);
    assertThat(texts(got))
        .allSatisfy(
            text ->
                assertThat(SUPPORTING)
                    .noneMatch(phrase -> text.toLowerCase(Locale.ROOT).contains(phrase)));
  }

  private static List<String> texts(Interpretation got) {
    Page page = Page.of("test", Facts.standard());
    List<String> all = new ArrayList<>();
    for (Audience audience : Audience.values()) {
      all.add(page.toPlainText(got, audience));
    }
    return all;
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void stops_ofAnything_neverGiveNotMet(int seed) {
    Interpretation got = draft(seed).interpret();

    assertThat(
            got.alerts().stops().isEmpty() ? List.<CriteriaResult>of() : got.weighed().criteria())
        .noneMatch(c -> c.verdict() == CriteriaVerdict.NOT_MET);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void rules_withMoreKnown_stayUnlessTheirOwnRowExcludes(int seed) {
    Draft less = draft(seed);
    Random random = new Random(seed + 1L);
    Draft more = draft(seed);
    for (String each : RESULTS) {
      String analyte = each.substring(0, each.indexOf('='));
      if (more.results.stream().noneMatch(r -> r.startsWith(analyte + "="))
          && random.nextBoolean()) {
        more.results.add(each);
      }
    }
    EVIDENCE.stream().filter(e -> !more.evidence.contains(e)).forEach(more.evidence::add);

    assertThat(holding(more.interpret())).containsAll(holding(less.interpret()));
  }

  private static Set<String> holding(Interpretation got) {
    return got.alerts().urgent().holding().stream()
        .map(Urgency::code)
        .filter(code -> !EXCLUDABLE.contains(code))
        .collect(Collectors.toSet());
  }
}
