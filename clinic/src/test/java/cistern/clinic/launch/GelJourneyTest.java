package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import cistern.clinic.account.Role;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.slf4j.LoggerFactory;

/** A gel from its picture to the interpretation, as browsers send it. */
@TestInstance(Lifecycle.PER_CLASS)
class GelJourneyTest {

  private static final Path EXAMPLES =
      Path.of(System.getProperty("cistern.root", ".."), "examples");

  /** As the example's own work-up names them; its pair 1 was drawn with thirteen bands. */
  private static final String LANES = "csf,serum,csf,serum,control,control";

  private static final Pattern KEEP =
      Pattern.compile("name=\"keep\" value=\"([0-9]+-[0-9]+)\"[^>]*checked");

  private final Pages pages = Pages.of();
  private final Running running = Running.on(Engines.folder());
  private final Caller clinician = running.signedIn(Role.CLINICIAN);

  @AfterEach
  void everythingIsAsItWasWritten() {
    assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
  }

  @AfterAll
  void stop() {
    assertThat(pages.faults()).isEmpty();
    running.close();
  }

  private static byte[] local() throws IOException {
    return Files.readAllBytes(EXAMPLES.resolve("gel-local.png"));
  }

  private String begin() {
    return Caller.place(clinician.post("/cases", Map.of("name", "with-gel")));
  }

  private String begunWithGel() throws IOException {
    String path = begin();
    clinician.post(path + "/gel", Map.of("lanes", LANES, "pair", "1"), local());
    return path;
  }

  private CaseVersion last(String path) {
    return running.clinic().cases().find(path.substring("/cases/".length())).orElseThrow();
  }

  private static List<String> kept(HttpResponse<String> page) {
    return KEEP.matcher(page.body()).results().map(m -> m.group(1)).toList();
  }

  /** The fields of the bands with some of them struck. */
  private HttpResponse<String> send(Caller caller, String path, String what, String... struck) {
    HttpResponse<String> page = caller.get(path + "/gel");
    Matcher base = Pattern.compile("name=\"base\" value=\"(\\d+)\"").matcher(page.body());
    String form =
        kept(page).stream()
            .filter(k -> !Arrays.asList(struck).contains(k))
            .reduce("base=" + (base.find() ? base.group(1) : ""), (all, k) -> all + "&keep=" + k);
    return caller.postText(path + "/gel/" + what, form);
  }

  /** The example's pair 1 was drawn with thirteen bands. */
  @Test
  void count_typedOverAConfirmedGel_isAnotherPersonsAndTheDisagreementIsShown() throws IOException {
    String path = begunWithGel();
    send(clinician, path, "confirm");
    assertThat(last(path).workup()).contains("\"confirmedBy\": \"Invented clinician\"");
    Caller laboratory = running.signedIn(Role.LABORATORY);
    assertThat(laboratory.get(path + "/bands").body())
        .contains("13 in the picture, confirmed by Invented clinician");

    laboratory.postText(
        path + "/bands",
        "base=" + last(path).number() + "&bands.csfOnly=0&bands.shared=0&bands.serumOnly=0");

    assertThat(last(path).workup())
        .doesNotContain("confirmedBy")
        .contains("\"readBy\": \"Invented laboratory\"");
    assertThat(clinician.get(path).body())
        .contains(
            "Two counts of the same gel: 0 in the fluid only were typed (Invented laboratory),"
                + " 13 were read from the picture");
    assertThat(clinician.get(path + "/report").body()).contains("Two counts of the same gel");
    assertThat(Running.day(clinician)).contains("Gels to confirm (");
  }

  @Nested
  class Sending {

    @Test
    void picture_withItsLanes_isKeptReadAndNotYetConfirmed() throws IOException {
      String path = begunWithGel();
      HttpResponse<String> page = clinician.get(path + "/gel");
      assertThat(page.body())
          .contains("not confirmed")
          .contains("Keep C1: in the fluid only")
          .contains("Pattern 2, bands only in the fluid")
          .contains("Confirm as Invented clinician");
      assertThat(kept(page)).hasSize(13);
      assertThat(last(path).workup()).contains("\"pair\": 1").doesNotContain(Caller.FILE_NAME);
      assertThat(clinician.get(path + "/bands").body()).contains("to be confirmed");
      assertThat(page.body())
          .as("a curve and its area for each lane, and every band on its own")
          .containsPattern("(?s)<polyline [^>]*class=\"s-fluid\".*<polyline [^>]*class=\"s-blood\"")
          .contains(" OD</text>");
      assertThat(page.body().split("class=\"peak\"", -1)).hasSize(1 + 13);
      pages.check("gel", page.body());
      assertThat(Running.day(clinician))
          .contains("Gels to confirm (")
          .contains("href=\"" + path + "/gel\"");
    }

    @Test
    void picture_withoutLanes_isFoundAndItsPairMustBeChosen() throws IOException {
      String path = begin();
      HttpResponse<String> asked =
          clinician.post(path + "/gel", Map.of("lanes", "", "pair", ""), local());

      pages.check("to choose", asked.body());
      assertThat(asked.statusCode()).isEqualTo(200);
      assertThat(asked.body()).contains("holds 3 pairs").contains("Pair 1: fluid in lane 3");
      assertThat(last(path).number()).isEqualTo(1);
      Matcher picture =
          Pattern.compile("name=\"picture\" value=\"([0-9a-f]{64})\"").matcher(asked.body());
      assertThat(picture.find()).isTrue();
      Map<String, String> chosen = new HashMap<>(Map.of("picture", picture.group(1), "pair", "1"));
      assertThat(clinician.post(path + "/gel/take", chosen).statusCode()).isEqualTo(303);
      assertThat(clinician.get(path + "/gel").body()).contains("1: in the fluid only");
      chosen.put("lanes", "csf,serum,csf");
      chosen.put("pair", "0");
      clinician.post(path + "/gel/take", chosen);
      assertThat(clinician.get(path + "/gel").body())
          .contains("cannot be counted")
          .contains("3 lanes are named and 6 were found");
    }

    @Test
    void picture_thatIsNone_isRefusedBesideItsFieldAndNothingIsChanged() throws IOException {
      String path = begin();
      Map<String, String> typed = Map.of("lanes", LANES, "pair", "1");
      Map<byte[], String> hostile =
          Map.of(
              bytes("%PDF-1.7 not a picture"),
              "neither a PNG nor a JPEG nor a TIFF",
              Arrays.copyOf(local(), 60_000),
              "ends early or is broken",
              bomb(),
              "40000 by 40000 pixels are more than",
              new byte[0],
              "Choose the file");

      hostile.forEach(
          (file, sentence) -> {
            HttpResponse<String> answer = clinician.post(path + "/gel", typed, file);
            pages.check(sentence, answer.body());
            assertThat(answer.statusCode()).as(sentence).isEqualTo(422);
            assertThat(answer.body())
                .contains(sentence)
                .contains("aria-describedby=\"n-picture\"")
                .contains(LANES)
                .doesNotContain(Caller.FILE_NAME);
          });
      HttpResponse<String> lanes =
          clinician.post(path + "/gel", Map.of("lanes", "csf,tears", "pair", "0"), local());
      assertThat(lanes.body()).contains("n-lanes").contains("not &quot;tears&quot;");
      HttpResponse<String> pair =
          clinician.post(path + "/gel", Map.of("lanes", LANES, "pair", "9"), local());
      assertThat(pair.body()).contains("n-pair").contains("The pairs are 0, 1.");
      assertThat(last(path).number()).isEqualTo(1);
    }

    @Test
    void picture_thatIsTooLarge_isToldSoAndLeavesNoTrace() {
      ListAppender<ILoggingEvent> log = new ListAppender<>();
      Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
      log.start();
      root.addAppender(log);
      String path = begin();
      HttpResponse<String> answer = clinician.post(path + "/gel", Map.of(), new byte[42_000_000]);

      root.detachAppender(log);
      assertThat(answer.statusCode()).isEqualTo(413);
      assertThat(answer.body()).contains("40 MB").contains("Nothing was changed");
      assertThat(log.list.toString()).doesNotContain(Caller.FILE_NAME);
      assertThat(last(path).number()).isEqualTo(1);
    }

    @Test
    void picture_sentWhenTheSessionHasEnded_isAskedForAgainBesideWhatWasTyped() throws IOException {
      String path = begin();
      Map<String, String> typed = Map.of("lanes", LANES, "pair", "1");
      Caller late = running.stranger();
      HttpResponse<String> ended = late.post(path + "/gel", typed, local(), "old");
      assertThat(ended.statusCode()).isEqualTo(403);
      assertThat(ended.body()).contains("A file cannot be kept").doesNotContain(Caller.FILE_NAME);
      pages.check("session ended", ended.body());
      Map<String, String> carried = new HashMap<>();
      Pattern.compile("name=\"(kept[^\"]+)\" value=\"([^\"]*)\"")
          .matcher(ended.body())
          .results()
          .forEach(m -> carried.put(m.group(1), m.group(2)));
      carried.put("name", running.person(Role.CLINICIAN).name());
      carried.put("password", Running.PASSWORD);

      HttpResponse<String> entered = late.post("/sign-in", carried);

      assertThat(Caller.place(entered)).isEqualTo(path + "/gel");
      asksAgain(late.get(path + "/gel"));
      assertThat(late.get(path + "/gel").body()).doesNotContain("choose it again");
      HttpResponse<String> replaced = late.post(path + "/gel", typed, local(), "old");
      assertThat(Caller.place(replaced)).isEqualTo(path + "/gel");
      asksAgain(late.get(path + "/gel"));
      assertThat(last(path).number()).isEqualTo(1);
    }

    private static void asksAgain(HttpResponse<String> page) {
      assertThat(page.body())
          .contains("a file cannot be kept: choose it again")
          .contains("name=\"lanes\" value=\"" + LANES + "\"")
          .contains("name=\"pair\" value=\"1\"");
    }

    @Test
    void picture_refusedBesideAGelThatIsThere_leavesThatOneAndSaysSo() throws IOException {
      String path = begunWithGel();

      HttpResponse<String> answer = clinician.post(path + "/gel", Map.of(), bytes("no picture"));

      assertThat(answer.body()).contains("stays until another").doesNotContain("which is not here");
      send(clinician, path, "save", "2-0");
      clinician.post(path + "/gel", Map.of("lanes", LANES, "pair", "0"), local());
      assertThat(last(path).workup()).contains("\"pair\": 0").doesNotContain("struck");
    }

    private static byte[] bytes(String text) {
      return text.getBytes(StandardCharsets.UTF_8);
    }

    /** A PNG (ISO/IEC 15948) that announces 40,000 by 40,000 pixels and holds none. */
    private static byte[] bomb() {
      ByteBuffer png = ByteBuffer.allocate(33);
      png.putLong(0x89504E470D0A1A0AL).putInt(13).put(bytes("IHDR")).putInt(40_000).putInt(40_000);
      png.put(new byte[] {16, 0, 0, 0, 0});
      CRC32 crc = new CRC32();
      crc.update(png.array(), 12, 17);
      return png.putInt((int) crc.getValue()).array();
    }
  }

  @Nested
  class Editing {

    @Test
    void strike_whileLooking_changesTheCountsAndKeepsADraft() throws IOException {
      String path = begunWithGel();
      HttpResponse<String> look = send(clinician, path, "look", "2-0", "2-4");

      assertThat(look.body())
          .contains("<strong class=\"kept-count\">11</strong>")
          .contains("read 13")
          .contains("your counts stand");
      assertThat(look.body())
          .contains("data-at=\"pattern-chances\"")
          .contains("Chance as you keep the bands")
          .contains("2 or more only in the fluid: more than 999 chances in 1000, as you keep");
      HttpResponse<String> again = clinician.get(path + "/gel");
      assertThat(again.body()).contains("was not saved").contains("Chance as you keep the bands");
      assertThat(kept(again)).hasSize(11).doesNotContain("2-0", "2-4");
      assertThat(last(path).number()).isEqualTo(2);
      clinician.post(path + "/gel/drop", Map.of());
      assertThat(kept(clinician.get(path + "/gel"))).hasSize(13);
    }

    @Test
    void strike_saved_staysUnconfirmedUntilItIsConfirmedByName() throws IOException {
      String path = begunWithGel();
      assertThat(send(clinician, path, "save", "2-0").statusCode()).isEqualTo(303);

      assertThat(kept(clinician.get(path + "/gel"))).hasSize(12);
      assertThat(last(path).workup()).contains("struck").doesNotContain("csfOnly");
      assertThat(clinician.get(path + "/bands").body()).contains("to be confirmed");
      assertThat(send(clinician, path, "confirm").statusCode()).isEqualTo(303);
      assertThat(last(path).workup())
          .contains("\"csfOnly\": 12")
          .contains("\"confirmedBy\": \"Invented clinician\"");
      assertThat(clinician.get(path + "/gel").body())
          .contains("Confirmed by Invented clinician, with a person&#39;s counts");
      assertThat(clinician.get(path + "/says").body())
          .contains("these counts stand instead of what was read from the picture")
          .contains("13 CSF-only");
      String drawn = "base=4&keep=2-1&keep=3-0&added=3@220.5&y-2=220";
      pages.check("no place", clinician.postText(path + "/gel/draw", drawn + "&y-3=x").body());
      clinician.postText(path + "/gel/draw", drawn);
      pages.check("a band was drawn", clinician.get(path + "/gel").body());
      clinician.post(path + "/gel/drop", Map.of());
      send(clinician, path, "save", "2-1");
      assertThat(last(path).workup()).doesNotContain("confirmedBy").doesNotContain("csfOnly");
    }

    @Test
    void confirming_whatWasRead_addsTheNameAndNoCounts() throws IOException {
      String path = begunWithGel();
      begunWithGel();
      Running.day(clinician);
      assertThat(clinician.get(path + "/gel").body()).doesNotContain("next gel to confirm");
      send(clinician, path, "confirm");
      assertThat(clinician.get(path + "/gel").body())
          .containsPattern("The next gel to confirm: <a href=\"/cases/[^\"]+/gel\">with-gel")
          .doesNotContain("confirm: <a href=\"" + path + "/gel");

      assertThat(last(path).workup()).contains("confirmedBy").doesNotContain("csfOnly");
      assertThat(clinician.get(path + "/gel").body()).contains("clinician, as read.");
      assertThat(clinician.get(path).body()).doesNotContain("Gels to confirm");
    }

    @Test
    void save_whenTheGelWasChangedMeanwhile_isAskedAgain() throws IOException {
      String path = begunWithGel();
      Caller laboratory = running.signedIn(Role.LABORATORY);
      HttpResponse<String> before = clinician.get(path + "/gel");
      send(laboratory, path, "save", "2-3");

      HttpResponse<String> answer =
          clinician.postText(path + "/gel/confirm", "base=2&keep=" + kept(before).getFirst());

      assertThat(answer.statusCode()).isEqualTo(409);
      assertThat(answer.body()).contains("Invented laboratory changed this case meanwhile");
      assertThat(kept(answer)).hasSize(1);
      assertThat(last(path).number()).isEqualTo(3);
    }

    @Test
    void parts_ofAKeptGel_areThePictureTheReadingAndItsLanes() throws IOException {
      String path = begunWithGel();
      Matcher source =
          Pattern.compile("(/cases/[^\"]+/gel/[0-9a-f-]{36}/)whole")
              .matcher(clinician.get(path + "/gel").body());
      assertThat(source.find()).isTrue();
      String parts = source.group(1);

      assertThat(clinician.get(parts + "1").headers().firstValue("Content-Type"))
          .contains("image/png");
      assertThat(clinician.get(parts + "reading").body()).contains("probabilityOfPattern");
      assertThat(clinician.get(parts + "picture").statusCode()).isEqualTo(200);
      assertThat(clinician.get(parts + "7").statusCode()).isEqualTo(404);
      assertThat(clinician.get(path + "/gel/none/whole").statusCode()).isEqualTo(404);
    }

    @Test
    void workup_whosePictureIsElsewhere_asksForIt() {
      String file =
          "{\"workup\":1,\"id\":\"x\",\"bands\":{\"gel\":\"far.png\",\"lanes\":[\"csf\",\"serum\"]}}";
      String path = Caller.place(clinician.post("/import/take", Map.of("file", file)));

      assertThat(clinician.get(path + "/gel").body())
          .contains("“far.png”, which is not here")
          .contains("value=\"csf,serum\"");
      assertThat(clinician.post(path + "/gel/save", Map.of()).statusCode()).isEqualTo(404);
    }
  }
}
