package cistern.bedside;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a treatment does to the markers of the fluid, by the names that people type. */
public enum TreatmentKind {
  STEROIDS(
      "steroids",
      "methylpred, prednis, dexameth, hydrocortis, cortison, corticoster, steroid, solu-medrol,"
          + " solumedrol, medrol, urbason, triamcinolon, decadron, fortecortin, ivmp"),
  ANTI_CD20(
      "anti-CD20",
      "anti-cd20, rituximab, ocrelizumab, ofatumumab, ublituximab, obinutuzumab, inebilizumab,"
          + " rituxan, mabthera, ocrevus, kesimpta, briumvi, truxima, rixathon"),
  NATALIZUMAB("natalizumab", "natalizumab, tysabri, tyruko"),
  CLADRIBINE("cladribine", "cladribin, mavenclad"),
  STEM_CELLS("stem-cell transplantation", "ahsct, hsct, stem cell, stem-cell, bone marrow"),
  IMMUNOGLOBULIN(
      "immunoglobulin",
      "immunoglobulin, ivig, scig, gammagard, privigen, octagam, gamunex, kiovig, intratect,"
          + " panzyga, hizentra, flebogamma"),
  PLASMA_EXCHANGE(
      "plasma exchange",
      "plasma exchange, plasmapheresis, plasmaphaeresis, plex, immunoadsorption, apheresis"),
  OTHER_IMMUNE(
      "an immune treatment",
      "interferon, glatiramer, fingolimod, siponimod, ozanimod, ponesimod, teriflunomid,"
          + " dimethyl fumarat, diroximel, alemtuzumab, mitoxantron, cyclophosphamid, azathioprin,"
          + " mycophenol, methotrexat, tocilizumab, satralizumab, eculizumab, ravulizumab,"
          + " copaxone, avonex, rebif, betaferon, plegridy, tecfidera, gilenya, aubagio, lemtrada");

  private final String term;
  private final String names;

  TreatmentKind(String term, String names) {
    this.term = term;
    this.names = names;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }

  /** Whether it depletes cells that watch over the JC virus, or keeps them from the brain. */
  public boolean isDepleting() {
    return switch (this) {
      case ANTI_CD20, NATALIZUMAB, CLADRIBINE, STEM_CELLS -> true;
      case STEROIDS, IMMUNOGLOBULIN, PLASMA_EXCHANGE, OTHER_IMMUNE -> false;
    };
  }

  /** The kind of a drug as typed, if it is known; capitals do not matter. */
  public static Optional<TreatmentKind> of(String drug) {
    String plain = drug.toLowerCase(Locale.ROOT);
    return Arrays.stream(values())
        .filter(kind -> Arrays.stream(kind.names.split(", ", -1)).anyMatch(plain::contains))
        .findFirst();
  }
}
