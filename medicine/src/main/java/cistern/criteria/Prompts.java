package cistern.criteria;

import cistern.fact.Facts;
import cistern.finding.Printed;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What the 2024 edition asks to think of, by age and other illness. */
final class Prompts {

  private static final String SUPPORT = "mcdonald-2024.support.age-years";
  private static final String CHILD = "mcdonald-2024.mog-igg.under-years";

  private Prompts() {}

  static List<Prompt> of(Evidence evidence, OptionalDouble ageYears, Facts facts) {
    List<Prompt> prompts = new ArrayList<>();
    boolean isOlder = ageYears.isPresent() && ageYears.getAsDouble() >= facts.number(SUPPORT);
    boolean isMixed =
        evidence.answer(Item.VASCULAR_RISK).isYes()
            || evidence.answer(Item.HEADACHE_DISORDER).isYes();
    if (isOlder || isMixed) {
      prompts.add(
          new Prompt(
              "extra-support",
              "From %s years on, with vascular disease or risk, or a headache disorder, 2024 asks"
                      .formatted(Printed.decimals(facts.number(SUPPORT), 0))
                  + " for extra support: a cord lesion, positive CSF or a central vein sign.",
              facts.grounds(SUPPORT)));
    }
    if (ageYears.isPresent() && ageYears.getAsDouble() < facts.number(CHILD)) {
      prompts.add(
          new Prompt(
              "test-mog-antibody",
              "Under %s years 2024 asks to test for MOG antibodies; after a first ADEM attack the"
                      .formatted(Printed.decimals(facts.number(CHILD), 0))
                  + " criteria do not apply.",
              facts.grounds(CHILD)));
    }
    return prompts;
  }
}
