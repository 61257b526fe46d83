package cistern.gel;

import cistern.fact.Facts;
import cistern.gel.image.Picture;
import cistern.gel.image.PictureFile;
import cistern.gel.image.Polarity;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.GelReading.PictureSeen;
import java.io.IOException;
import java.nio.file.Path;

/** Reads the picture of a focusing gel: lanes, bands, pairs, and how sure each is. */
public final class GelReader {
  private final Facts facts;
  private final PictureFile files;
  private final long mostPixels;

  /** A reader under some facts, which hold the reader's own table and the cut-off of the bands. */
  public GelReader(Facts facts) {
    this.facts = facts;
    this.files = new PictureFile(facts);
    this.mostPixels = (long) (1e6 * facts.number("gel.image.working-megapixels"));
  }

  /**
   * The reading of a file.
   *
   * @throws cistern.gel.image.UnreadablePicture when the file is not a picture that can be read
   * @throws IOException when the file itself can't be read
   */
  public GelReading read(Path file, LanePlan plan) throws IOException {
    return read(files.read(file), String.valueOf(file.getFileName()), plan);
  }

  /** The reading of a decoded picture. */
  public GelReading read(Picture picture, String name, LanePlan plan) {
    View view = View.of(picture, mostPixels);
    Layout layout = Layout.of(plan, view, facts);
    PairRun run = new PairRun(view, layout.lanes());
    GelInterpreter interpreter = new GelInterpreter(facts, view, layout, run);
    interpreter.see();
    boolean isDark = run.isDark() != view.stance().isInverted();
    Polarity polarity = isDark ? Polarity.DARK_ON_LIGHT : Polarity.LIGHT_ON_DARK;
    PictureSeen seen =
        new PictureSeen(name, picture.width(), picture.height(), polarity, view.posture());
    return interpreter.read(seen, picture.shades());
  }
}
