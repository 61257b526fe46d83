package cistern.exchange.table;

import cistern.exchange.json.InputProblems;
import cistern.exchange.json.Json;
import cistern.exchange.lab.Coding;
import cistern.exchange.lab.Fluids;
import cistern.exchange.lab.Fluids.Fluid;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Spellings;
import cistern.fact.Facts;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.SequencedMap;
import java.util.stream.Stream;

/**
 * A mapping file as the names suggest it, for a person to check and to confirm: nobody's name
 * stands in it, so that it is refused until somebody has put theirs. What no name explains is left
 * blank.
 */
public final class MappingProposal {

  private final Facts facts;
  private final Spellings spellings;

  private MappingProposal(Facts facts) {
    this.facts = facts;
    this.spellings = Spellings.of(Conversions.of(facts));
  }

  /** A proposer under some facts. */
  public static MappingProposal of(Facts facts) {
    return new MappingProposal(facts);
  }

  /** The mapping of a table's headings. */
  public Json.Structure columns(byte[] bytes, boolean isWorkbook, InputProblems problems) {
    List<Json> entries = new ArrayList<>();
    for (Heading heading :
        TableReader.of(facts, LocalMapping.NONE).headings(bytes, isWorkbook, problems)) {
      if (!heading.text().isBlank()) {
        SequencedMap<String, Json> entry = new LinkedHashMap<>();
        entry.put("heading", new Json.Text(heading.text()));
        says(heading, entry);
        entries.add(new Json.Structure(entry));
      }
    }
    return file("columns", entries);
  }

  /** The mapping of a message's codes that are not known. */
  public Json.Structure codes(List<Coding> unknown) {
    List<Json> entries = new ArrayList<>();
    for (Coding coding : unknown) {
      SequencedMap<String, Json> entry = new LinkedHashMap<>();
      entry.put("code", new Json.Text(coding.code().isEmpty() ? coding.text() : coding.code()));
      if (!coding.system().isEmpty()) {
        entry.put("system", new Json.Text(coding.system()));
      }
      says(
          Heading.of(
              coding.text().isEmpty() ? coding.code() : coding.text(),
              spellings,
              LocalMapping.NONE),
          entry);
      entries.add(new Json.Structure(entry));
    }
    return file("codes", entries);
  }

  private static void says(Heading heading, SequencedMap<String, Json> entry) {
    entry.put("means", new Json.Text(heading.subject().orElse("")));
    boolean isMeasured = heading.isMeasured();
    if (isMeasured && heading.fluids().size() == 1) {
      Fluids.parse(heading.fluids().getFirst())
          .filter(f -> f != Fluid.OTHER && f != Fluid.PLASMA)
          .ifPresent(f -> entry.put("in", new Json.Text(f.name().toLowerCase(Locale.ROOT))));
    }
    if (heading.analyte().isPresent() && heading.units().size() == 1) {
      entry.put("unit", new Json.Text(heading.units().getFirst()));
    }
  }

  private static Json.Structure file(String list, List<Json> entries) {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    members.put("mapping", new Json.Numeral("1"));
    members.put("name", new Json.Text("proposed from the names; check each line"));
    Stream.of("confirmedBy").forEach(name -> members.put(name, new Json.Text("")));
    members.put(list, new Json.Sequence(entries));
    return new Json.Structure(members);
  }
}
