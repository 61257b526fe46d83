package cistern.exchange.table;

import cistern.exchange.lab.Fluids;
import cistern.exchange.lab.Fluids.Fluid;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.LocalMapping.Entry;
import cistern.exchange.lab.Meaning;
import cistern.exchange.lab.Names;
import cistern.exchange.lab.WorkupFields;
import cistern.exchange.ucum.Spellings;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import cistern.measurement.CanonicalUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What a heading, or the name of a test, says by itself.
 *
 * @param text as written
 * @param subject an analyte, a field of a row, or nothing
 * @param fluids words that name fluids, in their order
 * @param units in their order
 * @param mapped the entry of a mapping that says it, if one does
 */
record Heading(
    String text,
    Optional<String> subject,
    List<String> fluids,
    List<String> units,
    Optional<Entry> mapped) {

  private static final Pattern BRACKET = Pattern.compile("[(\\[{]([^()\\[\\]{}]{1,60})[)\\]}]");

  /** What may stand between an analyte and its fluid. */
  private static final String IN = "(?:in|im|dans le|en el|nel)";

  private static final Pattern BLANKS = Pattern.compile("\\s+");
  private static final Pattern EDGES = Pattern.compile("^[\\s/,:;._-]+|[\\s/,:;._-]+$");
  private static final Pattern TWO_UNITS = Pattern.compile("\\s+/\\s+|\\s*[;|]\\s*");
  private static final Pattern FLUID_SIGNS = Pattern.compile("\\s*[/;|&+]\\s*|\\s+and\\s+");
  private static final Pattern BETWEEN = Pattern.compile("[\\s_.,:;-]+(?:" + IN + "\\s+)?");
  private static final Pattern LOOSE = Pattern.compile("(?i)\\s+" + IN + "$|^" + IN + "\\s+");

  private static final Pattern OWN = Pattern.compile("([a-z][a-z-]*)\\.(csf|serum|blood)");

  Heading {
    fluids = List.copyOf(fluids);
    units = List.copyOf(units);
  }

  /** The heading of a text under a mapping, which comes first. */
  static Heading of(String text, Spellings spellings, LocalMapping mapping) {
    String plain = BLANKS.matcher(text.replace('\u00a0', ' ')).replaceAll(" ").strip();
    Optional<Entry> entry = mapping.heading(plain);
    if (entry.isPresent()) {
      Meaning meaning = entry.get().meaning();
      Heading said = new HeadingWords(spellings).read(plain);
      return new Heading(
          plain,
          Optional.of(meaning.subject()),
          meaning.in().map(in -> List.of(in.code())).orElse(said.fluids()),
          meaning.unit().map(List::of).orElse(said.units()),
          entry);
    }
    return own(plain).orElseGet(() -> new HeadingWords(spellings).read(plain));
  }

  /** A heading of this program's own tables, whose units are fixed. */
  private static Optional<Heading> own(String text) {
    if (WorkupFields.isPath(text)) {
      return Optional.of(
          new Heading(text, Optional.of(text), List.of(), List.of(), Optional.empty()));
    }
    Matcher own = OWN.matcher(text);
    Optional<Analyte> analyte = own.matches() ? Analyte.parse(own.group(1)) : Optional.empty();
    if (analyte.isPresent()) {
      boolean isFixed = analyte.get().unit() != CanonicalUnit.ARBITRARY;
      List<String> unit = isFixed ? List.of(analyte.get().unit().ucum()) : List.of();
      return Optional.of(
          new Heading(
              text, Optional.of(own.group(1)), List.of(own.group(2)), unit, Optional.empty()));
    }
    String code = text.replaceFirst("\\.(verdict|unit)$", "");
    boolean isOutput = Stream.of(FindingCode.values()).anyMatch(c -> c.code().equals(code));
    return isOutput && !Analyte.parse(code).isPresent()
        ? Optional.of(
            new Heading(text, Optional.of("ignore"), List.of(), List.of(), Optional.empty()))
        : Optional.empty();
  }

  Optional<Analyte> analyte() {
    return subject.flatMap(Analyte::parse);
  }

  boolean isField(String name) {
    return subject.filter(name::equals).isPresent();
  }

  boolean isBands() {
    return subject.filter(s -> s.startsWith("bands.")).isPresent();
  }

  boolean isSerology() {
    return subject.filter(s -> s.startsWith("serology.")).isPresent();
  }

  /** Whether values of one analyte stand under it. */
  boolean isMeasured() {
    return analyte().isPresent() || isBands() || isSerology();
  }

  /** Whether values of any analyte in one fluid stand under it. */
  boolean isFluid() {
    return !fluids.isEmpty() && (subject.isEmpty() || isField("value"));
  }

  /** How much it says; to find the row of headings. */
  int weight() {
    if (mapped.isPresent()) {
      return 6;
    }
    if (isMeasured()) {
      return 1 + (fluids.isEmpty() ? 0 : 2) + (units.isEmpty() ? 0 : 1);
    }
    return subject.isPresent() ? 2 : isFluid() ? 2 : 0;
  }

  /** Reading a heading by its words. */
  private record HeadingWords(Spellings spellings) {

    Heading read(String text) {
      Optional<String> whole = Names.find(text);
      if (whole.isPresent()) {
        return new Heading(text, whole, List.of(), List.of(), Optional.empty());
      }
      List<String> units = new ArrayList<>();
      List<String> fluids = new ArrayList<>();
      String rest = withoutBrackets(text, units, fluids);
      rest = withoutFluids(withoutUnit(withoutFluids(rest, fluids), units), fluids);
      String name = EDGES.matcher(rest).replaceAll("").strip();
      Optional<String> subject = name.isEmpty() ? Optional.empty() : Names.find(name);
      boolean isUnknown = !name.isEmpty() && subject.isEmpty();
      return new Heading(text, subject, isUnknown ? List.of() : fluids, units, Optional.empty());
    }

    private String withoutBrackets(String text, List<String> units, List<String> fluids) {
      Matcher bracket = BRACKET.matcher(text);
      StringBuilder rest = new StringBuilder();
      while (bracket.find()) {
        String inner = bracket.group(1).strip();
        List<String> found = units(inner);
        List<String> named = fluids(inner);
        if (!found.isEmpty()) {
          units.addAll(found);
          bracket.appendReplacement(rest, " ");
        } else if (!named.isEmpty()) {
          fluids.addAll(named);
          bracket.appendReplacement(rest, " ");
        }
      }
      return bracket.appendTail(rest).toString().strip();
    }

    /** One unit, or two with a stroke between blanks: one for each fluid. */
    private List<String> units(String text) {
      if (isUnit(text)) {
        return List.of(text);
      }
      List<String> parts = TWO_UNITS.splitAsStream(text).map(String::strip).toList();
      return parts.size() == 2 && parts.stream().allMatch(this::isUnit) ? parts : List.of();
    }

    private boolean isUnit(String text) {
      return !text.isBlank() && !text.matches("\\d+") && spellings.isUnit(text);
    }

    private static List<String> fluids(String text) {
      List<String> parts = FLUID_SIGNS.splitAsStream(text).map(String::strip).toList();
      boolean areAll =
          parts.stream().allMatch(p -> Fluids.parse(p).filter(f -> f != Fluid.OTHER).isPresent());
      return areAll ? parts : List.of();
    }

    /** The text without a unit at its end, behind a comma or a blank. */
    private String withoutUnit(String text, List<String> units) {
      for (int at = text.length() - 1; at > 0 && units.isEmpty(); at--) {
        char c = text.charAt(at);
        String tail = text.substring(at + 1).strip();
        boolean isEnd = (c == ' ' || c == ',') && (tail.contains("/") || tail.equals("%"));
        if (isEnd && isUnit(tail)) {
          units.add(tail);
          return text.substring(0, at).replaceFirst("(?i)[\\s,]+(in)?[\\s,]*$", "");
        }
      }
      if (units.isEmpty() && text.contains("/") && isUnit(text)) {
        units.add(text);
        return "";
      }
      return text;
    }

    /** The text without words for fluids at its ends. */
    private static String withoutFluids(String text, List<String> fluids) {
      String rest = text.strip();
      String[] words = BETWEEN.split(rest, -1);
      for (int count = Math.min(4, words.length); count > 0 && fluids.isEmpty(); count--) {
        for (boolean isFirst : new boolean[] {true, false}) {
          Optional<String> cut = cut(words, count, isFirst, fluids);
          if (cut.isPresent()) {
            return cut.get();
          }
        }
      }
      return rest;
    }

    private static Optional<String> cut(
        String[] words, int count, boolean isFirst, List<String> fluids) {
      int from = isFirst ? 0 : words.length - count;
      String phrase = String.join(" ", List.of(words).subList(from, from + count));
      List<String> named = phrase.isBlank() ? List.of() : fluids(phrase);
      if (named.isEmpty()) {
        return Optional.empty();
      }
      fluids.addAll(named);
      String others =
          String.join(
              " ",
              isFirst
                  ? List.of(words).subList(count, words.length)
                  : List.of(words).subList(0, from));
      return Optional.of(LOOSE.matcher(others).replaceFirst(""));
    }
  }
}
