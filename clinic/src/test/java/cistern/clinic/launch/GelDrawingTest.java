package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Engines;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** Bands that the reader missed, drawn into the lanes of the example's second pair. */
@TestInstance(Lifecycle.PER_CLASS)
class GelDrawingTest {

  private static final Path PICTURE =
      Path.of(System.getProperty("cistern.root", ".."), "examples", "gel-local.png");

  /** As the example's own work-up names them; its pair 1 was drawn with thirteen bands. */
  private static final String LANES = "csf,serum,csf,serum,control,control";

  private static final Pattern KEEP =
      Pattern.compile("name=\"keep\" value=\"([0-9]+-[0-9]+)\"[^>]*checked");
  private static final Pattern CHOSEN = Pattern.compile("<option value=\"([0-9@.]+)\" selected=");
  private static final Pattern CHANCE =
      Pattern.compile("only in the fluid: (?:less than )?(\\d+) chances? in (\\d+), as you keep");
  private static final Pattern RANGE = Pattern.compile("from the top \\((\\d+) to (\\d+)\\)");

  private final Running running = Running.on(Engines.folder());
  private final Caller clinician = running.signedIn(Role.CLINICIAN);

  @AfterEach
  void everythingIsAsItWasWritten() {
    assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
  }

  @AfterAll
  void stop() {
    running.close();
  }

  private String begun() throws IOException {
    String path = Caller.place(clinician.post("/cases", Map.of("name", "with-gel")));
    clinician.post(path + "/gel", Map.of("lanes", LANES, "pair", "1"), Files.readAllBytes(PICTURE));
    return path;
  }

  private CaseVersion last(String path) {
    return running.clinic().cases().find(path.substring("/cases/".length())).orElseThrow();
  }

  private HttpResponse<String> page(String path) {
    return clinician.get(path + "/gel");
  }

  /** The form as it stands, with more fields behind it. */
  private String form(String path) {
    String body = page(path).body();
    StringBuilder form = new StringBuilder("base=" + last(path).number());
    KEEP.matcher(body).results().forEach(m -> form.append("&keep=").append(m.group(1)));
    CHOSEN.matcher(body).results().forEach(m -> form.append("&added=").append(m.group(1)));
    return form.toString();
  }

  private HttpResponse<String> draw(String path, String lane, String place) {
    String field = "&y-" + lane + "=" + URLEncoder.encode(place, StandardCharsets.UTF_8);
    return clinician.postText(path + "/gel/draw", form(path) + field);
  }

  private static List<String> counts(HttpResponse<String> page) {
    return Pattern.compile("kept-count\">([^<]*)<")
        .matcher(page.body())
        .results()
        .map(m -> m.group(1))
        .toList();
  }

  private static int middle(HttpResponse<String> page) {
    MatchResult range = RANGE.matcher(page.body()).results().findFirst().orElseThrow();
    return (Integer.parseInt(range.group(1)) + Integer.parseInt(range.group(2))) / 2;
  }

  @Test
  void band_drawnByItsPlace_countsAtOnceAndIsNotYetSaved() throws IOException {
    String path = begun();
    assertThat(counts(page(path))).containsExactly("13", "0", "0");
    assertThat(page(path).body()).contains("At ").contains(" pixels from the top; ");
    String place = middle(page(path)) + ",5";

    HttpResponse<String> drawn = draw(path, "2", place);

    assertThat(Caller.place(drawn)).isEqualTo(path + "/gel#keep-2-13");
    HttpResponse<String> shown = page(path);
    assertThat(counts(shown)).containsExactly("14", "0", "0");
    assertThat(shown.body())
        .contains("Keep C+1: in the fluid only, added by Invented clinician")
        .contains("not seen by the program")
        .contains("was not saved")
        .contains("read 13");
    assertThat(last(path).number()).isEqualTo(2);
    draw(path, "2", place);
    assertThat(counts(page(path))).containsExactly("14", "0", "0");
    clinician.post(path + "/gel/drop", Map.of());
    assertThat(counts(page(path))).containsExactly("13", "0", "0");
  }

  /** Of thirteen bands of the fluid alone one is left. */
  @Test
  void bands_struckButOne_leaveLittleChanceOfTwo() throws IOException {
    String path = begun();
    assertThat(page(path).body())
        .contains("2 or more only in the fluid: more than 999 chances in 1000.")
        .doesNotContain("as you keep");

    String look = clinician.postText(path + "/gel/look", "base=2&keep=2-0").body();

    MatchResult chance = CHANCE.matcher(look).results().findFirst().orElseThrow();
    assertThat(Double.parseDouble(chance.group(1)) / Double.parseDouble(chance.group(2)))
        .isLessThan(0.1);
    assertThat(look).contains("as the program read it, more than 999 chances in 1000");
  }

  @Test
  void band_beyondTheMostOfAPair_isToldOfAndNotDropped() throws IOException {
    String path = begun();
    int most = Setting.BANDS_ADDED.number();
    StringBuilder many = new StringBuilder(form(path));
    for (int i = 0; i < most; i++) {
      many.append("&added=2@").append(80 + 6 * i).append("&keep=2-").append(13 + i);
    }

    HttpResponse<String> full = clinician.postText(path + "/gel/draw", many + "&y-2=470");

    assertThat(full.statusCode()).isEqualTo(422);
    assertThat(full.body()).contains(most + " drawn bands are the most of a pair");
  }

  @Test
  void bands_drawnInBothLanes_areSharedWhenAPersonSaysSo() throws IOException {
    String path = begun();
    String place = Integer.toString(middle(page(path)));
    draw(path, "3", place);
    draw(path, "2", place);
    assertThat(counts(page(path))).containsExactly("14", "0", "1");

    HttpResponse<String> look =
        clinician.postText(
            path + "/gel/look", form(path).replace("added=2@" + place, "added=2@" + place + "@0"));

    assertThat(counts(look)).containsExactly("13", "1", "0");
    assertThat(page(path).body())
        .contains("Keep C+1: also in serum, S+1, added by")
        .contains("Keep S+1: also in the fluid, C+1, added by");
    clinician.postText(path + "/gel/save", form(path));
    assertThat(last(path).workup()).contains("\"matched\": 0");
    clinician.post(path + "/gel", Map.of("lanes", LANES, "pair", "0"), Files.readAllBytes(PICTURE));
    assertThat(last(path).workup()).contains("\"pair\": 0").doesNotContain("added");
  }

  @Test
  void band_drawnAndConfirmed_standsBesideTheReadingUntilItIsStruck() throws IOException {
    String path = begun();
    draw(path, "2", Integer.toString(middle(page(path))));
    Caller laboratory = running.signedIn(Role.LABORATORY);
    laboratory.postText(path + "/gel/save", form(path));
    assertThat(last(path).workup())
        .contains("\"added\"")
        .contains("\"by\": \"Invented laboratory\"")
        .doesNotContain("csfOnly");
    assertThat(clinician.post("/import", Map.of("file", last(path).workup())).body())
        .contains("Everything in the file was understood");

    clinician.post(path + "/gel/drop", Map.of());
    clinician.postText(path + "/gel/confirm", form(path));

    assertThat(last(path).workup())
        .contains("\"csfOnly\": 14")
        .contains("\"by\": \"Invented laboratory\"")
        .contains("\"confirmedBy\": \"Invented clinician\"");
    assertThat(page(path).body()).contains("Confirmed by Invented clinician").contains("read 13");
    clinician.postText(path + "/gel/save", form(path).replace("&keep=2-13", ""));
    assertThat(last(path).workup()).doesNotContain("added").doesNotContain("confirmedBy");
    assertThat(counts(page(path))).containsExactly("13", "0", "0");
  }

  @Test
  void gel_ofSeveralPeople_saysWhoseBandsAreChangedHere() throws IOException {
    assertThat(page(begun()).body())
        .contains(
            "This gel holds 2 pairs of lanes. Only this person&#39;s is changed here, pair 1:")
        .contains("fluid in lane 3, serum in lane 4; the bands of every other pair");
    String alone = Caller.place(clinician.post("/cases", Map.of("name", "alone")));
    clinician.post(
        alone + "/gel",
        Map.of("lanes", "control,control,csf,serum,control,control", "pair", ""),
        Files.readAllBytes(PICTURE));
    assertThat(page(alone).body()).contains("Keep C1").doesNotContain("pairs of lanes. Only");
  }

  @Test
  void place_thatIsNone_isRefusedBesideItsField() throws IOException {
    String path = begun();

    for (String wrong : List.of("here", "999999", "-3", "0", "")) {
      HttpResponse<String> answer = draw(path, "3", wrong);
      assertThat(answer.statusCode()).as(wrong).isEqualTo(422);
      assertThat(answer.body()).contains("No band was drawn").contains("aria-describedby=\"n-y-");
    }
    assertThat(counts(page(path))).containsExactly("13", "0", "0");
    String forged = form(path) + "&added=9@40&added=2@x&added=&keep=2-99";
    assertThat(counts(clinician.postText(path + "/gel/look", forged)))
        .containsExactly("13", "0", "0");
    running.signedIn(Role.LABORATORY).postText(path + "/gel/save", form(path));
    assertThat(clinician.postText(path + "/gel/draw", "base=2&y-2=400").statusCode())
        .isEqualTo(409);
  }
}
