package cistern.gel;

import cistern.fact.Facts;
import cistern.gel.bands.BandFinder;
import cistern.gel.bands.GelBands;
import cistern.gel.image.Density;
import cistern.gel.image.Picture;
import cistern.gel.image.PictureFile;
import cistern.gel.lanes.Gaps;
import cistern.gel.lanes.LaneFinder;
import cistern.gel.lanes.LanePlan;
import cistern.gel.lanes.MembraneEnds;
import cistern.gel.lanes.Seating;
import cistern.gel.membrane.Appearance;
import cistern.gel.membrane.Posture;
import cistern.gel.membrane.Sheet;
import cistern.gel.membrane.SheetFinder;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.GelReading.PictureSeen;
import java.io.IOException;
import java.nio.file.Path;

/** Reads the picture of a focusing gel: lanes, bands, pairs, and how sure each is. */
public final class GelReader {
  private final Facts facts;
  private final PictureFile files;
  private final SheetFinder sheets;
  private final LaneFinder lanes;
  private final BandFinder bands;
  private final MembraneEnds ends;
  private final Layout.Rows rows;
  private final long mostPixels;

  /** A reader under some facts, which hold the reader's own table and the cut-off of the bands. */
  public GelReader(Facts facts) {
    this.facts = facts;
    this.files = new PictureFile(facts);
    this.sheets = new SheetFinder(facts);
    this.lanes = new LaneFinder(facts);
    this.bands = new BandFinder(facts);
    this.ends = new MembraneEnds(facts);
    this.rows =
        new Layout.Rows(
            new Gaps(facts.number("gel.lanes.uneven"), facts.number("gel.lanes.room")),
            new Seating(
                facts.number("gel.lanes.uneven"),
                facts.number("gel.seating.blank-seen"),
                facts.number("gel.seating.sample-unseen"),
                facts.number("gel.seating.beyond"),
                new Seating.Clearness(
                    facts.number("gel.seating.clear"), facts.number("gel.seating.sure"))));
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
    int factor = 1;
    while ((long) (picture.width() / factor) * (picture.height() / factor) > mostPixels) {
      factor++;
    }
    Picture seen = picture.toReduced(factor);
    Sheet sheet = sheets.find(seen);
    Appearance appearance = Appearance.of(seen, sheet);
    boolean isAcross = appearance.posture() == Posture.ACROSS;
    Picture upright = isAcross ? seen.toTransposed() : seen;
    Sheet uprightSheet = isAcross ? sheet.toTransposed() : sheet;
    Density density = Density.of(upright, appearance.polarity(), facts.number("gel.image.darkest"));
    LaneFinder.Found found = lanes.find(density, uprightSheet);
    Layout layout = Layout.of(plan, found, factor, rows);
    Sheet whole = ends.find(density, uprightSheet, layout.places());
    GelBands gel = bands.find(density, whole, layout.places());
    PictureSeen shown =
        new PictureSeen(
            name, picture.width(), picture.height(), appearance.polarity(), appearance.posture());
    LaneGates gates = new LaneGates(facts, gel, picture.shades());
    return new GelInterpreter(facts, gel, layout, factor, gates).read(shown, density.height());
  }
}
