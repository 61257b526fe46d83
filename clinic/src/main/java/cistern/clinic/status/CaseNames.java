package cistern.clinic.status;

import cistern.clinic.setting.Setting;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.exchange.workup.WorkupReading;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.SequencedMap;

/** Names of cases: no two bear the same, so that nobody opens one for the other. */
public final class CaseNames {

  private static final int LONGEST = 64;

  private final Summaries summaries;

  private CaseNames(Summaries summaries) {
    this.summaries = summaries;
  }

  /** The names of the cases that are summed up. */
  public static CaseNames of(Summaries summaries) {
    return new CaseNames(summaries);
  }

  /** The text of a work-up; where its name is taken, with a number behind it. */
  public String unlike(WorkupReading.Understood read) {
    return JsonText.of(named(read.document(), unlike(read.workup().id())));
  }

  /** A name that no case bears: the wanted one, or that with the first number that is free. */
  public String unlike(String wanted) {
    summaries.bring(Duration.ofMillis(Setting.DAY_WAIT.number()));
    String name = wanted;
    for (int i = 2; summaries.isNamed(name); i++) {
      String number = "-" + i;
      int kept = Math.min(wanted.length(), LONGEST - number.length());
      name = wanted.substring(0, kept) + number;
    }
    return name;
  }

  /** A work-up under a name. */
  public static Json.Structure named(Json.Structure workup, String name) {
    SequencedMap<String, Json> members = new LinkedHashMap<>(workup.members());
    members.put("id", new Json.Text(name));
    return new Json.Structure(members);
  }
}
