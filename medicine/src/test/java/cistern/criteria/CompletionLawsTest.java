package cistern.criteria;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Both editions against a second, plain writing of the tables, on random evidence. */
class CompletionLawsTest {

  private static final int RUNS = 2000;
  private static final List<Item> BINARY =
      List.of(
          Item.NO_BETTER_EXPLANATION,
          Item.HISTORICAL_ATTACK,
          Item.PROGRESSION_TWELVE_MONTHS,
          Item.PERIVENTRICULAR,
          Item.CORTICAL_JUXTACORTICAL,
          Item.INFRATENTORIAL,
          Item.SPINAL_CORD,
          Item.OPTIC_NERVE,
          Item.CORD_LESIONS_TWO_OR_MORE,
          Item.NEW_OR_MIXED_LESIONS,
          Item.CENTRAL_VEIN_SIGN,
          Item.PARAMAGNETIC_RIM);

  private static Stated random(Random random) {
    Presentation[] presentations = Presentation.values();
    Map<Item, Answer> answers = new EnumMap<>(Item.class);
    for (Item item : BINARY) {
      answers.put(item, answer(random));
    }
    if (random.nextInt(4) > 0) {
      answers.put(Item.NO_BETTER_EXPLANATION, Answer.YES);
    }
    Presentation presentation =
        random.nextBoolean()
            ? Presentation.ATTACK
            : presentations[random.nextInt(presentations.length)];
    Answer bands = answer(random);
    return new Stated(
        new Evidence(presentation, count(random), count(random), answers),
        Stated.fluid(bands, bands == Answer.YES ? Answer.YES : answer(random)));
  }

  private static Answer answer(Random random) {
    return switch (random.nextInt(10)) {
      case 0, 1, 2, 3 -> Answer.YES;
      case 4, 5, 6 -> Answer.NO;
      default -> Answer.UNKNOWN;
    };
  }

  private static Count count(Random random) {
    return switch (random.nextInt(3)) {
      case 0 -> Count.of(random.nextInt(4));
      case 1 -> Count.atLeast(random.nextInt(4));
      default -> Count.UNKNOWN;
    };
  }

  @Nested
  class Laws {

    @ParameterizedTest
    @ValueSource(ints = {2017, 2024})
    void interpret_anyEvidence_equalsBruteForce(int edition) {
      Random random = new Random(edition);
      Set<String> seen = new TreeSet<>();
      for (int run = 0; run < RUNS; run++) {
        Stated stated = random(random);
        CriteriaResult result = edition == 2017 ? stated.result2017() : stated.result2024();
        PlainTables plain = PlainTables.of(edition, stated);

        assertThat(result.verdict().word()).as(stated.toString()).isEqualTo(plain.verdict());
        assertThat(new HashSet<>(result.rows())).as(stated.toString()).isEqualTo(plain.rows());
        assertThat(result.disseminationInTime().map(DisseminationInTime::word).orElse(""))
            .as(stated.toString())
            .isEqualTo(plain.basis());
        assertThat(CriteriaTest.named(result.missing()))
            .as(stated.toString())
            .isEqualTo(plain.sets(true));
        assertThat(CriteriaTest.named(result.missingAgainst()))
            .as(stated.toString())
            .isEqualTo(plain.sets(false));
        seen.add(result.verdict().word());
        result.rows().forEach(seen::add);
      }
      assertThat(seen).contains("met", "not-met", "undetermined").hasSizeGreaterThan(7);
    }

    @ParameterizedTest
    @ValueSource(ints = {2017, 2024})
    void interpret_moreEvidence_neverLowersAVerdict(int edition) {
      Random random = new Random(7L * edition);
      for (int run = 0; run < RUNS / 5; run++) {
        Stated stated = random(random);
        for (Stated more : richer(stated)) {
          if (!more.evidence().contradictions().isEmpty()) {
            continue;
          }
          CriteriaVerdict before = result(edition, stated).verdict();
          CriteriaVerdict after = result(edition, more).verdict();

          assertThat(after).as(stated + " → " + more).isGreaterThanOrEqualTo(before);
        }
      }
    }

    private CriteriaResult result(int edition, Stated stated) {
      return edition == 2017 ? stated.result2017() : stated.result2024();
    }

    private List<Stated> richer(Stated stated) {
      List<Stated> richer = new ArrayList<>();
      Evidence e = stated.evidence();
      if (!e.contradictions().isEmpty()) {
        return richer;
      }
      for (Item item : BINARY) {
        Map<Item, Answer> answers = new EnumMap<>(e.answers());
        answers.put(item, Answer.YES);
        richer.add(
            new Stated(
                new Evidence(e.presentation(), e.attacks(), e.objectiveLesions(), answers),
                stated.fluid()));
      }
      richer.add(
          new Stated(
              new Evidence(e.presentation(), e.attacks(), Count.of(2), e.answers()),
              stated.fluid()));
      if (e.presentation() == Presentation.ATTACK) {
        richer.add(
            new Stated(
                new Evidence(e.presentation(), Count.of(2), e.objectiveLesions(), e.answers()),
                stated.fluid()));
      }
      richer.add(new Stated(e, Stated.fluid(Answer.YES, Answer.YES)));
      return richer;
    }
  }
}
