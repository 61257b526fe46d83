package cistern.gel.image;

import java.io.IOException;

/** A file that can't be taken for the picture of a gel; the message says why, in a sentence. */
public final class UnreadablePicture extends IOException {
  private static final long serialVersionUID = 1L;

  /** Why a file can't be read. */
  public enum Reason {
    /** Neither PNG nor JPEG nor TIFF. */
    WRONG_FORMAT,
    /** Ends early or is broken inside. */
    BROKEN,
    /** More pixels than are read. */
    TOO_LARGE,
    /** Fewer pixels than a gel needs. */
    TOO_SMALL,
    /** Several pictures in turn. */
    ANIMATED,
    /** It has several pages. */
    SEVERAL_PAGES,
    /** A colour model or depth that is not read. */
    UNKNOWN_COLOURS
  }

  private final Reason reason;

  /** A file with the reason and a sentence for a person. */
  public UnreadablePicture(Reason reason, String sentence) {
    super(sentence);
    this.reason = reason;
  }

  /** Why the file can't be read. */
  public Reason reason() {
    return reason;
  }
}
