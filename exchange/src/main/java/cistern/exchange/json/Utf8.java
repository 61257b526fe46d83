package cistern.exchange.json;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/** Bytes to text: UTF-8 with or without byte order mark, and nothing else. */
final class Utf8 {

  private static final byte[] MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};
  private static final byte[] WIDE_MARK = {(byte) 0xFE, (byte) 0xFF};
  private static final byte[] SWAPPED_WIDE_MARK = {(byte) 0xFF, (byte) 0xFE};

  /** What stands for bytes that are no character; a text may hold it as well. */
  private static final char REPLACEMENT = '\ufffd';

  private Utf8() {}

  /** The text of some bytes; empty, with a problem noted, when they are not UTF-8 or blank. */
  static Optional<String> read(byte[] bytes, InputProblems problems) {
    if (isWide(bytes)) {
      problems.add(Place.WHOLE, InputTrouble.OTHER_ENCODING);
      return Optional.empty();
    }
    int start = startsWith(bytes, MARK) ? MARK.length : 0;
    ByteBuffer in = ByteBuffer.wrap(bytes, start, bytes.length - start);
    // A text in which nothing had to be replaced is what the bytes say; the rest is looked at.
    String quick = new String(bytes, start, bytes.length - start, StandardCharsets.UTF_8);
    Optional<String> text = quick.indexOf(REPLACEMENT) < 0 ? Optional.of(quick) : decoded(in);
    if (text.isEmpty()) {
      problems.add(Place.WHOLE, InputTrouble.NOT_UTF_8, line(bytes, badByte(in)));
    } else if (text.get().isBlank()) {
      problems.add(Place.WHOLE, InputTrouble.EMPTY);
    }
    return text.filter(t -> !t.isBlank());
  }

  /** Whether the text has two or four bytes a character: a mark of its own, or zero bytes. */
  private static boolean isWide(byte[] bytes) {
    boolean isZeroed = bytes.length > 1 && (bytes[0] == 0 || bytes[1] == 0);
    return isZeroed || startsWith(bytes, WIDE_MARK) || startsWith(bytes, SWAPPED_WIDE_MARK);
  }

  private static boolean startsWith(byte[] bytes, byte[] start) {
    return Arrays.mismatch(bytes, start) == start.length || Arrays.equals(bytes, start);
  }

  private static Optional<String> decoded(ByteBuffer in) {
    try {
      return Optional.of(decoder().decode(in.duplicate()).toString());
    } catch (CharacterCodingException notUtf8) {
      return Optional.empty();
    }
  }

  private static CharsetDecoder decoder() {
    return StandardCharsets.UTF_8
        .newDecoder()
        .onMalformedInput(CodingErrorAction.REPORT)
        .onUnmappableCharacter(CodingErrorAction.REPORT);
  }

  /** The index of the first byte that is not UTF-8. */
  private static int badByte(ByteBuffer in) {
    CoderResult result = decoder().decode(in, CharBuffer.allocate(in.remaining()), true);
    return result.isError() ? in.position() : in.limit();
  }

  private static int line(byte[] bytes, int index) {
    int line = 1;
    for (int i = 0; i < index; i++) {
      if (bytes[i] == '\n') {
        line++;
      }
    }
    return line;
  }
}
