package cistern.cli;

import cistern.fact.Facts;
import cistern.gel.GelReader;
import cistern.gel.image.Picture;
import cistern.gel.image.PictureFile;
import cistern.gel.lanes.LanePlan;
import cistern.gel.score.GelTruth;
import cistern.gel.score.TruthScore;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Reads the gels of a folder and holds the readings against what is true of them. */
final class GelScoring {
  private final Terminal terminal;
  private final Path folder;
  private final PictureFile pictures;
  private final GelReader reader;
  private final Map<String, TruthScore> groups = new TreeMap<>();
  private final int cutOff;

  /**
   * @param folder where the pictures lie
   */
  GelScoring(Terminal terminal, Facts facts, Path folder) {
    this.terminal = terminal;
    this.folder = folder;
    this.pictures = new PictureFile(facts);
    this.reader = new GelReader(facts);
    this.cutOff = (int) facts.number("bands.cut-off");
  }

  /** The score of each group, one a line. */
  String score(List<GelTruth> gels) {
    gels.forEach(this::add);
    StringBuilder text = new StringBuilder();
    groups.forEach((group, score) -> text.append(group + ": " + score.toText() + "\n"));
    return text.toString();
  }

  private void add(GelTruth truth) {
    TruthScore score = groups.computeIfAbsent(truth.group(), g -> new TruthScore(cutOff));
    try {
      Picture picture = pictures.read(folder.resolve(truth.file()));
      score.addNamed(truth, reader.read(picture, truth.file(), truth.names()));
      score.addUnaided(truth, reader.read(picture, truth.file(), LanePlan.NONE));
    } catch (IOException e) {
      terminal.err().println(truth.file() + ": " + e.getMessage() + ".");
      score.addUnread(truth);
    }
  }
}
