package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/**
 * Lanes of a gel that people place, name and pair otherwise, as browsers without script send it.
 */
@TestInstance(Lifecycle.PER_CLASS)
class GelLanesTest {

  /** As the example's own work-up names them; its pair 1 was drawn with thirteen bands. */
  private static final String LANES = "csf,serum,csf,serum,control,control";

  private static final Pattern FIELD =
      Pattern.compile(
          "<input type=\"(?:hidden|text)\" name=\"(base|placed|undone|y-\\d|lane-[a-z]+|lanes-own)\""
              + " value=\"([^\"]*)\"|name=\"(keep)\" value=\"([0-9-]+)\"[^>]*checked"
              + "|<select name=\"(lane-kind)\".*?value=\"([a-z]*)\" selected");

  private final Pages pages = Pages.of();
  private final Running running = Running.on(Engines.folder());
  private final Caller clinician = running.signedIn(Role.CLINICIAN);
  private final String path = begunWithGel();

  @AfterEach
  void everythingIsAsItWasWritten() {
    assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
  }

  @AfterAll
  void stop() {
    assertThat(pages.faults()).isEmpty();
    running.close();
  }

  private String begunWithGel() {
    String path = Caller.place(clinician.post("/cases", java.util.Map.of("name", "with-gel")));
    try {
      byte[] picture =
          Files.readAllBytes(
              Path.of(System.getProperty("cistern.root", ".."), "examples", "gel-local.png"));
      clinician.post(path + "/gel", java.util.Map.of("lanes", LANES, "pair", "1"), picture);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return path;
  }

  private CaseVersion last() {
    return running.clinic().cases().find(path.substring("/cases/".length())).orElseThrow();
  }

  private String page() {
    return clinician.get(path + "/gel").body();
  }

  /** What a browser would send of the page as it stands. */
  private List<String[]> fields() {
    return fields(clinician);
  }

  private List<String[]> fields(Caller caller) {
    String body = caller.get(path + "/gel").body();
    String form = body.substring(body.indexOf("class=\"bands-form\""));
    List<String[]> fields = new ArrayList<>();
    FIELD
        .matcher(form.substring(0, form.indexOf("id=\"name-lanes\"")))
        .results()
        .map(GelLanesTest::field)
        .forEach(fields::add);
    return fields;
  }

  private static String[] field(MatchResult match) {
    int at = match.group(1) != null ? 1 : match.group(3) != null ? 3 : 5;
    return new String[] {match.group(at), match.group(at + 1).replace("&amp;", "&")};
  }

  private static void set(List<String[]> fields, String name, int lane, String value) {
    fields.stream().filter(f -> f[0].equals(name)).skip(lane).findFirst().orElseThrow()[1] = value;
  }

  private static double centre(List<String[]> fields, int lane) {
    return Double.parseDouble(
        fields.stream().filter(f -> f[0].equals("lane-x")).skip(lane).findFirst().orElseThrow()[1]);
  }

  private HttpResponse<String> send(String what, List<String[]> fields) {
    return send(clinician, what, fields);
  }

  private HttpResponse<String> send(Caller caller, String what, List<String[]> fields) {
    String form =
        String.join(
            "&",
            fields.stream()
                .map(f -> f[0] + "=" + URLEncoder.encode(f[1], StandardCharsets.UTF_8))
                .toList());
    return caller.postText(path + "/gel/" + what, form);
  }

  private static String counts(String body) {
    return String.join(
        " ",
        Pattern.compile("class=\"kept-count\">([0-9]+)<")
            .matcher(body)
            .results()
            .map(m -> m.group(1))
            .toList());
  }

  @Test
  void lanes_placedWhereTheyWereFound_areReadAsBeforeAndNothingIsSaved() {
    long before = last().number();
    assertThat(counts(page())).isEqualTo("13 0 0");

    assertThat(send("lanes", fields()).statusCode()).isEqualTo(303);

    String body = page();
    assertThat(body).contains("Nothing of it is saved until").contains("lanes-back");
    assertThat(counts(body)).isEqualTo("13 0 0");
    assertThat(last().number()).isEqualTo(before);
    pages.check("lanes placed", body);
    assertThat(send("lanes/back", fields()).statusCode()).isEqualTo(303);
    assertThat(page()).doesNotContain("Nothing of it is saved");
  }

  @Test
  void lane_movedAndConfirmed_isInTheCaseAndSaysWhoPlacedIt() {
    List<String[]> fields = fields();
    fields.removeIf(f -> f[1].equals("2-1"));
    set(fields, "lane-x", 2, Double.toString(centre(fields, 2) + 4));
    set(fields, "lane-kind", 5, "blank");
    Caller first = running.signedIn(Role.LABORATORY);
    send(first, "lanes", fields);
    first.post(path + "/gel/drop", java.util.Map.of());
    send("lanes", fields);
    assertThat(counts(page())).as("what was struck stays so").isEqualTo("12 0 0");

    assertThat(send("confirm", fields()).statusCode()).isEqualTo(303);

    assertThat(last().step()).isEqualTo("gel confirmed, lanes placed by hand");
    assertThat(last().workup())
        .contains("\"confirmedBy\": \"Invented clinician\"")
        .containsPattern("\"kind\": \"csf\",\\s*\"pair\": 1,\\s*\"xCentre\": [0-9.]+")
        .contains("\"csfOnly\": 12");
    String body = page();
    assertThat(body).contains("the lanes placed by Invented clinician");
    String reading = body.replaceAll("(?s).*href=\"([^\"]*/reading)\".*", "$1");
    assertThat(clinician.get(reading).body())
        .contains("\"place\":\"given\"")
        .doesNotContain("\"place\":\"found\"");
    assertThat(clinician.get(path + "/says").body()).contains("12 CSF-only");
    clinician.post(path + "/undo", java.util.Map.of("base", Long.toString(last().number())));
    assertThat(page()).doesNotContain("the lanes placed by");
  }

  /** Two lanes less: the lanes of the pair have other numbers, and their bands the same authors. */
  @Test
  void bandDrawnBySomebodyElse_whereLanesAreTakenAway_staysTheirs() {
    Caller first = running.signedIn(Role.LABORATORY);
    List<String[]> drawn = fields();
    drawn.add(new String[] {"added", "2@330"});
    drawn.add(new String[] {"keep", "2-13"});
    send(first, "save", drawn);
    List<String[]> fields = fields();
    fields.add(new String[] {"added", "2@330"});
    set(fields, "lane-kind", 0, "none");
    set(fields, "lane-kind", 1, "none");
    send("lanes", fields);
    List<String[]> placed = fields();
    placed.add(new String[] {"added", "0@330"});

    send("look", placed);

    assertThat(page())
        .contains("Spinal fluid, lane 1 (")
        .contains("Keep C+1: in the fluid only, added by Invented laboratory");
    clinician.post(path + "/gel/drop", java.util.Map.of());
    first.post(path + "/undo", java.util.Map.of("base", Long.toString(last().number())));
  }

  /** Whoever takes a change back places no lane by it. */
  @Test
  void placing_takenBackByAnother_isOfWhoPlacedTheLanesThatStand() {
    List<String[]> fields = fields();
    set(fields, "lane-x", 2, Double.toString(centre(fields, 2) + 2));
    send("lanes", fields);
    send("save", fields());
    Caller other = running.signedIn(Role.LABORATORY);
    List<String[]> theirs = fields();
    set(theirs, "lane-x", 2, Double.toString(centre(theirs, 2) + 2));
    send(other, "lanes", theirs);
    theirs = fields(other);
    send(other, "save", theirs);
    assertThat(page()).contains("the lanes placed by Invented laboratory");

    other.post(path + "/undo", java.util.Map.of("base", Long.toString(last().number())));

    assertThat(page()).contains("the lanes placed by Invented clinician");
    clinician.post(path + "/versions/" + (last().number() - 3), java.util.Map.of());
  }

  @Test
  void placing_undone_saysOnlyWhatIsTrue() {
    List<String[]> fields = fields();
    set(fields, "lane-x", 2, Double.toString(centre(fields, 2) + 4));
    send("lanes", fields);
    assertThat(page()).contains("Read again with the lanes as you placed them.");

    send("lanes/back", fields());

    assertThat(page())
        .contains("what you placed and undid can be placed again")
        .doesNotContain("was not saved")
        .doesNotContain("Read again with the lanes");
    clinician.post(path + "/gel/drop", java.util.Map.of());
  }

  /** As it stood, and not as it is carried over: what lies beside the lane now was never drawn. */
  @Test
  void placing_undoneAndDoneAgain_bringsBackWhatStoodInTheForm() {
    List<String[]> fields = fields();
    fields.removeIf(f -> f[1].equals("2-1"));
    fields.add(new String[] {"added", "2@330"});
    fields.add(new String[] {"keep", "2-13"});
    set(fields, "y-3", 0, "401.5");
    set(fields, "lane-x", 2, Double.toString(centre(fields, 2) + 4));
    send("lanes", fields);
    assertThat(counts(page())).isEqualTo("13 0 0");
    List<String[]> placed = fields();
    placed.removeIf(f -> f[1].equals("2-4") || f[1].equals("2-5"));
    placed.add(new String[] {"added", "2@330"});

    assertThat(send("lanes/back", placed).statusCode()).isEqualTo(303);
    String undone = page();
    assertThat(counts(undone)).isEqualTo("13 0 0");
    assertThat(undone).contains("C+1").contains("value=\"401.5\"").contains("lanes-forth");
    assertThat(undone).doesNotContain("Nothing of it is saved until").doesNotContain("lanes-back");
    pages.check("placing undone", undone);

    assertThat(send("lanes/forth", fields()).statusCode()).isEqualTo(303);
    assertThat(page()).contains("Nothing of it is saved until").doesNotContain("lanes-forth");
    assertThat(counts(page())).as("what was struck before it was undone").isEqualTo("11 0 0");
    send("lanes/back", fields());
    assertThat(page()).contains("value=\"401.5\"");
    clinician.post(path + "/gel/drop", java.util.Map.of());
  }

  @Test
  void lanes_typedAndNotRead_areNeitherConfirmedNorLost() {
    long before = last().number();
    List<String[]> fields = fields();
    set(fields, "lane-x", 2, "211,5");
    set(fields, "y-2", 0, "333");
    for (String what : List.of("confirm", "save", "draw")) {
      HttpResponse<String> refused = send(what, fields);
      assertThat(refused.statusCode()).as(what).isEqualTo(422);
      assertThat(refused.body())
          .contains("id=\"n-lane-x-2\"")
          .doesNotContain("id=\"n-lane-x-3\"")
          .contains("value=\"211,5\"")
          .contains("value=\"333\"");
      pages.check("lanes not read: " + what, refused.body());
    }
    assertThat(last().number()).isEqualTo(before);
  }

  @Test
  void lanes_moreThanArePlaced_areRefusedAndNoneIsLeftOut() {
    List<String[]> fields = fields();
    fields.removeIf(f -> f[0].startsWith("lane-"));
    for (int lane = 0; lane < 61; lane++) {
      fields.add(new String[] {"lane-kind", "control"});
      fields.add(new String[] {"lane-pair", ""});
      fields.add(new String[] {"lane-x", Integer.toString(10 * lane)});
      fields.add(new String[] {"lane-width", "9"});
    }
    HttpResponse<String> refused = send("lanes", fields);
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body()).contains("At most 60 lanes of one picture can be placed.");
    assertThat(refused.body()).contains("id=\"lane-x-60\"");
  }

  @Test
  void lanes_pairedOtherwise_areCountedAsPairedNow() {
    List<String[]> fields = fields();
    set(fields, "lane-pair", 1, "1");
    set(fields, "lane-pair", 3, "0");
    send("lanes", fields);
    assertThat(page()).contains("Serum, lane 2 (").doesNotContain("Serum, lane 4 (");
    clinician.post(path + "/gel/drop", java.util.Map.of());
    assertThat(page()).contains("Serum, lane 4 (");
  }

  /** A band drawn into one person's lane is no band of another's. */
  @Test
  void bandDrawn_whereAnotherPairIsThisPersons_isNotCarriedOver() {
    List<String[]> fields = fields();
    fields.add(new String[] {"added", "2@330"});
    set(fields, "y-2", 0, "344.5");
    set(fields, "lanes-own", 0, "0");
    send("lanes", fields);
    assertThat(page()).contains("Spinal fluid, lane 1 (").doesNotContain("value=\"344.5\"");
    assertThat(counts(page())).isEqualTo("0 0 0");
    clinician.post(path + "/gel/drop", java.util.Map.of());
  }

  @Test
  void lanes_ofAGelThatSomebodyHasChangedMeanwhile_areNotRead() {
    List<String[]> stale = fields();
    send("confirm", fields());
    long confirmed = last().number();

    assertThat(send("lanes", stale).statusCode()).isEqualTo(409);
    assertThat(send("lanes/back", stale).statusCode()).isEqualTo(409);
    set(stale, "lane-x", 2, "211,5");
    set(stale, "y-2", 0, "333");
    for (String what : List.of("lanes", "save", "draw")) {
      HttpResponse<String> refused = send(what, stale);
      assertThat(refused.statusCode()).as(what).isEqualTo(409);
      assertThat(refused.body()).contains("value=\"211,5\"").contains("value=\"333\"");
      pages.check("lanes of a gel that was changed: " + what, refused.body());
    }

    assertThat(last().number()).isEqualTo(confirmed);
    clinician.post(path + "/undo", java.util.Map.of("base", Long.toString(confirmed)));
  }

  @Test
  void lanes_thatSayNothing_areRefusedBesideTheirFields() {
    List<String[]> fields = fields();
    set(fields, "lane-x", 0, "left");
    set(fields, "lane-pair", 3, "0");
    HttpResponse<String> refused = send("lanes", fields);
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body())
        .contains("id=\"n-lane-x-0\"")
        .contains("Pair 0 has a lane of this kind already.")
        .contains("value=\"left\"");
    pages.check("lanes refused", refused.body());
    set(fields, "lane-x", 0, "88");
    set(fields, "lane-pair", 3, "1");
    set(fields, "lanes-own", 0, "7");
    assertThat(send("lanes", fields).body()).contains("No lane of fluid or serum bears this");
    assertThat(page()).doesNotContain("Nothing of it is saved");
  }
}
