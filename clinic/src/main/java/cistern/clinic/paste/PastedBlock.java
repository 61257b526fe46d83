package cistern.clinic.paste;

import cistern.exchange.ucum.Conversion;
import cistern.exchange.ucum.Conversions;
import cistern.measurement.Sample;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a block line by line: name, fluid, number and unit in one line, with tabs, semicolons or
 * spaces between them; or a table whose head names the fluids. A flag and a range of reference
 * behind a result are passed over. Nothing is guessed: a line with anything else left over is not
 * understood.
 */
public final class PastedBlock {

  private static final Pattern LINE = Pattern.compile("(.*?)[\\s:=;|]+([<>]?\\s*[0-9].*)");

  private final Conversions conversions;

  private PastedBlock(Conversions conversions) {
    this.conversions = conversions;
  }

  /** A reader that knows units. */
  public static PastedBlock of(Conversions conversions) {
    return new PastedBlock(conversions);
  }

  /** What stands in every line that is not blank. */
  public List<PastedLine> read(String block) {
    boolean isComma = PastedValue.isWithDecimalComma(block);
    List<PastedLine> all = new ArrayList<>();
    Optional<PastedTable> table = Optional.empty();
    for (String line : block.lines().filter(l -> !l.isBlank()).toList()) {
      Optional<PastedTable> head = PastedTable.of(line, conversions::isUnit);
      if (head.isPresent()) {
        table = head;
        head.get().unknown().forEach(h -> all.add(leftOut(line, h)));
      } else if (table.filter(t -> t.isRow(line)).isPresent()) {
        table.orElseThrow().read(line, isComma).stream().map(this::checked).forEach(all::add);
      } else {
        all.add(checked(line(line.strip(), isComma)));
      }
    }
    return once(all);
  }

  private static PastedLine leftOut(String line, String head) {
    return new PastedLine.NotUnderstood(
        line, "nothing is taken from the column “" + head + "”, which is not known here");
  }

  /** Without a result that stands twice: which of the two is right, nobody knows here. */
  private static List<PastedLine> once(List<PastedLine> all) {
    Set<Sample> seen = new HashSet<>();
    Set<Sample> twice = new HashSet<>();
    for (PastedLine line : all) {
      if (line instanceof PastedLine.Understood understood && !seen.add(understood.sample())) {
        twice.add(understood.sample());
      }
    }
    return all.stream()
        .map(
            line ->
                line instanceof PastedLine.Understood understood
                        && twice.contains(understood.sample())
                    ? new PastedLine.NotUnderstood(
                        line.line(),
                        understood.sample().term() + " stands twice in the block: which is right?")
                    : line)
        .toList();
  }

  private static PastedLine line(String line, boolean isComma) {
    Matcher matcher = LINE.matcher(line);
    if (!matcher.matches()) {
      return new PastedLine.NotUnderstood(line, "no number in it");
    }
    String name = String.valueOf(matcher.group(1));
    return switch (PastedValue.read(String.valueOf(matcher.group(2)), isComma)) {
      case PastedValue.Reading.Unclear unclear ->
          new PastedLine.NotUnderstood(line, unclear.reason());
      case PastedValue.Reading.Clear clear -> named(line, name, clear.value());
    };
  }

  private static PastedLine named(String line, String name, PastedValue value) {
    Optional<Sample> sample = PasteWords.sample(name);
    if (sample.isEmpty()) {
      return new PastedLine.NotUnderstood(
          line, "this name is not known here, or the fluid is not named");
    }
    return value.unit().isEmpty()
        ? new PastedLine.NotUnderstood(line, "no unit")
        : new PastedLine.Understood(
            line,
            sample.get(),
            value.sign() + value.number() + " " + PastedTable.ucum(value.unit()));
  }

  /** A result whose unit is not one of its analyte is not understood. */
  private PastedLine checked(PastedLine line) {
    if (!(line instanceof PastedLine.Understood understood)) {
      return line;
    }
    String unit = understood.typed().replaceFirst("^\\S+ ", "");
    return conversions.conversion(unit, understood.sample().analyte()) instanceof Conversion.By
        ? line
        : new PastedLine.NotUnderstood(
            line.line(), "the unit is not known for " + understood.sample().analyte().term());
  }
}
