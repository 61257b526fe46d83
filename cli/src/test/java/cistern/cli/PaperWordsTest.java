package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.interpretation.PuncturePlanning;
import cistern.puncture.PuncturePlan;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.paper.PaperText;
import cistern.report.plan.CardPaper;
import cistern.report.plan.PlanPaper;
import cistern.report.wording.PrintedTime;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * No name of a rule, of a row or of a tier, no slip of a template, reaches a reader: over the
 * papers of every invented work-up, of every case of the urgent rules, and of the vignettes.
 */
class PaperWordsTest {

  /** What is a name of ours, or a sentence that nobody finished. */
  private static final Pattern OURS =
      Pattern.compile(
          "\\b(?:U\\d\\d|[HEN]\\d{1,2}|C10|L[6-9])b?\\b|\\bT[012]\\b|\\b(?:17|24)-[A-Z0-9]\\b"
              + "|McDonald\\d|\\(counts:|\\b1 bands\\b|\\b0 of them\\b|\\bfewer than 1\\b"
              + "|lack of no|\\d\\.0 leukocytes|Dose class unknown|no date given"
              + "|\\bnull\\b|Optional[.\\[]|\\bNaN\\b|%[sd]\\b|\\{\\w*\\}|\\b\\w+\\[\\d+\\]\\.\\w+\\[");

  /** What is never said of somebody in the first months. */
  private static final Pattern OF_MS =
      Pattern.compile("(?i)\\bMS\\b|multiple sclerosis|\\bADEM\\b|criteri");

  private static final Page PAGE = Page.of("test", Facts.standard());
  private static final PuncturePlanning PLANNING = PuncturePlanning.of(Facts.standard());
  private static final Path GOLDEN = Path.of("src/test/golden");
  private static final String SOURCES = "\nSources\n";

  @Test
  void papers_ofEveryInventedWorkup_holdNoNameOfOurs() throws IOException {
    try (Stream<Path> files = Files.list(GOLDEN)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".txt")).toList()) {
        String name = Objects.requireNonNull(file.getFileName()).toString();
        assertThat(found(OURS, said(Files.readString(file)))).as(name).isEmpty();
      }
    }
  }

  @Test
  void papers_ofEveryCase_holdNoNameOfOurs() throws IOException {
    for (String line : cases()) {
      String[] parts = line.split(" \\| ", -1);
      assertThat(found(OURS, papers(ShortWorkup.interpret(parts[1], parts[2])))).as(line).isEmpty();
    }
  }

  @Test
  void papers_inTheFirstMonths_sayNothingOfMs() {
    List<String> infants =
        List.of(
            "leukocytes=16 glucose=1.2 total-protein=1300",
            "leukocytes=14 glucose=1.6 total-protein=1100 albumin=210 albumin.serum=40000"
                + " igg=20 igg.serum=9000 kappa-flc=0.3 kappa-flc.serum=12");
    for (String results : infants) {
      Interpretation said =
          ShortWorkup.interpret(
              results,
              "\"person\":{\"ageDays\":20},\"bands\":{\"csfOnly\":0,\"shared\":0,\"serumOnly\":0},"
                  + "\"evidence\":{\"presentation\":\"attack\",\"fever\":\"yes\"}");
      assertThat(found(OF_MS, papers(said))).as(results).isEmpty();
    }
  }

  /** 17 of 166 decided bacterial cases of the open abm data had none of the five predictors. */
  @Test
  void papers_ofAFeverWithoutAPredictor_sayThatThisSettlesNothing() {
    String known = "leukocytes=30 neutrophils=0.1 total-protein=500 glucose=3.4 glucose.serum=5";

    String absent = papers(ShortWorkup.interpret(known, "\"evidence\":{\"fever\":\"yes\"}"));
    String notAsked = papers(ShortWorkup.interpret(known, ""));
    String open =
        papers(
            ShortWorkup.interpret(
                known.replace(" glucose.serum=5", ""), "\"evidence\":{\"fever\":\"yes\"}"));

    String sentence = "1 in 10 decided bacterial cases had none";
    assertThat(absent).contains("none of five predictors").contains(sentence);
    assertThat(notAsked).doesNotContain(sentence);
    assertThat(open).doesNotContain(sentence);
  }

  private static List<String> cases() throws IOException {
    List<String> all = new ArrayList<>();
    for (String file : List.of("/urgent/cases.txt", "/urgent/vignettes.txt")) {
      try (InputStream in =
          Objects.requireNonNull(PaperWordsTest.class.getResourceAsStream(file))) {
        new String(in.readAllBytes(), StandardCharsets.UTF_8)
            .lines()
            .filter(line -> !line.isBlank() && !line.startsWith("#"))
            .forEach(all::add);
      }
    }
    return all;
  }

  /** Every paper of an interpretation and of its plan, without the sources. */
  private static String papers(Interpretation said) {
    StringBuilder all = new StringBuilder();
    for (Audience audience : Audience.values()) {
      all.append(said(PAGE.toPlainText(said, audience)));
    }
    PuncturePlan plan = PLANNING.interpret(said);
    PrintedTime times = PrintedTime.AS_GIVEN;
    if (!said.alerts().isInfant()) {
      all.append(said(PaperText.of(PlanPaper.of(said.workup(), plan, times, ""))));
    }
    all.append(said(PaperText.of(CardPaper.of(said.workup(), plan, times, ""))));
    return all.toString().replaceAll("\\s+", " ").replaceAll("facts: [^;]*;", "");
  }

  /** The text before the sources, whose titles are not ours. */
  private static String said(String paper) {
    int sources = paper.indexOf(SOURCES);
    return sources < 0 ? paper : paper.substring(0, sources) + "\n";
  }

  private static List<String> found(Pattern pattern, String text) {
    List<String> all = new ArrayList<>();
    Matcher matcher = pattern.matcher(text);
    while (matcher.find()) {
      all.add(
          text.substring(
              Math.max(0, matcher.start() - 40), Math.min(text.length(), matcher.end() + 20)));
    }
    return all;
  }
}
